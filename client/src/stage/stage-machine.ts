/**
 * The stage outside React: one scene, one camera, two layers. What rests comes from a bitmap; what moves is drawn hot.
 * Nothing is drawn while nothing changes.
 */
import type { PieceId } from '@enfilade/shared/schema';
import type { LengthUnit } from '@enfilade/space/lengths';
import { vignettesOn } from '../cards/vignettes-on.ts';
import { Store, selection, trial } from '../selection.ts';
import type { ShowSession } from '../sync/show-session.ts';
import type { View } from '../view-address.ts';
import { Bitmaps } from './bitmaps.ts';
import { type Camera, type Insets, toDrawingPoint, type WindowSize } from './camera.ts';
import { OncePerFrame } from './frames.ts';
import { hitOf } from './hit.ts';
import { drawHot, type HotState } from './hot-layer.ts';
import { RestBitmap } from './rest-bitmap.ts';
import type { Look } from './rest-paint.ts';
import type { Scene } from './scene.ts';
import { itemsOf, type Rect, type SceneItem, type SceneLookup } from './scene-items.ts';
import { SceneKeeper } from './scene-keeper.ts';
import type { Canvas2D } from './sheet.ts';
import type { Tones } from './tones.ts';
import { Viewport } from './viewport.ts';

/** The two canvases the stage draws on, as Konva layers are. */
export interface Layers {
  readonly dpr: number;
  drawRest(): void;
  /** Lets part of what rests be drawn over what is there; false where all of it has to be drawn. */
  mendRest(mend: (ctx: Canvas2D) => boolean): boolean;
  drawHot(): void;
}

const NOTHING_HOT: HotState = { hovered: null, former: [], free: null, gaps: null, marquee: null, settled: null };

export class StageMachine {
  readonly show: ShowSession;
  readonly bitmaps: Bitmaps;
  /** What is drawn, and how it lies in the window: told once it is drawn, so that notes beside it never run ahead. */
  readonly sceneNow = new Store<Scene | null>(null);
  readonly shownAt = new Store<Camera>({ x: 0, y: 0, scale: 0.1 });
  /** What is drawn under a hand: a note that stands beside a thing steps aside while the thing is moved. */
  readonly liftedShown = new Store<ReadonlySet<PieceId>>(new Set());
  readonly keeper: SceneKeeper;
  readonly viewport = new Viewport(() => this.askBoth());
  hotState: HotState = NOTHING_HOT;
  frames = 0;
  /** Rises with whatever changes in what rests. */
  version = 0;
  private readonly rest: RestBitmap;
  private readonly paint = new OncePerFrame(() => this.drawNow());
  private readonly ways: (() => void)[];
  private layers: Layers | null = null;
  private tones: Tones | null = null;
  private unit: LengthUnit = 'cm';
  private restDirty = false;
  private hotDirty = false;
  private hotDrawn = true;

  constructor(show: ShowSession) {
    this.show = show;
    this.bitmaps = new Bitmaps(show.pictures, (sha256) => this.pictureArrived(sha256));
    this.rest = new RestBitmap(this.bitmaps);
    this.keeper = new SceneKeeper(show, {
      changed: (rects) => this.changed(rects),
      rebuilt: () => this.spoil(),
      moved: () => this.askHot(),
    });
    this.ways = [
      selection.subscribe(() => this.selectionChanged()),
      show.pictures.subscribe(() => {
        this.bitmaps.sourceChanged();
        this.spoil();
      }),
    ];
    this.selectionChanged();
    this.keeper.othersChanged();
  }

  mount(layers: Layers): void {
    this.layers = layers;
    this.spoil();
  }

  stop(): void {
    for (const leave of this.ways) leave();
    this.keeper.stop();
    this.paint.stop();
    this.viewport.stop();
    this.bitmaps.close();
  }

  get scene(): Scene | null {
    return this.keeper.scene;
  }
  get hands(): SceneKeeper['hands'] {
    return this.keeper.hands;
  }
  get resting(): SceneLookup {
    return this.keeper.resting;
  }
  get hot(): SceneLookup {
    return this.keeper.hot;
  }
  get liftedNow(): ReadonlySet<PieceId> {
    return this.keeper.lifted;
  }
  get camera(): Camera {
    return this.viewport.camera;
  }
  get size(): WindowSize {
    return this.viewport.size;
  }
  get insets(): Insets {
    return this.viewport.insets;
  }

  // What is shown

  setView(view: View): void {
    this.keeper.view = view;
    this.hotState = NOTHING_HOT;
    const bracketed = view.sheet === 'wall' && vignettesOn(this.show.judgements, view.surface).length > 0;
    this.viewport.bracketRows = bracketed ? 1 : 0;
    this.keeper.rebuild();
    this.fit();
  }

  /** How many rows of brackets stand beneath a faced wall; what else stands there makes way. */
  setBracketRows(rows: number): void {
    if (this.keeper.view?.sheet !== 'wall' || rows === this.viewport.bracketRows) return;
    this.viewport.bracketRows = rows;
    if (this.viewport.untouched) this.fit();
    else this.spoil();
  }

  setLook(tones: Tones, unit: LengthUnit): void {
    this.tones = tones;
    this.unit = unit;
    this.spoil();
  }

