/** Keeps a scene in step with the show: piece by piece as facts, trials and hands change; anew where its frame does. */
import { objectOfPiece, type PieceId } from '@enfilade/shared/schema';
import { paintTrial, trial } from '../selection.ts';
import type { ShowSession } from '../sync/show-session.ts';
import type { View } from '../view-address.ts';
import { Hands } from './hands.ts';
import type { SceneFrame } from './panels.ts';
import { Scene } from './scene.ts';
import { ceilingFrameOf } from './scene-ceiling.ts';
import type { Rect, SceneLookup } from './scene-items.ts';
import { layoutFrameOf } from './scene-layout.ts';
import { roomFrameOf } from './scene-room.ts';
import { wallFrameOf } from './scene-wall.ts';

/** What is told of the scene. */
export interface SceneNews {
  /** These rectangles of the drawing look different now. */
  changed(rects: readonly Rect[]): void;
  /** Everything may. */
  rebuilt(): void;
  /** Something else is under a hand, or the same elsewhere. */
  moved(): void;
}

/** More records at once than this are an import: one pass is cheaper than one piece at a time. */
const AN_IMPORT = 200;

export class SceneKeeper {
  readonly hands = new Hands();
  /** Geometry as written, or as tried. */
  readonly resting: SceneLookup;
  /** The same with what is under a hand. */
  readonly hot: SceneLookup;
  scene: Scene | null = null;
  view: View | null = null;
  lifted: ReadonlySet<PieceId> = new Set();
  private readonly show: ShowSession;
  private readonly news: SceneNews;
  private readonly ways: (() => void)[] = [];
  private tried: readonly PieceId[] = [];
  private lingerTimer = 0;

  constructor(show: ShowSession, news: SceneNews) {
    this.show = show;
    this.news = news;
    const { judgements, documents, presence } = show;
    const { where } = judgements;
    this.resting = {
      placeOf: (id) => (trial.get()?.away?.has(id) ? null : (trial.get()?.places.get(id) ?? where.placeOf(id))),
      sizeOf: (id) => where.sizeOf(id),
      levelsOf: (id) => where.levelsOf(id),
      roomOf: (surface) => where.roomOf(surface),
      openingOf: (id) => documents.get('openings', id) ?? null,
      pictureOf: (id) => judgements.pictureIdOf(id),
      nameOf: (id) => judgements.nameOf(id),
      frameOf: (id) => judgements.drawnFrameOf(id),
    };
    this.hot = { ...this.resting, placeOf: (id) => this.hands.placeOf(id) ?? this.resting.placeOf(id) };
    this.ways.push(
      documents.subscribe('places', (ids) => {
        this.hands.settle(ids);
        this.refresh(this.withLoads(ids));
      }),
      documents.subscribe('pieces', (ids) => this.refresh(this.withLoads(ids))),
      documents.subscribe('objects', (ids) => this.refreshObjects(ids)),
      documents.subscribe('pictureCuts', (shas) => {
        const shown = [...documents.all('places').keys()];
        this.refresh(new Set(shown.filter((id) => shas.has(judgements.photographOf(id) ?? ''))));
      }),
      documents.subscribe('pinned', () => this.news.moved()),
      trial.subscribe(() => this.trialChanged()),
      paintTrial.subscribe(() => this.rebuild()),
      presence.subscribe(() => this.othersChanged()),
    );
    for (const root of ['labelSides', 'limits', 'memberOf', 'vignettes'] as const) {
      this.ways.push(documents.subscribe(root, () => this.news.changed(this.relabelled())));
    }
    for (const root of ['rooms', 'openings', 'fixtures', 'paints', 'deck', 'settings'] as const) {
      this.ways.push(documents.subscribe(root, () => this.rebuild()));
    }
  }

  stop(): void {
    for (const leave of this.ways) leave();
    clearTimeout(this.lingerTimer);
  }

  /** The frame again from the facts; what lies on it again piece by piece. */
  rebuild(): void {
    const frame = this.frameNow();
    const pieces = new Set(this.show.documents.all('places').keys());
    for (const pieceId of trial.get()?.places.keys() ?? []) pieces.add(pieceId);
    this.scene = frame === null ? null : new Scene(frame, this.resting, pieces);
    this.lift();
    this.news.rebuilt();
  }

  /** Takes what is under a hand out of what rests. */
  lift(): void {
    this.lifted = this.withLoads(this.hands.held());
    if (this.scene !== null) this.news.changed([...this.scene.lift(this.lifted), ...this.relabelled()]);
    this.news.moved();
  }

  /** What others hold and drag, and, once they let go, until what they wrote has come. */
  othersChanged(): void {
    const others = this.show.presence.everyoneIn(this.show.layerId);
    this.hands.takeOthers(new Map(others.flatMap(({ presence }) => presence.drag ?? [])), Date.now());
    this.lift();
    if (this.hands.expire(Date.now())) {
      clearTimeout(this.lingerTimer);
      this.lingerTimer = window.setTimeout(() => {
        this.hands.expire(Date.now());
        this.lift();
      }, Hands.LINGER_MS + 20);
    }
  }

  private frameNow(): SceneFrame | null {
    const { judgements } = this.show;
    if (this.view?.sheet === 'room') return roomFrameOf(judgements, this.view.roomId, paintTrial.get());
    if (this.view?.sheet === 'wall') {
      const { surface } = this.view;
      const tried = paintTrial.get();
      return wallFrameOf(judgements, surface, tried) ?? ceilingFrameOf(judgements, surface, tried);
    }
    return this.view?.sheet === 'layout' ? layoutFrameOf(judgements) : null;
  }

  private refresh(pieceIds: Iterable<PieceId>): void {
    if (this.scene !== null) this.news.changed([...this.scene.refresh(pieceIds), ...this.relabelled()]);
  }

  /** Labels of what is under a hand, or tried elsewhere, are put away until it rests. */
  private relabelled(): Rect[] {
    if (this.scene === null) return [];
    const tried = trial.get();
    const away =
      tried === null ? this.lifted : new Set([...this.lifted, ...tried.places.keys(), ...(tried.away ?? [])]);
    return this.scene.labels.read(this.show.judgements, this.scene.frame, away);
  }

  private refreshObjects(ids: ReadonlySet<string>): void {
    if (ids.size > AN_IMPORT) {
      this.rebuild();
      return;
    }
    const touched = [...this.show.documents.all('places').keys()].filter((id) => ids.has(objectOfPiece(id)));
    this.refresh(this.withLoads(touched));
  }

  private trialChanged(): void {
    const now = [...(trial.get()?.places.keys() ?? []), ...(trial.get()?.away ?? [])];
    this.refresh(this.withLoads([...this.tried, ...now]));
    this.tried = now;
  }

  private withLoads(pieceIds: Iterable<PieceId>): Set<PieceId> {
    const all = new Set<PieceId>();
    for (const pieceId of pieceIds) {
      all.add(pieceId);
      for (const load of this.show.judgements.where.loadOf(pieceId)) all.add(load);
    }
    return all;
  }
}
