/** Many moves alike as one card; a press opens them one by one. */
import { leaveMoves } from '@enfilade/shared/proposal-moves';
import { act } from '../cards/acting.ts';
import { useStore } from '../selection.ts';
import { useAddress, viewFrom } from '../view-address.ts';
import { chosenMoves, type InProposal } from './in-proposal.ts';
import { MoveAnswer } from './move-card.tsx';
import { groupTitle, type MoveEntry } from './move-entries.ts';
import { MovePicture } from './move-picture.tsx';
import { type MoveWords, moveSentence, moveTitle } from './move-sentences.ts';
import { stateOf } from './open-proposals.ts';
import { showPieces } from './where-move.ts';

interface GroupProps {
  readonly inside: InProposal;
  readonly entry: MoveEntry;
  readonly words: MoveWords & { titleOf(pieceId: string): string };
  readonly open: boolean;
  readonly toggle: () => void;
}

export function GroupCard({ inside, entry, words, open, toggle }: GroupProps) {
  const { id, proposal, hang } = inside;
  const chosen = useStore(chosenMoves);
  const { moves } = entry;
  const view = viewFrom(useAddress());
  const pieces = moves.flatMap(({ about }) => (about.kind === 'piece' ? [about.pieceId] : []));
  const title = groupTitle(entry, words.titleOf);
  const untaken = moves.filter(({ standing }) => standing === 'open');
  const left = moves.filter(({ standing }) => standing === 'left');
  const stands = moves.length - untaken.length - left.length;
  const taken = untaken.length > 0 && untaken.every((move) => chosen.has(move.id));
  const sentences = new Set(moves.map((move) => moveSentence(move, words)));
  const [same] = sentences;
  const each =
    sentences.size === 1 && same !== undefined ? `Each: ${same.charAt(0).toLowerCase()}${same.slice(1)}` : '';
  const may = hang.may('hang') && stateOf(proposal) === 'open' && stands < moves.length;
  const take = (): void => {
    const next = new Set(chosen);
    for (const move of untaken)
      if (taken) next.delete(move.id);
      else next.add(move.id);
    chosenMoves.set(next);
  };
  const leave = (): void => {
    const leaving = untaken.length > 0;
    const ids = new Set((leaving ? untaken : left).map((move) => move.id));
    chosenMoves.set(new Set([...chosen].filter((moveId) => !ids.has(moveId))));
    act(hang, leaveMoves(hang.documents, id, ids, leaving), leaving ? `${title}: left` : `${title}: looked at again`);
  };
  return (
    <li className={`move-card move-group${left.length === moves.length ? ' move-left' : ''}`}>
      <div className="move-head">
        <span className="move-several" aria-hidden="true">
          {moves.slice(0, 4).map((move) => (
            <MovePicture key={move.id} move={move} scale={0.5} />
          ))}
        </span>
        <h3>
          <b>{entry.number}</b>{' '}
          <button type="button" className="move-title" onClick={() => showPieces(inside, pieces, view)}>
            {title}
          </button>
        </h3>
      </div>
      <p className="t1 move-how">
        {each}{' '}
        {[stands > 0 ? `${stands} as the hang has it` : '', left.length > 0 ? `${left.length} left` : '']
          .filter((part) => part !== '')
          .join(', ')}{' '}
        <button type="button" aria-expanded={open} onClick={toggle}>
          {open ? 'close them' : 'one by one'}
        </button>
      </p>
      {may ? (
        <p className="move-answer">
          <button type="button" className={`act${taken ? ' main' : ''}`} aria-pressed={taken} onClick={take}>
            take<span className="spoken"> {title}</span>
          </button>
          <button
            type="button"
            className={`act${untaken.length === 0 ? ' main' : ''}`}
            aria-pressed={untaken.length === 0}
            onClick={leave}
          >
            leave<span className="spoken"> {title}</span>
          </button>
        </p>
      ) : null}
    </li>
  );
}

/** The moves of an opened group, under each other. */
export function GroupList({ inside, entry, words }: Omit<GroupProps, 'open' | 'toggle'>) {
  return (
    <ul className="group-list" aria-label={groupTitle(entry, words.titleOf)}>
      {entry.moves.map((move) => {
        const title = moveTitle(move, words);
        return (
          <li key={move.id} className={move.standing === 'left' ? 'move-left' : undefined}>
            <MovePicture move={move} scale={0.5} />
            <span className="t1">
              {title}. {moveSentence(move, words)}
            </span>
            <MoveAnswer inside={inside} move={move} words={words} title={title} />
          </li>
        );
      })}
    </ul>
  );
}
