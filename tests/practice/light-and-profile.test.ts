import { glazingKgOf } from '@enfilade/practice/glazing';
import {
  daysOf,
  doseOf,
  governingClassOf,
  highestLuxOf,
  LIGHT_CLASSES,
  lightBudgetOf,
} from '@enfilade/practice/light-dose';
import { lightClassOf } from '@enfilade/practice/light-materials';
import { footCandlesFrom, luxAt, luxFrom, ultravioletOf } from '@enfilade/practice/light-units';
import { DEFAULT_LIMITS, DEFAULT_PROFILE, profileFrom, UK_PROFILE } from '@enfilade/practice/practice-profile';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

describe('light', () => {
  test('reference: practice 10.9 50 lx × 8 h × 6 d × 13 wk: R3 fails, R2 passes (CIE 157, limits from memory)', () => {
    const exposures = [{ lux: 50, hoursPerDay: 8, days: 6 * 13 }];
    const silk = lightBudgetOf({ lightClass: 'R3', exposures });
    expect(silk).toMatchObject({ luxHours: 31_200, over: true, tooBright: false, leftLuxHours: 0 });
    expect(silk.years).toBeCloseTo(2.08, 9);
    expect(lightBudgetOf({ lightClass: 'R2', exposures })).toMatchObject({ years: 0.208, over: false });
  });

  test('reference: practice 10.10 showing and cleaning light together (Σ lux × hours)', () => {
    const exposures = [
      { lux: 50, hoursPerDay: 8, days: 120 },
      { lux: 150, hoursPerDay: 2, days: 120 },
    ];
    expect(doseOf(exposures)).toBe(84_000);
    expect(lightBudgetOf({ lightClass: 'R2', exposures })).toMatchObject({ years: 0.56, over: false, tooBright: true });
    expect(lightBudgetOf({ lightClass: 'R3', exposures }).years).toBeCloseTo(5.6, 9);
    expect(daysOf({ lightClass: 'R3', lux: 50, hoursPerDay: 8 })).toBe(37.5);
  });

  test('reference: practice 10.11 highest lux over so many days (budget / hours, capped by CIE 157)', () => {
    expect(highestLuxOf({ lightClass: 'R3', days: 90, hoursPerDay: 7 })?.lux).toBeCloseTo(23.8, 1);
    const paper = highestLuxOf({ lightClass: 'R2', days: 310, hoursPerDay: 8 });
    expect(paper?.byDoseLux).toBeCloseTo(60.5, 1);
    expect(paper?.lux).toBe(50);
    expect(highestLuxOf({ lightClass: 'R0', days: 310, hoursPerDay: 8 })).toBeNull();
  });

  test('reference: practice 10.12 200 lx × 10 h × 312 d is over an R1 year (CIE 157)', () => {
    const oil = lightBudgetOf({ lightClass: 'R1', exposures: [{ lux: 200, hoursPerDay: 10, days: 312 }] });
    expect(oil).toMatchObject({ luxHours: 624_000, over: true, tooBright: false });
  });

  test('reference: practice 10.13 foot-candles and the inverse square (definition of the units)', () => {
    expect(luxFrom(5)).toBeCloseTo(53.8, 1);
    expect(footCandlesFrom(50)).toBeCloseTo(4.645, 3);
    expect(luxAt({ lux: 200, atMm: 2000, toMm: 3000 })).toBeCloseTo(88.9, 1);
  });

  test('reference: practice 10.14 75 µW/lm at 50 lx is 3.75 mW/m² (product)', () => {
    expect(ultravioletOf({ lux: 50, microwattsPerLumen: 75 })).toBe(3.75);
  });

  test('reference: practice 10.31 a pane of glass and of acrylic (densities 2,500 and 1,190 from memory)', () => {
    const pane = { widthMm: 24 * 25.4, heightMm: 36 * 25.4, thicknessMm: 3 } as const;
    expect(glazingKgOf({ ...pane, material: 'glass' })).toBeCloseTo(4.18, 2);
    expect(glazingKgOf({ ...pane, material: 'acrylic' })).toBeCloseTo(1.99, 2);
  });

  test('law: a budget spent day by day is the budget spent at once, and more light never leaves more', () => {
    const lux = fc.integer({ min: 0, max: 2000 });
    const days = fc.integer({ min: 0, max: 366 });
    const hours = fc.double({ min: 0, max: 24, noNaN: true });
    fc.assert(
      fc.property(
        lux,
        hours,
        days,
        days,
        fc.constantFrom(...LIGHT_CLASSES),
        (lux, hoursPerDay, one, other, lightClass) => {
          const first = doseOf([{ lux, hoursPerDay, days: one }]);
          const rest = { lightClass, exposures: [{ lux, hoursPerDay, days: other }], spentLuxHours: first };
          const whole = lightBudgetOf({ lightClass, exposures: [{ lux, hoursPerDay, days: one + other }] });
          expect(lightBudgetOf(rest).luxHours).toBeCloseTo(whole.luxHours, 4);
          const brighter = lightBudgetOf({ lightClass, exposures: [{ lux: lux + 1, hoursPerDay, days: one + other }] });
          expect(brighter.leftLuxHours ?? 0).toBeLessThanOrEqual(whole.leftLuxHours ?? 0);
          expect(lightClass === 'R0').toBe(whole.limits === null);
        },
      ),
      { seed: 11 },
    );
  });

  test('law: the most sensitive governs, in whatever order they are named', () => {
    expect(governingClassOf([])).toBeNull();
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...LIGHT_CLASSES), { minLength: 1 }), (classes) => {
        expect(governingClassOf(classes)).toBe([...classes].sort().at(-1));
      }),
      { seed: 12 },
    );
  });

  test('law: a number out of its range is named with its bound', () => {
    expect(() => doseOf([{ lux: -1, hoursPerDay: 1, days: 1 }])).toThrow('lux is -1; it must lie between 0 and 200000');
    expect(() => doseOf([{ lux: 1, hoursPerDay: 25, days: 1 }])).toThrow(RangeError);
    expect(() => daysOf({ lightClass: 'R3', lux: 0, hoursPerDay: 1 })).toThrow('lux is 0; it must be above 0');
    expect(() => luxAt({ lux: 1, atMm: 1, toMm: 0 })).toThrow(RangeError);
    expect(() => ultravioletOf({ lux: Number.NaN, microwattsPerLumen: 1 })).toThrow('lux is NaN');
    expect(() => glazingKgOf({ widthMm: 0, heightMm: 1, thicknessMm: 1, material: 'glass' })).toThrow(RangeError);
  });
});

