/** What bears how much: two hooks, a floor, and the foot of a thing that could be pushed over. */
import type { Issue } from './issues.ts';

/** 100 psf, a typical live load of assembly rooms. From memory, not confirmed: the building's own figure counts. */
export const ASSEMBLY_LIVE_LOAD_KPA = 4.788;
/** Below this a standing thing is restrained. Common practice, no source. */
export const STEADY_DEGREES = 15;

const GRAVITY = 9.80665;

/**
 * What each of two hooks bears, left then right, in the unit of the weight: moments about the other hook. An issue where
 * the centre of gravity is not between them or they are at one place. Source: statics.
 */
export function loadsOf(piece: {
  readonly weightKg: number;
  readonly leftXmm: number;
  readonly rightXmm: number;
  readonly centreOfGravityXmm: number;
}): readonly [leftKg: number, rightKg: number] | Issue {
  const { weightKg, leftXmm, rightXmm, centreOfGravityXmm: cg } = piece;
  if (!(leftXmm < rightXmm))
    return { where: 'hooks', what: 'the left one must be left of the right one', value: leftXmm };
  if (!(cg >= leftXmm && cg <= rightXmm)) {
    return { where: 'centre of gravity', what: 'must lie between the hooks', value: cg };
  }
  const leftKg = (weightKg * (rightXmm - cg)) / (rightXmm - leftXmm);
  return [leftKg, weightKg - leftKg];
}

/**
 * Pressure on the floor (kPa) of a weight on its footprint, and whether an engineer is to be asked: at or above a typical
 * live load. RangeError on a footprint of no size. Source: load over area; the limit from memory.
 */
export function floorLoadOf(thing: { readonly weightKg: number; readonly widthMm: number; readonly depthMm: number }): {
  readonly kPa: number;
  readonly askEngineer: boolean;
} {
  const areaM2 = (thing.widthMm * thing.depthMm) / 1e6;
  if (!(areaM2 > 0)) throw new RangeError(`footprint is ${areaM2} m²; it must be above 0`);
  const kPa = (thing.weightKg * GRAVITY) / areaM2 / 1000;
  return { kPa, askEngineer: kPa >= ASSEMBLY_LIVE_LOAD_KPA };
}

/**
 * Angle (degrees) at which a thing tips, atan(half base / height of its centre of gravity), and the level push that tips
 * it at a height, in the unit of the weight (W × half base / height). Static; slipping is left out. RangeError on a
 * height of 0. Source: geometry and moments.
 */
export function tipOf(thing: {
  readonly halfBaseMm: number;
  readonly centreOfGravityMm: number;
  readonly weightKg: number;
  readonly pushAtMm: number;
}): { readonly angleDegrees: number; readonly pushKg: number } {
  const { halfBaseMm, centreOfGravityMm, weightKg, pushAtMm } = thing;
  if (!(centreOfGravityMm > 0)) throw new RangeError(`centreOfGravityMm is ${centreOfGravityMm}; it must be above 0`);
  if (!(pushAtMm > 0)) throw new RangeError(`pushAtMm is ${pushAtMm}; it must be above 0`);
  return {
    angleDegrees: (Math.atan(halfBaseMm / centreOfGravityMm) * 180) / Math.PI,
    pushKg: (weightKg * halfBaseMm) / pushAtMm,
  };
}
