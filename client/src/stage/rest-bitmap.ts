/**
 * Everything that rests, drawn once into a bitmap with a margin round the window. Panning copies from it, scrolling it
 * on where the margin runs out; a change repaints its own rectangle; a zoom shows it scaled until the hand rests.
 */
import type { Bitmaps } from './bitmaps.ts';
import type { Camera, WindowSize } from './camera.ts';
import { drawItem } from './draw-items.ts';
import { drawPanels } from './draw-panels.ts';
import { drawSurrounds } from './draw-surrounds.ts';
import type { Rect, Scene } from './scene.ts';
import type { Canvas2D, Sheet } from './sheet.ts';

const MARGIN_PX = 320;
/** Beyond so many separate rectangles one repaint of the whole is cheaper. */
const MOST_REPAIRS = 120;
/** Hatched bands and strokes reach a little over their piece. */
const OVER_PX = 8;
const NAME_PX = 124;

export type Look = Omit<Sheet, 'ctx' | 'k' | 'ox' | 'oy'>;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export class RestBitmap {
  private readonly bitmaps: Bitmaps;
  private front: OffscreenCanvas | null = null;
  private back: OffscreenCanvas | null = null;
  private taken: { camera: Camera; scene: Scene; look: Look } | null = null;
  private repairs: Rect[] = [];

  constructor(bitmaps: Bitmaps) {
    this.bitmaps = bitmaps;
  }

  /** Everything is to be drawn anew at the next show. */
  spoil(): void {
    this.taken = null;
    this.shown = null;
    this.repairs = [];
  }

  /** These rectangles of the drawing are to be drawn anew at the next show. */
  repair(rects: readonly Rect[]): void {
    if (this.taken === null) return;
    this.repairs.push(...rects);
  }

  /** True when what `show` last showed was scaled from another scale and should be taken again once the hand rests. */
  get scaled(): boolean {
    return this.shownScaled;
  }

  private shownScaled = false;
  /** What the window's canvas shows now, when it shows exactly what was taken. */
  private shown: { camera: Camera; scene: Scene; w: number; h: number } | null = null;

  /** Draws what rests onto the window's canvas. `exact`: not from a bitmap of another scale. */
  show(target: Canvas2D, scene: Scene, camera: Camera, size: WindowSize, look: Look, exact: boolean): void {
    const { dpr } = look;
    const m = Math.round(MARGIN_PX * dpr);
    const w = Math.round(size.width * dpr);
    const h = Math.round(size.height * dpr);
    if (this.front === null || this.front.width !== w + 2 * m || this.front.height !== h + 2 * m) {
      this.front = new OffscreenCanvas(w + 2 * m, h + 2 * m);
      this.back = null;
      this.spoil();
    }
    if (this.taken !== null && (this.taken.scene !== scene || !sameLook(this.taken.look, look))) this.spoil();
    const f = this.taken === null ? 1 : camera.scale / this.taken.camera.scale;
    if (this.taken !== null && f !== 1) {
      const covers = this.covers(camera, w, h, m, f, dpr);
      if (exact || !covers || f > 2.5 || f < 0.4) this.spoil();
    }
    if (this.taken === null) {
      this.take(scene, camera, look, m);
    } else {
      this.mend(m);
      if (f === 1 && !this.covers(camera, w, h, m, 1, dpr)) this.scroll(camera, m);
    }
    const at = this.taken as { camera: Camera } | null;
    if (at === null) return;
    this.shownScaled = at.camera.scale !== camera.scale;
    const g = camera.scale / at.camera.scale;
    // Window px (0, 0) lies here in the bitmap.
    const sx = (at.camera.x - camera.x / g) * dpr + m;
    const sy = (at.camera.y - camera.y / g) * dpr + m;
    target.imageSmoothingEnabled = g !== 1;
    target.drawImage(this.front, sx, sy, w / g, h / g, 0, 0, w, h);
    target.imageSmoothingEnabled = true;
    this.shown = g === 1 ? { camera, scene, w, h } : null;
  }

  /**
   * Where the window already shows this and only some rectangles changed: draws those alone, on the bitmap and on the
   * window. Copying from the bitmap instead would have the browser copy all of it before the next stroke.
   * False where that will not do and `show` is due.
   */
  mendOnto(target: Canvas2D, scene: Scene, camera: Camera, size: WindowSize, look: Look): boolean {
    const { taken, shown } = this;
    if (taken === null || shown === null || taken.scene !== scene || shown.scene !== scene) return false;
    if (!sameLook(taken.look, look) || !sameCamera(shown.camera, camera)) return false;
    if (shown.w !== Math.round(size.width * look.dpr) || shown.h !== Math.round(size.height * look.dpr)) return false;
    if (this.repairs.length > MOST_REPAIRS / 2) return false;
    const m = Math.round(MARGIN_PX * look.dpr);
    const left = Math.round((taken.camera.x - camera.x) * look.dpr) + m;
    const top = Math.round((taken.camera.y - camera.y) * look.dpr) + m;
    const repairs = this.repairs;
    this.repairs = [];
    for (const rect of repairs) {
      const box = this.boxOf(rect, m);
      if (box === null) continue;
      this.paint(box, m);
      const x = Math.max(0, box.x - left);
      const y = Math.max(0, box.y - top);
      const w = Math.min(shown.w, box.x - left + box.w) - x;
      const h = Math.min(shown.h, box.y - top + box.h) - y;
      if (w > 0 && h > 0) this.paintOn(target, { x, y, w, h }, m - left, m - top);
    }
    return true;
  }

  private covers(camera: Camera, w: number, h: number, m: number, f: number, dpr: number): boolean {
    if (this.taken === null) return false;
    const sx = (this.taken.camera.x - camera.x / f) * dpr + m;
    const sy = (this.taken.camera.y - camera.y / f) * dpr + m;
    return sx >= 0 && sy >= 0 && sx + w / f <= w + 2 * m && sy + h / f <= h + 2 * m;
  }

  private take(scene: Scene, camera: Camera, look: Look, m: number): void {
    this.taken = { camera, scene, look };
    this.repairs = [];
    this.bitmaps.begin();
    const { width, height } = this.front as OffscreenCanvas;
    this.paint({ x: 0, y: 0, w: width, h: height }, m);
  }

  private mend(m: number): void {
    const repairs = this.repairs;
    if (repairs.length === 0) return;
    this.repairs = [];
    const { width, height } = this.front as OffscreenCanvas;
    if (repairs.length > MOST_REPAIRS) this.paint({ x: 0, y: 0, w: width, h: height }, m);
    else
      for (const rect of repairs) {
        const box = this.boxOf(rect, m);
        if (box !== null) this.paint(box, m);
      }
  }

  /** The bitmap round another part of the drawing at the same scale: what both show is copied, the rest painted. */
  private scroll(camera: Camera, m: number): void {
    const front = this.front as OffscreenCanvas;
    const taken = this.taken as { camera: Camera; scene: Scene; look: Look };
    const { width, height } = front;
    const dx = Math.round((camera.x - taken.camera.x) * taken.look.dpr);
    const dy = Math.round((camera.y - taken.camera.y) * taken.look.dpr);
    this.taken = { ...taken, camera };
    this.bitmaps.begin();
    if (Math.abs(dx) >= width || Math.abs(dy) >= height) {
      this.paint({ x: 0, y: 0, w: width, h: height }, m);
      return;
    }
    this.back ??= new OffscreenCanvas(width, height);
    contextOf(this.back).drawImage(front, dx, dy);
    this.front = this.back;
    this.back = front;
    if (dx !== 0) this.paint({ x: dx > 0 ? 0 : width + dx, y: 0, w: Math.abs(dx), h: height }, m);
    if (dy !== 0) this.paint({ x: 0, y: dy > 0 ? 0 : height + dy, w: width, h: Math.abs(dy) }, m);
  }

  private boxOf(rect: Rect, m: number): Box | null {
    const front = this.front as OffscreenCanvas;
    const { camera, look } = this.taken as { camera: Camera; look: Look };
    const over = reachOf((this.taken as { scene: Scene }).scene) * look.dpr;
    const k = camera.scale * look.dpr;
    const x = Math.max(0, Math.floor(camera.x * look.dpr + m + rect.minX * k - over));
    const y = Math.max(0, Math.floor(camera.y * look.dpr + m + rect.minY * k - over));
    const right = Math.min(front.width, Math.ceil(camera.x * look.dpr + m + rect.maxX * k + over));
    const bottom = Math.min(front.height, Math.ceil(camera.y * look.dpr + m + rect.maxY * k + over));
    return right <= x || bottom <= y ? null : { x, y, w: right - x, h: bottom - y };
  }

  private paint(box: Box, m: number): void {
    this.paintOn(contextOf(this.front as OffscreenCanvas), box, m, m);
  }

  /** Paints a rectangle of a canvas on which the window of what was taken lies at (left, top). */
  private paintOn(ctx: Canvas2D, { x, y, w, h }: Box, left: number, top: number): void {
    const { camera, scene, look } = this.taken as { camera: Camera; scene: Scene; look: Look };
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
    for (const item of scene.within(clip)) drawItem(sheet, item, this.bitmaps);
    drawSurrounds(sheet, scene.frame, clip);
    ctx.restore();
  }
}

/** In a plan names stand beside their footprints. */
function reachOf(scene: Scene): number {
  return scene.frame.sheet === 'room' ? NAME_PX : OVER_PX;
}

function sameCamera(a: Camera, b: Camera): boolean {
  return a.x === b.x && a.y === b.y && a.scale === b.scale;
}

function contextOf(canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D {
  // Opaque: copying it onto the window needs no blending.
  const context = canvas.getContext('2d', { alpha: false });
  if (context === null) throw new Error('this browser gave no 2d canvas');
  context.imageSmoothingQuality = 'medium';
  return context;
}

function sameLook(a: Look, b: Look): boolean {
  return (
    a.dpr === b.dpr && a.tones === b.tones && a.unit === b.unit && a.figure === b.figure && a.belowPx === b.belowPx
  );
}
