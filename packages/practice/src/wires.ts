/** A picture wire over one or two hooks: how far it rises, how steep it stands, how hard it pulls. */
import type { Caution } from './cautions.ts';
import type { Issue } from './issues.ts';

/** Below this the pull on wire and rings grows fast. Common practice, no source. */
export const SHALLOW_DEGREES = 30;

export interface WireGeometry {
  /** Of the hooks above the line between the rings. */
  readonly riseMm: number;
  /** From the top edge down to the hooks; negative where they stand above it and show. */
  readonly dropMm: number;
  /** Of the wire's outer legs, from the horizontal. */
  readonly angleDegrees: number;
}

/**
 * A wire drawn taut over its hooks (mm, degrees): rise = √(leg² − run²), the legs being what the hooks leave of the wire
 * on either side. An issue where the wire cannot reach. RangeError for other than one or two hooks. Source: geometry.
 */
export function wireOf(wire: {
  readonly ringsApartMm: number;
  readonly wireMm: number;
  readonly ringsBelowTopMm: number;
  readonly hooks: number;
  /** Between the two hooks; one hook needs none. */
  readonly hooksApartMm?: number;
}): WireGeometry | Issue {
  if (wire.hooks !== 1 && wire.hooks !== 2) throw new RangeError(`hooks is ${wire.hooks}; it must be 1 or 2`);
  const between = wire.hooks === 1 ? 0 : (wire.hooksApartMm ?? Number.NaN);
  const leg = (wire.wireMm - between) / 2;
  const run = (wire.ringsApartMm - between) / 2;
  if (!(between >= 0)) return { where: 'hooks', what: 'no distance between them is given', value: wire.hooks };
  if (!(wire.ringsApartMm > 0 && run >= 0)) {
    return { where: 'rings', what: 'must be farther apart than the hooks', value: wire.ringsApartMm };
  }
  if (!(wire.wireMm > wire.ringsApartMm)) {
    return { where: 'wire', what: 'must be longer than the rings are apart', value: wire.wireMm };
  }
  const riseMm = Math.sqrt(leg * leg - run * run);
  return {
    riseMm,
    dropMm: wire.ringsBelowTopMm - riseMm,
    angleDegrees: (Math.acos(run / leg) * 180) / Math.PI,
  };
}

/**
 * Pull on the wire, T = W / (2 sin θ), in the unit of the weight (kilograms as hardware is rated), with a caution where
 * it stands at less than 30° from the horizontal. RangeError unless 0 < θ ≤ 90. Source: statics; the limit is common
 * practice, no source.
 */
export function tensionOf(wire: { readonly weightKg: number; readonly angleDegrees: number }): {
  readonly tensionKg: number;
  readonly caution: Caution | null;
} {
  const { weightKg, angleDegrees } = wire;
  if (!(angleDegrees > 0 && angleDegrees <= 90)) {
    throw new RangeError(`angleDegrees is ${angleDegrees}; it must be above 0 and at most 90`);
  }
  // A hair's breadth, so that 30° worked out from lengths is not called shallow by its last binary digit.
  const shallow = angleDegrees < SHALLOW_DEGREES - 1e-9;
  return {
    tensionKg: weightKg / (2 * Math.sin((angleDegrees * Math.PI) / 180)),
    caution: shallow
      ? {
          kind: 'wire too flat',
          what: `The wire stands at ${Math.round(angleDegrees)}°; under ${SHALLOW_DEGREES}° it pulls harder than the work weighs.`,
          ask: 'the preparator',
          source: 'common practice, no source',
        }
      : null,
  };
}
