/** What can be done with the proposal as a whole: take what is chosen, take all, decline, withdraw, look at it again. */
import { takeMoves, withWhatTheyNeed } from '@enfilade/shared/proposal-moves';
import { reopenProposal, wordOf } from '@enfilade/shared/proposals';
import { type FormEvent, useId, useState } from 'react';
import { act } from '../cards/acting.ts';
import { useStore } from '../selection.ts';
import { momentText } from '../sheets/vignette-words.ts';
import { chosenMoves, type InProposal } from './in-proposal.ts';
import { stateOf } from './open-proposals.ts';
import { endRest } from './proposal-acts.ts';
import { ProposalMark } from './proposal-mark.tsx';
import { countText, whoMayTake } from './proposal-words.ts';

export function ProposalAnswer({ inside }: { readonly inside: InProposal }) {
  const { id, proposal, moves, hang } = inside;
  const chosen = useStore(chosenMoves);
  const [ending, setEnding] = useState<'declined' | 'withdrawn' | null>(null);
  const state = stateOf(proposal);
  const open = moves.filter(({ standing }) => standing === 'open');
  const clashes = moves.filter(({ standing }) => standing === 'clash').length;
  const left = moves.filter(({ standing }) => standing === 'left').length;
  const stands = moves.length - open.length - clashes - left;
  const picked = open.filter((move) => chosen.has(move.id));
  const mine = proposal.by === hang.me.person.id;
  const may = hang.may('hang');
  const count =
    moves.length === 0 ? 'No move yet' : moves.length === 1 ? 'Its one move' : `Its ${countText(moves.length)} moves`;

  const take = (which: typeof open): void => {
    const wanted = new Set(which.map((move) => move.id));
    const needed = withWhatTheyNeed(hang.documents, moves, wanted).size - wanted.size;
    const made = takeMoves(hang.documents, id, wanted, wordOf(hang.me.person, new Date()));
    const more = needed > 0 ? `, with ${needed} more that they need` : '';
    if (act(hang, made, `${made.name}${more}. One undo takes it back`)) chosenMoves.set(new Set());
  };

  return (
    <div className="proposal-answer">
      <h2>{count}</h2>
      {state !== 'open' ? (
        <Ended inside={inside} />
      ) : (
        <>
          <p className="t1" hidden={moves.length === 0}>
            {[
              `${open.length} to take or leave`,
              left > 0 ? `${left} left` : '',
              clashes > 0 ? `${clashes} to settle` : '',
              stands > 0 ? `${stands} as the hang has it` : '',
            ]
              .filter((part) => part !== '')
              .join(', ')}
            .
            {may
              ? ' Taking is one act; one undo takes it back.'
              : ` ${whoMayTake(hang.judgements.setting('artistProposesOnly'))}`}
          </p>
          {may && open.length > 0 ? (
            <button type="button" className="act main" onClick={() => take(picked.length > 0 ? picked : open)}>
              {picked.length > 0 ? takeText(picked.length) : `Take all ${countText(open.length)}`}
            </button>
          ) : null}
          {ending === null ? (
            <p className="proposal-commands t1">
              {may && picked.length > 0 && picked.length < open.length ? (
                <button type="button" onClick={() => take(open)}>
                  take all {countText(open.length)}
                </button>
              ) : null}
              {may && !(mine && hang.me.person.role === 'guest artist') ? (
                <button type="button" onClick={() => setEnding('declined')}>
                  decline{stands > 0 ? ' the rest' : ''}, with a reason
                </button>
              ) : null}
              {mine ? (
                <button type="button" onClick={() => setEnding('withdrawn')}>
                  withdraw
                </button>
              ) : null}
            </p>
          ) : (
            <Ending inside={inside} how={ending} close={() => setEnding(null)} />
          )}
        </>
      )}
    </div>
  );
}

function takeText(count: number): string {
  return count === 1 ? 'Take this one' : `Take these ${countText(count)}`;
}

function Ending(props: { inside: InProposal; how: 'declined' | 'withdrawn'; close: () => void }) {
  const { inside, how, close } = props;
  const { id, proposal, hang } = inside;
  const field = useId();
  const [why, setWhy] = useState('');
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const word = wordOf(hang.me.person, new Date());
    act(hang, endRest(hang.documents, id, how, why.trim(), word), `${proposal.title} ${how}`);
    close();
  };
  return (
    <form className="propose-form" onSubmit={submit}>
      <label htmlFor={field}>{how === 'declined' ? 'Why it is declined' : 'Why, if you like'}</label>
      <textarea
        id={field}
        rows={2}
        value={why}
        required={how === 'declined'}
        // biome-ignore lint/a11y/noAutofocus: the form opens because the person asked to write in it
        autoFocus
        onChange={(event) => setWhy(event.target.value)}
      />
      <p className="proposal-commands">
        <button type="submit" className="act main">
          {how === 'declined' ? 'Decline' : 'Withdraw'}
        </button>
        <button type="button" className="act" onClick={close}>
          not now
        </button>
      </p>
    </form>
  );
}

function Ended({ inside }: { readonly inside: InProposal }) {
  const { id, proposal, hang } = inside;
  const { outcome } = proposal;
  if (!outcome) return null;
  const may = hang.may('hang') || (hang.may('talk') && outcome.by === hang.me.person.id);
  return (
    <>
      <p className="proposal-outcome t1">
        <ProposalMark state={outcome.outcome} />
        <span>
          <b className="b">{outcome.outcome}</b> by {outcome.name}, {outcome.role}, {momentText(new Date(outcome.at))}
        </span>
      </p>
      {outcome.why === '' ? null : <p className="cap">“{outcome.why}”</p>}
      {may ? (
        <p className="proposal-commands t1">
          <button type="button" onClick={() => act(hang, reopenProposal(id), `${proposal.title} is open again`)}>
            reopen
          </button>
        </p>
      ) : null}
    </>
  );
}