  setWindow(size: WindowSize, insets: Insets): void {
    const { untouched } = this.viewport;
    this.viewport.size = size;
    this.viewport.insets = insets;
    if (untouched) this.fit();
    else this.spoil();
  }

  fit(): void {
    if (this.scene !== null) this.viewport.fit(this.scene.frame);
  }

  pan(dx: number, dy: number): void {
    if (this.scene !== null) this.viewport.pan(dx, dy, this.scene.frame);
  }

  zoom(factor: number, atX: number, atY: number): void {
    this.viewport.zoom(factor, atX, atY);
  }

  /** Takes what is under a hand out of what rests. */
  lift(): void {
    this.keeper.lift();
  }

  setHot(change: Partial<HotState>): void {
    this.hotState = { ...this.hotState, ...change };
    this.askHot();
  }

  // What is to be drawn again

  private selectionChanged(): void {
    this.show.presence.say({ selected: selection.get() });
    this.askHot();
  }

  private changed(rects: readonly Rect[]): void {
    if (rects.length > 0) {
      this.version += 1;
      this.rest.repair(rects);
      this.restDirty = true;
    }
    if (this.hotMatters) this.hotDirty = true;
    this.paint.ask();
  }

  private pictureArrived(sha256: string | null): void {
    if (sha256 === null) {
      this.spoil();
      return;
    }
    const rects: Rect[] = [];
    for (const pieceId of this.scene?.piecesWith(sha256) ?? []) {
      if (!this.liftedNow.has(pieceId)) rects.push(...(this.scene?.itemsOf(pieceId) ?? []));
    }
    this.changed(rects);
  }

  private spoil(): void {
    this.version += 1;
    this.rest.spoil();
    this.askBoth();
  }

  private askBoth(): void {
    this.restDirty = true;
    if (this.hotMatters) this.hotDirty = true;
    this.paint.ask();
  }

  private askHot(): void {
    this.hotDirty = true;
    this.paint.ask();
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
      this.hotDrawn = this.hotMatters;
      layers.drawHot();
    }
    if (rest || hot) this.frames += 1;
    this.sceneNow.set(this.scene);
    this.shownAt.set(this.camera);
    if (this.liftedNow.size + this.liftedShown.get().size > 0) this.liftedShown.set(this.liftedNow);
  }

  private lookNow(): Look | null {
    if (this.layers === null || this.tones === null) return null;
    const { figure, belowPx } = this.viewport;
    return { dpr: this.layers.dpr, tones: this.tones, unit: this.unit, figure, belowPx };
  }

  private mendRest(ctx: Canvas2D): boolean {
    const look = this.lookNow();
    if (this.scene === null || look === null) return false;
    return this.rest.mendOnto(ctx, this.scene, this.camera, this.size, look, this.viewport.exact);
  }

  paintRest(ctx: Canvas2D): void {
    const look = this.lookNow();
    if (this.scene === null || look === null) return;
    this.rest.show(ctx, this.scene, this.camera, this.size, look, this.viewport.exact);
  }

  paintHot(ctx: Canvas2D): void {
    const look = this.lookNow();
    if (this.scene === null || look === null) return;
    const { x, y, scale } = this.camera;
    drawHot({ ...look, ctx, k: scale * look.dpr, ox: x * look.dpr, oy: y * look.dpr }, this);
  }

  /** Whether the hot layer shows anything, or did: an empty one is left alone. */
  private get hotMatters(): boolean {
    const { hovered, marquee } = this.hotState;
    return (
      this.hotDrawn ||
      this.keeper.view?.sheet === 'layout' ||
      this.dragging ||
      hovered !== null ||
      marquee !== null ||
      this.liftedNow.size > 0 ||
      selection.get().length > 0 ||
      trial.get() !== null ||
      this.show.presence.everyoneIn(this.show.layerId).some(({ presence }) => (presence.selected?.length ?? 0) > 0)
    );
  }

  get dragging(): boolean {
    return this.hands.mineNow.size > 0 || this.hotState.free !== null;
  }

  get idle(): boolean {
    return !this.paint.waiting && !this.bitmaps.busy && this.viewport.exact;
  }

  // Looking things up

  /** The frontmost thing at a window point; `slopPx` beside it still counts. */
  hit(px: number, py: number, slopPx: number): SceneItem | null {
    if (this.scene === null) return null;
    const { X, Y } = toDrawingPoint(this.camera, px, py);
    const slop = slopPx / this.camera.scale;
    const items = this.scene.within({ minX: X - slop, minY: Y - slop, maxX: X + slop, maxY: Y + slop });
    return hitOf(items, X, Y, slop, (item, u, v) =>
      item.picture === null || item.hatch === 'unsized' ? true : this.bitmaps.opaqueAt(item.picture, u, v),
    );
  }

  /** A piece as it is drawn now, under a hand or not; where it is itself rather than where else it is seen. */
  shownItemOf(pieceId: PieceId): SceneItem | undefined {
    if (this.scene === null) return undefined;
    const lifted = this.liftedNow.has(pieceId);
    const items = lifted ? itemsOf(this.scene.frame, this.hot, pieceId) : this.scene.itemsOf(pieceId);
    return items.find(({ direct }) => direct) ?? items[0];
  }
}
