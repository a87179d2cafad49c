import type { DateSpan } from '@enfilade/records/date-reading';
import { dateFrom } from '@enfilade/records/dates';
import { describe, expect, test } from 'vitest';
import { rowsOf, worstShapes } from './rows.ts';

// Museums' open data (CC0), read where it lies. Their rules differ ("c." is ±0, ±5, ±12 …), so spans have to overlap.
const AGREED = 0.97;
const MUSEUMS: readonly (readonly [name: string, file: string])[] = [
  ['Carnegie', 'dates-cmoa-gold.tsv'],
  ['Tate', 'dates-tate-gold.tsv'],
  ['Williams', 'dates-wcma-gold.tsv'],
];

describe('reference: date texts beside the museum’s own span', () => {
  test.each(MUSEUMS)('reference: %s open data', (name, file) => {
    let [overlap, elsewhere, unread, atOdds, rows] = [0, 0, 0, 0, 0];
    const worst: string[] = [];
    for (const [raw = '', begin = '', end = ''] of rowsOf(file)) {
      if (begin === '' || end === '') continue;
      const span = [Number(begin), Number(end)] as const;
      // The museum's own figures contradict a plain year, often by one.
      if (/^\d{4}$/.test(raw.trim()) && (Number(raw) < span[0] || Number(raw) > span[1])) {
        atOdds += 1;
        continue;
      }
      rows += 1;
      const reading = dateFrom(raw);
      if (overlaps(reading, span)) {
        overlap += 1;
        continue;
      }
      if (reading.events.some((event) => overlaps(event, span))) elsewhere += 1;
      if (reading.earliest === null && reading.latest === null) unread += 1;
      worst.push(`${raw} | ${begin}–${end}, read ${reading.edtf ?? 'undated'}`);
    }
    const share = (count: number) => ((100 * count) / rows).toFixed(2);
    console.log(
      `${name}, dates: ${overlap} of ${rows} overlap the museum's span (${share(overlap)} %), ${elsewhere} more by another ` +
        `of their events, ${unread} undated or not read; ${atOdds} left out, where the museum contradicts a plain year.`,
    );
    for (const shape of worstShapes(worst)) console.log(`  ${shape}`);
    expect(overlap / rows).toBeGreaterThanOrEqual(AGREED);
  });
});

function overlaps({ earliest, latest }: DateSpan, [begin, end]: readonly [number, number]): boolean {
  if (earliest === null && latest === null) return false;
  return (earliest === null || earliest.year <= end) && (latest === null || latest.year >= begin);
}
