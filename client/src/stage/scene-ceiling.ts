/** A room's ceiling seen from below: the head wall's edge at the foot of the drawing, left and right as on that wall. */
import type { LabD65 } from '@enfilade/colour/lab';
import { hexFromLabD65, inkOn } from '@enfilade/colour/spaces';
import type { Judgements } from '@enfilade/shared/judgements';
import { type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { ceilingPanelOf } from '@enfilade/space/fold-out';
import type { SceneFrame } from './panels.ts';
import { SECTION_MM } from './scene-wall.ts';

/** The frame of a ceiling, or null where it is no ceiling of a room. `tried`: a paint on trial and its surface. */
export function ceilingFrameOf(
  judgements: Judgements,
  surface: SurfaceId,
  tried: { readonly surface: SurfaceId; readonly lab: LabD65 } | null = null,
): SceneFrame | null {
  const parts = surfaceParts(surface);
  const room = judgements.where.roomOf(surface);
  if (parts?.side !== 'ceiling' || room === null) return null;
  const panel = ceilingPanelOf(room);
  const lab = tried?.surface === surface ? tried.lab : (judgements.paintOf(surface)?.lab ?? null);
  return {
    sheet: 'ceiling',
    roomId: parts.roomId,
    bounds: {
      minX: -SECTION_MM,
      minY: -SECTION_MM,
      maxX: panel.widthMm + SECTION_MM,
      maxY: panel.heightMm + SECTION_MM,
    },
    centreLineMm: 0,
    panels: [
      {
        ...panel,
        ...{ surface, kind: 'ceiling', room, openings: [], fixtures: [], floorMm: [0, 0] },
        paint: lab === null ? null : hexFromLabD65(lab),
        ink: lab === null ? 'black' : inkOn(lab),
      },
    ],
  };
}
