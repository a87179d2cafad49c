/** How a thing stands on a floor: when it would tip, and how it loads the floor. Static, and nothing here calls it safe. */
import { floorLoadOf, tipOf } from '@enfilade/practice/loads';
import type { Judgements } from './judgements.ts';
import type { PieceId } from './schema.ts';

export interface Footing {
  /** Its centre of gravity is not recorded: half its height is taken. */
  readonly tipDegrees: number;
  /** The level push at its top that tips it (kg); null while it is not weighed. */
  readonly pushKg: number | null;
  /** Itself and what stands on it, over its whole footprint; null while something is not weighed. */
  readonly kPa: number | null;
  readonly borneKg: number | null;
}

/** Null for what has no known width, height or depth. Source: geometry, moments, load over area. */
export function footingOf(judgements: Judgements, pieceId: PieceId): Footing | null {
  const size = judgements.sizeOf(pieceId);
  if (!size?.known || !(size.widthMm > 0 && size.heightMm > 0 && size.depthMm > 0)) return null;
  const { widthMm, heightMm, depthMm } = size;
  const weightKg = judgements.weightOf(pieceId);
  const borneKg = judgements.borneWeightOf(pieceId);
  const halfBaseMm = Math.min(widthMm, depthMm) / 2;
  const tip = tipOf({ halfBaseMm, centreOfGravityMm: heightMm / 2, weightKg: weightKg ?? 0, pushAtMm: heightMm });
  return {
    tipDegrees: tip.angleDegrees,
    pushKg: weightKg === null ? null : tip.pushKg,
    kPa: borneKg === null ? null : floorLoadOf({ weightKg: borneKg, widthMm, depthMm }).kPa,
    borneKg,
  };
}
