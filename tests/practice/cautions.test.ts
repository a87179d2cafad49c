import { type CautionFacts, cautionsOf, cautionText, DEFERRAL } from '@enfilade/practice/cautions';
import { tensionOf } from '@enfilade/practice/wires';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

/** The valley view of wall.png: 66 × 86 × 6 cm, hung at 152.4 on two D-rings, nothing amiss. */
const view: CautionFacts = {
  onWall: true,
  placed: true,
  widthMm: 860,
  heightMm: 660,
  depthMm: 60,
  centreXmm: 4840,
  centreMm: 1524,
  turnDegrees: 0,
  floorMm: -24,
  sizeKnown: true,
  sizeCertain: true,
  weightKg: 9,
  hardware: { kind: 'D-rings', hooks: 2, dropMm: 65, spacingMm: 700 },
  fixtures: [],
};
/** The sluice gear of room.png: 148 × 78 × 62 cm, on the floor, no weight recorded. */
const gear: CautionFacts = {
  ...view,
  onWall: false,
  widthMm: 780,
  heightMm: 1480,
  depthMm: 620,
  weightKg: null,
  hardware: null,
};
const kinds = (facts: CautionFacts) => cautionsOf(facts).map(({ kind }) => kind);

describe('cautions', () => {
  test('story: a view hung on two hooks with its weight known gives none', () => {
    expect(cautionsOf(view)).toEqual([]);
  });

  test('story: without a weight, what is hung and what is bulky is asked about; a small thing on a table is not', () => {
    expect(kinds({ ...view, weightKg: null })).toEqual(['weight not known']);
    expect(kinds(gear)).toEqual(['weight not known']);
    expect(kinds({ ...gear, placed: false })).toEqual(['weight not known']);
    expect(kinds({ ...gear, heightMm: 200, widthMm: 300, depthMm: 200 })).toEqual([]);
    expect(kinds({ ...view, weightKg: null, placed: false, onWall: false })).toEqual([]);
  });

  // Limits 25 lb and 24 in: common practice, no source.
  test('story: one hook is flagged when the work is heavy or wide, and says which', () => {
    const one = { ...view, hardware: { kind: 'wire', hooks: 1 } } as const;
    expect(cautionsOf({ ...one, widthMm: 600, weightKg: 11.3 })).toEqual([]);
    expect(cautionsOf({ ...one, widthMm: 600, weightKg: 12 })[0]?.what).toContain('it weighs 12.0 kg.');
    expect(cautionsOf({ ...one, widthMm: 611 })[0]?.what).toContain('it is 61.1 cm wide.');
    expect(cautionsOf({ ...one, weightKg: 12 })[0]?.what).toContain('it weighs 12.0 kg and it is 86.0 cm wide.');
  });

  test('story: a view 9 cm from the thermostat says so, in the words of the reader', () => {
    const thermostat = { kind: 'thermostat', xMm: 5400, yMm: 1524, widthMm: 80, heightMm: 120, clearMm: 300 };
    const near = { ...view, fixtures: [thermostat] };
    expect(cautionsOf(near).map(({ what }) => what)).toEqual([
      'Thermostat 9.0 cm from it; 30.0 cm is to be kept clear.',
    ]);
    const words = { length: (mm: number) => `${(mm / 25.4).toFixed(1)} in`, weight: String };
    expect(cautionsOf(near, words)[0]?.what).toBe('Thermostat 3.5 in from it; 11.8 in is to be kept clear.');
    expect(cautionsOf({ ...near, centreXmm: 5400 })[0]?.what).toContain('Thermostat behind it');
    expect(cautionsOf({ ...near, centreXmm: 4630 })).toEqual([]);
    // Turned upright it is narrower, and clear.
    expect(kinds({ ...near, centreXmm: 4650 })).toEqual(['fixture not kept clear']);
    expect(kinds({ ...near, centreXmm: 4650, turnDegrees: 90 })).toEqual([]);
  });

  test('story: what hangs high is above reach, counted from the floor under it', () => {
    expect(kinds({ ...view, centreMm: 2120 })).toEqual(['above reach']);
    expect(kinds({ ...view, centreMm: 2120, floorMm: 0 })).toEqual([]);
  });

  test('story: a deep shelf beside a way stands out, one a cane finds does not (2010 ADA Standards, 307.2)', () => {
    const shelf = { ...view, heightMm: 100, depthMm: 140, centreMm: 900, floorMm: 0 };
    expect(cautionsOf(shelf)).toMatchObject([{ kind: 'stands out', source: '2010 ADA Standards, 307.2' }]);
    expect(cautionsOf(shelf)[0]?.what).toContain('14.0 cm from the wall, 3.8 cm more');
    expect(kinds({ ...shelf, centreMm: 700 })).toEqual([]);
    expect(kinds({ ...shelf, depthMm: 60 })).toEqual([]);
    expect(kinds({ ...shelf, depthMm: 60, liftMm: 60 })).toEqual(['stands out']);
  });

  // 80 in (2030 mm): 2010 ADA Standards, 307.4.
  test('reference: under what hangs overhead 203 cm is clear, or it is said; whom to ask is said always', () => {
    const hung = { ...gear, weightKg: 12 };
    expect(kinds({ ...hung, overheadClearMm: 2030 })).toEqual(['hung overhead']);
    expect(kinds({ ...hung, overheadClearMm: 2029 })).toEqual(['hung overhead', 'headroom']);
    // So low that a cane finds it, nobody walks beneath it.
    expect(kinds({ ...hung, overheadClearMm: 600 })).toEqual(['hung overhead']);
    expect(kinds({ ...hung, weightKg: null, overheadClearMm: 2500 })).toEqual(['weight not known', 'hung overhead']);
    const [over, under] = cautionsOf({ ...hung, overheadClearMm: 1900 });
    expect(over).toMatchObject({ ask: 'a licensed rigger and a structural engineer' });
    expect(over?.what).toContain('It hangs overhead, 12.0 kg.');
    expect(under).toMatchObject({ ask: 'the lead', source: '2010 ADA Standards, 307.4' });
    expect(under?.what).toBe('190.0 cm is clear under it; 203.0 cm is the usual least headroom.');
  });

  // 32 in (815 mm): 2010 ADA Standards, 404.2.3.
  test('reference: a doorway keeps 81.5 cm clear in one stretch, or it is said; a window may be a way out', () => {
    const at = (kind: 'doorway' | 'window', ...taken: { fromMm: number; toMm: number }[]) => ({
      ...gear,
      weightKg: 12,
      opening: { kind, widthMm: 1200, taken },
    });
    expect(kinds(at('doorway', { fromMm: 815, toMm: 1200 }))).toEqual(['way out']);
    expect(kinds(at('doorway', { fromMm: 814, toMm: 1200 }))).toEqual(['way out', 'way narrowed']);
    // Two things that leave 500 and 400 leave no 815.
    const two = cautionsOf(at('doorway', { fromMm: 500, toMm: 600 }, { fromMm: 1000, toMm: 1200 }));
    expect(two[1]).toMatchObject({ ask: 'the lead', source: '2010 ADA Standards, 404.2.3' });
    expect(two[1]?.what).toBe('50.0 cm of the doorway’s 120.0 cm is left clear; 81.5 cm is the usual least.');
    expect(cautionsOf(at('doorway', { fromMm: -10, toMm: 1210 }))[1]?.what).toContain('Nothing of the doorway’s');
    // Hung above headroom it takes nothing of the way.
    expect(kinds(at('doorway'))).toEqual(['way out']);
    expect(kinds(at('window', { fromMm: 0, toMm: 1200 }))).toEqual(['way out']);
  });

  test('story: sizes that are not known or only estimated are told', () => {
    expect(kinds({ ...view, sizeKnown: false, sizeCertain: false })).toEqual(['size not known']);
    expect(kinds({ ...view, sizeCertain: false })).toEqual(['size estimated']);
  });

  test('story: a tall narrow thing can tip, a heavy one on a small foot loads the floor', () => {
    expect(kinds({ ...gear, weightKg: 20, depthMm: 300 })).toEqual(['can tip']);
    expect(kinds({ ...gear, weightKg: 300 })).toEqual(['floor load']);
  });

  test('law: every caution says what, whom and on what ground, defers to people, and never promises', () => {
    const all = {
      onWall: fc.boolean(),
      placed: fc.boolean(),
      widthMm: fc.integer({ min: 0, max: 4000 }),
      heightMm: fc.integer({ min: 0, max: 4000 }),
      depthMm: fc.integer({ min: 0, max: 2000 }),
      centreXmm: fc.integer({ min: 0, max: 6000 }),
      centreMm: fc.integer({ min: 0, max: 3600 }),
      turnDegrees: fc.integer({ min: 0, max: 359 }),
      floorMm: fc.integer({ min: -50, max: 50 }),
      sizeKnown: fc.boolean(),
      sizeCertain: fc.boolean(),
      weightKg: fc.option(fc.integer({ min: 0, max: 2000 })),
      hardware: fc.option(fc.record({ kind: fc.constant('wire' as const), hooks: fc.integer({ min: 0, max: 3 }) })),
      overheadClearMm: fc.integer({ min: 0, max: 4000 }),
      opening: fc.record({
        kind: fc.constantFrom('doorway', 'window'),
        widthMm: fc.integer({ min: 600, max: 2000 }),
        taken: fc.array(
          fc.record({ fromMm: fc.integer({ min: -200, max: 2000 }), toMm: fc.integer({ min: 0, max: 2200 }) }),
        ),
      }),
      fixtures: fc.array(
        fc.record({
          kind: fc.constantFrom('socket', 'exit sign'),
          xMm: fc.integer({ min: 0, max: 6000 }),
          yMm: fc.integer({ min: 0, max: 3600 }),
          widthMm: fc.constant(90),
          heightMm: fc.constant(90),
          clearMm: fc.integer({ min: 0, max: 600 }),
        }),
      ),
    } as const;
    const facts: fc.Arbitrary<CautionFacts> = fc.record(all, {
      requiredKeys: Object.keys(all).filter((key) => key !== 'overheadClearMm' && key !== 'opening') as never,
    });
    const seen = new Set<string>();
    fc.assert(
      fc.property(facts, (each) => {
        for (const caution of cautionsOf(each)) {
          seen.add(caution.kind);
          expect(caution.ask).not.toBe('');
          expect(caution.source).not.toBe('');
          const text = cautionText(caution);
          expect(text.endsWith(DEFERRAL)).toBe(true);
          expect(text).not.toMatch(/saf|NaN|undefined|Infinity/i);
        }
      }),
      { seed: 3, numRuns: 2000 },
    );
    const flat = tensionOf({ weightKg: 5, angleDegrees: 12 }).caution;
    expect(flat === null ? '' : cautionText(flat)).toMatch(/12°.*Ask the preparator\. Defer to local code/);
    // The law was tried on every kind there is, but for the wire's, tried just above.
    expect(seen.size).toBe(13);
  });
});
