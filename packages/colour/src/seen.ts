import { adapted } from './adaptation.ts';
import { labFromXyz, xyzFromLab } from './cielab.ts';
import type { LabD65 } from './lab.ts';
import { type Light, lightOf } from './lights.ts';
import { likelyReflectanceOf } from './likely-reflectance.ts';
import { type MeasuredPaint, paintColourOf } from './paints.ts';
import { reflectanceOnGrid } from './spectrum.ts';
import { whiteOf, xyzOf } from './tristimulus.ts';

/** What is known of a surface for another light: its measured reflectance, a likely one, or its colour alone. */
export type SurfaceBasis = 'reflectance' | 'likely' | 'colour';

/** A surface ready to be looked at under any light; made once for each paint or swatch. */
export interface Surface {
  readonly lab: LabD65;
  readonly basis: SurfaceBasis;
  /** 81 shares over 380–780 nm; null when only the colour is known. */
  readonly reflectance: Float64Array | null;
}

/**
 * How far off a colour under another lamp may be, in ΔE00, as a rule and at worst, and the sentence that says so. From
 * the CIE's 15 test colours taken from D65 to A, F11 and five LED lamps and compared with their whole spectra.
 */
export const CONFIDENCE: Readonly<Record<SurfaceBasis, { usual: number; worst: number; words: string }>> = {
  reflectance: { usual: 0.2, worst: 0.6, words: 'Summed from its measured reflectance.' },
  likely: {
    usual: 0.8,
    worst: 6,
    words: 'Its reflectance was not measured; a likely one stands in, as a rule within 1 and at worst within 6.',
  },
  colour: {
    usual: 4,
    worst: 12,
    words: 'Only its colour is known, and is taken to hold under any lamp (CAT16); it may be 12 off.',
  },
};

const D65 = lightOf('D65');
const D65_WHITE = whiteOf(D65, '2°');

/** The surface of a paint: by its reflectance where measured, else as `surfaceFromLab` has it. */
export function surfaceOf(paint: MeasuredPaint): Surface {
  const { lab } = paintColourOf(paint);
  if (!paint.reflectance) return surfaceFromLab(lab);
  return { lab, basis: 'reflectance', reflectance: reflectanceOnGrid(paint.reflectance) };
}

/** The surface of a CIELAB D65 colour of which no more is known, as of a picture: a likely reflectance, else the colour. */
export function surfaceFromLab(lab: LabD65): Surface {
  const reflectance = likelyReflectanceOf(lab);
  return { lab, basis: reflectance ? 'likely' : 'colour', reflectance };
}

/**
 * How a surface looks under a light, as the CIELAB D65 colour that looks so in daylight: CAT16 from the light's white.
 * `degree` is how far the eye has settled to the lamp, 0..1 (`degreeOfAdaptation`); settled wholly unless said.
 */
export function seenUnder(surface: Surface, light: Light, degree = 1): LabD65 {
  const white = whiteOf(light, '2°');
  const { lab } = surface;
  const xyz = surface.reflectance
    ? xyzOf(surface.reflectance, light, '2°')
    : adapted(xyzFromLab([lab.L, lab.a, lab.b], D65_WHITE), D65_WHITE, white, 'CAT16');
  const [L, a, b] = labFromXyz(adapted(xyz, white, D65_WHITE, 'CAT16', degree), D65_WHITE);
  return { L, a, b };
}

/** Swatches of a palette as they look under a light (see `seenUnder`), all else of them kept; one surface for each, in order. */
export function swatchesUnder<Swatch extends { readonly lab: LabD65 }>(
  swatches: readonly Swatch[],
  surfaces: readonly Surface[],
  light: Light,
  degree = 1,
): Swatch[] {
  if (surfaces.length !== swatches.length) {
    throw new RangeError(`swatchesUnder: ${surfaces.length} surfaces for ${swatches.length} swatches`);
  }
  return swatches.map((swatch, i) => ({ ...swatch, lab: seenUnder(surfaces[i]!, light, degree) }));
}
