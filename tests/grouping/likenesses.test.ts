import { clustersOf } from '@enfilade/grouping/clusters';
import { featuresOf } from '@enfilade/grouping/features';
import type { Likenesses } from '@enfilade/grouping/likeness';
import { seeded, shuffledUpTo } from '@enfilade/grouping/seeded';
import { describe, expect, test } from 'vitest';
import { type Planted, plantedPool, shuffledPool } from './pools.ts';

/** How pure the sets found are, and how many of the planted are in one. */
function judged({ sets }: Likenesses, { records, sets: planted }: Planted) {
  const plantedOf = new Map(records.map(({ id }, i) => [id, planted[i]!]));
  let [right, held] = [0, 0];
  for (const { members } of sets) {
    const count = new Map<number, number>();
    for (const id of members) count.set(plantedOf.get(id)!, (count.get(plantedOf.get(id)!) ?? 0) + 1);
    count.delete(-1);
    right += Math.max(0, ...count.values());
    held += members.length;
  }
  return { pure: right / held, found: right / planted.filter((set) => set >= 0).length };
}

describe('likenesses', () => {
  test.each([
    [50, 3],
    [600, 6],
    [3000, 25],
  ])('law: in a pool of %i the %i planted sets are found, pure and with reasons', (n, count) => {
    const pool = plantedPool(n, count);
    const found = clustersOf(featuresOf(pool.records));
    const { pure, found: recall } = judged(found, pool);
    expect(pure).toBeGreaterThan(0.9);
    expect(recall).toBeGreaterThan(0.7);
    expect(found.sets.length).toBeGreaterThanOrEqual(count - Math.ceil(count / 8));
    for (const set of found.sets) {
      expect(set.reasons.length).toBeGreaterThan(0);
      expect(set.together.words).toMatch(/^\d+ of \d+ are .+: \d+ % of these, \d+ % of the rest$/);
      expect(set.stability).toBeGreaterThanOrEqual(0.6);
      expect(set.tightness).toBeGreaterThan(set.chance);
    }
    expect(found.leftOut.length + found.sets.reduce((sum, { members }) => sum + members.length, 0)).toBe(n);
  });

  test('law: nothing is found where there is nothing to find, and it is said: 25 pools with every field dealt out again', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const n = seed % 2 ? 300 : 80;
      const { records } = plantedPool(n, 5, 0.6, seed);
      const { sets, words, leftOut } = clustersOf(featuresOf(shuffledPool(records, seed)));
      expect(sets.map((set) => set.together.words)).toEqual([]);
      expect(words).toBe(`Nothing in these ${n} hangs together more than chance would have it.`);
      expect(leftOut).toHaveLength(n);
    }
  });

  test('law: being of one type is not a discovery', () => {
    const random = seeded(4);
    const records = Array.from({ length: 400 }, (_, i) => {
      const [type, h] = [i % 8, Math.exp(4 + 2 * random())];
      return {
        id: `${i}`,
        type: `type ${type}`,
        heightMm: h,
        widthMm: h * (0.5 + random()),
        earliestYear: 1700 + 200 * random(),
      };
    });
    expect(clustersOf(featuresOf(records)).sets).toEqual([]);
  });

  test('law: the order things come in and the unit of length change nothing', () => {
    const { records } = plantedPool(300, 5);
    const found = clustersOf(featuresOf(records));
    const order = shuffledUpTo(300, seeded(8));
    expect(clustersOf(featuresOf([...order].map((i) => records[i]!)))).toEqual(found);
    const longer = records.map((r) => ({ ...r, heightMm: 25.4 * r.heightMm!, widthMm: 25.4 * r.widthMm! }));
    const members = ({ sets }: Likenesses) => sets.map((set) => set.members);
    expect(members(clustersOf(featuresOf(longer)))).toEqual(members(found));
  });

  test('law: a look that is turned away from changes nothing, and one looked by alone is enough', () => {
    const pool = plantedPool(300, 4);
    const weights = { colour: 1, shape: 0, size: 0, use: 0, age: 0 };
    const found = clustersOf(featuresOf(pool.records), { weights });
    const otherwise = pool.records.map((r) => ({ ...r, type: 'any', heightMm: 10, earliestYear: 1 }));
    expect(clustersOf(featuresOf(otherwise), { weights })).toEqual(found);
    expect(found.sets.length).toBeGreaterThan(0);
  });

  test('law: one of whom too little is known is left out and told so', () => {
    const { records } = plantedPool(300, 5);
    const { leftOut } = clustersOf(featuresOf([...records, { id: 'u', type: 'jug' }]));
    expect(leftOut.find(({ id }) => id === 'u')).toEqual({ id: 'u', why: 'too little is known of it' });
  });
});
