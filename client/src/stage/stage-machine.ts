/**
 * The stage outside React: one scene, one camera, two layers. What rests comes from a bitmap; what moves is drawn hot.
 * Nothing is drawn while nothing changes.
 */
import type { PieceId } from '@enfilade/shared/schema';
import { objectOfPiece } from '@enfilade/shared/schema';
import type { LengthUnit } from '@enfilade/space/lengths';
import { vignettesOn } from '../cards/vignettes-on.ts';
import { paintTrial, Store, selection, trial } from '../selection.ts';
import type { ShowSession } from '../sync/show-session.ts';
import type { View } from '../view-address.ts';
import { Bitmaps } from './bitmaps.ts';
import { type Camera, fitted, type Insets, panned, toDrawingPoint, type WindowSize, zoomed } from './camera.ts';
import { FIGURE_LANE_PX, figureReachPx, SCALE_BAR_PX } from './draw-surrounds.ts';
import { OncePerFrame } from './frames.ts';
import { Hands } from './hands.ts';
import { hitOf } from './hit.ts';
import { drawHot, type HotState } from './hot-layer.ts';
import type { SceneFrame } from './panels.ts';
import { RestBitmap } from './rest-bitmap.ts';
import type { Look } from './rest-paint.ts';
import { itemsOf, type Rect, Scene, type SceneItem, type SceneLookup } from './scene.ts';
import { layoutFrameOf } from './scene-layout.ts';
import { roomFrameOf } from './scene-room.ts';
import { wallFrameOf } from './scene-wall.ts';
import type { Canvas2D, Sheet } from './sheet.ts';
import type { Tones } from './tones.ts';

/** The two canvases the stage draws on, as Konva layers are. */
export interface Layers {
  readonly dpr: number;
  drawRest(): void;
  /** Lets part of what rests be drawn over what is there; false where all of it has to be drawn. */
  mendRest(mend: (ctx: Canvas2D) => boolean): boolean;
  drawHot(): void;
}

/** A row of vignettes' brackets beneath a faced wall, CSS px. */
export const BRACKET_ROW_PX = 31;

/** After a zoom the picture is drawn sharp once the hand has rested so long (ms). */
const REST_MS = 140;

export class StageMachine {
  readonly show: ShowSession;
  readonly hands = new Hands();
  readonly bitmaps: Bitmaps;
  /** Geometry as written, or as tried. */
  readonly resting: SceneLookup;
  /** The same with what is under a hand. */
  readonly hot: SceneLookup;
  hotState: HotState = { hovered: null, former: [], free: null, gaps: null, marquee: null, settled: null };
  /** What is drawn, and how it lies in the window: told once it is drawn, so that notes beside it never run ahead. */
  readonly sceneNow = new Store<Scene | null>(null);
  readonly shownAt = new Store<Camera>({ x: 0, y: 0, scale: 0.1 });
  scene: Scene | null = null;
  camera: Camera = { x: 0, y: 0, scale: 0.1 };
  size: WindowSize = { width: 1, height: 1 };
  insets: Insets = { left: 0, right: 0, top: 0, bottom: 0 };
  view: View | null = null;
  frames = 0;
  /** Rises with whatever changes in what rests. */
  version = 0;
  private readonly rest: RestBitmap;
  private readonly paint = new OncePerFrame(() => this.drawNow());
  private readonly ways: (() => void)[] = [];
  private layers: Layers | null = null;
  private tones: Tones | null = null;
  private unit: LengthUnit = 'cm';
  private figure = true;
  private bracketRows = 0;
  private restDirty = false;
  private hotDirty = false;
  private exact = true;
  private fittedCamera: Camera | null = null;
  private restTimer = 0;
  private lingerTimer = 0;

  constructor(show: ShowSession) {
    this.show = show;
    const { judgements, documents, pictures, presence } = show;
    this.bitmaps = new Bitmaps(pictures, (sha256) => this.pictureArrived(sha256));
    this.rest = new RestBitmap(this.bitmaps);
    const { where } = judgements;
    this.resting = {
      placeOf: (id) => trial.get()?.places.get(id) ?? where.placeOf(id),
      sizeOf: (id) => where.sizeOf(id),
      levelsOf: (id) => where.levelsOf(id),
      roomOf: (surface) => where.roomOf(surface),
      pictureOf: (id) => judgements.pictureIdOf(id),
      nameOf: (id) => judgements.nameOf(id),
    };
    this.hot = { ...this.resting, placeOf: (id) => this.hands.placeOf(id) ?? this.resting.placeOf(id) };
    this.ways.push(
      documents.subscribe('places', (ids) => {
        this.hands.settle(ids);
        this.refresh(this.withLoads(ids));
      }),
      documents.subscribe('pieces', (ids) => this.refresh(this.withLoads(ids))),
      documents.subscribe('objects', (ids) => this.refreshObjects(ids)),
      trial.subscribe(() => this.trialChanged()),
      paintTrial.subscribe(() => this.rebuild()),
      selection.subscribe(() => this.selectionChanged()),
      presence.subscribe(() => this.othersChanged()),
      pictures.subscribe(() => {
        this.bitmaps.sourceChanged();
        this.spoil();
      }),
    );
    for (const root of ['rooms', 'openings', 'fixtures', 'paints', 'deck', 'settings'] as const) {
      this.ways.push(documents.subscribe(root, () => this.rebuild()));
    }
    this.selectionChanged();
    this.othersChanged();
  }

