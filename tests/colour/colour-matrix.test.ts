import { LIGHTNESS_ALONE, oneAfterAnother, throughMatrix, UNCHANGED } from '@enfilade/colour/colour-matrix';
import { deltaE2000 } from '@enfilade/colour/differences';
import { lightMatrixOf } from '@enfilade/colour/light-matrix';
import { LIGHT_IDS, lightOf, tungstenOf } from '@enfilade/colour/lights';
import { seenUnder, surfaceOf } from '@enfilade/colour/seen';
import { labD65FromSrgb, lrvOf } from '@enfilade/colour/spaces';
import { eyeMatrixOf, seenByEye } from '@enfilade/colour/vision';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spectraIn } from './tables.ts';

const sRgb = fc
  .tuple(...[0, 1, 2].map(() => fc.integer({ min: 0, max: 255 })))
  .map(([r = 0, g = 0, b = 0]) => labD65FromSrgb(r, g, b));

describe('a whole picture at once', () => {
  test('law: unchanged leaves a colour, lightness alone leaves its luminance, and one matrix after another is both', () => {
    const eye = { kind: 'deutan', severity: 0.65 } as const;
    const first = lightMatrixOf(tungstenOf(3000));
    const both = oneAfterAnother(first, eyeMatrixOf(eye));
    fc.assert(
      fc.property(sRgb, (lab) => {
        expect(deltaE2000(throughMatrix(lab, UNCHANGED), lab)).toBeLessThan(1e-6);
        const grey = throughMatrix(lab, LIGHTNESS_ALONE);
        expect(Math.hypot(grey.a, grey.b)).toBeLessThan(0.02);
        expect(lrvOf(grey)).toBeCloseTo(lrvOf(lab), 1);
        const inTurn = seenByEye(throughMatrix(lab, first), eye);
        expect(deltaE2000(throughMatrix(lab, both), inTurn)).toBeLessThan(1e-3);
      }),
      { numRuns: 200, seed: 71 },
    );
  });

  test('law: a light’s matrix keeps white and greys, and daylight’s changes nothing', () => {
    for (const id of LIGHT_IDS) {
      const matrix = lightMatrixOf(lightOf(id));
      for (const row of [0, 3, 6]) expect(matrix[row]! + matrix[row + 1]! + matrix[row + 2]!).toBeCloseTo(1, 10);
    }
    lightMatrixOf(lightOf('D65')).forEach((weight, i) => {
      expect(weight).toBeCloseTo(UNCHANGED[i]!, 3);
    });
  });

  // CIE 13.3:1995: the test colour samples, measured whole; what a picture of them looks like against their own spectra.
  test('reference: the CIE’s test colours through the matrix lie nearer to their spectra under a lamp than left as they are', () => {
    const surfaces = spectraIn('CIE-TCS.sp').map((reflectance, i) => surfaceOf({ name: `TCS${i + 1}`, reflectance }));
    for (const light of [tungstenOf(2700), tungstenOf(3000), lightOf('LED-B1'), lightOf('LED-B2'), lightOf('F11')]) {
      const matrix = lightMatrixOf(light);
      const off = surfaces.map((surface) => deltaE2000(throughMatrix(surface.lab, matrix), seenUnder(surface, light)));
      const left = surfaces.map((surface) => deltaE2000(surface.lab, seenUnder(surface, light)));
      const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
      expect(mean(off)).toBeLessThan(mean(left) * 0.75);
      expect(mean(off)).toBeLessThan(2.5);
    }
  });
});
