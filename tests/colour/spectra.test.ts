import { labFromXyz } from '@enfilade/colour/cielab';
import { deltaE2000 } from '@enfilade/colour/differences';
import { DAYLIGHT_COMPONENTS } from '@enfilade/colour/light-tables';
import { LED_KELVIN, LIGHT_IDS, type LightId, lightFrom, lightOf, tungstenOf } from '@enfilade/colour/lights';
import { OBSERVERS } from '@enfilade/colour/observers';
import { GRID, powerOnGrid, reflectanceOnGrid } from '@enfilade/colour/spectrum';
import { kelvinOf, whiteOf, xyzOf } from '@enfilade/colour/tristimulus';
import { whiteAt } from '@enfilade/colour/white-points';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvRows, spectraIn, valueAt } from './tables.ts';

const NANOMETRES = Array.from({ length: GRID.count }, (_, i) => GRID.startNm + i * GRID.stepNm);
const labUnder = (onGrid: Float64Array, id: LightId) => {
  const [L, a, b] = labFromXyz(xyzOf(onGrid, lightOf(id), '2°'), whiteOf(lightOf(id), '2°'));
  return { L, a, b };
};
const xyOf = ([x, y, z]: readonly [number, number, number]) => [x / (x + y + z), y / (x + y + z)] as const;

