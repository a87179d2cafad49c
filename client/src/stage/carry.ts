/** From the rail onto the stage: by the pointer, or by keys into the middle of what is in view. */
import type { PieceId } from '@enfilade/shared/schema';
import { choose } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import type { View } from '../view-address.ts';
import type { Gestures } from './gestures.ts';
import { type Placing, placeInMiddle } from './place-in-middle.ts';
import type { StageMachine } from './stage-machine.ts';
import './carry.css';

interface OpenStage {
  readonly machine: StageMachine;
  readonly gestures: Gestures;
  readonly element: HTMLElement;
}

let open: OpenStage | null = null;

/** The stage on screen says that it is there; null when it goes. */
export function openStage(stage: OpenStage | null): void {
  open = stage;
}

/** The pointer carries these pieces from now until it is let go; over the stage they are seen at true size. */
export function beginCarry(pieceIds: readonly PieceId[], event: PointerEvent): void {
  if (open === null || pieceIds.length === 0 || !open.machine.show.may('hang')) return;
  const { machine, gestures, element } = open;
  const name =
    pieceIds.length === 1 ? machine.show.judgements.nameOf(pieceIds[0] as string) : `${pieceIds.length} pieces`;
  const label = document.createElement('div');
  label.className = 'carried';
  label.textContent = name;
  document.body.append(label);
  let over = false;
  const follow = (at: PointerEvent): void => {
    const box = element.getBoundingClientRect();
    const inside =
      at.clientX >= box.left && at.clientX <= box.right && at.clientY >= box.top && at.clientY <= box.bottom;
    label.style.transform = `translate(${Math.round(at.clientX + 10)}px, ${Math.round(at.clientY + 10)}px)`;
    label.hidden = inside;
    const [x, y] = [at.clientX - box.left, at.clientY - box.top];
    if (inside && !over) gestures.takeOver(pieceIds, x, y);
    else if (inside) gestures.carryTo(x, y, at.altKey);
    else if (over) gestures.cancel();
    over = inside;
  };
  const end = (): void => {
    label.remove();
    removeEventListener('pointermove', follow);
    removeEventListener('pointerup', up);
    removeEventListener('pointercancel', lost);
    removeEventListener('keydown', cancelled, true);
  };
  const up = (at: PointerEvent): void => {
    follow(at);
    end();
    if (over && gestures.letGo()) {
      choose(pieceIds);
      element.focus({ preventScroll: true });
      say(`${name} placed`);
    }
  };
  const lost = (): void => {
    end();
    gestures.cancel();
  };
  const cancelled = (key: KeyboardEvent): void => {
    if (key.key === 'Escape') lost();
  };
  addEventListener('pointermove', follow);
  addEventListener('pointerup', up);
  addEventListener('pointercancel', lost);
  addEventListener('keydown', cancelled, true);
  follow(event);
}

/** Places pieces in the middle of what is on screen, or beside it, and takes the keyboard there. */
export function placeAtCentre(pieceIds: readonly PieceId[], _view: View): Placing | null {
  if (open === null) return null;
  const placing = placeInMiddle(open.machine, pieceIds);
  if (placing !== null) {
    choose(pieceIds);
    open.element.focus({ preventScroll: true });
  }
  return placing;
}
