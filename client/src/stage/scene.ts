/**
 * What a drawing shows: its panels and, piece by piece, where each is drawn. Kept up piece by piece: a move rebuilds
 * the moved piece and its load, nothing else.
 */
import type { PieceId } from '@enfilade/shared/schema';
import RBush from 'rbush';
import { boxInDrawing, type SceneFrame, type ScenePanel } from './panels.ts';
import { backToFront, itemsOf, type Rect, type SceneItem, type SceneLookup } from './scene-items.ts';
import { SceneLabels } from './scene-labels.ts';

export class Scene {
  readonly frame: SceneFrame;
  /** The works' labels on its walls. */
  readonly labels = new SceneLabels();
  private readonly lookup: SceneLookup;
  private readonly byPiece = new Map<PieceId, readonly SceneItem[]>();
  private readonly byPicture = new Map<string, Set<PieceId>>();
  private readonly tree = new RBush<SceneItem>();
  /** Pieces under someone's hand: drawn by the hot layer, not here. */
  private lifted: ReadonlySet<PieceId> = new Set();

  constructor(frame: SceneFrame, lookup: SceneLookup, pieceIds: Iterable<PieceId>) {
    this.frame = frame;
    this.lookup = lookup;
    const all: SceneItem[] = [];
    for (const pieceId of pieceIds) all.push(...this.keep(pieceId));
    this.tree.load(all);
  }

  get size(): number {
    return this.byPiece.size;
  }

  itemsOf(pieceId: PieceId): readonly SceneItem[] {
    return this.byPiece.get(pieceId) ?? NONE;
  }

  pieces(): IterableIterator<PieceId> {
    return this.byPiece.keys();
  }

  /** What rests and is drawn from a picture. */
  restingWith(picture: string): SceneItem[] {
    const pieces = [...(this.byPicture.get(picture) ?? [])];
    return pieces.flatMap((pieceId) => (this.lifted.has(pieceId) ? [] : [...this.itemsOf(pieceId)]));
  }

  /** Rebuilds these pieces; returns the drawing rectangles that look different now. */
  refresh(pieceIds: Iterable<PieceId>): Rect[] {
    const dirty: Rect[] = [];
    for (const pieceId of pieceIds) {
      const resting = !this.lifted.has(pieceId);
      for (const item of this.itemsOf(pieceId)) {
        if (resting) {
          this.tree.remove(item);
          dirty.push(item);
        }
        if (item.picture !== null) this.byPicture.get(item.picture)?.delete(pieceId);
      }
      this.byPiece.delete(pieceId);
      for (const item of this.keep(pieceId)) {
        if (!resting) continue;
        this.tree.insert(item);
        dirty.push(item);
      }
    }
    return dirty;
  }

  /** Says which pieces are under someone's hand; returns the rectangles they leave or come back to. */
  lift(pieceIds: ReadonlySet<PieceId>): Rect[] {
    const dirty: Rect[] = [];
    for (const pieceId of this.lifted) {
      if (pieceIds.has(pieceId)) continue;
      for (const item of this.itemsOf(pieceId)) {
        this.tree.insert(item);
        dirty.push(item);
      }
    }
    for (const pieceId of pieceIds) {
      if (this.lifted.has(pieceId)) continue;
      for (const item of this.itemsOf(pieceId)) {
        this.tree.remove(item);
        dirty.push(item);
      }
    }
    this.lifted = pieceIds;
    return dirty;
  }

  /** What rests within a rectangle of the drawing, back to front. */
  within(rect: Rect): SceneItem[] {
    return this.tree.search(rect).sort(backToFront);
  }

  /** What rests on one panel, back to front. */
  withinPanel(panel: ScenePanel): SceneItem[] {
    const box = boxInDrawing(panel, {
      xMm: panel.widthMm / 2,
      yMm: (panel.heightMm + panel.lowestMm) / 2,
      widthMm: panel.widthMm,
      heightMm: panel.heightMm - panel.lowestMm,
    });
    const rect = { minX: box.X, minY: box.Y, maxX: box.X + box.width, maxY: box.Y + box.height };
    return this.within(rect).filter((item) => item.panel.surface === panel.surface);
  }

  private keep(pieceId: PieceId): readonly SceneItem[] {
    const items = itemsOf(this.frame, this.lookup, pieceId);
    if (items.length === 0) return items;
    this.byPiece.set(pieceId, items);
    for (const { picture } of items) {
      if (picture === null) continue;
      const set = this.byPicture.get(picture);
      if (set === undefined) this.byPicture.set(picture, new Set([pieceId]));
      else set.add(pieceId);
    }
    return items;
  }
}

const NONE: readonly SceneItem[] = [];
