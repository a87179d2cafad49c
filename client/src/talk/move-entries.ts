/** The moves of a proposal as the foot lists and numbers them: each its own, or many alike as one that opens. Pure. */
import type { ProposedMove } from '@enfilade/shared/proposal-moves';
import { objectOfPiece, type PieceId, pieceNumberOf } from '@enfilade/shared/schema';

export interface MoveEntry {
  /** The same on the foot, on the wall and in the list of what it does. */
  readonly number: number;
  readonly id: string;
  /** One move, or several alike. */
  readonly moves: readonly ProposedMove[];
}

/** Up to so many moves each has a card of its own. */
export const SEPARATE = 12;
/** Fewer pieces of one record than this are not worth a card that has to be opened. */
const ALIKE = 3;

/**
 * Entries in the order of the moves, numbered from 1. Where there are more than `SEPARATE` moves, pieces of one record
 * that do the same kind of thing are one entry; a clash is never hidden in one.
 */
export function entriesOf(moves: readonly ProposedMove[], separate = SEPARATE): MoveEntry[] {
  const groups = new Map<string, ProposedMove[]>();
  if (moves.length > separate) {
    for (const move of moves) {
      const key = alikeKey(move);
      if (key !== null) groups.set(key, [...(groups.get(key) ?? []), move]);
    }
  }
  const entries: MoveEntry[] = [];
  const listed = new Set<string>();
  for (const move of moves) {
    const key = alikeKey(move);
    const group = key === null ? undefined : groups.get(key);
    if (key === null || group === undefined || group.length < ALIKE) {
      entries.push({ number: entries.length + 1, id: move.id, moves: [move] });
    } else if (!listed.has(key)) {
      listed.add(key);
      entries.push({ number: entries.length + 1, id: key, moves: [...group].sort(byPiece) });
    }
  }
  return entries;
}

function byPiece(a: ProposedMove, b: ProposedMove): number {
  const number = ({ about }: ProposedMove): number => (about.kind === 'piece' ? pieceNumberOf(about.pieceId) : 0);
  return number(a) - number(b);
}

/** The number each piece and each surface bears on the wall. */
export function numbersOf(entries: readonly MoveEntry[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const { number, moves } of entries) for (const { id } of moves) numbers.set(id, number);
  return numbers;
}

type Doing = 'comes' | 'goes' | 'moves' | 'joins' | 'stays';

export function doingOf(move: ProposedMove): Doing {
  const place = move.facts.find(({ root }) => root === 'places');
  if (place === undefined) return move.facts.some(({ root }) => root === 'memberOf') ? 'joins' : 'stays';
  if (place.from === undefined) return 'comes';
  return place.to === undefined ? 'goes' : 'moves';
}

function alikeKey(move: ProposedMove): string | null {
  if (move.about.kind !== 'piece' || move.standing === 'clash') return null;
  return `${objectOfPiece(move.about.pieceId)}|${doingOf(move)}`;
}

/** '41 of Printing blocks move', '12 of Copper moulds come from the unplaced'. */
export function groupTitle(entry: MoveEntry, titleOf: (pieceId: PieceId) => string): string {
  const [first] = entry.moves;
  if (first === undefined || first.about.kind !== 'piece') return '';
  const what = {
    comes: 'come from the unplaced',
    goes: 'go back to the unplaced',
    moves: 'move',
    joins: 'change vignette',
    stays: 'pinned, or no longer',
  };
  return `${entry.moves.length} of ${titleOf(first.about.pieceId)} ${what[doingOf(first)]}`;
}
