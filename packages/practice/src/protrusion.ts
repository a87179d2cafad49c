/** How far a thing on a wall may stand out beside a way people walk. */

/** Limits differ from country to country and can be changed; all in mm above the floor, or out from the wall. */
export interface ProtrusionLimits {
  /** At or below this a cane finds the thing. */
  readonly caneMm: number;
  /** Above this one walks beneath it. */
  readonly headroomMm: number;
  readonly deepestMm: number;
  readonly source: string;
}

/** 27 in, 80 in and 4 in. Source: 2010 ADA Standards, 307.2, as read. */
export const ADA_PROTRUSION: ProtrusionLimits = {
  caneMm: 685.8,
  headroomMm: 2032,
  deepestMm: 101.6,
  source: '2010 ADA Standards, 307.2',
};

/** A place is a whole millimetre, so an edge typed as 27 in may lie this much above it. */
const ROUNDING_MM = 0.5;

/**
 * By how much a thing stands out too far beside a walking path (mm), 0 where it does not: its lowest leading edge is
 * above cane height and not above headroom, and it is deeper than allowed. An edge at exactly 27 in is found by a cane;
 * one at exactly 80 in is still in the band.
 */
export function protrusionOf(
  thing: { readonly edgeMm: number; readonly depthMm: number },
  limits: ProtrusionLimits = ADA_PROTRUSION,
): number {
  const inBand = thing.edgeMm > limits.caneMm + ROUNDING_MM && thing.edgeMm <= limits.headroomMm;
  return inBand ? Math.max(0, thing.depthMm - limits.deepestMm) : 0;
}