  mount(layers: Layers): void {
    this.layers = layers;
    this.spoil();
  }

  stop(): void {
    for (const leave of this.ways) leave();
    this.paint.stop();
    clearTimeout(this.restTimer);
    clearTimeout(this.lingerTimer);
    this.bitmaps.close();
  }

  // What is shown

  setView(view: View): void {
    this.view = view;
    this.hotState = { hovered: null, former: [], free: null, gaps: null, marquee: null, settled: null };
    this.bracketRows = view.sheet === 'wall' && vignettesOn(this.show.judgements, view.surface).length > 0 ? 1 : 0;
    this.rebuild();
    this.fit();
  }

  /** How many rows of brackets stand beneath a faced wall; what else stands there makes way. */
  setBracketRows(rows: number): void {
    if (this.view?.sheet !== 'wall' || rows === this.bracketRows) return;
    this.bracketRows = rows;
    if (this.fittedCamera === this.camera) this.fit();
    else this.spoil();
  }

  /** CSS px a mm at which the whole is seen. */
  get fittedScale(): number {
    return this.fittedCamera?.scale ?? this.camera.scale;
  }

  setLook(tones: Tones, unit: LengthUnit): void {
    this.tones = tones;
    this.unit = unit;
    this.spoil();
  }

  setWindow(size: WindowSize, insets: Insets): void {
    const untouched = this.fittedCamera === null || this.fittedCamera === this.camera;
    this.size = size;
    this.insets = insets;
    if (untouched) this.fit();
    else this.spoil();
  }

  fit(): void {
    if (this.scene === null) return;
    // A wide window leaves room for the standing figure between the caption and the wall.
    const { sheet } = this.scene.frame;
    const lane = sheet === 'wall' && this.insets.left >= 200 ? FIGURE_LANE_PX : 0;
    this.camera = fitted(this.scene.frame.bounds, this.size, {
      left: this.insets.left + lane,
      right: this.insets.right,
      top: Math.max(this.insets.top, sheet === 'room' ? BRACKET_ROW_PX + 3 : 0),
      bottom: this.insets.bottom + (sheet === 'wall' ? SCALE_BAR_PX + this.belowPx : 0),
    });
    this.fittedCamera = this.camera;
    this.figure = this.camera.x >= figureReachPx(this.camera.scale);
    this.exact = true;
    this.askBoth();
  }

  pan(dx: number, dy: number): void {
    if (this.scene === null) return;
    this.camera = panned(this.camera, dx, dy, this.scene.frame.bounds, this.size);
    this.askBoth();
  }

  zoom(factor: number, atX: number, atY: number): void {
    this.camera = zoomed(this.camera, factor, atX, atY);
    this.exact = false;
    clearTimeout(this.restTimer);
    this.restTimer = window.setTimeout(() => {
      this.exact = true;
      this.askBoth();
    }, REST_MS);
    this.askBoth();
  }

  /** The frame again from the facts; what lies on it again piece by piece. The camera stays. */
  rebuild(): void {
    const frame = this.frameNow();
    const pieces = new Set(this.show.documents.all('places').keys());
    for (const pieceId of trial.get()?.places.keys() ?? []) pieces.add(pieceId);
    this.scene = frame === null ? null : new Scene(frame, this.resting, pieces);
    this.lift();
    this.spoil();
  }

  private frameNow(): SceneFrame | null {
    const { judgements } = this.show;
    if (this.view?.sheet === 'room') return roomFrameOf(judgements, this.view.roomId, paintTrial.get());
    if (this.view?.sheet === 'wall') return wallFrameOf(judgements, this.view.surface, paintTrial.get());
    return this.view?.sheet === 'layout' ? layoutFrameOf(judgements) : null;
  }

  // Changes

