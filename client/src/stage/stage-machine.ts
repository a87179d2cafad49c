/**
 * The stage outside React: one scene, one camera, two layers. What rests comes from a bitmap; what moves is drawn hot.
 * Nothing is drawn while nothing changes.
 */
import type { PieceId } from '@enfilade/shared/schema';
import { vignettesOn } from '../cards/vignettes-on.ts';
import { type Store, selection, trial } from '../selection.ts';
import type { ShowSession } from '../sync/show-session.ts';
import type { View } from '../view-address.ts';
import { Bitmaps } from './bitmaps.ts';
import { type Camera, type Insets, toDrawingPoint, type WindowSize } from './camera.ts';
import { hitOf } from './hit.ts';
import type { HotState } from './hot-layer.ts';
import { lightNotes } from './light-notes.ts';
import type { Scene } from './scene.ts';
import { itemsOf, type SceneItem, type SceneLookup } from './scene-items.ts';
import { SceneKeeper } from './scene-keeper.ts';
import { StagePainter } from './stage-painter.ts';
import { Viewport } from './viewport.ts';

const NOTHING_HOT: HotState = { hovered: null, former: [], free: null, gaps: null, marquee: null, settled: null };

export class StageMachine {
  readonly show: ShowSession;
  readonly bitmaps: Bitmaps;
  readonly keeper: SceneKeeper;
  readonly viewport = new Viewport(() => this.painter.askBoth());
  hotState: HotState = NOTHING_HOT;
  readonly painter: StagePainter;
  private readonly ways: (() => void)[];

  constructor(show: ShowSession) {
    this.show = show;
    this.bitmaps = new Bitmaps(show.pictures, (sha256) => this.pictureArrived(sha256));
    this.painter = new StagePainter(this, this.bitmaps);
    this.keeper = new SceneKeeper(show, {
      changed: (rects) => this.painter.changed(rects),
      rebuilt: () => this.painter.spoil(),
      moved: () => this.painter.askHot(),
    });
    this.ways = [
      selection.subscribe(() => this.selectionChanged()),
      lightNotes.subscribe(() => this.painter.askHot()),
      show.pictures.subscribe(() => {
        this.bitmaps.sourceChanged();
        this.painter.spoil();
      }),
    ];
    this.selectionChanged();
    this.keeper.othersChanged();
  }

  stop(): void {
    for (const leave of this.ways) leave();
    this.keeper.stop();
    this.painter.stop();
    this.viewport.stop();
    this.bitmaps.close();
  }

  get sceneNow(): Store<Scene | null> {
    return this.painter.sceneNow;
  }
  get shownAt(): Store<Camera> {
    return this.painter.shownAt;
  }
  get liftedShown(): Store<ReadonlySet<PieceId>> {
    return this.painter.liftedShown;
  }
  /** Rises with whatever changes in what rests. */
  get version(): number {
    return this.painter.version;
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
    else this.painter.spoil();
  }

  setWindow(size: WindowSize, insets: Insets): void {
    const { untouched } = this.viewport;
    this.viewport.size = size;
    this.viewport.insets = insets;
    if (untouched) this.fit();
    else this.painter.spoil();
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
    this.painter.askHot();
  }

  private selectionChanged(): void {
    this.show.presence.say({ selected: selection.get() });
    this.painter.askHot();
  }

  private pictureArrived(sha256: string | null): void {
    if (sha256 === null) {
      this.painter.spoil();
      return;
    }
    this.painter.changed(this.scene?.restingWith(sha256) ?? []);
  }

  /** Whether the hot layer shows anything: an empty one is left alone. */
  get hotShows(): boolean {
    const { hovered, marquee } = this.hotState;
    return (
      this.keeper.view?.sheet === 'layout' ||
      this.dragging ||
      hovered !== null ||
      marquee !== null ||
      this.liftedNow.size > 0 ||
      selection.get().length > 0 ||
      trial.get() !== null ||
      lightNotes.get() !== null ||
      this.show.presence.everyoneIn(this.show.layerId).some(({ presence }) => (presence.selected?.length ?? 0) > 0)
    );
  }

  get dragging(): boolean {
    return this.hands.mineNow.size > 0 || this.hotState.free !== null;
  }

  get idle(): boolean {
    return !this.painter.waiting && !this.bitmaps.busy && this.viewport.exact;
  }

  /** The frontmost thing at a window point; `slopPx` beside it still counts. */
  hit(px: number, py: number, slopPx: number): SceneItem | null {
    if (this.scene === null) return null;
    const { X, Y } = toDrawingPoint(this.camera, px, py);
    const slop = slopPx / this.camera.scale;
    const items = this.scene.within({ minX: X - slop, minY: Y - slop, maxX: X + slop, maxY: Y + slop });
    return hitOf(items, X, Y, slop, (item, u, v) => {
      // Behind the glass of a frame is its back, whatever the picture leaves open.
      if (item.picture === null || item.hatch === 'unsized' || item.moulding !== null) return true;
      return this.bitmaps.opaqueAt(item.picture, u, v);
    });
  }

  /** A piece as it is drawn now, under a hand or not; where it is itself rather than where else it is seen. */
  shownItemOf(pieceId: PieceId): SceneItem | undefined {
    if (this.scene === null) return undefined;
    const lifted = this.liftedNow.has(pieceId);
    const items = lifted ? itemsOf(this.scene.frame, this.hot, pieceId) : this.scene.itemsOf(pieceId);
    return items.find(({ direct }) => direct) ?? items[0];
  }
}
