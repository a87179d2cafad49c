/** What part of the drawing is looked at: said to those who go along, and shown by them in their own window. */
import type { Presence } from '@enfilade/shared/presence';
import { fitted, toDrawingPoint } from '../stage/camera.ts';
import type { StageMachine } from '../stage/stage-machine.ts';

type Looking = NonNullable<Presence['looking']>;

/** Said at most so often, ms. */
const EVERY_MS = 100;

/** What the window shows between caption and card; null while it shows the whole. */
export function lookingOf({ viewport, camera, size, insets }: StageMachine): Looking | null {
  if (viewport.untouched) return null;
  const a = toDrawingPoint(camera, insets.left, insets.top);
  const b = toDrawingPoint(camera, size.width - insets.right, size.height - insets.bottom);
  return [(a.X + b.X) / 2, (a.Y + b.Y) / 2, Math.max(1, b.X - a.X), Math.max(1, b.Y - a.Y)].map(
    Math.round,
  ) as unknown as Looking;
}

/** The same part in this window, as near as it goes. */
export function lookAt(machine: StageMachine, looking: Looking | null): void {
  if (looking === null) {
    machine.fit();
    return;
  }
  const [X, Y, width, height] = looking;
  const bounds = { minX: X - width / 2, minY: Y - height / 2, maxX: X + width / 2, maxY: Y + height / 2 };
  const to = fitted(bounds, machine.size, machine.insets);
  const factor = to.scale / machine.camera.scale;
  if (Math.abs(factor - 1) > 1e-6) machine.zoom(factor, 0, 0);
  machine.pan(to.x - machine.camera.x, to.y - machine.camera.y);
}

/** Says it while somebody goes along with me: at once, then at most ten times a second, the last word of it always. */
export function sayLooking(machine: StageMachine): () => void {
  const { presence } = machine.show;
  let timer = 0;
  let said: string | null = null;
  const tell = (): void => {
    const looking = lookingOf(machine);
    const words = JSON.stringify(looking);
    if (words === said) return;
    said = words;
    presence.say({ looking });
    timer = window.setTimeout(() => {
      timer = 0;
      tell();
    }, EVERY_MS);
  };
  const moved = (): void => {
    if (timer === 0) tell();
  };
  moved();
  const stop = machine.shownAt.subscribe(moved);
  return () => {
    stop();
    clearTimeout(timer);
    presence.say({ looking: null });
  };
}

/** Tells when a hand here moves the view from where `lookAt` put it. */
export function ownWayOf(machine: StageMachine, gone: () => void): () => void {
  const given = machine.camera;
  return machine.shownAt.subscribe(() => {
    if (machine.camera !== given && !machine.viewport.untouched) gone();
  });
}
