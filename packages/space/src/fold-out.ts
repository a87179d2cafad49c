/**
 * The fold-out: a room's plan in the middle and every wall laid flat outwards around it, its base along the plan's
 * edge. One drawing space in millimetres, X to the right and Y DOWN as on a screen; the head wall is upright above the
 * plan. After the developed-surface drawing of interiors.
 */
import type { RoomShape, WallSide } from './room.ts';
import { floorLevelAlong, wallLengthOf } from './room.ts';

/** A surface laid into a drawing. A panel alone, turned by 0, is also a wall's elevation or a floor. */
export interface Panel {
  readonly side: WallSide | 'floor' | 'ceiling';
  /** Where the surface's own (0, 0) lies in the drawing. */
  readonly origin: { readonly X: number; readonly Y: number };
  /** Clockwise on the screen, as SVG and canvas turn: head 0, right 90, foot 180, left 270. */
  readonly rotationDegrees: 0 | 90 | 180 | 270;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Lowest y drawn: 0, or below it where the floor falls under the level plane. */
  readonly lowestMm: number;
  /** Its y runs down the drawing: a ceiling as seen from below, the head wall beneath it. */
  readonly flipped?: true;
}

export interface FoldOut {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The floor, then head, right, foot, left. */
  readonly panels: readonly Panel[];
}

export interface SurfacePoint {
  readonly side: Panel['side'];
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * The fold-out of a room (mm, Y down); gapMm parts each wall's base (its y = 0) from the plan's edge. Make it wider than
 * the floor falls, or the plan lies over the feet of the walls. RangeError on a
 * negative gap.
 */
export function foldOutOf(shape: RoomShape, gapMm: number): FoldOut {
  if (!(gapMm >= 0)) throw new RangeError(`gapMm is ${gapMm}; it must be 0 or more`);
  const { widthMm, depthMm, heightMm } = shape;
  const margin = heightMm + gapMm;
  const left = margin;
  const right = margin + widthMm;
  const top = margin;
  const bottom = margin + depthMm;
  const wall = (side: WallSide, X: number, Y: number, rotationDegrees: Panel['rotationDegrees']): Panel => ({
    ...wallPanelOf(shape, side),
    origin: { X, Y },
    rotationDegrees,
  });
  return {
    widthMm: widthMm + 2 * margin,
    heightMm: depthMm + 2 * margin,
    panels: [
      {
        side: 'floor',
        origin: { X: left, Y: bottom },
        rotationDegrees: 0,
        widthMm,
        heightMm: depthMm,
        lowestMm: 0,
      },
      wall('head', left, top - gapMm, 0),
      wall('right', right + gapMm, top, 90),
      wall('foot', right, bottom + gapMm, 180),
      wall('left', left - gapMm, bottom, 270),
    ],
  };
}

/** One wall alone, upright: its left upper corner at the drawing's (0, 0). */
export function wallPanelOf(shape: RoomShape, side: WallSide): Panel {
  const widthMm = wallLengthOf(shape, side);
  const lowestMm = Math.min(0, floorLevelAlong(shape, side, 0), floorLevelAlong(shape, side, widthMm));
  return { side, origin: { X: 0, Y: shape.heightMm }, rotationDegrees: 0, widthMm, heightMm: shape.heightMm, lowestMm };
}

/**
 * A ceiling alone as seen from below, by one who looks at the head wall and then up: that wall's edge is at the foot of
 * the drawing, left and right are as on the wall. x and y are the plan's; its head left corner is at (0, depth).
 */
export function ceilingPanelOf(shape: RoomShape): Panel {
  const { widthMm, depthMm } = shape;
  const origin = { X: 0, Y: 0 };
  return { side: 'ceiling', origin, rotationDegrees: 0, widthMm, heightMm: depthMm, lowestMm: 0, flipped: true };
}

/** Drawing point (mm, Y down) of a surface's x and y (mm, y up). */
export function toDrawing(panel: Panel, xMm: number, yMm: number): { readonly X: number; readonly Y: number } {
  const [c, s] = quarterOf(panel);
  const up = panel.flipped ? -yMm : yMm;
  return { X: panel.origin.X + xMm * c + up * s, Y: panel.origin.Y + xMm * s - up * c };
}

/** A panel's own x and y (mm, y up) of any drawing point, inside the panel or not: for a drag that leaves it. */
export function ontoPanel(panel: Panel, X: number, Y: number): { readonly xMm: number; readonly yMm: number } {
  const { dxMm, dyMm } = arrowOnPanel(panel, X - panel.origin.X, Y - panel.origin.Y);
  return { xMm: dxMm, yMm: dyMm };
}

/** The surface under a drawing point with its own x and y (mm), or null between and beyond the panels. */
export function fromDrawing(foldOut: FoldOut, X: number, Y: number): SurfacePoint | null {
  for (const panel of foldOut.panels) {
    const { xMm, yMm } = ontoPanel(panel, X, Y);
    const within = xMm >= 0 && xMm <= panel.widthMm && yMm >= panel.lowestMm && yMm <= panel.heightMm;
    if (within) return { side: panel.side, xMm, yMm };
  }
  return null;
}

/** A step on the screen (Y down) as a step in the panel's own axes (y up), so arrow keys follow the screen. */
export function arrowOnPanel(
  panel: Panel,
  screenDx: number,
  screenDy: number,
): { readonly dxMm: number; readonly dyMm: number } {
  const [c, s] = quarterOf(panel);
  const up = screenDx * s - screenDy * c;
  // The 0 turns a minus zero into zero.
  return { dxMm: 0 + screenDx * c + screenDy * s, dyMm: 0 + (panel.flipped ? -up : up) };
}

/** Cosine and sine of a panel's quarter turn: whole numbers, so that a round trip loses nothing. */
function quarterOf(panel: Panel): readonly [cosine: number, sine: number] {
  switch (panel.rotationDegrees) {
    case 0:
      return [1, 0];
    case 90:
      return [0, 1];
    case 180:
      return [-1, 0];
    case 270:
      return [0, -1];
  }
}
