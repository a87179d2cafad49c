import { deltaE2000 } from '@enfilade/colour/differences';
import { hueAloneOf, hueAloneShareOf } from '@enfilade/colour/hue-alone';
import { legibilityOf } from '@enfilade/colour/legibility';
import { LARGE_POINTS, SMALLEST_POINTS, smallestLettersAt, smallestSignCapitalMm } from '@enfilade/colour/letter-sizes';
import { labD65FromHex, labD65FromLinear, lightnessFromLrv, linearLightOf } from '@enfilade/colour/spaces';
import { seenByEye } from '@enfilade/colour/vision';
import { DEFICIENCIES } from '@enfilade/colour/vision-tables';
import { filterDeficiencyDeuter, filterDeficiencyProt, filterDeficiencyTrit } from 'culori';
import { describe, expect, test } from 'vitest';
import { randomLabs, randomOf } from './samples.ts';
import { csvRows } from './tables.ts';

const KINDS = ['protan', 'deutan', 'tritan'] as const;
const grey = (lrv: number) => ({ lab: { L: lightnessFromLrv(lrv), a: 0, b: 0 } });

describe('other eyes', () => {
  test('reference: the 33 matrices of Machado et al. 2009', () => {
    const rows = csvRows('machado-2009.csv');
    expect(rows).toHaveLength(33);
    for (const row of rows) {
      const ours = DEFICIENCIES[row.kind as 'protan'][Math.round(Number(row.severity) * 10)]!;
      expect(ours).toEqual(['rr', 'rg', 'rb', 'gr', 'gg', 'gb', 'br', 'bg', 'bb'].map((name) => Number(row[name])));
    }
  });

  test('reference: an independent library’s same matrices (culori), which it lays on the channels it is given, in tenths: here linear ones', () => {
    const random = randomOf(61);
    const theirs = { protan: filterDeficiencyProt, deutan: filterDeficiencyDeuter, tritan: filterDeficiencyTrit };
    for (let i = 0; i < 300; i++) {
      const [r, g, b] = [random(), random(), random()];
      const kind = KINDS[i % 3]!;
      const severity = Math.floor(random() * 11) / 10;
      const seen = theirs[kind](severity)({ mode: 'rgb', r, g, b }) as { r: number; g: number; b: number };
      const ours = linearLightOf(seenByEye(labD65FromLinear(r, g, b), { kind, severity }));
      for (const [k, light] of [seen.r, seen.g, seen.b].entries()) expect(ours[k]).toBeCloseTo(light, 6);
    }
  });

  test('law: at severity 0 nothing changes, greys never do, and severity works without steps', () => {
    for (const lab of randomLabs(200, 62)) {
      for (const kind of KINDS) {
        expect(deltaE2000(seenByEye(lab, { kind, severity: 0 }), lab)).toBeLessThan(1e-3);
        expect(
          deltaE2000(seenByEye({ ...lab, a: 0, b: 0 }, { kind, severity: 0.73 }), { ...lab, a: 0, b: 0 }),
        ).toBeLessThan(0.01);
      }
    }
    const red = labD65FromHex('#c0392b');
    for (let s = 0; s < 1; s += 0.01) {
      const step = deltaE2000(
        seenByEye(red, { kind: 'deutan', severity: s }),
        seenByEye(red, { kind: 'deutan', severity: Math.min(1, s + 0.01) }),
      );
      expect(step).toBeLessThan(1);
    }
    expect(() => seenByEye(red, { kind: 'deutan', severity: 1.1 })).toThrow(RangeError);
  });

  test('story: a red hanging on a green wall of its own lightness rests on hue alone, and some eyes lose it', () => {
    const note = hueAloneOf({ L: 45, a: 30, b: 25 }, { L: 48, a: -25, b: 28 })!;
    expect(note.deltaE).toBeGreaterThan(30);
    expect(note.words).toMatch(/^Only hue parts them/);
    expect(hueAloneOf({ L: 45, a: 8, b: 30 }, { L: 47, a: -14, b: 32 })!.eyes.map(({ kind }) => kind)).toContain(
      'protan',
    );
  });

  test('law: no note where lightness parts them for every eye, nor where they are close to all', () => {
    expect(hueAloneOf({ L: 85, a: 30, b: 25 }, { L: 30, a: -25, b: 20 })).toBeNull();
    expect(hueAloneOf({ L: 45, a: 10, b: 10 }, { L: 46, a: 11, b: 10 })).toBeNull();
  });

  test('story: a hanging half in reds like its green wall in lightness: the note says so; on a pale wall there is none', () => {
    const hanging = [
      { lab: { L: 45, a: 30, b: 25 }, share: 55 },
      { lab: { L: 90, a: 0, b: 8 }, share: 45 },
    ];
    const onGreen = hueAloneShareOf(hanging, { L: 48, a: -25, b: 28 });
    expect(onGreen.share).toBeCloseTo(0.55, 9);
    expect(onGreen.note).toMatch(/^About half of it is parted from the wall by hue alone/);
    expect(hueAloneShareOf(hanging, { L: 20, a: -5, b: 2 }).note).toBeNull();
    expect(hueAloneShareOf([], { L: 20, a: -5, b: 2 })).toEqual({ share: 0, note: null });
  });
});

