/** The hand and the keys that point: where the pointer is on a surface, said at most once a frame. */
import { arrowOnPanel } from '@enfilade/space/fold-out';
import { OncePerFrame } from '../stage/frames.ts';
import { panelOf } from '../stage/panels.ts';
import type { StageMachine } from '../stage/stage-machine.ts';
import { pointedByKeys, pointing, setPointing } from './pointing.ts';
import { type OnSurface, surfaceAtPx, surfaceUnder } from './surface-under.ts';

const STEP_MM = 100;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Says where the pointer is, at most once a frame; the key `w` and Escape on the stage, and the arrows while it is on. */
export function sayPointer(machine: StageMachine, element: HTMLElement): () => void {
  const { presence } = machine.show;
  let now: OnSurface | null = null;
  let at = { clientX: 0, clientY: 0 };
  const tell = (place: OnSurface | null, byKeys: boolean): void => {
    pointedByKeys.set(byKeys ? place : null);
    if (place?.join() === now?.join()) return;
    now = place;
    presence.say({ pointer: place });
  };
  const look = new OncePerFrame(() => {
    if (pointing.get()) tell(surfaceUnder(machine, element, at as MouseEvent), false);
  });
  const move = (event: PointerEvent): void => {
    at = event;
    if (pointing.get()) look.ask();
  };
  const leave = (event: PointerEvent): void => {
    if (event.pointerType !== 'touch' && pointing.get() && pointedByKeys.get() === null) tell(null, false);
  };
  const middle = (): OnSurface | null => {
    const { size, insets, scene } = machine;
    const x = (insets.left + size.width - insets.right) / 2;
    const y = (insets.top + size.height - insets.bottom) / 2;
    const panel = scene?.frame.panels[0];
    return surfaceAtPx(machine, x, y) ?? (panel ? [panel.surface, panel.widthMm / 2, panel.heightMm / 2] : null);
  };
  const step = ([dx, dy]: readonly [number, number]): void => {
    const from = now ?? middle();
    const panel = from === null || machine.scene === null ? undefined : panelOf(machine.scene.frame, from[0]);
    if (from === null || panel === undefined) return;
    const { dxMm, dyMm } = arrowOnPanel(panel, dx * STEP_MM, dy * STEP_MM);
    const within = (value: number, least: number, most: number) => Math.min(Math.max(value, least), most);
    const x = within(from[1] + dxMm, 0, panel.widthMm);
    const y = within(from[2] + dyMm, panel.lowestMm, panel.heightMm);
    tell([from[0], Math.round(x), Math.round(y)], true);
  };
  const keydown = (event: KeyboardEvent): void => {
    if (event.target !== element || event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = ARROWS[event.key];
    if (event.key === 'w') setPointing(!pointing.get());
    else if (!pointing.get()) return;
    else if (arrow !== undefined) step(arrow);
    else if (event.key === 'Escape') setPointing(false);
    else return;
    event.stopImmediatePropagation();
    event.preventDefault();
  };
  const turned = (): void => {
    if (!pointing.get()) tell(null, false);
    // By keys it begins in the middle of what is seen; a hand's first move takes it from there.
    else if (now === null) tell(middle(), true);
  };
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerdown', move);
  element.addEventListener('pointerleave', leave);
  element.addEventListener('keydown', keydown, true);
  // Whoever turns to another wall points at nothing on it yet.
  const viewed = (): void => {
    if (now !== null && machine.scene !== null && panelOf(machine.scene.frame, now[0]) === undefined) tell(null, false);
  };
  const ways = [pointing.subscribe(turned), machine.sceneNow.subscribe(viewed)];
  return () => {
    for (const stop of ways) stop();
    look.stop();
    tell(null, false);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerdown', move);
    element.removeEventListener('pointerleave', leave);
    element.removeEventListener('keydown', keydown, true);
  };
}