describe('observers and lights', () => {
  test.each([
    ['2°', 'CIE1931-2deg-XYZ.cmf'],
    ['10°', 'CIE1964-10deg-XYZ.cmf'],
  ] as const)('reference: the %s observer, every figure as the CIE published it (%s)', (observer, file) => {
    const [x, y, z] = spectraIn(file);
    const { x: ourX, y: ourY, z: ourZ } = OBSERVERS[observer];
    for (const [i, nm] of NANOMETRES.entries()) {
      expect([ourX[i], ourY[i], ourZ[i]]).toEqual([valueAt(x!, nm), valueAt(y!, nm), valueAt(z!, nm)]);
    }
  });

  test.each([
    ['2°', 21.3714, 21.3711, 21.3715],
    ['10°', 23.3293, 23.3323, 23.3342],
  ] as const)(
    'reference: the sums of the %s observer over 380–780 nm by 5 nm (CIE 15:2004, tables T.4 and T.5; from memory)',
    (observer, sumX, sumY, sumZ) => {
      const sums = [sumX, sumY, sumZ];
      const { x, y, z } = OBSERVERS[observer];
      for (const [i, column] of [x, y, z].entries()) {
        expect(column.reduce((sum, value) => sum + value, 0)).toBeCloseTo(sums[i]!, 2);
      }
    },
  );

  test('reference: the components of daylight as the CIE published them', () => {
    const published = spectraIn('CIE-1986-daylight-SPD.cmf');
    for (const [row, component] of DAYLIGHT_COMPONENTS.entries()) {
      for (const [i, nm] of NANOMETRES.entries()) expect(component[i]).toBe(valueAt(published[row]!, nm));
    }
  });

  test.each([
    ['A', 'CIE-A.sp', 6e-6],
    ['D50', 'CIE-D50.sp', 1e-3],
    ['D55', 'CIE-D55.sp', 6e-5],
    ['D65', 'CIE-D65.sp', 1e-5],
    ['F11', 'CIE-F11.sp', 1e-12],
  ] as const)('reference: the power of %s against the published table %s', (id, file, tolerance) => {
    const table = spectraIn(file)[0]!;
    const ours = lightOf(id).power;
    for (const [i, nm] of NANOMETRES.entries()) {
      expect(Math.abs(ours[i]! / ours[36]! - valueAt(table, nm) / valueAt(table, 560))).toBeLessThan(tolerance);
    }
  });

  test.each([
    ['A', 0.44758, 0.40745],
    ['D50', 0.34567, 0.35851],
    ['D55', 0.33243, 0.34744],
    ['D65', 0.31272, 0.32903],
    ['D75', 0.29903, 0.31488],
  ] as const)('reference: chromaticity of %s, 2° (CIE 15:2004, table T.3)', (id, x, y) => {
    const [ourX, ourY] = xyOf(whiteOf(lightOf(id), '2°'));
    expect(Math.abs(ourX - x)).toBeLessThan(3e-5);
    expect(Math.abs(ourY - y)).toBeLessThan(3e-5);
  });

  test.each([
    ['LED-B1', 0.456, 0.4078],
    ['LED-B2', 0.4357, 0.4012],
    ['LED-B3', 0.3756, 0.3723],
    ['LED-B4', 0.3422, 0.3502],
    ['LED-B5', 0.3118, 0.3236],
    ['LED-BH1', 0.4474, 0.4066],
    ['LED-RGB1', 0.4557, 0.4211],
    ['LED-V1', 0.4548, 0.4044],
    ['LED-V2', 0.3781, 0.3775],
  ] as const)('reference: chromaticity of %s, 2° (CIE 15:2018, table 12; from memory)', (id, x, y) => {
    const white = whiteOf(lightOf(id), '2°');
    expect(xyOf(white)[0]).toBeCloseTo(x, 4);
    expect(xyOf(white)[1]).toBeCloseTo(y, 4);
    expect(Math.abs(kelvinOf(white) - LED_KELVIN[id])).toBeLessThan(15);
    const published = csvRows('cie-led-illuminants.csv');
    expect([...lightOf(id).power]).toEqual(published.map((row) => Number(row[id])));
  });

  test.each(['A', 'D50', 'D55', 'D65', 'D75', 'F11'] as const)(
    'reference: the white of %s against ASTM E308 for both observers',
    (id) => {
      for (const observer of ['2°', '10°'] as const) {
        const ours = whiteOf(lightOf(id), observer);
        const theirs = whiteAt({ illuminant: id, observer });
        for (const axis of [0, 1, 2] as const) expect(Math.abs(ours[axis] - theirs[axis])).toBeLessThan(0.03);
      }
    },
  );

  test.each(['C', 'F2', 'F7'] as const)(
    'reference: the white of %s from its published table against ASTM E308',
    (id) => {
      const light = lightFrom(id, spectraIn(`CIE-${id}.sp`)[0]!);
      for (const observer of ['2°', '10°'] as const) {
        const ours = whiteOf(light, observer);
        const theirs = whiteAt({ illuminant: id, observer });
        for (const axis of [0, 1, 2] as const) expect(Math.abs(ours[axis] - theirs[axis])).toBeLessThan(0.03);
      }
    },
  );

  test('law: tungsten at 2856 K is illuminant A, warmer at 2700 K, cooler at 3000 K', () => {
    const [a, b] = [lightOf('A').power, tungstenOf(2856).power];
    for (let i = 0; i < a.length; i++) expect(Math.abs(a[i]! - b[i]!)).toBeLessThan(0.1);
    const kelvins = [2700, 3000].map((kelvin) => kelvinOf(whiteOf(tungstenOf(kelvin), '2°')));
    expect(Math.abs(kelvins[0]! - 2700)).toBeLessThan(15);
    expect(Math.abs(kelvins[1]! - 3000)).toBeLessThan(15);
  });

  test('law: a lamp measured finely, coarsely or in part gives the same white as on the grid', () => {
    const smooth = (nm: number) => 40 + 30 * Math.sin(nm / 60);
    const spdOf = (startNm: number, stepNm: number, endNm: number) => ({
      startNm,
      stepNm,
      values: Array.from({ length: Math.round((endNm - startNm) / stepNm) + 1 }, (_, i) =>
        smooth(startNm + i * stepNm),
      ),
    });
    const fine = whiteOf(lightFrom('fine', spdOf(350, 1, 830)), '2°');
    for (const spd of [spdOf(380, 5, 780), spdOf(380, 10, 780), spdOf(350, 0.5, 800)]) {
      const white = whiteOf(lightFrom('other', spd), '2°');
      for (const axis of [0, 2] as const) expect(Math.abs(white[axis] - fine[axis])).toBeLessThan(0.2);
    }
    expect(powerOnGrid(spdOf(400, 10, 700))[0]).toBe(0);
    expect(() => lightFrom('dark', { startNm: 380, stepNm: 10, values: Array(41).fill(0) })).toThrow(RangeError);
  });

  test('law: every named light has power on the whole grid and a name to be said in a sentence', () => {
    expect(new Set(LIGHT_IDS.map((id) => lightOf(id).name)).size).toBe(LIGHT_IDS.length);
    for (const id of LIGHT_IDS) expect(lightOf(id).power).toHaveLength(GRID.count);
  });
});

