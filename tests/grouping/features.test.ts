import { featuresOf, typeColumn } from '@enfilade/grouping/features';
import { outlineDistance, silhouetteOf } from '@enfilade/grouping/silhouette';
import { describe, expect, test } from 'vitest';

/** A mask of 160 × 160 with what is inside a shape solid, the shape scaled and turned about the middle. */
function maskOf(inside: (x: number, y: number) => boolean, scale = 1, turnDegrees = 0): Uint8Array {
  const turn = (turnDegrees * Math.PI) / 180;
  return Uint8Array.from({ length: 160 * 160 }, (_, at) => {
    const [x, y] = [((at % 160) - 79.5) / scale, (Math.floor(at / 160) - 79.5) / scale];
    return inside(x * Math.cos(turn) + y * Math.sin(turn), y * Math.cos(turn) - x * Math.sin(turn)) ? 255 : 0;
  });
}

const bar = (x: number, y: number) => Math.abs(x) < 35 && Math.abs(y) < 12;
const disc = (x: number, y: number) => Math.hypot(x, y) < 30;
const star = (x: number, y: number) => Math.hypot(x, y) < 24 + 10 * Math.cos(5 * Math.atan2(y, x));

describe('silhouettes', () => {
  test('law: the outline stays when it is scaled and turned, and shapes stay further apart than that moves them', () => {
    const of = (...given: Parameters<typeof maskOf>) => silhouetteOf(maskOf(...given), 160)!;
    let same = 0;
    for (const shape of [bar, disc, star])
      for (const turn of [17, 45, 90, 210])
        same = Math.max(same, outlineDistance(of(shape), of(shape, 1.7, turn), true));
    expect(same).toBeLessThan(0.06);
    for (const [one, other] of [
      [bar, disc],
      [disc, star],
      [star, bar],
    ] as const)
      expect(outlineDistance(of(one), of(other), true)).toBeGreaterThan(3 * same);
  });

  test('reference: aspect and fill of a rectangle of 70 × 24 and of a disc (π/4), geometry', () => {
    const upright = silhouetteOf(maskOf(bar), 160)!;
    expect([upright.aspect, upright.fill]).toEqual([70 / 24, 1]);
    expect(silhouetteOf(maskOf(disc), 160)!.fill).toBeCloseTo(Math.PI / 4, 2);
  });

  test('law: a mask with nothing in it has no silhouette', () => {
    expect(silhouetteOf(new Uint8Array(1600), 40)).toBeUndefined();
    expect(() => silhouetteOf(new Uint8Array(1601), 40)).toThrow(RangeError);
  });
});

describe('features', () => {
  test('law: what is missing is missing, and makes no column of its own', () => {
    const { columns, ids } = featuresOf([
      { id: 'b', heightMm: 120 },
      { id: 'a', type: ' Jug ' },
      { id: 'c', type: '' },
    ]);
    expect(ids).toEqual(['a', 'b', 'c']);
    expect(columns.map(({ name }) => name)).toEqual(['type', 'height']);
    expect([...typeColumn({ columns })!.codes]).toEqual([0, -1, -1]);
    expect(columns[1]).toMatchObject({ values: Float64Array.of(Number.NaN, Math.log(120), Number.NaN) });
  });

  test('law: what cannot be is told, and the rest of the record kept', () => {
    const { issues, records } = featuresOf([
      { id: 'a', heightMm: -3, widthMm: 40, palette: [{ L: Number.NaN, a: 0, b: 0, share: 1 }] },
      { id: 'a', heightMm: 5 },
    ]);
    expect(issues.map(({ where }) => where)).toEqual(['a/heightMm', 'a/palette', 'a']);
    expect(records).toEqual([{ id: 'a', widthMm: 40 }]);
  });
});