describe('light by material', () => {
  test('reference: the examples of CIE 157’s classes fall in their class (as read)', () => {
    const rows: readonly [string, string][] = [
      ['cast iron', 'R0'],
      ['enamel on iron', 'R0'],
      ['earthenware', 'R0'],
      ['oil on canvas', 'R1'],
      ['egg tempera on panel', 'R1'],
      ['carved pear wood', 'R1'],
      ['undyed leather', 'R1'],
      ['watercolour on paper', 'R2'],
      ['cotton and linen', 'R2'],
      ['dyed leather', 'R2'],
      ['gelatin silver print', 'R2'],
      ['silk', 'R3'],
      ['newsprint', 'R3'],
      ['colour photograph', 'R3'],
      ['felt-tip on paper', 'R3'],
    ];
    for (const [materials, lightClass] of rows)
      expect([materials, lightClassOf(materials).lightClass]).toEqual([materials, lightClass]);
  });

  test('story: the most sensitive material governs and is named; what is not settled by words goes to the conservator', () => {
    expect(lightClassOf('wood, brass and silk')).toEqual({
      lightClass: 'R3',
      because: ['silk'],
      unread: [],
      askConservator: false,
    });
    expect(lightClassOf('dyed wool')).toMatchObject({ lightClass: 'R3', askConservator: true });
    expect(lightClassOf('painted oak')).toMatchObject({ lightClass: 'R1', askConservator: true });
    expect(lightClassOf('iron, moonstuff')).toMatchObject({
      lightClass: 'R0',
      unread: ['moonstuff'],
      askConservator: true,
    });
    expect(lightClassOf('')).toMatchObject({ lightClass: null, askConservator: true });
  });

  test('law: what was done to a material and in what form it is leaves nothing unread; a material not known still does', () => {
    const rows: readonly [string, string][] = [
      ['Beaten copper, tinned inside', 'R0'],
      ['Brass rods and a sheet of slate', 'R0'],
      ['stained glass, lead', 'R0'],
      ['Sycamore, with copper strip', 'R1'],
      ['Hardwood, brass, glass, spirit', 'R1'],
      ['Ink and dyed yarn on paper', 'R3'],
    ];
    for (const [materials, lightClass] of rows)
      expect([materials, lightClassOf(materials)]).toEqual([
        materials,
        expect.objectContaining({ lightClass, unread: [] }),
      ]);
    for (const materials of ['Pencil and coloured wash', 'Oak, stained'])
      expect(lightClassOf(materials)).toMatchObject({ lightClass: 'R2', unread: [], askConservator: true });
    expect(lightClassOf('beaten moonstuff strip')).toMatchObject({ unread: ['moonstuff'], askConservator: true });
  });

  test('law: no text makes it throw, and adding silk to any text gives R3', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        const read = lightClassOf(text);
        expect(read.lightClass === null).toBe(read.because.length === 0);
        expect(lightClassOf(`${text}; silk`).lightClass).toBe('R3');
      }),
      { seed: 13, numRuns: 500 },
    );
  });
});

