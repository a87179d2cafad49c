/** Let go on a ceiling, or moved where it hangs already: in elevations on what it hangs by, in plan at its height. */
import { dropFor, fromBelow } from '@enfilade/shared/overhead';
import type { Place } from '@enfilade/shared/schema';
import { planFromWall, type WallSide, wallFromPlan } from '@enfilade/space/room';
import { type Dropped, type Dropping, kept, settle } from './dropping.ts';
import type { ScenePanel } from './panels.ts';

/** It hangs from the ceiling of this panel's room already. */
export function hangsHere({ panel, from }: Dropping): boolean {
  return from !== null && from.place[0] === ceilingOf(panel);
}

function ceilingOf(panel: ScenePanel): string {
  return `${panel.surface.slice(0, panel.surface.indexOf(':'))}:ceiling`;
}

/** On the ceiling, seen from below: it drops as far as it did, or hangs with its top at the ceiling. */
export function onCeiling(dropping: Dropping): Dropped {
  const { panel, size, from, reachMm } = dropping;
  const xMm = settle(kept(dropping.xMm, size.widthMm / 2, panel.widthMm), reachMm);
  const yMm = settle(kept(dropping.yMm, (size.depthMm || 20) / 2, panel.heightMm), reachMm);
  const same = from !== null && from.place[0] === panel.surface;
  if (from !== null && from.place[0] === panel.surface.replace(/ceiling$/, 'floor')) {
    // What stands beneath goes on standing.
    const [floor, , , lift, turn] = from.place;
    return { place: [floor, xMm, yMm, lift, turn], xMm, yMm, carrier: null, onCentreLine: false };
  }
  const turn = same ? from.place[4] : from?.at.kind === 'floor' ? Math.round(fromBelow(from.at.turnDegrees) * 100) : 0;
  return {
    place: [panel.surface, xMm, yMm, same ? from.place[3] : 0, turn],
    xMm,
    yMm,
    carrier: null,
    onCentreLine: false,
  };
}

/** What hangs from the ceiling, moved in an elevation: along the wall, and up and down on what it hangs by. */
export function overheadBefore(dropping: Dropping): Dropped {
  const { panel, size, from, reachMm } = dropping;
  const room = panel.room as NonNullable<ScenePanel['room']>;
  const side = panel.side as WallSide;
  const [on, x, y, , turn] = (from as NonNullable<Dropping['from']>).place;
  const along = settle(kept(dropping.xMm, size.widthMm / 2, panel.widthMm), reachMm);
  const drop = Math.max(0, settle(dropFor(room, dropping.yMm - size.heightMm / 2, size.heightMm), reachMm));
  const spot = planFromWall(room, side, along, wallFromPlan(room, side, x, y).standOffMm);
  const yMm = room.heightMm - drop - size.heightMm / 2;
  const place: Place = [on, Math.round(spot.xMm), Math.round(spot.yMm), Math.round(drop), turn];
  return { place, xMm: along, yMm, carrier: null, onCentreLine: false };
}
