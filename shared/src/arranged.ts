/** An arrangement as it is offered: its digest, and whether two of them look alike. */
import type { Arrangement } from './arrange-task.ts';
import type { ArrangementTerm } from './arrangement-terms.ts';
import type { PieceId, Place } from './schema.ts';
import { digestOf } from './sign-off.ts';

export type { Arrangement } from './arrange-task.ts';

/** The mean of a piece's width and height (mm). */
export type Sizes = ReadonlyMap<PieceId, number>;

/** Two ways nearer to each other than this, in mean sizes of a piece, look alike (own rule). */
const VISIBLY = 0.25;

interface Made {
  readonly name: string;
  readonly places: readonly (readonly [PieceId, Place])[];
  /** Not moved, though it is one of them. */
  readonly stays: readonly PieceId[];
  readonly of: readonly PieceId[];
  readonly terms: readonly ArrangementTerm[];
}

export function arrangementFrom({ name, places, stays, of, terms }: Made): Arrangement {
  const moved = places.filter(([pieceId]) => !stays.includes(pieceId));
  const placed = new Set(places.map(([pieceId]) => pieceId));
  const unplaced = of.filter((pieceId) => !placed.has(pieceId) && !stays.includes(pieceId));
  const sorted = [...moved].sort(([a], [b]) => (a < b ? -1 : 1));
  return { digest: digestOf(JSON.stringify(sorted)).slice(0, 24), name, places: moved, unplaced, terms };
}

/** Whether one sees no difference: every piece of one lies near a piece about as large of the other. */
export function looksLike(a: Arrangement, b: Arrangement, sizes: Sizes): boolean {
  if (a.places.length !== b.places.length) return false;
  let [away, whole] = [0, 0];
  for (const [pieceId, at] of a.places) {
    const size = sizes.get(pieceId) ?? 0;
    let nearest = Infinity;
    for (const [other, there] of b.places) {
      if (there[0] !== at[0] || Math.abs((sizes.get(other) ?? 0) - size) > 0.05 * size) continue;
      nearest = Math.min(nearest, Math.hypot(there[1] - at[1], there[2] - at[2], there[3] - at[3]));
    }
    away += Math.min(nearest, 1000);
    whole += size;
  }
  return away <= VISIBLY * whole;
}