  private refresh(pieceIds: Iterable<PieceId>): void {
    if (this.scene === null) return;
    this.changed(this.scene.refresh(pieceIds));
  }

  private refreshObjects(ids: ReadonlySet<string>): void {
    // A whole import: one pass is cheaper than one piece at a time.
    if (ids.size > 200) {
      this.rebuild();
      return;
    }
    const touched = [...this.show.documents.all('places').keys()].filter((id) => ids.has(objectOfPiece(id)));
    this.refresh(this.withLoads(touched));
  }

  private withLoads(pieceIds: Iterable<PieceId>): Set<PieceId> {
    const all = new Set<PieceId>();
    for (const pieceId of pieceIds) {
      all.add(pieceId);
      for (const load of this.show.judgements.where.loadOf(pieceId)) all.add(load);
    }
    return all;
  }

  private tried: readonly PieceId[] = [];

  private trialChanged(): void {
    const now = [...(trial.get()?.places.keys() ?? [])];
    this.refresh(this.withLoads([...this.tried, ...now]));
    this.tried = now;
  }

  private selectionChanged(): void {
    this.show.presence.say({ selected: selection.get() });
    this.hotDirty = true;
    this.paint.ask();
  }

  private othersChanged(): void {
    const places = new Map(
      this.show.presence.everyoneIn(this.show.layerId).flatMap(({ presence }) => presence.drag ?? []),
    );
    this.hands.takeOthers(places, Date.now());
    this.lift();
    if (this.hands.expire(Date.now())) {
      clearTimeout(this.lingerTimer);
      this.lingerTimer = window.setTimeout(() => {
        this.hands.expire(Date.now());
        this.lift();
      }, Hands.LINGER_MS + 20);
    }
  }

  private lifted: ReadonlySet<PieceId> = new Set();

  /** Takes what is under a hand out of what rests. */
  lift(): void {
    this.lifted = this.withLoads(this.hands.held());
    if (this.scene !== null) this.changed(this.scene.lift(this.lifted));
    this.hotDirty = true;
    this.paint.ask();
  }

  get liftedNow(): ReadonlySet<PieceId> {
    return this.lifted;
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
      if (!this.lifted.has(pieceId)) rects.push(...(this.scene?.itemsOf(pieceId) ?? []));
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

  setHot(change: Partial<HotState>): void {
    this.hotState = { ...this.hotState, ...change };
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
  }

  private get belowPx(): number {
    return this.bracketRows * BRACKET_ROW_PX;
  }

  private lookOf(dpr: number, tones: Tones): Look {
    return { dpr, tones, unit: this.unit, figure: this.figure, belowPx: this.belowPx };
  }

  private mendRest(ctx: Canvas2D): boolean {
    if (this.scene === null || this.layers === null || this.tones === null) return false;
    const look = this.lookOf(this.layers.dpr, this.tones);
    return this.rest.mendOnto(ctx, this.scene, this.camera, this.size, look, this.exact);
  }

  paintRest(ctx: Canvas2D): void {
    if (this.scene === null || this.layers === null || this.tones === null) return;
    const look = this.lookOf(this.layers.dpr, this.tones);
    this.rest.show(ctx, this.scene, this.camera, this.size, look, this.exact);
  }

  paintHot(ctx: Canvas2D): void {
    if (this.scene === null || this.layers === null || this.tones === null) return;
    const { dpr } = this.layers;
    const sheet: Sheet = {
      ...this.lookOf(dpr, this.tones),
      ctx,
      k: this.camera.scale * dpr,
      ox: this.camera.x * dpr,
      oy: this.camera.y * dpr,
    };
    drawHot(sheet, this);
  }

  private hotDrawn = true;

  /** Whether the hot layer shows anything, or did: an empty one is left alone. */
  private get hotMatters(): boolean {
    const { hovered, marquee } = this.hotState;
    return (
      this.hotDrawn ||
      this.view?.sheet === 'layout' ||
      this.dragging ||
      hovered !== null ||
      marquee !== null ||
      this.lifted.size > 0 ||
      selection.get().length > 0 ||
      trial.get() !== null ||
      this.show.presence.everyoneIn(this.show.layerId).some(({ presence }) => (presence.selected?.length ?? 0) > 0)
    );
  }

  get dragging(): boolean {
    return this.hands.mineNow.size > 0 || this.hotState.free !== null;
  }

  get idle(): boolean {
    return !this.paint.waiting && !this.bitmaps.busy && this.exact;
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
    const items = this.lifted.has(pieceId) ? itemsOf(this.scene.frame, this.hot, pieceId) : this.scene.itemsOf(pieceId);
    return items.find(({ direct }) => direct) ?? items[0];
  }
}
