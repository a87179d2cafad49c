/** Where the others point, on the surfaces I look at: an open ring in their pattern, their initials and name beside it. */
import { initialsOf, type RingPattern } from '@enfilade/shared/presence';
import { toDrawing } from '@enfilade/space/fold-out';
import { useSyncExternalStore } from 'react';
import { useStore } from '../selection.ts';
import { RingEdge } from '../shell/ring.tsx';
import { panelOf } from '../stage/panels.ts';
import type { StageMachine } from '../stage/stage-machine.ts';
import { useOthers, useShow } from '../sync/hooks.ts';
import { pointedByKeys } from './pointing.ts';
import type { OnSurface } from './surface-under.ts';

const RING_PX = 15;

export function PointersSeen({ machine }: { readonly machine: StageMachine }) {
  const { layerId, me, presence: room } = useShow();
  useOthers();
  const mine = useStore(pointedByKeys);
  const scene = useStore(machine.sceneNow);
  const scale = useSyncExternalStore(machine.shownAt.subscribe, () => machine.shownAt.get().scale);
  if (scene === null) return null;
  const at = ([surface, xMm, yMm]: OnSurface): { left: number; top: number } | null => {
    const panel = panelOf(scene.frame, surface);
    if (panel === undefined) return null;
    const { X, Y } = toDrawing(panel, xMm, yMm);
    return { left: X * scale, top: Y * scale };
  };
  const own = mine === null ? null : at(mine);
  return (
    <>
      {own === null ? null : <Pointer style={own} pattern={room.ringOf(me.person.id)} name={null} />}
      {room.everyoneIn(layerId).map(({ clientId, person, ring, presence }) => {
        const style = presence.pointer ? at(presence.pointer) : null;
        return style === null ? null : <Pointer key={clientId} style={style} pattern={ring} name={person.name} />;
      })}
    </>
  );
}

function Pointer(props: {
  readonly style: { left: number; top: number };
  readonly pattern: RingPattern;
  /** Null: my own, which I know. */
  readonly name: string | null;
}) {
  const { style, pattern, name } = props;
  return (
    <div className="pointer-seen" style={style}>
      <svg width="1" height="1" aria-hidden="true">
        <circle r={RING_PX} fill="none" stroke="#f6f6f6" strokeWidth={5} />
        <RingEdge pattern={pattern} r={RING_PX} />
      </svg>
      {name === null ? null : (
        <span>
          <b className="b">{initialsOf(name)}</b> {name}
        </span>
      )}
    </div>
  );
}
