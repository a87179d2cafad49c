import { centreOnWall, evenLine, line } from '@enfilade/arrangement/line';
import { describe, expect, test } from 'vitest';

const INCH = 25.4;

describe('line', () => {
  test('reference: practice example 25 (common practice): wall 240 in, widths 30, 24, 48, 24, 30 → gap 14.0 in', () => {
    const even = evenLine({
      surfaceWidthMm: 240 * INCH,
      centreLineMm: 1475,
      widthsMm: [30, 24, 48, 24, 30].map((inches) => inches * INCH),
    });
    expect(even.gapMm / INCH).toBeCloseTo(14, 10);
    expect(even.places[0]).toEqual({ xMm: Math.round((14 + 15) * INCH), yMm: 1475 });
    expect(even.places[2]!.xMm).toBe(3048);
  });

  test('reference: a fixed gap with the group centred, by hand (common practice, no source)', () => {
    const { places, endMm } = line({ surfaceWidthMm: 6000, centreLineMm: 1500, widthsMm: [800, 400, 600], gapMm: 300 });
    expect(endMm).toBe(1800);
    expect(places.map(({ xMm }) => xMm)).toEqual([2200, 3100, 3900]);
  });

  test('story: four wide works do not fit, nothing is placed, and by how much is said', () => {
    const task = { surfaceWidthMm: 3000, centreLineMm: 1500, widthsMm: [900, 900, 900, 900] };
    expect(line({ ...task, gapMm: 100 })).toMatchObject({ places: [], issues: [{ value: 900 }] });
    expect(evenLine(task)).toMatchObject({ places: [], issues: [{ value: 600 }] });
    expect(() => line({ ...task, gapMm: -1 })).toThrow(/gapMm is -1/);
  });

  test('reference: the middle of a wall (common practice, no source)', () => {
    expect(centreOnWall({ surfaceWidthMm: 6000, centreLineMm: 1520 })).toEqual({ xMm: 3000, yMm: 1520 });
  });
});
