import { heightsOf, hookHeightOf, hooksOf } from '@enfilade/practice/hook-heights';
import { loadsOf } from '@enfilade/practice/loads';
import { tensionOf, type WireGeometry, wireOf } from '@enfilade/practice/wires';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

// Worked examples of the trade, by their number in the acceptance table; [R] read in public text, [C] common practice.
const inch = (inches: number) => inches * 25.4;

function taut(wire: Parameters<typeof wireOf>[0]): WireGeometry {
  const geometry = wireOf(wire);
  if ('what' in geometry) throw new Error(geometry.what);
  return geometry;
}

describe('hook heights', () => {
  test('reference: practice 10.1, 10.2 and 10.3 centre + H/2 − drop [R: a museum’s own hanging guide]', () => {
    const hook = (centre: number, height: number, drop: number) =>
      hookHeightOf({ centreMm: inch(centre), heightMm: inch(height), dropMm: inch(drop) }) / 25.4;
    expect(hook(58, 40, 8)).toBeCloseTo(70, 9);
    expect(hook(57, 20, 2)).toBeCloseTo(65, 9);
    expect(hookHeightOf({ centreMm: 1475, heightMm: 815, dropMm: 95 })).toBe(1787.5);
  });

  test('story: on the fallen floor of the Dye House two hooks of one work stand differently high above it', () => {
    const hookMm = hookHeightOf({ centreMm: 1524, heightMm: 660, dropMm: 65 });
    expect(heightsOf({ hookMm, laserMm: 1000, floorMm: -10 })).toEqual({ fromLaserMm: 789, fromFloorMm: 1799 });
    expect(heightsOf({ hookMm, laserMm: 1000, floorMm: -12 })).toEqual({ fromLaserMm: 789, fromFloorMm: 1801 });
  });

  test('law: hooks stand about the centre, the outer ones their spacing apart', () => {
    expect(hooksOf({ centreXmm: 1000, widthMm: 600, hooks: 1, spacingMm: 400 })).toEqual([1000]);
    expect(hooksOf({ centreXmm: 1000, widthMm: 600, hooks: 2, spacingMm: 400 })).toEqual([800, 1200]);
    expect(hooksOf({ centreXmm: 1000, widthMm: 600, hooks: 3, spacingMm: 400 })).toEqual([800, 1000, 1200]);
    // Common practice, no source: without a spacing, the middle of equal shares.
    expect(hooksOf({ centreXmm: 1000, widthMm: 600, hooks: 2 })).toEqual([850, 1150]);
    expect(hooksOf({ centreXmm: 1000, widthMm: 600, hooks: 3 })).toEqual([800, 1000, 1200]);
    expect(hooksOf({ centreXmm: 1000, widthMm: 600, hooks: 0 })).toEqual([]);
    expect(() => hooksOf({ centreXmm: 0, widthMm: 600, hooks: 1.5 })).toThrow(
      new RangeError('hooks is 1.5; it must be a whole number of 0 or more'),
    );
  });
});

describe('wires', () => {
  const ringed = { ringsApartMm: inch(26), wireMm: inch(29), ringsBelowTopMm: inch(8) };

  test('reference: practice 10.4 a 29 in wire on rings 26 in apart over one hook (geometry)', () => {
    const one = taut({ ...ringed, hooks: 1 });
    expect(one.riseMm / 25.4).toBeCloseTo(6.42, 2);
    expect(one.dropMm / 25.4).toBeCloseTo(1.58, 2);
    expect(one.angleDegrees).toBeCloseTo(26.3, 1);
  });

  test('reference: practice 10.5 the same wire over two hooks 12 in apart (geometry)', () => {
    const two = taut({ ...ringed, hooks: 2, hooksApartMm: inch(12) });
    expect(two.riseMm / 25.4).toBeCloseTo(4.82, 2);
    expect(two.dropMm / 25.4).toBeCloseTo(3.18, 2);
    expect(two.angleDegrees).toBeCloseTo(34.6, 1);
  });

  test('reference: practice 10.6 and 10.7 tension W/(2 sin θ) (statics); a caution under 30° [C]', () => {
    const one = tensionOf({ weightKg: 30, angleDegrees: taut({ ...ringed, hooks: 1 }).angleDegrees });
    expect(one.tensionKg).toBeCloseTo(33.9, 1);
    expect(one.caution?.kind).toBe('wire too flat');
    const two = taut({ ...ringed, hooks: 2, hooksApartMm: inch(12) });
    expect(tensionOf({ weightKg: 30, angleDegrees: two.angleDegrees })).toMatchObject({ caution: null });
    expect(tensionOf({ weightKg: 30, angleDegrees: two.angleDegrees }).tensionKg).toBeCloseTo(26.4, 1);

    const flat = tensionOf({ weightKg: 50, angleDegrees: 10 });
    expect(Math.round(flat.tensionKg)).toBe(144);
    expect(flat.caution?.what).toContain('10°');
    expect(tensionOf({ weightKg: 20, angleDegrees: 30 }).tensionKg).toBeCloseTo(20, 9);
    expect(tensionOf({ weightKg: 20, angleDegrees: 30 }).caution).toBeNull();
    expect(tensionOf({ weightKg: 20, angleDegrees: 45 }).tensionKg).toBeCloseTo(14.1, 1);
    expect(tensionOf({ weightKg: 20, angleDegrees: 15 }).tensionKg).toBeCloseTo(38.6, 1);
    expect(() => tensionOf({ weightKg: 20, angleDegrees: 0 })).toThrow(RangeError);
  });

  test('law: the wire is as long as its legs and what lies over the hooks', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 2000 }),
        fc.integer({ min: 1, max: 1000 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (ringsApartMm, slack, share) => {
          const hooksApartMm = ringsApartMm * share;
          const wireMm = ringsApartMm + slack;
          const { riseMm } = taut({ ringsApartMm, wireMm, ringsBelowTopMm: 0, hooks: 2, hooksApartMm });
          const leg = Math.hypot(riseMm, (ringsApartMm - hooksApartMm) / 2);
          expect(2 * leg + hooksApartMm).toBeCloseTo(wireMm, 6);
        },
      ),
      { seed: 1 },
    );
  });

  test('story: a wire that cannot reach is told, not thrown', () => {
    expect(wireOf({ ...ringed, wireMm: inch(26), hooks: 1 })).toMatchObject({ where: 'wire' });
    expect(wireOf({ ...ringed, hooks: 2, hooksApartMm: inch(27) })).toMatchObject({ where: 'rings' });
    expect(wireOf({ ...ringed, hooks: 2 })).toMatchObject({ where: 'hooks' });
    expect(() => wireOf({ ...ringed, hooks: 3 })).toThrow(new RangeError('hooks is 3; it must be 1 or 2'));
  });
});

describe('loads on two hooks', () => {
  test('reference: practice 10.8 48 lb with its centre of gravity off the middle (moments)', () => {
    const loads = loadsOf({ weightKg: 48, leftXmm: 10, rightXmm: 30, centreOfGravityXmm: 18 });
    expect(loads).toEqual([expect.closeTo(28.8, 9), expect.closeTo(19.2, 9)]);
  });

  test('story: a centre of gravity beside both hooks is told', () => {
    expect(loadsOf({ weightKg: 48, leftXmm: 10, rightXmm: 30, centreOfGravityXmm: 31 })).toMatchObject({
      where: 'centre of gravity',
    });
    expect(loadsOf({ weightKg: 48, leftXmm: 10, rightXmm: 10, centreOfGravityXmm: 10 })).toMatchObject({
      where: 'hooks',
    });
  });
});
