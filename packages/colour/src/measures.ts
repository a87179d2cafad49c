import { deltaE2000 } from './differences.ts';
import type { LabD65 } from './lab.ts';
import type { Swatch } from './palette.ts';
import { chromaOf, hueDegreesOf } from './spaces.ts';

/** How colours stand to a wall, work minus wall: in ΔE00, L*, C*ab and degrees of hue. */
export interface Measures {
  /** Area-weighted mean of the swatches' ΔE00 to the wall. */
  readonly deltaE: number;
  /** L* of the area mean, less the wall's. */
  readonly deltaL: number;
  /** C*ab of the area mean, less the wall's. */
  readonly deltaC: number;
  /** Hue of the area mean from the wall's, over −180 to 180 degrees; left out where either is all but grey. */
  readonly deltaH?: number;
}

/** A swatch with its distance to the wall. */
export interface Field extends Swatch {
  readonly deltaE: number;
}

/** Under this ΔE00 a field is taken for the wall's own colour: from practice, "within 10 only the frame parts them". */
export const WITHIN = 10;
// Under this chroma a hue angle is noise to the eye.
const HUE_FROM_CHROMA = 6;

/** The swatches with their ΔE00 to the wall, shares adding up to 1, in an order that does not depend on the one given. */
export function fieldsOf(swatches: readonly Swatch[], wall: LabD65): Field[] {
  const sorted = [...swatches].sort(
    (p, q) => q.share - p.share || p.lab.L - q.lab.L || p.lab.a - q.lab.a || p.lab.b - q.lab.b,
  );
  const total = sorted.reduce((sum, swatch) => sum + swatch.share, 0);
  return sorted.map(({ lab, share }) => ({ lab, share: share / total, deltaE: deltaE2000(lab, wall) }));
}

/** Area mean of fields whose shares add up to 1, CIELAB D65. */
export function meanOf(fields: readonly Swatch[]): LabD65 {
  const mean = (axis: keyof LabD65): number => fields.reduce((sum, field) => sum + field.share * field.lab[axis], 0);
  return { L: mean('L'), a: mean('a'), b: mean('b') };
}

/** The measures of fields (from `fieldsOf`) against their wall. */
export function measuresOf(fields: readonly Field[], wall: LabD65): Measures {
  const mean = meanOf(fields);
  const measures = {
    deltaE: fields.reduce((sum, field) => sum + field.share * field.deltaE, 0),
    deltaL: mean.L - wall.L,
    deltaC: chromaOf(mean) - chromaOf(wall),
  };
  if (Math.min(chromaOf(mean), chromaOf(wall)) < HUE_FROM_CHROMA) return measures;
  const turn = hueDegreesOf(mean) - hueDegreesOf(wall);
  return { ...measures, deltaH: turn > 180 ? turn - 360 : turn <= -180 ? turn + 360 : turn };
}

/** The share, 0..1, of the fields that is the wall's own colour, within ΔE00 10. */
export function shareWithin10Of(fields: readonly Field[]): number {
  return Math.min(
    1,
    fields.reduce((sum, field) => sum + (field.deltaE < WITHIN ? field.share : 0), 0),
  );
}
