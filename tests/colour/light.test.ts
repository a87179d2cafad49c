import { deltaE2000 } from '@enfilade/colour/differences';
import { lightFromText } from '@enfilade/colour/light-file';
import { lampsInWords, lightShiftOf, turnsOf } from '@enfilade/colour/light-words';
import { LIGHT_IDS, lightOf, tungstenOf } from '@enfilade/colour/lights';
import { likelyReflectanceOf } from '@enfilade/colour/likely-reflectance';
import { partingPairsOf } from '@enfilade/colour/parting-pairs';
import { CONFIDENCE, type Surface, seenUnder, surfaceFromLab, surfaceOf, swatchesUnder } from '@enfilade/colour/seen';
import { labD65FromSrgb } from '@enfilade/colour/spaces';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SAFFRON } from './samples.ts';
import { spectraIn, tableText } from './tables.ts';

const LAMPS = ['A', 'F11', 'LED-B1', 'LED-B3', 'LED-BH1', 'LED-RGB1', 'LED-V1'] as const;
const testColours = spectraIn('CIE-TCS.sp').map((reflectance, i) => surfaceOf({ name: `TCS${i + 1}`, reflectance }));
const sRgb = fc
  .tuple(...[0, 1, 2].map(() => fc.integer({ min: 0, max: 255 })))
  .map(([r = 0, g = 0, b = 0]) => labD65FromSrgb(r, g, b));

/** A reflectance that looks the same under D65/2° and is not: ripples taken in turn from what the eye sums (a metameric black). */
function metamerOf(surface: Surface): Surface {
  const ripple = (period: number): Surface => {
    const reflectance = Float64Array.from({ length: 81 }, (_, i) => 0.3 + 0.2 * Math.sin((i * 5) / period));
    const like = likelyReflectanceOf(seenUnder({ ...surface, reflectance }, lightOf('D65')))!;
    return { ...surface, reflectance: Float64Array.from(reflectance, (value, i) => value - like[i]!) };
  };
  const black = ripple(16).reflectance!;
  const room = black.reduce((least, step, i) => {
    const share = surface.reflectance![i]!;
    return step === 0 ? least : Math.min(least, step > 0 ? (1 - share) / step : share / -step);
  }, 1);
  return { ...surface, reflectance: Float64Array.from(surface.reflectance!, (share, i) => share + room * black[i]!) };
}

