/** What a press chooses: a thing, one more thing, all a frame catches, a whole vignette. */
import { membersOf, vignetteOf } from '@enfilade/shared/commands';
import { choose, chooseToo, choosing, selection } from '../selection.ts';
import { toDrawingPoint } from './camera.ts';
import { POINTER_SLOP_PX } from './hover.ts';
import type { Rect, SceneItem } from './scene-items.ts';
import type { StageMachine } from './stage-machine.ts';

export function choosePressed(item: SceneItem | null, held: boolean): void {
  const too = held || choosing.get();
  if (item === null) {
    if (!too) choose([]);
  } else if (too) chooseToo(item.pieceId);
  else choose([item.pieceId]);
}

interface WindowPoint {
  readonly x: number;
  readonly y: number;
}

/** A frame from one window point to another, to take all that lies in it. */
export function drawMarquee(machine: StageMachine, from: WindowPoint, x: number, y: number): void {
  const a = toDrawingPoint(machine.camera, Math.min(from.x, x), Math.min(from.y, y));
  const b = toDrawingPoint(machine.camera, Math.max(from.x, x), Math.max(from.y, y));
  machine.setHot({ marquee: { minX: a.X, minY: a.Y, maxX: b.X, maxY: b.Y } });
}

/** All that lies in a frame (drawing mm), with what was chosen before. */
export function chooseCaught(machine: StageMachine, frame: Rect): void {
  const caught = machine.scene?.within(frame).map(({ pieceId }) => pieceId) ?? [];
  choose([...new Set([...selection.get(), ...caught])]);
}

/** Pressed twice: the whole vignette, as far as it is shown. */
export function chooseWhole(machine: StageMachine, { x, y }: WindowPoint): void {
  const item = machine.hit(x, y, POINTER_SLOP_PX);
  const { documents } = machine.show;
  const vignette = item === null ? null : vignetteOf(documents, item.pieceId);
  if (vignette === null) return;
  choose(membersOf(documents, vignette).filter((id) => (machine.scene?.itemsOf(id).length ?? 0) > 0));
}