describe('the profile', () => {
  test('law: every limit is above 0 and says its source; another jurisdiction differs in what it names alone', () => {
    for (const { value, source } of Object.values(DEFAULT_LIMITS)) {
      expect(value).toBeGreaterThan(0);
      expect(source).not.toBe('');
    }
    const { pathMm, ...rest } = UK_PROFILE.limits;
    expect(pathMm.value).toBe(1200);
    expect(rest).toEqual({
      ...rest,
      ...Object.fromEntries(Object.keys(rest).map((k) => [k, DEFAULT_LIMITS[k as 'caneMm']])),
    });
  });

  test('story: a museum’s own limit holds, a bad one is told and the default stays', () => {
    const { profile, issues } = profileFrom({
      jurisdiction: 'Lower Weir',
      limits: {
        luxR2: { value: 40, source: 'our conservator' },
        luxR3: { value: -5, source: 'a slip' },
        caneMm: { value: 700 },
        moonMm: { value: 1, source: 'x' },
        constructor: { value: 1, source: 'x' },
      },
    });
    expect(profile.jurisdiction).toBe('Lower Weir');
    expect(profile.limits.luxR2).toEqual({ value: 40, source: 'our conservator' });
    expect([profile.limits.luxR3, profile.limits.caneMm]).toEqual([DEFAULT_LIMITS.luxR3, DEFAULT_LIMITS.caneMm]);
    expect(issues.map(({ where }) => where)).toEqual(['luxR3', 'caneMm', 'moonMm', 'constructor']);
    expect(
      lightBudgetOf({ lightClass: 'R2', exposures: [{ lux: 50, hoursPerDay: 1, days: 1 }] }, profile).tooBright,
    ).toBe(true);
  });

  test('law: no data makes it throw; what was written out and read again is the same', () => {
    fc.assert(
      fc.property(fc.anything(), (data) => {
        for (const limit of Object.values(profileFrom({ limits: data }).profile.limits))
          expect(limit.value).toBeGreaterThan(0);
        expect(profileFrom(data).profile.jurisdiction).not.toBe('');
      }),
      { seed: 14 },
    );
    expect(profileFrom(JSON.parse(JSON.stringify(DEFAULT_PROFILE)))).toEqual({ profile: DEFAULT_PROFILE, issues: [] });
  });
});
