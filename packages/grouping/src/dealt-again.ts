import type { GroupingRecord } from './records.ts';
import { seeded, shuffledUpTo } from './seeded.ts';

const TOGETHER: readonly (readonly (keyof GroupingRecord)[])[] = [
  ['type'],
  ['materials'],
  ['tags'],
  ['maker'],
  ['from'],
  ['palette'],
  ['silhouette'],
  ['earliestYear', 'latestYear'],
  ['heightMm', 'widthMm', 'depthMm'],
];

/**
 * The same things with each trait dealt out again among them all, so that nothing is left to find: what is found in these
 * is found by chance. What belongs together (a height and its width) stays so.
 */
export function dealtAgain(records: readonly GroupingRecord[], seed: number): GroupingRecord[] {
  const random = seeded(seed);
  const dealt: Record<string, unknown>[] = records.map(({ id }) => ({ id }));
  for (const names of TOGETHER) {
    const order = shuffledUpTo(records.length, random);
    for (const [i, record] of dealt.entries())
      for (const name of names) {
        const value = records[order[i]!]![name];
        if (value !== undefined) record[name] = value;
      }
  }
  return dealt as unknown as GroupingRecord[];
}
