/** Corrections of the record on a card: each field is an act of its own, taken back by one undo. */
import { recordKeyOf } from '@enfilade/records/object-number';
import * as commands from '@enfilade/shared/commands';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { type MuseumObject, type ObjectId, objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';

export interface RecordProps {
  readonly pieceId: PieceId;
  readonly object: MuseumObject;
  readonly frozen: boolean;
}

/** Sets fields of a piece's record; answers what is wrong, or null. */
export function useCorrect(pieceId: PieceId) {
  const show = useShow();
  return (fields: Partial<MuseumObject>, what: string): string | null => {
    const made = commands.correctObject(objectOfPiece(pieceId), fields);
    return act(show, { ...made, name: `correct the ${what}` }, `${what} corrected`) ? null : 'cannot be set just now';
  };
}

/**
 * Why a record cannot have this number, or null: it has one, and no other record of the same lender has it too, since a
 * checklist that comes in again finds its records by both.
 */
export function numberTrouble(documents: ShowDocuments, id: ObjectId, number: string): string | null {
  const own = documents.get('objects', id);
  if (number === '') return 'a record has a number';
  const key = recordKeyOf({ lender: own?.lender ?? '', number });
  for (const [otherId, other] of documents.all('objects')) {
    if (otherId !== id && recordKeyOf(other) === key) return `${other.title || other.number} has this number`;
  }
  return null;
}
