/** The stage while in a proposal: its sheet over the hang, either alone, or both with a divider between them. */
import { useCallback, useEffect, useState } from 'react';
import { useStore } from '../selection.ts';
import type { Insets } from '../stage/camera.ts';
import { Stage } from '../stage/stage.tsx';
import type { StageMachine } from '../stage/stage-machine.ts';
import { ShowContext } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import type { View } from '../view-address.ts';
import { keepInStep } from './cameras-in-step.ts';
import { Divider, dividerAt } from './divider.tsx';
import { type InProposal, proposalView } from './in-proposal.ts';
import { Tracing } from './tracing.tsx';
import './proposal-stage.css';

export function ProposalStage(props: {
  readonly view: View;
  readonly insets: Insets;
  readonly inside: InProposal;
  /** The hang to be looked at; null while the proposal alone is. */
  readonly still: ShowSession | null;
}) {
  const { view, insets, inside, still } = props;
  const how = useStore(proposalView);
  const [mine, setMine] = useState<StageMachine | null>(null);
  const [other, setOther] = useState<StageMachine | null>(null);
  const both = still !== null;
  useEffect(() => {
    if (!both || mine === null || other === null) return;
    return keepInStep(mine, other);
  }, [both, mine, other]);
  const over = useCallback(
    (machine: StageMachine) => (how === 'proposed' ? null : <Tracing machine={machine} inside={inside} />),
    [how, inside],
  );
  const at = useStore(dividerAt);
  return (
    <>
      <div className="proposal-sheet" inert={how === 'as is'}>
        <Stage view={view} insets={insets} over={over} opened={setMine} />
      </div>
      {still !== null ? (
        <div
          className="proposal-under"
          style={how === 'as is' ? undefined : { clipPath: `inset(0 ${(1 - at) * 100}% 0 0)` }}
        >
          <ShowContext value={still}>
            <Stage view={view} insets={insets} opened={setOther} beside={how !== 'as is'} looking />
          </ShowContext>
        </div>
      ) : null}
      {how === 'side by side' ? <Divider /> : null}
    </>
  );
}
