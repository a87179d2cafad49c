/** What is drawn over the proposal's wall: outlines of what goes, numbers of what comes. Pure. */
import { type ProposedMove, placesOfMove } from '@enfilade/shared/proposal-moves';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { boxInDrawing, type SceneFrame, type ScenePanel } from '../stage/panels.ts';
import { itemsOf, type SceneItem, type SceneLookup } from '../stage/scene-items.ts';
import { isLaid } from './in-proposal.ts';
import type { MoveEntry } from './move-entries.ts';

export interface Ghost {
  readonly key: string;
  readonly item: SceneItem;
  /** Crossed out where what comes lies well clear of it: a cross over the work that comes would hide it. */
  readonly crossed: boolean;
}

export interface Tag {
  readonly key: string;
  readonly number: number;
  /** Left upper corner of what it numbers, drawing mm. */
  readonly X: number;
  readonly Y: number;
  /** It stands inside a wall's corner, not on a thing's. */
  readonly onWall: boolean;
}

export interface TracingMarks {
  readonly ghosts: readonly Ghost[];
  readonly tags: readonly Tag[];
  /** What comes: outlines of what goes pass behind it. */
  readonly comes: readonly SceneItem[];
}

/**
 * `hang` looks up the show as it is, `laid` the show with the proposal. An ended proposal is drawn against the hang it was
 * made over, so that it reads as it did.
 */
export function tracingOf(
  frame: SceneFrame,
  entries: readonly MoveEntry[],
  { hang, laid, ended }: { readonly hang: SceneLookup; readonly laid: SceneLookup; readonly ended: boolean },
): TracingMarks {
  const under = ended ? lookupBefore(hang, entries) : hang;
  const ghosts: Ghost[] = [];
  const tags: Tag[] = [];
  const all: SceneItem[] = [];
  for (const { number, id, moves } of entries) {
    const shown = moves.filter((move) => isLaid(move, ended));
    const comes: SceneItem[] = [];
    for (const move of shown) {
      if (move.about.kind === 'wall') {
        const { surface } = move.about;
        const panel = frame.panels.find((candidate) => candidate.surface === surface);
        if (panel !== undefined) tags.push({ key: move.id, number, ...cornerOf(panel), onWall: true });
      }
      if (move.about.kind !== 'piece') continue;
      const { pieceId } = move.about;
      const now = directOf(itemsOf(frame, laid, pieceId));
      comes.push(...now);
      all.push(...now);
      if (placesOfMove(move) === null) continue;
      for (const item of directOf(itemsOf(frame, under, pieceId))) {
        if (now.some((other) => sameSpot(item, other))) continue;
        ghosts.push({ key: item.key, item, crossed: !now.some((other) => meet(item, other)) });
        if (now.length === 0) tags.push({ key: item.key, number, X: item.minX, Y: item.minY, onWall: false });
      }
    }
    // Many alike bear one number a wall, at the first of them from the left.
    const bySurface = new Map<string, SceneItem>();
    for (const item of comes) {
      const first = bySurface.get(item.panel.surface);
      if (first === undefined || item.minX < first.minX) bySurface.set(item.panel.surface, item);
    }
    for (const [surface, item] of bySurface) {
      tags.push({ key: `${id}@${surface}`, number, X: item.minX, Y: item.minY, onWall: false });
    }
  }
  return { ghosts, tags, comes: all };
}

/** Where a thing is itself; where it is not on any panel here, wherever else it is seen. */
function directOf(items: readonly SceneItem[]): readonly SceneItem[] {
  const direct = items.filter((item) => item.direct);
  return direct.length > 0 ? direct : items;
}

function cornerOf(panel: ScenePanel): { X: number; Y: number } {
  const { widthMm, heightMm } = panel;
  return boxInDrawing(panel, { xMm: widthMm / 2, yMm: heightMm / 2, widthMm, heightMm });
}

function sameSpot(a: SceneItem, b: SceneItem): boolean {
  return a.key === b.key && a.X === b.X && a.Y === b.Y && a.rotationDegrees === b.rotationDegrees;
}

function meet(a: SceneItem, b: SceneItem): boolean {
  return (
    a.panel.surface === b.panel.surface && a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY
  );
}

function lookupBefore(hang: SceneLookup, entries: readonly MoveEntry[]): SceneLookup {
  const before = new Map<PieceId, Place | null>();
  for (const { moves } of entries) for (const move of moves) keepBefore(move, before);
  return {
    ...hang,
    placeOf: (pieceId) => {
      const known = before.get(pieceId);
      return known === undefined ? hang.placeOf(pieceId) : known;
    },
  };
}

function keepBefore(move: ProposedMove, before: Map<PieceId, Place | null>): void {
  const places = placesOfMove(move);
  if (places !== null && move.about.kind === 'piece') before.set(move.about.pieceId, places.from);
}