describe('words on walls', () => {
  test.each([
    ['#000000', '#FFFFFF', 21, 'enhanced'],
    ['#767676', '#FFFFFF', 4.54, 'all'],
    ['#777777', '#FFFFFF', 4.48, 'large'],
    ['#595959', '#FFFFFF', 7.0, 'enhanced'],
    ['#949494', '#FFFFFF', 3.03, 'large'],
    ['#959595', '#FFFFFF', 2.99, 'none'],
  ] as const)('reference: %s on %s is %d : 1, %s (WCAG 2.2, 1.4.3 and 1.4.6)', (text, wall, ratio, use) => {
    const found = legibilityOf({ lab: labD65FromHex(text) }, { lab: labD65FromHex(wall) });
    expect(Number(found.ratio.toFixed(2))).toBeCloseTo(ratio, 1);
    expect(found.use).toBe(use);
  });

  test('reference: LRV 70 against 10 is 60 points and 5.00 : 1 (WCAG 2.2; BS 8300-2:2018, annex B)', () => {
    const found = legibilityOf(grey(10), grey(70));
    expect(found.lrvPoints).toBeCloseTo(60, 9);
    expect(found.ratio).toBeCloseTo(5, 9);
    expect(found.lrvWord).toBe('enough');
  });

  test.each([
    [30, 60, 'enough'],
    [31, 60, 'for large areas'],
    [41, 60, 'short'],
  ] as const)('reference: LRV %d on %d is %s (BS 8300-2:2018, annex B)', (text, wall, word) => {
    expect(legibilityOf(grey(text), grey(wall)).lrvWord).toBe(word);
  });

  test('law: a measured LRV goes before lightness, either way round is the same, dark on dark is told to be tried', () => {
    const stated = legibilityOf({ ...grey(80), lrv: 20 }, grey(80));
    expect(stated.lrvPoints).toBeCloseTo(60, 9);
    expect(legibilityOf(grey(80), { ...grey(80), lrv: 20 }).ratio).toBeCloseTo(stated.ratio, 12);
    const dark = legibilityOf(grey(18), grey(1));
    expect(dark).toMatchObject({ use: 'large', lrvWord: 'short' });
    expect(dark.words).toContain('try them printed');
  });

  test('reference: letters for a distance: 9.3 mm of x-height a metre; signs 16 mm of capitals, 3.2 more a foot (practice)', () => {
    expect(smallestLettersAt(1000).xHeightMm).toBeCloseTo(9.35, 2);
    expect(smallestLettersAt(2000).points).toBeCloseTo(2 * smallestLettersAt(1000).points, 9);
    expect(smallestSignCapitalMm(1500)).toBeCloseTo(15.875, 3);
    expect(smallestSignCapitalMm(8 * 304.8)).toBeCloseTo(15.875 + 6.35, 3);
    expect(Object.values(SMALLEST_POINTS).every((points) => points > LARGE_POINTS.regular)).toBe(true);
    expect(() => smallestLettersAt(0)).toThrow(RangeError);
    expect(() => smallestSignCapitalMm(-1)).toThrow(RangeError);
  });
});
