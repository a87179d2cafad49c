import type { Adaptation } from './adaptation.ts';
import { labFromXyz } from './cielab.ts';
import type { LabD65 } from './lab.ts';
import { lightOf } from './lights.ts';
import { lrvOf, srgbFromLabD65 } from './spaces.ts';
import { reflectanceOnGrid, type Spectrum } from './spectrum.ts';
import { whiteOf, xyzOf } from './tristimulus.ts';
import { labD65FromMeasured, type MeasuredLab, whitePointName } from './white-points.ts';

/** A paint, or a reading of one, as measured: L*a*b* with its white point, or reflectance, or both. */
export interface MeasuredPaint {
  readonly name: string;
  /** The maker's code, as free text. */
  readonly code?: string;
  readonly lab?: MeasuredLab;
  /** Share of light returned, 0..1, at even wavelengths: 380–730 nm by 10 nm as a rule. */
  readonly reflectance?: Spectrum;
  /** Light reflectance value 0..100 as the maker states it. */
  readonly lrv?: number;
  readonly sheen?: string;
  /** When and with what it was read, as the reader's file says. */
  readonly measured?: string;
  readonly instrument?: string;
}

/** What a paint's measurement comes to, and how it was come by. */
export interface PaintColour {
  readonly lab: LabD65;
  /** False: no sRGB screen shows this colour; what stands on the screen is the nearest of its lightness and hue. */
  readonly isInScreenGamut: boolean;
  readonly basis: 'reflectance' | 'as stated' | 'adapted';
  /** The basis as a phrase: "measured under D50/2°, adapted to D65/2° by CAT16". */
  readonly how: string;
}

const D65 = lightOf('D65');
const D65_WHITE = whiteOf(D65, '2°');

/** Whether an sRGB screen can show a CIELAB D65 colour (IEC 61966-2-1). */
export function isInScreenGamut(lab: LabD65): boolean {
  return srgbFromLabD65(lab).inGamut;
}

/**
 * CIELAB D65/2° of a paint: summed from its reflectance where there is one, else its L*a*b*, adapted to D65/2° by the
 * transform named where it was stated under another white point. RangeError for a paint with neither.
 */
export function paintColourOf(paint: MeasuredPaint, by: Adaptation = 'CAT16'): PaintColour {
  if (paint.reflectance) {
    const [L, a, b] = labFromXyz(xyzOf(reflectanceOnGrid(paint.reflectance), D65, '2°'), D65_WHITE);
    const lab = { L, a, b };
    return { lab, isInScreenGamut: isInScreenGamut(lab), basis: 'reflectance', how: 'from its reflectance, D65/2°' };
  }
  if (!paint.lab) throw new RangeError(`paintColourOf: "${paint.name}" has neither L*a*b* nor reflectance`);
  const lab = labD65FromMeasured(paint.lab, by);
  const from = whitePointName(paint.lab);
  const asStated = from === 'D65/2°';
  // Over the CIE's 15 test colours the two observers part by ΔE00 2.1 in the middle, 8.3 for the deepest blue.
  const eye = paint.lab.observer === '2°' ? '' : '; the wider eye sees it about 2 apart, a deep blue up to 8';
  return {
    lab,
    isInScreenGamut: isInScreenGamut(lab),
    basis: asStated ? 'as stated' : 'adapted',
    how: asStated ? 'measured under D65/2°' : `measured under ${from}, adapted to D65/2° by ${by}${eye}`,
  };
}

/** A light reflectance value 0..100, and whether it was stated, summed at D65/10° (BS 8493), or taken from L* (±2). */
export interface Lrv {
  readonly lrv: number;
  readonly basis: 'stated' | 'reflectance' | 'lightness';
}

/** The light reflectance value of a paint: the maker's, else from its reflectance, else from its lightness. */
export function paintLrvOf(paint: MeasuredPaint): Lrv {
  if (paint.lrv !== undefined) return { lrv: paint.lrv, basis: 'stated' };
  if (paint.reflectance) {
    return { lrv: xyzOf(reflectanceOnGrid(paint.reflectance), D65, '10°')[1], basis: 'reflectance' };
  }
  return { lrv: lrvOf(paintColourOf(paint).lab), basis: 'lightness' };
}