describe('reflectance to tristimulus values', () => {
  const samples = spectraIn('CIE-TCS.sp');

  test('reference: 15 CIE test colour samples under A, D65, F11, both observers, as ArgyllCMS 2.3.1 spec2cie has them', () => {
    const worst: Record<string, number> = {};
    for (const row of csvRows('test-colour-samples-xyz.csv')) {
      const sample = samples[Number(row.sample?.slice(3)) - 1]!;
      const onGrid = Float64Array.from(NANOMETRES, (nm) => valueAt(sample, nm));
      const light = row.light as 'A' | 'D65' | 'F11';
      const xyz = xyzOf(onGrid, lightOf(light), row.observer as '2°' | '10°');
      const apart = Math.max(...[row.X, row.Y, row.Z].map((value, i) => Math.abs(Number(value) - xyz[i]!)));
      worst[light] = Math.max(worst[light] ?? 0, apart);
    }
    // The other tool sums in finer steps of its own, over 360–830 nm.
    expect(worst.A).toBeLessThan(0.02);
    expect(worst.D65).toBeLessThan(0.05);
    expect(worst.F11).toBeLessThan(0.1);
  });

  test('law: samples read every 10 nm from 380 to 730, as a handheld reader does, come out within ΔE00 0.4 of the whole, 0.6 under narrow lines', () => {
    for (const sample of samples) {
      const whole = Float64Array.from(NANOMETRES, (nm) => valueAt(sample, nm));
      const values = Array.from({ length: 36 }, (_, i) => valueAt(sample, 380 + 10 * i));
      const read = reflectanceOnGrid({ startNm: 380, stepNm: 10, values });
      for (const id of ['D65', 'A', 'F11', 'LED-B1'] as const) {
        expect(deltaE2000(labUnder(whole, id), labUnder(read, id))).toBeLessThan(id === 'F11' ? 0.6 : 0.4);
      }
    }
  });

  test('law: the curve goes through what was measured, holds its ends, and is exact for a polynomial of the fourth order away from them', () => {
    const at = (nm: number) => 0.3 + 0.2 * ((nm - 555) / 175) ** 4 - 0.1 * ((nm - 555) / 175) ** 3;
    const values = Array.from({ length: 36 }, (_, i) => at(380 + 10 * i));
    const onGrid = reflectanceOnGrid({ startNm: 380, stepNm: 10, values });
    for (const [i, nm] of NANOMETRES.entries()) {
      if (nm >= 400 && nm <= 710) expect(onGrid[i]).toBeCloseTo(at(nm), 9);
      else expect(Math.abs(onGrid[i]! - (nm <= 730 ? at(nm) : at(730)))).toBeLessThan(1e-3);
      if (nm <= 730 && nm % 10 === 0) expect(onGrid[i]).toBeCloseTo(at(nm), 12);
    }
  });

  test('law: the curve does not swing under 0 beside a steep rise', () => {
    const onGrid = reflectanceOnGrid({
      startNm: 380,
      stepNm: 10,
      values: Array.from({ length: 36 }, (_, i) => (i < 20 ? 0 : 0.9)),
    });
    expect(Math.min(...onGrid)).toBe(0);
  });

  test('law: a grey of any share is that share of the white, under every light', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(...LIGHT_IDS), (share, id) => {
        const light = lightOf(id);
        const white = whiteOf(light, '2°');
        const grey = xyzOf(reflectanceOnGrid({ startNm: 380, stepNm: 10, values: Array(36).fill(share) }), light, '2°');
        for (const axis of [0, 1, 2] as const) expect(grey[axis]).toBeCloseTo(share * white[axis], 8);
      }),
      { numRuns: 100, seed: 31 },
    );
    expect(() => xyzOf(new Float64Array(36), lightOf('D65'), '2°')).toThrow(RangeError);
    expect(() => reflectanceOnGrid({ startNm: 380, stepNm: 10, values: [0.1] })).toThrow(RangeError);
  });
});
