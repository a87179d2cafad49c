/** The caption of the proposal one is in: its title, why, whose, and how it is looked at. */
import { describeProposal } from '@enfilade/shared/proposals';
import { type FormEvent, useId, useState } from 'react';
import { act } from '../cards/acting.ts';
import { useStore } from '../selection.ts';
import { momentText } from '../sheets/vignette-words.ts';
import { useFold } from '../shell/media.ts';
import { Ring } from '../shell/ring.tsx';
import { useShow } from '../sync/hooks.ts';
import { type InProposal, proposalView } from './in-proposal.ts';
import { stateOf } from './open-proposals.ts';
import { RemarksBlock } from './remarks-block.tsx';
import { ViewSwitch } from './view-switch.tsx';
import './proposal-caption.css';

export function ProposalCaption({ inside }: { readonly inside: InProposal }) {
  const { proposal, hang } = inside;
  const { presence } = useShow();
  const fold = useFold();
  const how = useStore(proposalView);
  const [editing, setEditing] = useState(false);
  const mine = proposal.by === hang.me.person.id && stateOf(proposal) === 'open';
  return (
    <section className="proposal-caption" aria-label={`Proposal: ${proposal.title}`}>
      <p className="t1">Proposal</p>
      <h2>{proposal.title}</h2>
      {proposal.reason === '' ? null : <p className="cap">“{proposal.reason}”</p>}
      <p className="proposal-by t1">
        <Ring name={proposal.name} pattern={presence.ringOf(proposal.by)} radiusPx={12} />
        <span>
          {proposal.name}, {proposal.role}
          <br />
          {momentText(new Date(proposal.at))}
        </span>
      </p>
      {mine ? (
        <p className="t1">
          <button type="button" aria-expanded={editing} onClick={() => setEditing(!editing)}>
            {editing ? 'leave as it was' : 'reword the proposal'}
          </button>
        </p>
      ) : null}
      {editing ? <Rewording inside={inside} done={() => setEditing(false)} /> : null}
      {fold === 'wide' ? (
        <div className="proposal-view">
          <ViewSwitch />
        </div>
      ) : null}
      {how === 'laid over' || how === 'side by side' ? (
        <ul className="proposal-legend t1" aria-label="What the marks on the wall say">
          <li>
            <i className="legend-goes" aria-hidden="true" /> goes
          </li>
          <li>
            <i className="legend-comes" aria-hidden="true">
              1
            </i>{' '}
            comes, with its number
          </li>
        </ul>
      ) : null}
      <RemarksBlock
        about={{ kind: 'proposal', proposalId: inside.id }}
        what="this proposal"
        command="remark on the proposal…"
      />
    </section>
  );
}

function Rewording({ inside, done }: { readonly inside: InProposal; readonly done: () => void }) {
  const { id, proposal, hang } = inside;
  const field = useId();
  const [title, setTitle] = useState(proposal.title);
  const [reason, setReason] = useState(proposal.reason);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const fields = { title: title.trim() || proposal.title, reason: reason.trim() };
    if (act(hang, describeProposal(id, fields), `${fields.title} reworded`)) done();
  };
  return (
    <form className="propose-form" onSubmit={submit}>
      <label htmlFor={`${field}-title`}>Title</label>
      <input id={`${field}-title`} value={title} onChange={(event) => setTitle(event.target.value)} />
      <label htmlFor={`${field}-reason`}>Reason</label>
      <textarea id={`${field}-reason`} rows={4} value={reason} onChange={(event) => setReason(event.target.value)} />
      <button type="submit" className="act main">
        set
      </button>
    </form>
  );
}
