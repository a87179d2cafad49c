/** How one piece is drawn on the panels of a drawing: none, one, or several items, in plan and in elevations. */
import type { ChosenFrame } from '@enfilade/shared/frames';
import { TURN_OF_BACK } from '@enfilade/shared/in-openings';
import { BEFORE_A_WALL_MM, fromBelow, seenBefore } from '@enfilade/shared/overhead';
import { type OpeningId, type PieceId, surfaceParts } from '@enfilade/shared/schema';
import { toDrawing } from '@enfilade/space/fold-out';
import type { WallSide } from '@enfilade/space/room';
import { FLAT_ON_FLOOR_MM, inOpening } from './item-in-opening.ts';
import { type Moulding, mouldingOf } from './moulding.ts';
import type { SceneFrame, ScenePanel } from './panels.ts';
import { isWall, type Lookup, type OnFloor, standingOf } from './standing.ts';

export interface SceneItem {
  /** `pieceId@surface`: a thing on the floor is seen in the plan and in each elevation it stands before. */
  readonly key: string;
  readonly pieceId: PieceId;
  /** The panel it is drawn on. */
  readonly panel: ScenePanel;
  /** Centre in drawing mm, Y down. */
  readonly X: number;
  readonly Y: number;
  /** Centre in the panel's own frame, y up. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Width over height of the thing itself within its frame, which seen aslant is drawn narrower. */
  readonly shape: number;
  /** The frame drawn round its picture. */
  readonly moulding: Moulding | null;
  /** Clockwise on the screen. */
  readonly rotationDegrees: number;
  /**
   * 'picture': as faced. 'footprint': from above, or of a ceiling from below. 'flank': only its outline: a side its
   * picture does not show, or far before the wall. 'overhead': the outline of what hangs over a plan, or
   * stands beneath a ceiling.
   */
  readonly as: 'picture' | 'footprint' | 'flank' | 'overhead';
  /** Hangs from the ceiling: in an elevation what it hangs by is drawn, up to the ceiling's y. */
  readonly hangsFromMm: number | null;
  /** The doorway or window it is in. */
  readonly openingId: OpeningId | null;
  readonly picture: string | null;
  readonly hatch: 'unsized' | 'uncertain' | null;
  readonly name: string;
  /** Back to front within its panel. */
  readonly depth: number;
  /** True when its place is on this very panel. */
  readonly direct: boolean;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface Rect {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** What a drawing asks of a show: geometry, and how a piece is told. */
export interface SceneLookup extends Lookup {
  pictureOf(pieceId: PieceId): string | null;
  nameOf(pieceId: PieceId): string;
  /** The frame to be drawn round its picture, within its size; null for none. */
  frameOf(pieceId: PieceId): ChosenFrame | null;
}

const BENEATH_ALL = -1e6;

/** How a piece is drawn in a frame: none, one, or several items (plan and elevations). */
export function itemsOf(frame: SceneFrame, lookup: SceneLookup, pieceId: PieceId): SceneItem[] {
  const at = standingOf(lookup, pieceId);
  const size = lookup.sizeOf(pieceId);
  if (at === null || size === null) return [];
  const items: SceneItem[] = [];
  const hatch = size.known ? (size.certain ? null : 'uncertain') : 'unsized';
  const chosen = size.known ? lookup.frameOf(pieceId) : null;
  const framed = chosen === null ? null : mouldingOf(chosen, size);
  const add = (
    panel: ScenePanel,
    part: Omit<SceneItemPart, 'panel' | 'hangsFromMm' | 'openingId' | 'shape' | 'moulding'> & Hangs,
  ): void => {
    const openingId = at.kind === 'opening' ? at.openingId : null;
    const twice = 2 * (chosen?.widthMm ?? 0);
    const shape = (size.widthMm - twice) / (size.heightMm - twice);
    const moulding = part.as === 'picture' ? framed : null;
    items.push(sceneItem({ hangsFromMm: null, ...part, shape, moulding, openingId, panel }, pieceId, lookup, hatch));
  };
  for (const panel of frame.panels) {
    if (at.kind === 'wall') {
      if (panel.surface !== at.surface) continue;
      const { widthMm, heightMm } = size;
      const { xMm, yMm, turnDegrees, standOffMm, direct } = at;
      add(panel, { xMm, yMm, widthMm, heightMm, turnDegrees, as: 'picture', depth: standOffMm, direct });
    } else if (at.kind === 'opening') {
      const part = inOpening(panel, at, size);
      if (part !== null) add(panel, part);
    } else if (panel.surface === at.surface || isOver(panel, at)) {
      const layout = panel.kind === 'layout';
      add(panel, {
        xMm: at.xMm,
        yMm: at.yMm,
        widthMm: size.widthMm,
        heightMm: layout ? size.heightMm : size.depthMm || FLAT_ON_FLOOR_MM,
        turnDegrees: panel.kind === 'ceiling' ? fromBelow(at.turnDegrees) : at.turnDegrees,
        as: layout ? 'picture' : panel.surface === at.surface ? 'footprint' : 'overhead',
        // Seen from below, what hangs lower is nearer; outlines of what stands beneath lie behind it all.
        depth: panel.kind !== 'ceiling' ? at.baseMm : at.overhead ? -at.baseMm : BENEATH_ALL,
        direct: at.direct && panel.surface === at.surface,
      });
    } else if (panel.kind === 'wall' && panel.room !== null && sameRoom(panel, at)) {
      const side = panel.side as WallSide;
      const view = seenBefore(panel.room, side, at, size, at.overhead);
      if (view === null) continue;
      // Of a thing seen from its side only the outline is drawn, and of what it carries nothing.
      const off = (((at.turnDegrees - TURN_OF_BACK[side]) % 360) + 360) % 360;
      const faced = off <= 30 || off >= 330;
      if (!faced && !at.direct) continue;
      add(panel, {
        xMm: view.xMm,
        yMm: at.baseMm + size.heightMm / 2,
        widthMm: view.widthMm,
        heightMm: size.heightMm,
        turnDegrees: 0,
        as: faced && view.distanceMm <= BEFORE_A_WALL_MM ? 'picture' : 'flank',
        depth: Math.max(1, view.distanceMm),
        direct: false,
        ...(at.overhead && at.direct ? { hangsFromMm: panel.heightMm } : {}),
      });
    }
  }
  return items;
}

type Hangs = { readonly hangsFromMm?: number };

interface SceneItemPart {
  readonly hangsFromMm: number | null;
  readonly openingId: OpeningId | null;
  readonly shape: number;
  readonly moulding: Moulding | null;
  readonly panel: ScenePanel;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turnDegrees: number;
  readonly as: SceneItem['as'];
  readonly depth: number;
  readonly direct: boolean;
}

function sceneItem(part: SceneItemPart, pieceId: PieceId, lookup: SceneLookup, hatch: SceneItem['hatch']): SceneItem {
  const { turnDegrees, ...rest } = part;
  const { X, Y } = toDrawing(part.panel, part.xMm, part.yMm);
  const rotationDegrees = (((part.panel.rotationDegrees + turnDegrees) % 360) + 360) % 360;
  const turn = (rotationDegrees * Math.PI) / 180;
  const c = Math.abs(Math.cos(turn));
  const s = Math.abs(Math.sin(turn));
  const halfX = (part.widthMm * c + part.heightMm * s) / 2;
  const halfY = (part.widthMm * s + part.heightMm * c) / 2;
  const box = { minX: X - halfX, minY: Y - halfY, maxX: X + halfX, maxY: Y + halfY };
  return {
    ...rest,
    key: `${pieceId}@${part.panel.surface}`,
    pieceId,
    X,
    Y,
    rotationDegrees,
    picture: part.as === 'picture' ? lookup.pictureOf(pieceId) : null,
    hatch,
    name: lookup.nameOf(pieceId),
    ...(part.hangsFromMm === null ? box : withWhatItHangsBy(box, part)),
  };
}

/** Its rectangle and that of its suspension, so that both are painted anew together. */
function withWhatItHangsBy(box: Rect, { panel, xMm, hangsFromMm }: SceneItemPart): Rect {
  const { X, Y } = toDrawing(panel, xMm, hangsFromMm ?? 0);
  return {
    minX: Math.min(box.minX, X),
    minY: Math.min(box.minY, Y),
    maxX: Math.max(box.maxX, X),
    maxY: Math.max(box.maxY, Y),
  };
}

/** What hangs is seen in the plan beneath it; what stands on the floor, without its load, in the ceiling over it. */
function isOver({ kind, surface }: ScenePanel, at: OnFloor): boolean {
  if (surfaceParts(surface)?.roomId !== surfaceParts(at.surface)?.roomId) return false;
  return at.overhead ? kind === 'floor' : kind === 'ceiling' && at.direct;
}

function sameRoom(panel: ScenePanel, at: OnFloor): boolean {
  const roomId = surfaceParts(at.surface)?.roomId;
  const parts = surfaceParts(panel.surface);
  return roomId !== undefined && parts?.roomId === roomId && isWall(parts.side);
}

/** Back to front; ties by piece, so that every screen draws alike. */
export function backToFront(a: SceneItem, b: SceneItem): number {
  return a.depth - b.depth || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);
}
