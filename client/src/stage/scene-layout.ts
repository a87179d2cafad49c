/** The layout floor: the free surface at true size. It has no edge of its own; what lies there says how far it goes. */

import { outerBoxOf } from '@enfilade/shared/aligning';
import type { Judgements } from '@enfilade/shared/judgements';
import { LAYOUT_FLOOR } from '@enfilade/shared/schema';
import type { SceneFrame } from './panels.ts';

/** Far beyond any room, so that nothing ever falls off (mm to each side). */
const REACH_MM = 500_000;
/** What is shown while nothing lies there (mm). */
const EMPTY = { widthMm: 6000, heightMm: 4000 };
const MARGIN_MM = 200;

export function layoutFrameOf(judgements: Judgements): SceneFrame {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const seen of judgements.where.planOf(LAYOUT_FLOOR)) {
    const box = outerBoxOf(seen, seen.turnDegrees);
    const [across, up] = [box.widthMm / 2 + MARGIN_MM, box.heightMm / 2 + MARGIN_MM];
    minX = Math.min(minX, seen.xMm - across);
    maxX = Math.max(maxX, seen.xMm + across);
    minY = Math.min(minY, -seen.yMm - up);
    maxY = Math.max(maxY, -seen.yMm + up);
  }
  const bounds =
    minX === Infinity
      ? { minX: 0, minY: -EMPTY.heightMm, maxX: EMPTY.widthMm, maxY: 0 }
      : {
          // Never nearer than a work or two needs, so that a single small thing does not fill the window.
          minX: Math.min(minX, (minX + maxX) / 2 - 1200),
          minY: Math.min(minY, (minY + maxY) / 2 - 900),
          maxX: Math.max(maxX, (minX + maxX) / 2 + 1200),
          maxY: Math.max(maxY, (minY + maxY) / 2 + 900),
        };
  return {
    sheet: 'layout',
    roomId: null,
    bounds,
    centreLineMm: 0,
    panels: [
      {
        surface: LAYOUT_FLOOR,
        kind: 'layout',
        side: 'floor',
        // Layout x runs right, y up; (0, 0) is the drawing's own.
        origin: { X: 0, Y: 0 },
        rotationDegrees: 0,
        widthMm: REACH_MM,
        heightMm: REACH_MM,
        lowestMm: -REACH_MM,
        room: null,
        paint: null,
        ink: 'black',
        openings: [],
        fixtures: [],
        floorMm: [0, 0],
      },
    ],
  };
}
