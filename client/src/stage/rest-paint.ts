/** Painting part of what rests, on whichever canvas: the bitmap with its margin, or the window's own. */
import type { Bitmaps } from './bitmaps.ts';
import type { Camera, WindowSize } from './camera.ts';
import { drawItem } from './draw-items.ts';
import { drawLabel } from './draw-labels.ts';
import { drawNameOnPlan } from './draw-names.ts';
import { drawPanels } from './draw-panels.ts';
import { drawSurrounds } from './draw-surrounds.ts';
import type { Scene } from './scene.ts';
import type { Rect } from './scene-items.ts';
import type { Canvas2D, Sheet } from './sheet.ts';

/** Hatched bands and strokes reach a little over their piece. */
const OVER_PX = 8;
/** In a plan names stand beside their footprints. */
const NAME_PX = 124;

export type Look = Omit<Sheet, 'ctx' | 'k' | 'ox' | 'oy'>;

/** What is painted, how it lies, and in what look. */
export interface Taken {
  readonly camera: Camera;
  readonly scene: Scene;
  readonly look: Look;
}

/** Whole device px of a canvas. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A canvas of w × h device px on which the window of what was taken lies at (left, top). */
export interface Lying {
  readonly left: number;
  readonly top: number;
  readonly w: number;
  readonly h: number;
}

/** The part of a canvas a rectangle of the drawing reaches; null where it reaches none. */
export function boxOn({ camera, scene, look }: Taken, rect: Rect, { left, top, w, h }: Lying): Box | null {
  const over = reachOf(scene) * look.dpr;
  const k = camera.scale * look.dpr;
  const x = Math.max(0, Math.floor(camera.x * look.dpr + left + rect.minX * k - over));
  const y = Math.max(0, Math.floor(camera.y * look.dpr + top + rect.minY * k - over));
  const right = Math.min(w, Math.ceil(camera.x * look.dpr + left + rect.maxX * k + over));
  const bottom = Math.min(h, Math.ceil(camera.y * look.dpr + top + rect.maxY * k + over));
  return right <= x || bottom <= y ? null : { x, y, w: right - x, h: bottom - y };
}

/** Boxes of which none would be smaller painted together: a thing's old and new place are mostly one. */
export function mergedBoxes(boxes: readonly Box[]): Box[] {
  const merged: Box[] = [];
  for (const box of boxes) {
    let now = box;
    for (let i = merged.length - 1; i >= 0; i--) {
      const other = merged[i] as Box;
      const both = around(now, other);
      if (both.w * both.h > now.w * now.h + other.w * other.h) continue;
      merged.splice(i, 1);
      now = both;
      i = merged.length;
    }
    merged.push(now);
  }
  return merged;
}

function around(a: Box, b: Box): Box {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

/** Paints a box of such a canvas anew. */
export function paintBox(
  ctx: Canvas2D,
  { camera, scene, look }: Taken,
  bitmaps: Bitmaps,
  { x, y, w, h }: Box,
  { left, top }: { readonly left: number; readonly top: number },
): void {
  const k = camera.scale * look.dpr;
  const sheet: Sheet = { ...look, ctx, k, ox: camera.x * look.dpr + left, oy: camera.y * look.dpr + top };
  ctx.save();
  ctx.beginPath();
  ctx.rect(x, y, w, h);
  ctx.clip();
  ctx.fillStyle = look.tones.board;
  ctx.fillRect(x, y, w, h);
  const over = reachOf(scene) * look.dpr;
  const clip = {
    minX: (x - over - sheet.ox) / k,
    minY: (y - over - sheet.oy) / k,
    maxX: (x + w + over - sheet.ox) / k,
    maxY: (y + h + over - sheet.oy) / k,
  };
  drawPanels(sheet, scene.frame, clip);
  const items = scene.within(clip);
  const labels = scene.labels.within(clip);
  for (const label of labels) drawLabel(sheet, label);
  for (const item of items) drawItem(sheet, item, bitmaps);
  // One without room is seen over what it lies over.
  for (const one of labels) if (one.label.meets.length > 0) drawLabel(sheet, one);
  for (const item of items) drawNameOnPlan(sheet, item);
  drawSurrounds(sheet, scene.frame, clip);
  ctx.restore();
}

function reachOf(scene: Scene): number {
  return scene.frame.sheet === 'room' ? NAME_PX : OVER_PX;
}

/** Whether a window of w × h device px, shown `f` times as large, lies within a bitmap's margin of m device px. */
export function coversWindow(
  { camera: of, look }: Taken,
  camera: Camera,
  w: number,
  h: number,
  m: number,
  f: number,
): boolean {
  const sx = (of.x - camera.x / f) * look.dpr + m;
  const sy = (of.y - camera.y / f) * look.dpr + m;
  return sx >= 0 && sy >= 0 && sx + w / f <= w + 2 * m && sy + h / f <= h + 2 * m;
}

/** Draws the part of a bitmap with a margin of m device px that a window of w × h shows, scaled where its camera is. */
export function copyWindow(
  target: Canvas2D,
  bitmap: OffscreenCanvas,
  { camera: of, look }: Taken,
  camera: Camera,
  { w, h, m }: { readonly w: number; readonly h: number; readonly m: number },
): void {
  const g = camera.scale / of.scale;
  // Window px (0, 0) lies here in the bitmap.
  const sx = (of.x - camera.x / g) * look.dpr + m;
  const sy = (of.y - camera.y / g) * look.dpr + m;
  target.imageSmoothingEnabled = g !== 1;
  target.drawImage(bitmap, sx, sy, w / g, h / g, 0, 0, w, h);
  target.imageSmoothingEnabled = true;
}

/** What a window's canvas shows: which scene from where, and its size in device px. */
export interface ShownWindow {
  readonly camera: Camera;
  readonly scene: Scene;
  readonly w: number;
  readonly h: number;
}

/** Whether what is to be shown is what the window shows and the bitmap was taken of. */
export function isShown(
  shown: ShownWindow,
  taken: Taken,
  due: { readonly scene: Scene; readonly camera: Camera; readonly size: WindowSize; readonly look: Look },
): boolean {
  const { scene, camera, size, look } = due;
  const { x, y, scale } = shown.camera;
  return (
    taken.scene === scene &&
    shown.scene === scene &&
    sameLook(taken.look, look) &&
    x === camera.x &&
    y === camera.y &&
    scale === camera.scale &&
    shown.w === Math.round(size.width * look.dpr) &&
    shown.h === Math.round(size.height * look.dpr)
  );
}

export function touchesEdge(box: Box, { w, h }: Lying): boolean {
  return box.x === 0 || box.y === 0 || box.x + box.w === w || box.y + box.h === h;
}

export function contextOf(canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D {
  // Opaque: copying it onto the window needs no blending.
  const context = canvas.getContext('2d', { alpha: false });
  if (context === null) throw new Error('this browser gave no 2d canvas');
  context.imageSmoothingQuality = 'medium';
  return context;
}

export function sameLook(a: Look, b: Look): boolean {
  return (
    a.dpr === b.dpr && a.tones === b.tones && a.unit === b.unit && a.figure === b.figure && a.belowPx === b.belowPx
  );
}
