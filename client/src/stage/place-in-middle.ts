/** Placed by a key: in the middle, or where beside it there is room. */
import * as commands from '@enfilade/shared/commands';
import type { PieceId } from '@enfilade/shared/schema';
import { ontoPanel } from '@enfilade/space/fold-out';
import { toDrawingPoint } from './camera.ts';
import { droppedAt } from './drop-targets.ts';
import { freeSpotOn } from './free-spot.ts';
import { uprightBoxOf } from './gaps.ts';
import { gripOf, placesOf, SIDE_BY_SIDE_MM } from './grip.ts';
import { FLAT_ON_FLOOR_MM } from './item-in-opening.ts';
import type { SceneFrame, ScenePanel } from './panels.ts';
import type { StageMachine } from './stage-machine.ts';

/** Clear of everything, or over what is there since nothing else was free. */
export type Placing = 'clear' | 'over';

/** Hung on the centre line, or standing; what came of it, or null where nothing was written. */
export function placeInMiddle(machine: StageMachine, pieceIds: readonly PieceId[]): Placing | null {
  const first = pieceIds[0];
  if (first === undefined) return null;
  const { scene, resting, show, camera, size, insets } = machine;
  const own = resting.sizeOf(first);
  if (scene === null || own === null) return null;
  const levels = resting.levelsOf(first);
  const panel = panelFor(scene.frame.panels, own.depthMm > 60 || levels.length > 0);
  if (panel === undefined) return null;
  const middle = toDrawingPoint(
    camera,
    (insets.left + size.width - insets.right) / 2,
    (insets.top + size.height - insets.bottom) / 2,
  );
  const at = middleOf(scene.frame.sheet, panel, ontoPanel(panel, middle.X, middle.Y), camera.scale, size.width);
  const wide = (id: PieceId) => resting.sizeOf(id)?.widthMm ?? 0;
  const groupMm = pieceIds.reduce((sum, id) => sum + wide(id) + SIDE_BY_SIDE_MM, -SIDE_BY_SIDE_MM);
  const dropping = {
    panel,
    xMm: at.xMm,
    yMm: panel.kind === 'wall' ? scene.frame.centreLineMm : at.yMm,
    size: own,
    levelsMm: levels,
    from: null,
    items: [],
    centreLineMm: scene.frame.centreLineMm,
    reachMm: 5,
  };
  // First where it would come to lie, hung or stood; then the nearest room for it there.
  const wanted = droppedAt(resting, dropping);
  const deepest = Math.max(...pieceIds.map((id) => resting.sizeOf(id)?.depthMm || FLAT_ON_FLOOR_MM));
  const highest = Math.max(...pieceIds.map((id) => resting.sizeOf(id)?.heightMm ?? 0));
  const box = {
    ...wanted,
    widthMm: groupMm,
    heightMm: panel.kind === 'floor' || panel.kind === 'ceiling' ? deepest : highest,
  };
  const taken = scene.withinPanel(panel).filter(({ pieceId }) => !pieceIds.includes(pieceId));
  const keepClear = panel.kind === 'wall' ? show.judgements.keepClearOn(panel.surface) : [];
  const spot = freeSpotOn(panel, box, taken.map(uprightBoxOf), keepClear, show.judgements.setting('gapMm'));
  const dropped = droppedAt(resting, {
    ...dropping,
    xMm: (spot ?? wanted).xMm - (groupMm - own.widthMm) / 2,
    yMm: panel.kind === 'wall' ? dropping.yMm : (spot ?? wanted).yMm,
    reachMm: 0,
  });
  const grip = gripOf(resting, first, pieceIds, null, { xMm: 0, yMm: 0 });
  const places = placesOf(resting, { ...grip, from: new Map() }, panel, dropped);
  const name = pieceIds.length === 1 ? show.judgements.nameOf(first) : `${pieceIds.length} pieces`;
  if (!show.perform(commands.place(show.documents, places, `place ${name}`))) return null;
  return spot === null ? 'over' : 'clear';
}

/** The middle of a surface that is seen whole; else of what is in view of it. */
function middleOf(
  sheet: SceneFrame['sheet'],
  panel: ScenePanel,
  seen: { readonly xMm: number; readonly yMm: number },
  scale: number,
  windowPx: number,
): { readonly xMm: number; readonly yMm: number } {
  const whole = sheet === 'room' || sheet === 'ceiling' || (sheet === 'wall' && panel.widthMm * scale <= windowPx);
  return whole ? { xMm: panel.widthMm / 2, yMm: panel.heightMm / 2 } : seen;
}

/** A faced wall takes what it is given; in a fold-out deep things go to the floor, flat ones to the head wall. */
function panelFor(panels: readonly ScenePanel[], stands: boolean): ScenePanel | undefined {
  return panels.find(({ kind, side }) => (stands ? kind === 'floor' : side === 'head')) ?? panels[0];
}
