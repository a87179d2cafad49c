/** One wall faced alone: its elevation, cut in section at both sides and above. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { Judgements } from '@enfilade/shared/judgements';
import { type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { wallPanelOf } from '@enfilade/space/fold-out';
import { type SceneFrame, wallScenePanel } from './panels.ts';
import { isWall } from './standing.ts';

/** Thickness of the wall as cut, and of the floor beneath it (drawn, not measured). */
export const SECTION_MM = 100;
export const SLAB_MM = 130;

/** The frame of a wall's elevation, or null where it is no wall of a room. */
export function wallFrameOf(
  judgements: Judgements,
  surface: SurfaceId,
  tried: { readonly surface: SurfaceId; readonly lab: LabD65 } | null = null,
): SceneFrame | null {
  const parts = surfaceParts(surface);
  const room = judgements.where.roomOf(surface);
  if (parts === null || room === null || !isWall(parts.side)) return null;
  const panel = wallPanelOf(room, parts.side);
  return {
    sheet: 'wall',
    roomId: parts.roomId,
    bounds: {
      minX: -SECTION_MM,
      minY: -SECTION_MM,
      maxX: panel.widthMm + SECTION_MM,
      maxY: panel.heightMm - panel.lowestMm + SLAB_MM,
    },
    centreLineMm: judgements.setting('centreLineMm'),
    panels: [wallScenePanel(judgements, surface, room, panel, tried?.surface === surface ? tried.lab : null)],
  };
}
