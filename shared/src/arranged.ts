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

/** The same a hand to one side is the same to the eye (mm, own rule). */
const A_HAND_MM = 150;

/** Whether one sees no difference: every piece of one lies near a piece about as large of the other. */
export function looksLike(a: Arrangement, b: Arrangement, sizes: Sizes): boolean {
  if (a.places.length !== b.places.length) return false;
  let [away, whole] = [0, 0];
  const [dx, dy] = shiftBetween(a, b);
  for (const [pieceId, at] of a.places) {
    const size = sizes.get(pieceId) ?? 0;
    let nearest = Infinity;
    for (const [other, there] of b.places) {
      if (there[0] !== at[0] || Math.abs((sizes.get(other) ?? 0) - size) > 0.05 * size) continue;
      nearest = Math.min(nearest, Math.hypot(there[1] + dx - at[1], there[2] + dy - at[2], there[3] - at[3]));
    }
    away += Math.min(nearest, 1000);
    whole += size;
  }
  return away <= VISIBLY * whole;
}

/** How far the middle of one lies from that of the other, where that is no more than a hand; else they are not laid over. */
function shiftBetween(a: Arrangement, b: Arrangement): readonly [dx: number, dy: number] {
  const middle = ({ places }: Arrangement, k: 1 | 2) =>
    places.reduce((sum, [, at]) => sum + at[k], 0) / Math.max(1, places.length);
  const [dx, dy] = [middle(a, 1) - middle(b, 1), middle(a, 2) - middle(b, 2)];
  return Math.hypot(dx, dy) <= A_HAND_MM ? [dx, dy] : [0, 0];
}
