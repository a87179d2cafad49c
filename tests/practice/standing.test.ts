import { floorLoadOf, STEADY_DEGREES, tipOf } from '@enfilade/practice/loads';
import { ADA_PROTRUSION, protrusionOf } from '@enfilade/practice/protrusion';
import { fieldDistanceOf, highWorkDistanceOf, viewingDistanceOf } from '@enfilade/practice/viewing';
import { describe, expect, test } from 'vitest';

// Worked examples of the trade, by their number in the acceptance table.
const inch = (inches: number) => inches * 25.4;
const POUND_KG = 0.45359237;

describe('standing out from a wall', () => {
  test('reference: practice 10.15 a shelf 5.5 in deep at several heights (2010 ADA Standards, 307.2 [R])', () => {
    const over = (edge: number) => protrusionOf({ edgeMm: inch(edge), depthMm: inch(5.5) }) / 25.4;
    expect(over(34)).toBeCloseTo(1.5, 9);
    expect(over(26)).toBe(0);
    expect(over(82)).toBe(0);
    expect(over(27)).toBe(0);
    expect(over(80)).toBeCloseTo(1.5, 9);
  });

  test('law: exactly 4 in is allowed, 27 in typed and rounded to a millimetre is 27 in, other limits can be given', () => {
    expect(protrusionOf({ edgeMm: 1000, depthMm: 101.6 })).toBe(0);
    expect(protrusionOf({ edgeMm: 686, depthMm: 300 })).toBe(0);
    expect(protrusionOf({ edgeMm: 687, depthMm: 300 })).toBeGreaterThan(0);
    expect(protrusionOf({ edgeMm: 1000, depthMm: 101.6 }, { ...ADA_PROTRUSION, deepestMm: 100 })).toBeCloseTo(1.6, 9);
  });
});

describe('viewing', () => {
  test('reference: practice 10.24 36 × 48 in (1.5 to 2 diagonals [C]; field and high work: geometry)', () => {
    const view = viewingDistanceOf({ widthMm: inch(36), heightMm: inch(48) });
    expect(view.diagonalMm / 25.4).toBeCloseTo(60, 9);
    expect([view.nearMm / 25.4, view.farMm / 25.4]).toEqual([expect.closeTo(90, 9), expect.closeTo(120, 9)]);
    expect(Math.round(fieldDistanceOf(inch(60)) / 25.4)).toBe(125);
    const high = highWorkDistanceOf({ topAboveEyeMm: inch(36), bottomAboveEyeMm: inch(12) });
    expect(high / 25.4).toBeCloseTo(20.8, 1);
  });

  test('law: the best distance for a high work has the greatest angle of all distances tried', () => {
    const angle = (distance: number) => Math.atan(900 / distance) - Math.atan(300 / distance);
    const best = highWorkDistanceOf({ topAboveEyeMm: 900, bottomAboveEyeMm: 300 });
    for (const other of [100, 300, best - 5, best + 5, 1000, 3000]) expect(angle(other)).toBeLessThan(angle(best));
    expect(() => highWorkDistanceOf({ topAboveEyeMm: 900, bottomAboveEyeMm: 0 })).toThrow(RangeError);
    expect(() => fieldDistanceOf(1000, 180)).toThrow(RangeError);
  });
});

describe('standing on a floor', () => {
  test('reference: practice 10.29 half base 9 in, centre of gravity 30 in, 80 lb pushed at 60 in (geometry, moments)', () => {
    const tip = tipOf({
      halfBaseMm: inch(9),
      centreOfGravityMm: inch(30),
      weightKg: 80 * POUND_KG,
      pushAtMm: inch(60),
    });
    expect(tip.angleDegrees).toBeCloseTo(16.7, 1);
    expect(tip.pushKg / POUND_KG).toBeCloseTo(12, 9);
    expect(tip.angleDegrees).toBeGreaterThan(STEADY_DEGREES);
    expect(() => tipOf({ halfBaseMm: 1, centreOfGravityMm: 0, weightKg: 1, pushAtMm: 1 })).toThrow(RangeError);
  });

  test('reference: practice 10.30 600 lb on 24 × 36 in is 100 psf (load over area), and an engineer is asked [M]', () => {
    const load = floorLoadOf({ weightKg: 600 * POUND_KG, widthMm: inch(24), depthMm: inch(36) });
    expect(load.kPa).toBeCloseTo(4.79, 2);
    expect(load.kPa / 0.04788026).toBeCloseTo(100, 4);
    expect(load.askEngineer).toBe(true);
    expect(floorLoadOf({ weightKg: 590 * POUND_KG, widthMm: inch(24), depthMm: inch(36) }).askEngineer).toBe(false);
    expect(() => floorLoadOf({ weightKg: 1, widthMm: 0, depthMm: 1 })).toThrow(RangeError);
  });
});
