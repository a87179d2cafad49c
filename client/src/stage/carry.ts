/** From the rail onto the stage: by the pointer, or by keys into the middle of what is in view. */
import * as commands from '@enfilade/shared/commands';
import type { PieceId } from '@enfilade/shared/schema';
import { ontoPanel } from '@enfilade/space/fold-out';
import { choose } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import type { View } from '../view-address.ts';
import { toDrawingPoint } from './camera.ts';
import { droppedAt } from './drop-targets.ts';
import type { Gestures } from './gestures.ts';
import { gripOf, placesOf } from './grip.ts';
import type { ScenePanel } from './panels.ts';
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

/** Places pieces in the middle of what is in view: hung on the centre line, or standing where they stand. */
export function placeAtCentre(pieceIds: readonly PieceId[], _view: View): boolean {
  const first = pieceIds[0];
  if (open === null || first === undefined) return false;
  const { machine, element } = open;
  const { scene, resting, show, camera, size, insets } = machine;
  const own = resting.sizeOf(first);
  if (scene === null || own === null) return false;
  const levels = resting.levelsOf(first);
  const panel = panelFor(scene.frame.panels, own.depthMm > 60 || levels.length > 0);
  if (panel === undefined) return false;
  const middle = toDrawingPoint(
    camera,
    (insets.left + size.width - insets.right) / 2,
    (insets.top + size.height - insets.bottom) / 2,
  );
  const at =
    scene.frame.sheet === 'room'
      ? { xMm: panel.widthMm / 2, yMm: panel.heightMm / 2 }
      : ontoPanel(panel, middle.X, middle.Y);
  const others = pieceIds.slice(1).reduce((sum, id) => sum + (resting.sizeOf(id)?.widthMm ?? 0) + 60, 0);
  const dropped = droppedAt(resting, {
    panel,
    xMm: at.xMm - others / 2,
    yMm: panel.kind === 'wall' ? scene.frame.centreLineMm : at.yMm,
    size: own,
    levelsMm: levels,
    from: null,
    items: [],
    centreLineMm: scene.frame.centreLineMm,
    reachMm: 5,
  });
  const grip = gripOf(resting, first, pieceIds, null, { xMm: 0, yMm: 0 });
  const places = placesOf(resting, { ...grip, from: new Map() }, panel, dropped);
  const name = pieceIds.length === 1 ? show.judgements.nameOf(first) : `${pieceIds.length} pieces`;
  if (!show.perform(commands.place(show.documents, places, `place ${name}`))) return false;
  choose(pieceIds);
  element.focus({ preventScroll: true });
  return true;
}

/** A faced wall takes what it is given; in a fold-out deep things go to the floor, flat ones to the head wall. */
function panelFor(panels: readonly ScenePanel[], stands: boolean): ScenePanel | undefined {
  return panels.find(({ kind, side }) => (stands ? kind === 'floor' : side === 'head')) ?? panels[0];
}