describe('seen under a light', () => {
  test('law: in daylight D65 a surface is what it was measured as, on any basis', () => {
    fc.assert(
      fc.property(sRgb, (lab) => {
        for (const surface of [surfaceFromLab(lab), { lab, basis: 'colour', reflectance: null } as const]) {
          expect(deltaE2000(seenUnder(surface, lightOf('D65')), lab)).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 150, seed: 51 },
    );
  });

  test('law: greys stay grey under every lamp for a settled eye, and turn to the lamp’s own tint for one that is not', () => {
    const grey: Surface = {
      lab: { L: 50, a: 0, b: 0 },
      basis: 'reflectance',
      reflectance: new Float64Array(81).fill(0.1842),
    };
    for (const id of LIGHT_IDS) {
      const { L, a, b } = seenUnder(grey, lightOf(id));
      expect(L).toBeCloseTo(50, 1);
      expect(Math.hypot(a, b)).toBeLessThan(1e-9);
    }
    const [half, none] = [0.8, 0].map((degree) => seenUnder(grey, tungstenOf(2700), degree));
    expect(half!.b).toBeGreaterThan(3);
    expect(none!.b).toBeGreaterThan(half!.b);
    expect(none!.a).toBeGreaterThan(0);
  });

  test('reference: warm lamps lift reds and dull blues (practice; CIE test colours 9 red and 12 blue, D65 to A)', () => {
    const red = lightShiftOf(testColours[8]!, lightOf('D65'), lightOf('A'));
    const blue = lightShiftOf(testColours[11]!, lightOf('D65'), lightOf('A'));
    expect(red.to.L).toBeGreaterThan(red.from.L + 2);
    expect(blue.to.L).toBeLessThan(blue.from.L - 2);
    expect(red.words).toMatch(/^turns (clearly )?.*lighter/);
  });
});

describe('a palette under a light', () => {
  test('law: swatches keep all but their colour, and are as each looks alone', () => {
    const swatches = [SAFFRON, { L: 33, a: -25, b: -4 }].map((lab, i) => ({
      lab,
      share: 0.3 + 0.4 * i,
      name: `s${i}`,
    }));
    const surfaces = swatches.map(({ lab }) => surfaceFromLab(lab));
    const under = swatchesUnder(swatches, surfaces, tungstenOf(2700), 0.9);
    for (const [i, swatch] of under.entries()) {
      expect(swatch).toEqual({ ...swatches[i], lab: seenUnder(surfaces[i]!, tungstenOf(2700), 0.9) });
    }
    expect(() => swatchesUnder(swatches, [], tungstenOf(2700))).toThrow(RangeError);
  });
});

describe('a measured lamp', () => {
  const columns = (sign: string, power = (nm: number) => String(nm / 100)) =>
    Array.from({ length: 81 }, (_, i) => `${380 + 5 * i}${sign}${power(380 + 5 * i)}`).join('\n');

  test.each([
    ['commas', columns(',')],
    ['a heading and semicolons', `Wavelength (nm);Power\n${columns(';')}`],
    ['decimal commas', `nm;W\n${columns(';', (nm) => `${nm / 100}`.replace('.', ','))}`],
    ['tabs', columns('\t')],
    ['spaces', columns('  ')],
    [
      'units in each row and slight negatives in the dark',
      `370 nm,-0.02\n${columns(' nm,')}`.replace('370 nm', '375 nm'),
    ],
    ['falling order', columns(',').split('\n').reverse().join('\n')],
  ])('story: a meter’s two columns with %s', (_, text) => {
    const { light, issues } = lightFromText(text, { file: 'lamp.csv', name: 'track lamp' });
    expect(issues).toEqual([]);
    expect(light?.name).toBe('track lamp');
    expect(light!.power[0]).toBeCloseTo(3.8, 9);
    expect(light!.power[80]).toBeCloseTo(7.8, 9);
  });

  test('reference: illuminants F11 and D65 from their published tables', () => {
    for (const [id, file] of [
      ['F11', 'CIE-F11.sp'],
      ['D65', 'CIE-D65.sp'],
    ] as const) {
      const { light } = lightFromText(tableText(file), { file, name: id });
      for (const surface of testColours.slice(0, 4)) {
        expect(deltaE2000(seenUnder(surface, light!), seenUnder(surface, lightOf(id)))).toBeLessThan(0.05);
      }
    }
  });

  test.each([
    [
      'a power that is no number',
      columns(',').replace('480,4.8', '480,?'),
      'lamp.csv, line 21, 480 nm',
      /not a number/,
    ],
    ['uneven wavelengths', columns(',').replace('480,4.8', '481,4.8'), 'lamp.csv, line 1, wavelengths', /not even/],
    ['no light', columns(',', () => '0'), 'lamp.csv, line 1, power', /no light/],
    ['no numbers', 'lamp\nbright', 'lamp.csv, line 1, wavelengths', /too few/],
  ] as const)('story: %s is told with its place', (_, text, where, what) => {
    const { light, issues } = lightFromText(text, { file: 'lamp.csv', name: 'x' });
    expect(light).toBeNull();
    expect(issues[0]).toMatchObject({ where, what: expect.stringMatching(what) });
  });

  test('law: no text makes it throw', () => {
    const scrap = fc.oneof(
      fc.string({ maxLength: 8 }),
      fc.constantFrom('\n', ',', ';', '380', '400', '1e3', 'BEGIN_DATA\n', 'SPEC_400', 'END_DATA_FORMAT'),
    );
    fc.assert(
      fc.property(fc.array(scrap, { maxLength: 60 }), (parts) => {
        const { light, issues } = lightFromText(parts.join(''), { file: 'f', name: 'x' });
        expect(light !== null || issues.length > 0).toBe(true);
      }),
      { numRuns: 500, seed: 53 },
    );
  });
});

describe('confidence without a spectrum', () => {
  const errors = (surfaceFrom: (lab: Surface['lab']) => Surface): number[] =>
    LAMPS.flatMap((id) =>
      testColours.map((whole) =>
        deltaE2000(seenUnder(whole, lightOf(id)), seenUnder(surfaceFrom(whole.lab), lightOf(id))),
      ),
    ).sort((p, q) => p - q);

  test('reference: a likely reflectance against the whole spectra of the CIE’s test colours under seven lamps', () => {
    const found = errors(surfaceFromLab);
    expect(found[Math.floor(found.length / 2)]).toBeLessThan(CONFIDENCE.likely.usual * 1.1);
    expect(found.at(-1)).toBeLessThan(CONFIDENCE.likely.worst);
  });

  test('reference: the colour alone (CAT16) against the same: what is told as its confidence is no better than it is', () => {
    const found = errors((lab) => ({ lab, basis: 'colour', reflectance: null }));
    const middle = found[Math.floor(found.length / 2)]!;
    expect(middle).toBeLessThan(CONFIDENCE.colour.usual);
    expect(middle).toBeGreaterThan(CONFIDENCE.likely.usual);
    expect(found.at(-1)).toBeLessThan(CONFIDENCE.colour.worst + 0.5);
  });

  test('law: every colour a screen shows has a likely reflectance within 0..1 that sums to it', () => {
    fc.assert(
      fc.property(sRgb, (lab) => {
        const surface = surfaceFromLab(lab);
        expect(surface.basis).toBe('likely');
        for (const share of surface.reflectance!) expect(share >= 0 && share <= 1).toBe(true);
        expect(deltaE2000(seenUnder(surface, lightOf('D65')), lab)).toBeLessThan(1e-3);
      }),
      { numRuns: 200, seed: 52 },
    );
    expect(surfaceFromLab({ L: 100, a: 0, b: 0 }).reflectance?.[40]).toBeCloseTo(1, 9);
    expect(surfaceFromLab({ L: 0, a: 0, b: 0 }).reflectance?.[40]).toBe(0);
  });

  test('law: a paint without a spectrum has a likely one, a paint with one its own', () => {
    const stated = surfaceOf({ name: 'x', lab: { L: 50, a: 20, b: 10, illuminant: 'D65', observer: '2°' } });
    expect(stated.basis).toBe('likely');
    expect(deltaE2000(seenUnder(stated, lightOf('D65')), { L: 50, a: 20, b: 10 })).toBeLessThan(1e-3);
    expect(testColours[0]!.basis).toBe('reflectance');
  });

  test('law: a colour that no surface can have says that only its colour is known', () => {
    expect(surfaceFromLab({ L: 90, a: 90, b: -90 })).toMatchObject({ basis: 'colour', reflectance: null });
  });
});

describe('parting pairs', () => {
  const red = surfaceOf({
    name: 'madder',
    reflectance: {
      startNm: 380,
      stepNm: 10,
      values: Array.from({ length: 36 }, (_, i) => (i < 20 ? 0.08 : 0.08 + 0.03 * (i - 19))),
    },
  });

  test('story: two paints that match by day part under the gallery’s tungsten; those without a spectrum are named apart', () => {
    const twin = metamerOf(red);
    expect(deltaE2000(seenUnder(red, lightOf('D65')), seenUnder(twin, lightOf('D65')))).toBeLessThan(0.5);
    const deck = [
      { id: 'madder', surface: red },
      { id: 'madder again', surface: red },
      { id: 'twin', surface: twin },
      { id: 'blue', surface: testColours[11]! },
      { id: 'unmeasured', surface: surfaceFromLab(SAFFRON) },
    ];
    const { pairs, unjudged } = partingPairsOf(deck, lightOf('D65'), lightOf('A'), { alike: 1, apart: 1.2 });
    expect(pairs.map(({ one, other }) => [one, other])).toEqual([
      ['madder', 'twin'],
      ['madder again', 'twin'],
    ]);
    expect(pairs[0]!.deltaEFirst).toBeLessThan(0.5);
    expect(pairs[0]!.deltaESecond).toBeGreaterThan(1.2);
    expect(unjudged).toEqual(['unmeasured']);
  });

  test('law: no pair parts between a light and itself, and the order of the lights changes nothing but the sides', () => {
    const deck = [...testColours, red, metamerOf(red)].map((surface, i) => ({ id: `${i}`, surface }));
    expect(partingPairsOf(deck, lightOf('F11'), lightOf('F11')).pairs).toEqual([]);
    const options = { alike: 12, apart: 13 };
    const there = partingPairsOf(deck, lightOf('D65'), lightOf('LED-RGB1'), options).pairs;
    const back = partingPairsOf(deck, lightOf('LED-RGB1'), lightOf('D65'), options).pairs;
    expect(there.length).toBeGreaterThan(0);
    const key = (one: string, other: string, p: number, q: number) => `${one} ${other} ${p.toFixed(9)} ${q.toFixed(9)}`;
    expect(there.map((p) => key(p.one, p.other, p.deltaEFirst, p.deltaESecond)).sort()).toEqual(
      back.map((p) => key(p.one, p.other, p.deltaESecond, p.deltaEFirst)).sort(),
    );
  });
});

describe('in words', () => {
  test.each([
    ['LED-B1', 'D65', 'The gallery’s LED light (B1, 2733 K) is much warmer than the studio’s daylight (D65).'],
    ['D50', 'D65', 'The gallery’s daylight (D50) is warmer than the studio’s daylight (D65).'],
    ['D65', 'A', 'The gallery’s daylight (D65) is much cooler than the studio’s tungsten light (A, 2856 K).'],
    ['LED-BH1', 'A', 'The gallery’s LED light (BH1, 2851 K) is as warm as the studio’s tungsten light (A, 2856 K).'],
  ] as const)('story: %s beside %s', (gallery, studio, words) => {
    expect(lampsInWords(lightOf(gallery), lightOf(studio))).toBe(words);
  });

  test('law: steps are named by their size and side', () => {
    const grey = { L: 50, a: 0, b: 0 };
    expect(turnsOf(grey, { L: 60, a: 0, b: 1 })).toEqual(['lighter']);
    expect(turnsOf(grey, { L: 50, a: 8, b: 0 })).toEqual(['redder']);
    expect(turnsOf({ L: 40, a: -30, b: 0 }, { L: 36, a: -22, b: 0 })).toEqual(['duller', 'darker']);
    expect(turnsOf({ L: 40, a: -30, b: 0 }, { L: 40, a: -29, b: -10 })).toEqual(['bluer']);
    expect(turnsOf(grey, { L: 50, a: -10, b: 6 })).toEqual(['greener']);
    expect(turnsOf({ L: 70, a: 0, b: 40 }, { L: 70, a: -12, b: 38 })).toEqual(['greener']);
  });
});
