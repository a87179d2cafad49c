/** One move of a proposal: what it does, and whether it is taken, left, or has to be settled first. */
import { leaveMoves, type ProposedMove, placesOfMove, settleClash } from '@enfilade/shared/proposal-moves';
import { act } from '../cards/acting.ts';
import { useStore } from '../selection.ts';
import { useAddress, viewFrom } from '../view-address.ts';
import { chosenMoves, type InProposal } from './in-proposal.ts';
import { MovePicture } from './move-picture.tsx';
import { type MoveWords, moveSentence, moveTitle, pinSentence, placeText } from './move-sentences.ts';
import { stateOf } from './open-proposals.ts';
import { ClashMark } from './proposal-mark.tsx';
import { showMove, shows, surfaceOfMove } from './where-move.ts';

interface MoveProps {
  readonly inside: InProposal;
  readonly move: ProposedMove;
  readonly words: MoveWords;
}

export function MoveCard({ inside, move, words, number }: MoveProps & { readonly number: number }) {
  const view = viewFrom(useAddress());
  const title = moveTitle(move, words);
  const surface = surfaceOfMove(inside, move);
  const elsewhere = surface !== null && view !== null && !shows(view, surface) ? surface : null;
  return (
    <li className={`move-card${move.standing === 'left' ? ' move-left' : ''}`}>
      <div className="move-head">
        <MovePicture move={move} />
        <h3>
          <b>{number}</b>{' '}
          <button type="button" className="move-title" onClick={() => showMove(inside, move, view)}>
            {title}
          </button>
        </h3>
      </div>
      {elsewhere === null ? null : <p className="t1 b">{words.onNameWhole(elsewhere)}</p>}
      <p className="t1 move-how">{moveSentence(move, words)}</p>
      <MoveAnswer inside={inside} move={move} words={words} title={title} />
    </li>
  );
}

/** Take and leave, the two places of a clash, or what became of it. */
export function MoveAnswer({ inside, move, words, title }: MoveProps & { readonly title: string }) {
  const { id, proposal, hang } = inside;
  const chosen = useStore(chosenMoves);
  const ended = stateOf(proposal) !== 'open';
  if (ended || move.standing === 'stands')
    return <p className="t1 move-word">{wordOf(move, ended, stateOf(proposal))}</p>;
  if (move.standing === 'clash') return <Clash inside={inside} move={move} words={words} />;
  if (!hang.may('hang')) return move.standing === 'left' ? <p className="t1 move-word">left out</p> : null;
  const taken = chosen.has(move.id) && move.standing === 'open';
  const left = move.standing === 'left';
  const take = (): void => {
    if (left && !act(hang, leaveMoves(hang.documents, id, new Set([move.id]), false), `${title} looked at again`))
      return;
    const next = new Set(chosen);
    if (taken) next.delete(move.id);
    else next.add(move.id);
    chosenMoves.set(next);
  };
  const leave = (): void => {
    const next = new Set(chosen);
    next.delete(move.id);
    chosenMoves.set(next);
    const said = left ? `${title} looked at again` : `${title} left as it is in the hang`;
    act(hang, leaveMoves(hang.documents, id, new Set([move.id]), !left), said);
  };
  return (
    <p className="move-answer">
      <button type="button" className={`act${taken ? ' main' : ''}`} aria-pressed={taken} onClick={take}>
        take<span className="spoken"> {title}</span>
      </button>
      <button type="button" className={`act${left ? ' main' : ''}`} aria-pressed={left} onClick={leave}>
        leave<span className="spoken"> {title}</span>
      </button>
    </p>
  );
}

function wordOf(move: ProposedMove, ended: boolean, state: ReturnType<typeof stateOf>): string {
  if (move.standing === 'left') return 'left';
  if (!ended) return 'The hang says so already.';
  return state === 'taken' || state === 'taken in part' ? 'taken' : state;
}

/** Both places told, and a press for each; whoever may not change the hang is told and no more. */
function Clash({ inside, move, words }: MoveProps) {
  const { id, hang, proposal } = inside;
  const may = hang.may('hang') || (hang.may('talk') && proposal.by === hang.me.person.id);
  const { now, to } = clashTexts(move, words);
  const settle = (keep: 'hang' | 'proposal'): void => {
    const said =
      keep === 'hang' ? 'The hang keeps its own; the move is left' : 'The proposal keeps its own against the hang';
    act(hang, settleClash(hang.documents, id, move.id, keep), said);
  };
  return (
    <div className="move-clash">
      <p className="t1">
        <ClashMark sizePx={13} /> <b className="b">Clash.</b> It has changed in the hang since. There: {now}. Proposed:{' '}
        {to}.
      </p>
      {may ? (
        <p className="move-answer">
          <button type="button" className="act" onClick={() => settle('hang')}>
            keep the hang’s
          </button>
          <button type="button" className="act" onClick={() => settle('proposal')}>
            take the proposal’s
          </button>
        </p>
      ) : null}
    </div>
  );
}

function clashTexts(move: ProposedMove, words: MoveWords): { now: string; to: string } {
  const places = placesOfMove(move);
  if (places !== null) return { now: placeText(places.now, words), to: placeText(places.to, words) };
  const [fact] = move.facts.filter(({ from, to, now }) => from !== now && to !== now);
  const told = (value: unknown): string => {
    if (fact?.root === 'pinned') return pinSentence(value);
    if (typeof value !== 'string') return value === undefined ? 'nothing' : 'as it was worded';
    if (fact?.root === 'paints') return words.paintName(value);
    return fact?.root === 'memberOf' ? words.vignetteName(value) : value;
  };
  return { now: told(fact?.now), to: told(fact?.to) };
}
