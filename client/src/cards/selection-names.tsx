/** What is selected, one line a record with how many of its pieces; a press keeps those alone. */
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { choose } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';

const LINES_SHOWN = 8;

export function SelectionNames({ pieceIds }: { readonly pieceIds: readonly PieceId[] }) {
  const { judgements, documents } = useShow();
  const byObject = new Map<string, PieceId[]>();
  for (const pieceId of pieceIds) {
    const id = objectOfPiece(pieceId);
    const mine = byObject.get(id);
    if (mine === undefined) byObject.set(id, [pieceId]);
    else mine.push(pieceId);
  }
  const nameOf = (id: string, mine: readonly PieceId[]): string => {
    const [first] = mine;
    if (mine.length === 1 && first !== undefined) return judgements.nameOf(first);
    const object = documents.get('objects', id);
    const count = object?.count ?? mine.length;
    return `${object?.title || object?.number}, ${mine.length === count ? `all ${count}` : `${mine.length} of ${count}`}`;
  };
  return (
    <ul className="selection-names">
      {[...byObject].slice(0, LINES_SHOWN).map(([id, mine]) => (
        <li key={id}>
          <button type="button" onClick={() => choose(mine)}>
            {nameOf(id, mine)}
          </button>
        </li>
      ))}
      {byObject.size > LINES_SHOWN ? <li>and {byObject.size - LINES_SHOWN} more</li> : null}
    </ul>
  );
}
