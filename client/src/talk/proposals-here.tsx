/** Beneath a wall's caption: the open proposals that touch it. */
import { facedSurface } from '../shell/current-view.ts';
import { useHang, useRoots } from '../sync/hooks.ts';
import { toAddress, type View } from '../view-address.ts';
import { proposalsOn } from './open-proposals.ts';
import { ProposalMark } from './proposal-mark.tsx';
import './proposal-caption.css';

export function ProposalsHere({ view }: { readonly view: View }) {
  const { judgements } = useHang();
  useRoots('proposals', 'proposed');
  const faced = facedSurface(view);
  const surfaces =
    faced !== null
      ? [faced]
      : view.sheet === 'room'
        ? ['head', 'right', 'foot', 'left', 'floor', 'ceiling'].map((side) => `${view.roomId}:${side}`)
        : [];
  const here = proposalsOn(judgements, surfaces);
  if (here.length === 0) return null;
  return (
    <section className="proposals-here" aria-label="Proposals here">
      <p className="t1 b">{here.length === 1 ? 'A proposal touches this' : `${here.length} proposals touch this`}</p>
      <ul>
        {here.map(([id, proposal]) => (
          <li key={id}>
            <ProposalMark state="open" sizePx={12} />
            <a className="t1" href={toAddress(view, { kind: 'proposal', id })}>
              {proposal.title}, {proposal.name}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
