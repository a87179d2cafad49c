/** When and what the stage draws: at most once a frame, and only of the layer that changed. */
import type { PieceId } from '@enfilade/shared/schema';
import type { LengthUnit } from '@enfilade/space/lengths';
import { Store } from '../selection.ts';
import type { Bitmaps } from './bitmaps.ts';
import type { Camera } from './camera.ts';
import { OncePerFrame } from './frames.ts';
import { drawHot, type HotView } from './hot-layer.ts';
import { RestBitmap } from './rest-bitmap.ts';
import type { Look } from './rest-paint.ts';
import type { Scene } from './scene.ts';
import type { Rect } from './scene-items.ts';
import type { Canvas2D } from './sheet.ts';
import type { Tones } from './tones.ts';
import type { Viewport } from './viewport.ts';

/** The two canvases the stage draws on, as Konva layers are. */
export interface Layers {
  readonly dpr: number;
  drawRest(): void;
  /** Lets part of what rests be drawn over what is there; false where all of it has to be drawn. */
  mendRest(mend: (ctx: Canvas2D) => boolean): boolean;
  drawHot(): void;
}

/** What the painter reads of the stage. */
export interface PaintedStage extends HotView {
  readonly viewport: Viewport;
  /** Whether the hot layer shows anything: an empty one is left alone. */
  readonly hotShows: boolean;
}

export class StagePainter {
  /** What is drawn, and how it lies in the window: told once it is drawn, so that notes beside it never run ahead. */
  readonly sceneNow = new Store<Scene | null>(null);
  readonly shownAt = new Store<Camera>({ x: 0, y: 0, scale: 0.1 });
  /** What is drawn under a hand: a note that stands beside a thing steps aside while the thing is moved. */
  readonly liftedShown = new Store<ReadonlySet<PieceId>>(new Set());
  frames = 0;
  /** Rises with whatever changes in what rests. */
  version = 0;
  private readonly stage: PaintedStage;
  private readonly rest: RestBitmap;
  private readonly paint = new OncePerFrame(() => this.drawNow());
  private layers: Layers | null = null;
  private tones: Tones | null = null;
  private unit: LengthUnit = 'cm';
  private restDirty = false;
  private hotDirty = false;
  private hotDrawn = true;

  constructor(stage: PaintedStage, bitmaps: Bitmaps) {
    this.stage = stage;
    this.rest = new RestBitmap(bitmaps);
  }

  mount(layers: Layers): void {
    this.layers = layers;
    this.spoil();
  }

  stop(): void {
    this.paint.stop();
  }

  get waiting(): boolean {
    return this.paint.waiting;
  }

  setLook(tones: Tones, unit: LengthUnit): void {
    this.tones = tones;
    this.unit = unit;
    this.spoil();
  }

  // What is to be drawn again

  changed(rects: readonly Rect[]): void {
    if (rects.length > 0) {
      this.version += 1;
      this.rest.repair(rects);
      this.restDirty = true;
    }
    if (this.hotMatters) this.hotDirty = true;
    this.paint.ask();
  }

  spoil(): void {
    this.version += 1;
    this.rest.spoil();
    this.askBoth();
  }

  askBoth(): void {
    this.restDirty = true;
    if (this.hotMatters) this.hotDirty = true;
    this.paint.ask();
  }

  askHot(): void {
    this.hotDirty = true;
    this.paint.ask();
  }

  /** Whether the hot layer shows anything, or did. */
  private get hotMatters(): boolean {
    return this.hotDrawn || this.stage.hotShows;
  }

  // Drawing

  private drawNow(): void {
    const { layers } = this;
    if (layers === null) return;
    const [rest, hot] = [this.restDirty, this.hotDirty];
    this.restDirty = false;
    this.hotDirty = false;
    if (rest && !layers.mendRest((ctx) => this.mendRest(ctx))) layers.drawRest();
    if (hot) {
      this.hotDrawn = this.stage.hotShows;
      layers.drawHot();
    }
    if (rest || hot) this.frames += 1;
    this.sceneNow.set(this.stage.scene);
    this.shownAt.set(this.stage.viewport.camera);
    if (this.stage.liftedNow.size + this.liftedShown.get().size > 0) this.liftedShown.set(this.stage.liftedNow);
  }

  private lookNow(): Look | null {
    if (this.layers === null || this.tones === null) return null;
    const { figure, belowPx } = this.stage.viewport;
    return { dpr: this.layers.dpr, tones: this.tones, unit: this.unit, figure, belowPx };
  }

  private mendRest(ctx: Canvas2D): boolean {
    const look = this.lookNow();
    const { scene, viewport, size } = this.stage;
    if (scene === null || look === null) return false;
    return this.rest.mendOnto(ctx, scene, viewport.camera, size, look, viewport.exact);
  }

  paintRest(ctx: Canvas2D): void {
    const look = this.lookNow();
    const { scene, viewport, size } = this.stage;
    if (scene === null || look === null) return;
    this.rest.show(ctx, scene, viewport.camera, size, look, viewport.exact);
  }

  paintHot(ctx: Canvas2D): void {
    const look = this.lookNow();
    if (this.stage.scene === null || look === null) return;
    const { x, y, scale } = this.stage.viewport.camera;
    drawHot({ ...look, ctx, k: scale * look.dpr, ox: x * look.dpr, oy: y * look.dpr }, this.stage);
  }
}
