/** The surfaces of a drawing: where each lies, its paint, its openings and fixtures. Drawing space is mm, Y down. */

import type { LabD65 } from '@enfilade/colour/lab';
import { hexFromLabD65, inkOn } from '@enfilade/colour/spaces';
import type { Judgements } from '@enfilade/shared/judgements';
import { type RoomId, type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { ontoPanel, type Panel, toDrawing } from '@enfilade/space/fold-out';
import { floorLevelAlong, type RoomShape, type WallSide } from '@enfilade/space/room';

export interface PanelBox {
  readonly id: string;
  readonly kind: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface ScenePanel extends Panel {
  readonly surface: SurfaceId;
  readonly kind: 'wall' | 'floor' | 'ceiling' | 'layout';
  readonly room: RoomShape | null;
  /** sRGB of the wall's paint, or null where none is chosen. */
  readonly paint: string | null;
  /** Lines and figures laid on it. */
  readonly ink: 'white' | 'black';
  readonly openings: readonly PanelBox[];
  readonly fixtures: readonly PanelBox[];
  /** Floor level at the left and right end of a wall; 0 elsewhere. */
  readonly floorMm: readonly [number, number];
}

/** What is drawn that rests: panels in their frame, before any piece. */
export interface SceneFrame {
  readonly sheet: 'room' | 'wall' | 'ceiling' | 'layout';
  readonly roomId: RoomId | null;
  /** Extent to be fitted into the window, in drawing mm. */
  readonly bounds: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
  readonly panels: readonly ScenePanel[];
  readonly centreLineMm: number;
}

export function panelOf(frame: SceneFrame, surface: SurfaceId): ScenePanel | undefined {
  return frame.panels.find((panel) => panel.surface === surface);
}

/** A wall's panel with its paint, openings and fixtures. `tried` is a paint on trial, shown instead of its own. */
export function wallScenePanel(
  judgements: Judgements,
  surface: SurfaceId,
  room: RoomShape,
  panel: Panel,
  tried: LabD65 | null,
): ScenePanel {
  const lab = tried ?? judgements.paintOf(surface)?.lab ?? null;
  const side = panel.side as WallSide;
  return {
    ...panel,
    surface,
    kind: 'wall',
    room,
    paint: lab === null ? null : hexFromLabD65(lab),
    ink: lab === null ? 'black' : inkOn(lab),
    openings: judgements.openingsOn(surface).map((box) => ({ ...box, kind: box.opening.kind })),
    fixtures: judgements.fixturesOn(surface),
    floorMm: [floorLevelAlong(room, side, 0), floorLevelAlong(room, side, panel.widthMm)],
  };
}

/** The plan of a room's floor. Its openings are the doorways of its walls, as gaps in its edge. */
export function floorScenePanel(surface: SurfaceId, room: RoomShape, panel: Panel): ScenePanel {
  return {
    ...panel,
    surface,
    kind: 'floor',
    room,
    paint: null,
    ink: 'black',
    openings: [],
    fixtures: [],
    floorMm: [0, 0],
  };
}

/** The surface under a drawing point, with its own x and y; null beyond them all. */
export function surfaceAt(
  frame: SceneFrame,
  X: number,
  Y: number,
): { readonly panel: ScenePanel; readonly xMm: number; readonly yMm: number } | null {
  for (const panel of frame.panels) {
    const { xMm, yMm } = ontoPanel(panel, X, Y);
    if (xMm >= 0 && xMm <= panel.widthMm && yMm >= panel.lowestMm && yMm <= panel.heightMm) return { panel, xMm, yMm };
  }
  return null;
}

/** Axis-parallel drawing rectangle of a box on a panel. */
export function boxInDrawing(
  panel: Panel,
  box: { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number },
): { readonly X: number; readonly Y: number; readonly width: number; readonly height: number } {
  const { X, Y } = toDrawing(panel, box.xMm, box.yMm);
  const turned = panel.rotationDegrees % 180 !== 0;
  const width = turned ? box.heightMm : box.widthMm;
  const height = turned ? box.widthMm : box.heightMm;
  return { X: X - width / 2, Y: Y - height / 2, width, height };
}

export function roomIdOf(surface: SurfaceId): RoomId | null {
  return surfaceParts(surface)?.roomId ?? null;
}
