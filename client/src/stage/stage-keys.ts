/** The keyboard on the stage. What each key does is told in keys.ts. */
import * as commands from '@enfilade/shared/commands';
import { choose, selection } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import type { Gestures } from './gestures.ts';
import { OPEN_CARD } from './keys.ts';
import { RoomForHand, toggleMakingRoom } from './making-room.ts';
import { nudged } from './nudge.ts';
import type { StageMachine } from './stage-machine.ts';

const STEP_MM = 10;
const LONG_STEP_MM = 100;
const PAN_PX = 80;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** True when the key was ours. */
export function pressKey(machine: StageMachine, gestures: Gestures, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const arrow = ARROWS[event.key];
  const chosen = selection.get();
  const { width, height } = machine.size;
  if (arrow !== undefined) {
    if (chosen.length === 0) machine.pan(-arrow[0] * PAN_PX, -arrow[1] * PAN_PX);
    else nudge(machine, arrow, event.shiftKey ? LONG_STEP_MM : STEP_MM);
    return true;
  }
  switch (event.key) {
    case '+':
    case '=':
      machine.zoom(1.25, width / 2, height / 2);
      return true;
    case '-':
    case '−':
      machine.zoom(0.8, width / 2, height / 2);
      return true;
    case '0':
      machine.fit();
      return true;
    case 'PageUp':
      machine.pan(0, height * 0.8);
      return true;
    case 'PageDown':
      machine.pan(0, -height * 0.8);
      return true;
    case ',':
    case '<':
    case ';':
      return turn(machine, event.shiftKey ? -1500 : -100);
    case '.':
    case '>':
    case ':':
      return turn(machine, event.shiftKey ? 1500 : 100);
    case 'Delete':
    case 'Backspace':
      return putBack(machine);
    case 'Escape':
      if (!gestures.cancel()) choose([]);
      return true;
    case 'n':
    case 'N':
      toggleMakingRoom();
      return true;
    case 'Enter':
      if (chosen.length === 0) return false;
      dispatchEvent(new CustomEvent(OPEN_CARD));
      return true;
    default:
      return false;
  }
}

function nudge(machine: StageMachine, [dx, dy]: readonly [number, number], stepMm: number): void {
  const { show, scene } = machine;
  const chosen = selection.get();
  if (scene === null) return;
  const itemOf = (id: string) => {
    const items = scene.itemsOf(id);
    return items.find(({ direct }) => direct) ?? items[0];
  };
  const places = nudged(machine.resting, chosen, itemOf, dx * stepMm, dy * stepMm);
  const [one] = places;
  if (one === undefined) return;
  const made = new RoomForHand(show).placesAt(one[1][0], places);
  const what = places.size === 1 ? show.judgements.nameOf(one[0]) : `${places.size} pieces`;
  if (!show.perform(commands.place(show.documents, made ?? places, `move ${what}`)))
    say('Not done: this cannot be written just now.');
}

function turn(machine: StageMachine, turnCentidegrees: number): boolean {
  const { show } = machine;
  const chosen = selection.get().filter((id) => machine.resting.placeOf(id) !== null);
  if (chosen.length === 0) return false;
  const done = show.perform(commands.move(show.documents, chosen, { dxMm: 0, dyMm: 0, turnCentidegrees }));
  say(done ? `Turned by ${Math.abs(turnCentidegrees) / 100}°` : 'Not done: this cannot be written just now.');
  return true;
}

function putBack(machine: StageMachine): boolean {
  const { show } = machine;
  const chosen = selection.get().filter((id) => show.judgements.where.placeOf(id) !== null);
  if (chosen.length === 0) return false;
  const done = show.perform(commands.unplace(show.documents, chosen));
  const what = chosen.length === 1 ? show.judgements.nameOf(chosen[0] as string) : `${chosen.length} pieces`;
  say(done ? `${what} put back to the unplaced` : 'Not done: this cannot be written just now.');
  if (done) choose([]);
  return true;
}
