/** The fold-out: a room's plan in the middle, each wall laid flat outwards around it. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { Judgements } from '@enfilade/shared/judgements';
import type { RoomId, SurfaceId } from '@enfilade/shared/schema';
import { foldOutOf } from '@enfilade/space/fold-out';
import { floorScenePanel, type SceneFrame, wallScenePanel } from './panels.ts';

/** Between a wall's base and the plan's edge: wide enough that a falling floor does not run under the plan. */
const GAP_MM = 90;

/** The frame of a room's fold-out, or null where the room is gone. `tried`: a paint on trial and its surface. */
export function roomFrameOf(
  judgements: Judgements,
  roomId: RoomId,
  tried: { readonly surface: SurfaceId; readonly lab: LabD65 } | null = null,
): SceneFrame | null {
  const room = judgements.documents.get('rooms', roomId);
  if (room === undefined) return null;
  const deepest = Math.max(0, ...room.cornersMm.map((level) => -level));
  const foldOut = foldOutOf(room, GAP_MM + deepest);
  return {
    sheet: 'room',
    roomId,
    bounds: { minX: 0, minY: 0, maxX: foldOut.widthMm, maxY: foldOut.heightMm },
    centreLineMm: judgements.setting('centreLineMm'),
    panels: foldOut.panels.map((panel) => {
      const surface = `${roomId}:${panel.side}`;
      if (panel.side === 'floor') return floorScenePanel(surface, room, panel);
      return wallScenePanel(judgements, surface, room, panel, tried?.surface === surface ? tried.lab : null);
    }),
  };
}
