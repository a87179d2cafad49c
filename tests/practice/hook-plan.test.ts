import { hookPlanOf } from '@enfilade/practice/hook-plan';
import { labelPlaceOf, labelSizeOf, letterHeightOf, signContrastOf } from '@enfilade/practice/labels';
import { pathFailuresOf, slopeOf, turnsIn } from '@enfilade/practice/paths';
import { DEFAULT_PROFILE, UK_PROFILE } from '@enfilade/practice/practice-profile';
import { evenGapOf, seenThroughOf } from '@enfilade/practice/sight-and-gaps';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const inch = (inches: number) => inches * 25.4;
const wall = { lengthMm: 6000, laserMm: 1000, floorLeftMm: 0, floorRightMm: -24 };
const view = { centreXmm: 3000, centreMm: 1475, widthMm: 600, heightMm: 815, weightKg: 12 };

describe('the hook plan', () => {
  test('story: two D-rings over a fallen floor: one height over the laser, two over the floor, half the weight each', () => {
    const hooks = hookPlanOf(view, { kind: 'D-rings', hooks: 2, dropMm: 95, spacingMm: 500 }, wall);
    expect(hooks).toMatchObject([
      { xMm: 2750, heightMm: 1787.5, fromLaserMm: 787.5, fromFloorMm: 1798.5, loadKg: 6, ratingKg: 24 },
      { xMm: 3250, heightMm: 1787.5, fromLaserMm: 787.5, fromFloorMm: 1800.5, loadKg: 6, ratingKg: 24 },
    ]);
  });

  test('story: a wire’s drop comes of its lengths; what is missing is told', () => {
    const wire = { ringsApartMm: inch(26), wireMm: inch(29), ringsBelowTopMm: inch(8) };
    const [hook] = hookPlanOf({ ...view, widthMm: 700 }, { kind: 'wire', hooks: 1 }, wall, wire) as readonly {
      heightMm: number;
    }[];
    expect(hook?.heightMm).toBeCloseTo(1475 + 407.5 - inch(1.576), 0);
    expect(hookPlanOf(view, { kind: 'cleat', hooks: 1 }, wall)).toMatchObject({ where: 'drop' });
    expect(hookPlanOf(view, { kind: 'none', hooks: 0, dropMm: 0 }, wall)).toEqual([]);
    const beside = { ...view, centreOfGravityXmm: 4000 };
    expect(hookPlanOf(beside, { kind: 'plates', hooks: 2, dropMm: 1 }, wall)).toMatchObject({
      where: 'centre of gravity',
    });
    expect(() => hookPlanOf({ ...view, widthMm: 0 }, { kind: 'plates', hooks: 2, dropMm: 1 }, wall)).toThrow(
      'widthMm is 0',
    );
  });

  test('law: finite numbers in range never make it throw; the hooks bear at least the weight', () => {
    const mm = (min: number, max: number) => fc.integer({ min, max });
    const kind = fc.constantFrom('D-rings', 'plates', 'cleat', 'batten', 'hooks' as const);
    fc.assert(
      fc.property(
        mm(0, 6000),
        mm(0, 4000),
        mm(1, 5000),
        mm(1, 5000),
        mm(0, 900),
        mm(1, 12),
        kind,
        (x, y, w, h, kg, hooks, k) => {
          const piece = { centreXmm: x, centreMm: y, widthMm: w, heightMm: h, weightKg: kg };
          const plan = hookPlanOf(piece, { kind: k as 'plates', hooks, dropMm: 10 }, wall);
          if ('what' in plan) throw new Error(String(plan.what));
          expect(plan).toHaveLength(hooks);
          expect(plan.reduce((sum, { loadKg }) => sum + (loadKg ?? 0), 0)).toBeGreaterThanOrEqual(kg - 1e-6);
          for (const hook of plan) expect(Object.values(hook).every(Number.isFinite)).toBe(true);
        },
      ),
      { seed: 41 },
    );
  });
});

describe('ways', () => {
  test('reference: practice 10.16 paths of 34 and 31 in (2010 ADA Standards, 403.5.1 [R])', () => {
    const fails = (width: number, length: number) =>
      pathFailuresOf([{ widthMm: inch(width), lengthMm: inch(length) }]).map(({ what }) => what);
    expect(fails(34, 20)).toEqual([]);
    expect(fails(34, 30)).toEqual(['narrow too long']);
    expect(fails(31, 20)).toEqual(['too narrow']);
    expect(fails(36, 1000)).toEqual([]);
    expect(fails(32, 24)).toEqual([]);
  });

  test('story: two pinches too near each other fail, farther apart they do not; a wider country asks for more', () => {
    const pinch = { widthMm: inch(34), lengthMm: inch(20) };
    const between = (inches: number) => [pinch, { widthMm: inch(60), lengthMm: inch(inches) }, pinch];
    expect(pathFailuresOf(between(40))).toMatchObject([{ index: 2, what: 'narrow again too soon' }]);
    expect(pathFailuresOf(between(48))).toEqual([]);
    // Two narrow stretches in a row are one of 40 in.
    expect(pathFailuresOf([pinch, pinch])).toMatchObject([{ index: 1, what: 'narrow too long' }]);
    expect(pathFailuresOf([{ widthMm: 1000, lengthMm: 5000 }], UK_PROFILE)).toMatchObject([{ shortMm: 200 }]);
    expect(() => pathFailuresOf([{ widthMm: -1, lengthMm: 1 }])).toThrow('widthMm is -1');
  });

  test('reference: turning circle 60 in and slope 1 in 20 (2010 ADA Standards, 304.3 and 402.2 [R])', () => {
    expect([turnsIn({ widthMm: 1524, depthMm: 2000 }), turnsIn({ widthMm: 1523, depthMm: 2000 })]).toEqual([
      true,
      false,
    ]);
    expect(slopeOf({ fromMm: 0, toMm: -50, runMm: 1000 })).toEqual({ share: 0.05, tooSteep: false });
    expect(slopeOf({ fromMm: 0, toMm: 51, runMm: 1000 }).tooSteep).toBe(true);
    expect(() => slopeOf({ fromMm: 0, toMm: 1, runMm: 0 })).toThrow('runMm is 0');
  });
});

