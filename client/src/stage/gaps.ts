/** Gaps from a piece on a panel to its nearest neighbours, fixtures and edges. */
import type { Box } from '@enfilade/arrangement/boxes';
import { gapsOf, type NeighbourGaps } from '@enfilade/arrangement/neighbour-gaps';
import type { Judgements } from '@enfilade/shared/judgements';
import type { PieceId } from '@enfilade/shared/schema';
import type { ScenePanel } from './panels.ts';
import { panelOf } from './panels.ts';
import type { Scene } from './scene.ts';
import type { SceneItem } from './scene-items.ts';

export interface Gaps {
  readonly panel: ScenePanel;
  readonly box: Box;
  readonly gaps: NeighbourGaps;
  readonly around: readonly Box[];
}

/** Null on the layout floor, which has no edges to be away from and whose gaps are looked at between things only. */
export function gapsAbout(
  judgements: Judgements,
  scene: Scene,
  item: SceneItem,
  moving: ReadonlySet<PieceId>,
): Gaps | null {
  const panel = panelOf(scene.frame, item.panel.surface);
  if (panel === undefined) return null;
  const box = uprightBoxOf(item);
  const around: Box[] = [];
  for (const other of scene.withinPanel(panel)) {
    // Over a plan nothing that hangs is in the way of what stands, nor the other way about.
    if ((other.as === 'overhead') !== (item.as === 'overhead')) continue;
    if (!moving.has(other.pieceId) && other.pieceId !== item.pieceId) around.push(uprightBoxOf(other));
  }
  const inside = panel.openings.find((opening) => item.openingId === opening.id);
  around.push(...panel.fixtures, ...panel.openings.filter((opening) => opening !== inside));
  const gaps = inside
    ? gapsOf(box, around, edgesOf(inside))
    : panel.kind === 'wall'
      ? judgements.gapsAround(panel.surface, box, around)
      : gapsOf(box, around, { leftMm: 0, rightMm: panel.widthMm, bottomMm: 0, topMm: panel.heightMm });
  if (gaps === null) return null;
  // An opening is bare, whatever the wall round it is painted.
  const on: ScenePanel = inside === undefined ? panel : { ...panel, ink: 'black' };
  return { panel: on, box, around, gaps: panel.kind === 'layout' ? withoutEdges(gaps) : gaps };
}

/** Of what is in an opening, its reveals, its sill and its head. */
function edgesOf(box: Box): { leftMm: number; rightMm: number; bottomMm: number; topMm: number } {
  return {
    leftMm: box.xMm - box.widthMm / 2,
    rightMm: box.xMm + box.widthMm / 2,
    bottomMm: box.yMm - box.heightMm / 2,
    topMm: box.yMm + box.heightMm / 2,
  };
}

/** The upright rectangle round an item, in its panel's frame, whatever its turn. */
export function uprightBoxOf(item: SceneItem): Box {
  const turn = ((item.rotationDegrees - item.panel.rotationDegrees) * Math.PI) / 180;
  const c = Math.abs(Math.cos(turn));
  const s = Math.abs(Math.sin(turn));
  return {
    xMm: item.xMm,
    yMm: item.yMm,
    widthMm: item.widthMm * c + item.heightMm * s,
    heightMm: item.widthMm * s + item.heightMm * c,
  };
}

function withoutEdges(gaps: NeighbourGaps): NeighbourGaps {
  const none = (side: NeighbourGaps['left']) => (side.to === 'edge' ? { mm: 0, to: 'edge' as const } : side);
  return { left: none(gaps.left), right: none(gaps.right), above: none(gaps.above), below: none(gaps.below) };
}
