/** Under the head while in a proposal: that this is not the hang, how it is looked at, and the way back. */
import { useEffect } from 'react';
import { useStore } from '../selection.ts';
import { isStage } from '../shell/current-view.ts';
import { say } from '../shell/live-region.tsx';
import { useFold } from '../shell/media.ts';
import { type Laid, laidFrom, THE_HANG, toAddress, useAddress, type View } from '../view-address.ts';
import { chosenMoves, proposalFoot, useInProposal } from './in-proposal.ts';
import { stateOf } from './open-proposals.ts';
import { ProposalMark } from './proposal-mark.tsx';
import { ViewSwitch } from './view-switch.tsx';
import './proposal-band.css';

export function ProposalBand({ view }: { readonly view: View }) {
  const inside = useInProposal();
  const fold = useFold();
  const foot = useStore(proposalFoot);
  const laid: Laid = laidFrom(useAddress());
  const id = inside?.id;
  const title = inside?.proposal.title;
  useEffect(() => {
    chosenMoves.set(new Set());
    if (id === undefined) return;
    proposalFoot.set('moves');
  }, [id]);
  useEffect(() => {
    if (id !== undefined) say(`In the proposal ${title}. The hang stays as it is.`);
  }, [id, title]);
  if (inside === null || laid.kind !== 'proposal') return null;
  const { proposal, moves, shown } = inside;
  const state = stateOf(proposal);
  const onStage = isStage(view);
  return (
    <section className="band proposal-band" aria-label="The proposal you are in">
      <ProposalMark state={state} sizePx={15} />
      <p>
        In the proposal <b className="b">{proposal.title}</b>;{' '}
        {state === 'open'
          ? shown.may('hang')
            ? 'whatever you do here is proposed, and the hang stays as it is.'
            : 'the hang stays as it is.'
          : `it is ${state}, kept for the record, and cannot be changed.`}
      </p>
      {fold === 'wide' || !onStage ? null : <ViewSwitch />}
      {onStage ? (
        <span className="proposal-band-foot t1">
          <button
            type="button"
            className={`cmd${foot === 'moves' ? ' on' : ''}`}
            aria-pressed={foot === 'moves'}
            onClick={() => proposalFoot.set('moves')}
          >
            its moves {moves.length}
          </button>
          {shown.may('hang') ? (
            <button
              type="button"
              className={`cmd${foot === 'unplaced' ? ' on' : ''}`}
              aria-pressed={foot === 'unplaced'}
              onClick={() => proposalFoot.set('unplaced')}
            >
              the unplaced
            </button>
          ) : null}
        </span>
      ) : null}
      <a className="proposal-band-leave t1" href={toAddress(view, THE_HANG)}>
        back to the hang
      </a>
    </section>
  );
}