describe('sight, gaps and labels', () => {
  test('reference: practice 10.21 contrast of reflectances ((B1 − B2) / B1, older US signage advice [M])', () => {
    expect(signContrastOf(70, 10)).toBeCloseTo(85.7, 1);
    expect(signContrastOf(12, 85)).toBeCloseTo(85.9, 1);
    // The ratio of the same pair: (Y + 0.05), Y of 1, WCAG 2.2.
    expect((0.7 + 0.05) / (0.1 + 0.05)).toBeCloseTo(5, 9);
    expect(signContrastOf(0, 0)).toBe(0);
  });

  test('reference: practice 10.25 an even gap of 14 in ((W − Σ) / (n + 1) [C])', () => {
    expect(evenGapOf(inch(240), [30, 24, 48, 24, 30].map(inch)) / 25.4).toBeCloseTo(14, 9);
  });

  test('reference: practice 10.26 a wall through a doorway (similar triangles)', () => {
    const door = { widthMm: inch(36), eyeBeforeMm: inch(60), eyeRightMm: 0, wallBeyondMm: inch(240) };
    const straight = seenThroughOf(door);
    expect((straight.toMm - straight.fromMm) / 25.4).toBeCloseTo(180, 9);
    const right = seenThroughOf({ ...door, eyeRightMm: inch(12) });
    expect([right.fromMm / 25.4, right.toMm / 25.4]).toEqual([expect.closeTo(-138, 9), expect.closeTo(42, 9)]);
  });

  test('reference: practice 10.32 x-height for 1.5 m is 14.0 mm (d / 107, from memory)', () => {
    expect(letterHeightOf(1500)).toBeCloseTo(14, 1);
  });

  test('story: a label stands right of its work, goes left where a neighbour is, and says when there is no room', () => {
    const size = labelSizeOf('Valley view\noil on canvas');
    expect(size).toMatchObject({ lines: 2, words: 5, tooLong: false });
    expect(labelSizeOf('word '.repeat(101)).tooLong).toBe(true);
    const work = { xMm: 1000, yMm: 1500, widthMm: 600, heightMm: 800 };
    const free = labelPlaceOf(work, size, { lengthMm: 6000, floorAt: () => 0, taken: [work] });
    expect(free?.xMm).toBeCloseTo(1000 + 300 + 60 + size.widthMm / 2, 9);
    expect(free?.yMm).toBeCloseTo(1371.6, 9);
    const next = { xMm: 1700, yMm: 1500, widthMm: 600, heightMm: 800 };
    expect(labelPlaceOf(work, size, { lengthMm: 6000, floorAt: () => 0, taken: [work, next] })?.xMm).toBeLessThan(700);
    expect(
      labelPlaceOf(work, size, { lengthMm: 1350, floorAt: () => 0, taken: [work, { ...next, xMm: 400 }] }),
    ).toBeNull();
  });

  test('law: a placed label overlaps nothing, lies on the wall and in the band', () => {
    const box = fc.record({
      xMm: fc.integer({ min: 0, max: 5000 }),
      yMm: fc.integer({ min: 800, max: 2000 }),
      widthMm: fc.integer({ min: 20, max: 900 }),
      heightMm: fc.integer({ min: 20, max: 900 }),
    });
    const { labelLowestMm, labelHighestMm } = DEFAULT_PROFILE.limits;
    let placed = 0;
    fc.assert(
      fc.property(box, fc.array(box, { maxLength: 8 }), fc.integer({ min: -60, max: 60 }), (work, others, floorMm) => {
        const taken = [work, ...others];
        const label = labelPlaceOf(
          work,
          { widthMm: 200, heightMm: 120 },
          { lengthMm: 5000, floorAt: () => floorMm, taken },
        );
        if (label === null) return;
        placed += 1;
        expect(label.xMm).toBeGreaterThanOrEqual(100);
        expect(label.xMm).toBeLessThanOrEqual(4900);
        expect(label.yMm - floorMm - 60).toBeGreaterThanOrEqual(labelLowestMm.value - 1e-6);
        expect(label.yMm - floorMm + 60).toBeLessThanOrEqual(labelHighestMm.value + 1e-6);
        for (const other of taken) {
          const across = Math.abs(other.xMm - label.xMm) - (other.widthMm + 200) / 2;
          const up = Math.abs(other.yMm - label.yMm) - (other.heightMm + 120) / 2;
          expect(Math.max(across, up)).toBeGreaterThanOrEqual(-1e-6);
        }
      }),
      { seed: 42, numRuns: 500 },
    );
    expect(placed).toBeGreaterThan(50);
  });
});
