/** The stage while a kept state is looked at: the state, and the hang beside it where that is asked for. */
import { useEffect, useState } from 'react';
import { useStore } from '../selection.ts';
import type { Insets } from '../stage/camera.ts';
import { Stage } from '../stage/stage.tsx';
import type { StageMachine } from '../stage/stage-machine.ts';
import { ShowContext } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import type { View } from '../view-address.ts';
import { keepInStep } from './cameras-in-step.ts';
import { Divider, dividerAt } from './divider.tsx';
import './proposal-stage.css';

export function StateStage(props: {
  readonly view: View;
  readonly insets: Insets;
  /** The hang as it is; null while the state alone is looked at. */
  readonly still: ShowSession | null;
}) {
  const { view, insets, still } = props;
  const [mine, setMine] = useState<StageMachine | null>(null);
  const [other, setOther] = useState<StageMachine | null>(null);
  const both = still !== null;
  useEffect(() => {
    if (!both || mine === null || other === null) return;
    return keepInStep(mine, other);
  }, [both, mine, other]);
  const at = useStore(dividerAt);
  return (
    <>
      <div className="proposal-sheet">
        <Stage view={view} insets={insets} opened={setMine} />
      </div>
      {still === null ? null : (
        <>
          <div className="proposal-under" style={{ clipPath: `inset(0 ${(1 - at) * 100}% 0 0)` }}>
            <ShowContext value={still}>
              <Stage view={view} insets={insets} opened={setOther} beside looking />
            </ShowContext>
          </div>
          <Divider right="the kept state" />
        </>
      )}
    </>
  );
}
