/** Every proposal there is or was: whose, why, where it touches the show, and what became of it. */
import { movesOf } from '@enfilade/shared/proposal-moves';
import { surfaceName } from '@enfilade/shared/surface-names';
import type { Proposal, ProposalId } from '@enfilade/shared/talk';
import { roomsInOrder } from '../shell/current-view.ts';
import { Ring } from '../shell/ring.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { proposalsOf, stateOf, surfacesTouched } from '../talk/open-proposals.ts';
import { ProposalMark } from '../talk/proposal-mark.tsx';
import { ProposeCommand } from '../talk/propose-form.tsx';
import { viewOfSurface } from '../talk/where-move.ts';
import { toAddress } from '../view-address.ts';
import { momentText } from './vignette-words.ts';
import './proposals.css';

/** More walls than these are counted. */
const NAMED = 3;

export function Proposals() {
  const show = useShow();
  useRoots('proposals', 'proposed', 'places', 'paints', 'vignettes', 'memberOf', 'rooms');
  const all = proposalsOf(show.documents);
  const open = all.filter(([, proposal]) => stateOf(proposal) === 'open');
  const ended = all.filter(([, proposal]) => stateOf(proposal) !== 'open');
  const first = roomsInOrder(show.documents)[0];
  return (
    <div className="proposals">
      <h1>Proposals</h1>
      <p className="cap proposals-about">
        An alternative laid over the hang, with its reason. The hang stays as it is until all or part of it is taken.
      </p>
      {open.length === 0 ? (
        <p className="cap">
          {show.may('talk')
            ? 'None is open. Begin one here, or with the word beneath any wall’s caption.'
            : 'None is open.'}
        </p>
      ) : (
        <>
          <h2 className="spoken">Open</h2>
          <List rows={open} name="Open proposals" />
        </>
      )}
      {first === undefined ? null : <ProposeCommand view={{ sheet: 'room', roomId: first }} />}
      {ended.length === 0 ? null : (
        <>
          <h2 className="proposals-ended">Ended</h2>
          <List rows={ended} name="Proposals that have ended" />
        </>
      )}
    </div>
  );
}

function List({ rows, name }: { rows: readonly (readonly [ProposalId, Proposal])[]; name: string }) {
  return (
    <ul className="proposals-list" aria-label={name}>
      {rows.map(([id, proposal]) => (
        <Row key={id} id={id} proposal={proposal} />
      ))}
    </ul>
  );
}

function Row({ id, proposal }: { readonly id: ProposalId; readonly proposal: Proposal }) {
  const { documents, judgements, presence } = useShow();
  const moves = movesOf(documents, id);
  const clashes = moves.filter(({ standing }) => standing === 'clash').length;
  const touched = surfacesTouched(judgements, moves);
  const state = stateOf(proposal);
  const { outcome } = proposal;
  const to = viewOfSurface(touched[0], roomsInOrder(documents)[0] ?? '');
  return (
    <li className="proposal-row">
      <div className="proposal-row-title">
        <h3>
          <a href={toAddress(to, { kind: 'proposal', id })}>{proposal.title}</a>
        </h3>
        {proposal.reason === '' ? null : <p className="cap">“{proposal.reason}”</p>}
      </div>
      <p className="proposal-row-who">
        <Ring name={proposal.name} pattern={presence.ringOf(proposal.by)} radiusPx={11} />
        <span>
          {proposal.name}, {proposal.role}
          <br />
          {momentText(new Date(proposal.at))}
        </span>
      </p>
      <p>
        {touched.length === 0
          ? 'Nowhere yet'
          : touched
              .slice(0, NAMED)
              .map((s) => surfaceName(documents, s))
              .join('; ')}
        {touched.length > NAMED ? ` and ${touched.length - NAMED} more` : ''}
        <br />
        {moves.length === 1 ? '1 move' : `${moves.length} moves`}
        {state === 'open' && clashes > 0 ? `, ${clashes} ${clashes === 1 ? 'clash' : 'clashes'} to settle` : ''}
      </p>
      <p className="proposal-row-state">
        <ProposalMark state={state} />
        <span>
          <b className="b">{state}</b>
          {outcome ? (
            <>
              {' '}
              by {outcome.name}, {momentText(new Date(outcome.at))}
              {outcome.why === '' ? null : <i className="it proposal-row-why">“{outcome.why}”</i>}
            </>
          ) : null}
        </span>
      </p>
    </li>
  );
}

export default Proposals;
