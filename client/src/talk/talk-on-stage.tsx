/** What people say and show each other on the stage: rings of remarks, a spot asked for, pointers, and a shared view. */
import { toDrawing } from '@enfilade/space/fold-out';
import { type RefObject, useEffect, useSyncExternalStore } from 'react';
import { useStore } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import { panelOf } from '../stage/panels.ts';
import type { StageMachine } from '../stage/stage-machine.ts';
import { useOthers, useShow } from '../sync/hooks.ts';
import { toAddress, type View } from '../view-address.ts';
import { alongWith, letGo } from './going-along.tsx';
import { lookAt, ownWayOf, sayLooking } from './looking.ts';
import { sayPointer } from './pointer-hand.ts';
import { PointersSeen } from './pointers-seen.tsx';
import { pointing } from './pointing.ts';
import { RemarkRings, Spot, StageBoard } from './remark-rings.tsx';
import { spotTaken } from './spot-asked.ts';
import { takeSpots } from './spot-hand.ts';
import './talk-on-stage.css';

interface Props {
  readonly machine: StageMachine;
  readonly box: RefObject<HTMLDivElement | null>;
  readonly view: View;
  /** Another stage has the hands. */
  readonly looking: boolean;
}

export function TalkOnStage({ machine, box, view, looking }: Props) {
  useEffect(() => {
    const element = box.current;
    if (element === null || looking) return;
    const ways = [takeSpots(machine, element), sayPointer(machine, element)];
    return () => {
      for (const leave of ways) leave();
      pointing.set(false);
    };
  }, [machine, box, looking]);
  return (
    <>
      {looking ? null : <SharedView machine={machine} view={view} />}
      <StageBoard machine={machine}>
        <SpotTaken machine={machine} />
        <RemarkRings machine={machine} />
        <PointersSeen machine={machine} />
      </StageBoard>
    </>
  );
}

/** Says what I look at to whoever goes along; shows what they look at with whom I go along. */
function SharedView({ machine, view }: { readonly machine: StageMachine; readonly view: View }) {
  const { me } = useShow();
  const others = useOthers();
  const who = useStore(alongWith);
  const led = others.some(({ presence }) => presence.alongWith === me.person.id);
  const leader = others.find(({ person }) => person.id === who)?.presence;
  const here = toAddress(view) === `#${leader?.at}`;
  // As words, so that it is news only where it says something else.
  const theirs = here ? JSON.stringify(leader?.looking ?? null) : null;
  useEffect(() => (led ? sayLooking(machine) : undefined), [machine, led]);
  useEffect(() => {
    if (theirs === null) return;
    lookAt(machine, JSON.parse(theirs));
    return ownWayOf(machine, () => {
      letGo();
      say('You go your own way');
    });
  }, [machine, theirs]);
  return null;
}

/** The spot a remark is being written on. */
function SpotTaken({ machine }: { readonly machine: StageMachine }) {
  const spot = useStore(spotTaken);
  const scene = useStore(machine.sceneNow);
  const scale = useSyncExternalStore(machine.shownAt.subscribe, () => machine.shownAt.get().scale);
  const panel = spot === null || scene === null ? undefined : panelOf(scene.frame, spot.surface);
  if (spot === null || panel === undefined) return null;
  const { X, Y } = toDrawing(panel, spot.xMm, spot.yMm);
  return <Spot x={Math.round(X * scale)} y={Math.round(Y * scale)} ink={panel.ink} />;
}
