/**
 * Everything that rests, drawn once into a bitmap with a margin round the window. Panning copies from it, scrolling it
 * on where the margin runs out; a change repaints its own rectangle; a zoom shows it scaled until the hand rests.
 */
import type { Bitmaps } from './bitmaps.ts';
import type { Camera, WindowSize } from './camera.ts';
import {
  type Box,
  boxOn,
  contextOf,
  copyWindow,
  coversWindow,
  isShown,
  type Look,
  type Lying,
  mergedBoxes,
  paintBox,
  type ShownWindow,
  sameLook,
  type Taken,
  touchesEdge,
} from './rest-paint.ts';
import type { Scene } from './scene.ts';
import type { Rect } from './scene-items.ts';
import type { Canvas2D } from './sheet.ts';

const MARGIN_PX = 320;
/** Beyond so many separate rectangles one repaint of the whole is cheaper. */
const MOST_REPAIRS = 120;
/** So many changes in the margin wait until it is seen. */
const MOST_UNSEEN = 40;

export class RestBitmap {
  private readonly bitmaps: Bitmaps;
  private front: OffscreenCanvas | null = null;
  private back: OffscreenCanvas | null = null;
  private taken: Taken | null = null;
  private repairs: Rect[] = [];
  /** What the window's canvas shows now, when it shows exactly what was taken. */
  private shown: ShownWindow | null = null;
  /** The window shows changes that the bitmap does not: they are copied back when the bitmap is next needed. */
  private behind = false;
  private unseen: Rect[] = [];

  constructor(bitmaps: Bitmaps) {
    this.bitmaps = bitmaps;
  }

  /** Everything is to be drawn anew at the next show. */
  spoil(): void {
    this.taken = null;
    this.shown = null;
    this.behind = false;
    this.repairs = [];
    this.unseen = [];
  }

  /** These rectangles of the drawing are to be drawn anew at the next show. */
  repair(rects: readonly Rect[]): void {
    if (this.taken !== null) this.repairs.push(...rects);
  }

  /** Draws what rests onto the window's canvas, cleared before. `exact`: not from a bitmap of another scale. */
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
    // What the window alone showed went when it was cleared.
    if (this.behind) this.spoil();
    if (this.taken !== null && (this.taken.scene !== scene || !sameLook(this.taken.look, look))) this.spoil();
    const f = this.taken === null ? 1 : camera.scale / this.taken.camera.scale;
    if (this.taken !== null && f !== 1) {
      const covers = coversWindow(this.taken, camera, w, h, m, f);
      if (exact || !covers || f > 2.5 || f < 0.4) this.spoil();
    }
    if (this.taken === null) {
      this.take(scene, camera, look);
    } else {
      this.mend();
      if (f === 1 && !coversWindow(this.taken, camera, w, h, m, 1)) this.scroll(camera);
    }
    const at = this.taken as Taken | null;
    if (at === null) return;
    const g = camera.scale / at.camera.scale;
    copyWindow(target, this.front, at, camera, { w, h, m });
    this.shown = g === 1 ? { camera, scene, w, h } : null;
  }

  /**
   * Where the window already shows this and only some rectangles changed: draws those alone, and on the window alone.
   * False where that will not do and `show` is due; the bitmap then has what the window had.
   */
  mendOnto(target: Canvas2D, scene: Scene, camera: Camera, size: WindowSize, look: Look, exact: boolean): boolean {
    const { taken, shown } = this;
    if (taken === null || shown === null) return false;
    if (!exact || this.repairs.length > MOST_REPAIRS / 2 || !isShown(shown, taken, { scene, camera, size, look })) {
      this.catchUp(target);
      return false;
    }
    const left = Math.round((camera.x - taken.camera.x) * look.dpr);
    const top = Math.round((camera.y - taken.camera.y) * look.dpr);
    const window = { left, top, w: shown.w, h: shown.h };
    const boxes: Box[] = [];
    for (const rect of this.repairs) {
      const box = boxOn(taken, rect, window);
      if (box !== null) boxes.push(box);
      if (box === null || touchesEdge(box, window)) this.unseen.push(rect);
    }
    this.repairs = [];
    for (const box of mergedBoxes(boxes)) paintBox(target, taken, this.bitmaps, box, window);
    if (boxes.length > 0) this.behind = true;
    if (this.unseen.length > MOST_UNSEEN) {
      this.paintRects(taken, this.unseen);
      this.unseen = [];
    }
    return true;
  }

  /** Copies back from the window's canvas what was drawn on it alone. */
  private catchUp(target: Canvas2D): void {
    const { taken, shown, front } = this;
    if (taken === null || shown === null || front === null) return;
    if (this.behind) {
      const m = Math.round(MARGIN_PX * taken.look.dpr);
      const left = Math.round((taken.camera.x - shown.camera.x) * taken.look.dpr) + m;
      const top = Math.round((taken.camera.y - shown.camera.y) * taken.look.dpr) + m;
      contextOf(front).drawImage(target.canvas, 0, 0, shown.w, shown.h, left, top, shown.w, shown.h);
    }
    this.behind = false;
    this.repairs.push(...this.unseen);
    this.unseen = [];
  }

  private take(scene: Scene, camera: Camera, look: Look): void {
    this.taken = { camera, scene, look };
    this.repairs = [];
    this.bitmaps.begin();
    this.paintAll(this.taken);
  }

  private mend(): void {
    const { taken, repairs } = this;
    this.repairs = [];
    if (taken === null || repairs.length === 0) return;
    if (repairs.length > MOST_REPAIRS) this.paintAll(taken);
    else this.paintRects(taken, repairs);
  }

  /** The bitmap round another part of the drawing at the same scale: what both show is copied, the rest painted. */
  private scroll(camera: Camera): void {
    const front = this.front as OffscreenCanvas;
    const before = this.taken as Taken;
    const { width, height } = front;
    const dx = Math.round((camera.x - before.camera.x) * before.look.dpr);
    const dy = Math.round((camera.y - before.camera.y) * before.look.dpr);
    const taken = { ...before, camera };
    this.taken = taken;
    this.bitmaps.begin();
    if (Math.abs(dx) >= width || Math.abs(dy) >= height) {
      this.paintAll(taken);
      return;
    }
    this.back ??= new OffscreenCanvas(width, height);
    contextOf(this.back).drawImage(front, dx, dy);
    this.front = this.back;
    this.back = front;
    if (dx !== 0) this.paint(taken, { x: dx > 0 ? 0 : width + dx, y: 0, w: Math.abs(dx), h: height });
    if (dy !== 0) this.paint(taken, { x: 0, y: dy > 0 ? 0 : height + dy, w: width, h: Math.abs(dy) });
  }

  private paintAll(taken: Taken): void {
    const { w, h } = this.lyingOf(taken);
    this.paint(taken, { x: 0, y: 0, w, h });
  }

  private paintRects(taken: Taken, rects: readonly Rect[]): void {
    const boxes: Box[] = [];
    for (const rect of rects) {
      const box = boxOn(taken, rect, this.lyingOf(taken));
      if (box !== null) boxes.push(box);
    }
    for (const box of mergedBoxes(boxes)) this.paint(taken, box);
  }

  private paint(taken: Taken, box: Box): void {
    paintBox(contextOf(this.front as OffscreenCanvas), taken, this.bitmaps, box, this.lyingOf(taken));
  }

  private lyingOf({ look }: Taken): Lying {
    const m = Math.round(MARGIN_PX * look.dpr);
    const { width, height } = this.front as OffscreenCanvas;
    return { left: m, top: m, w: width, h: height };
  }
}
