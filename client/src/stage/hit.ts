/** Which piece lies under a point: the frontmost whose picture is opaque there. */
import type { SceneItem } from './scene-items.ts';

/** Whether a picture is opaque at a share (0..1) of its width and height from its left upper corner. */
export type OpaqueAt = (item: SceneItem, u: number, v: number) => boolean;

/** A drawing point in an item's own axes, as shares of its width and height; inside is 0..1 both ways. */
export function within(item: SceneItem, X: number, Y: number): { readonly u: number; readonly v: number } {
  const turn = (-item.rotationDegrees * Math.PI) / 180;
  const dx = X - item.X;
  const dy = Y - item.Y;
  return {
    u: (dx * Math.cos(turn) - dy * Math.sin(turn)) / item.widthMm + 0.5,
    v: (dx * Math.sin(turn) + dy * Math.cos(turn)) / item.heightMm + 0.5,
  };
}

/**
 * The frontmost of `items` (back to front) at a drawing point. `slopMm`: how far beside a thing still counts, once
 * nothing lies right under the point: for fingers, and for things a few pixels small.
 */
export function hitOf(
  items: readonly SceneItem[],
  X: number,
  Y: number,
  slopMm: number,
  opaqueAt: OpaqueAt,
): SceneItem | null {
  let nearest: SceneItem | null = null;
  let nearestMm = slopMm;
  // An outline before the wall is taken hold of only where nothing hangs behind it.
  let outline: SceneItem | null = null;
  for (let i = items.length - 1; i >= 0; i--) {
    const item = items[i] as SceneItem;
    const { u, v } = within(item, X, Y);
    if (u >= 0 && u <= 1 && v >= 0 && v <= 1) {
      if (item.as === 'flank' || item.as === 'overhead') outline ??= item;
      else if (opaqueAt(item, u, v)) return item;
      continue;
    }
    const beside = Math.hypot(Math.max(0, -u, u - 1) * item.widthMm, Math.max(0, -v, v - 1) * item.heightMm);
    if (beside < nearestMm) {
      nearest = item;
      nearestMm = beside;
    }
  }
  return nearest ?? outline;
}
