/** Brackets outside a wall's edge, one for each vignette on it: from its first piece to its last. Pure geometry. */
import type { PieceId, SurfaceId, VignetteId } from '@enfilade/shared/schema';
import { boxInDrawing, type ScenePanel } from './panels.ts';
import type { Scene } from './scene.ts';
import { SLAB_MM } from './scene-wall.ts';

/** The side of a panel, as the screen has it, that a bracket lies along. */
export type Edge = 'above' | 'below' | 'left' | 'right';

export interface Bracket {
  readonly id: VignetteId;
  readonly surface: SurfaceId;
  readonly edge: Edge;
  /** Drawing mm along the edge: X above and below, Y at the sides. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Drawing mm of the edge itself. */
  readonly atMm: number;
}

interface Grouped {
  readonly id: VignetteId;
  readonly surface: SurfaceId | null;
  readonly members: readonly PieceId[];
}

/** The edge of a wall with the board beyond it: its ceiling in a fold-out, beneath the floor's slab when faced. */
const OUTER_EDGE = { 0: 'above', 90: 'right', 180: 'below', 270: 'left' } as const;

/** Brackets of the vignettes on a drawing's walls; none for one of which nothing is shown there. */
export function bracketsOf(scene: Scene, vignettes: readonly Grouped[]): Bracket[] {
  const brackets: Bracket[] = [];
  for (const panel of scene.frame.panels) {
    if (panel.kind !== 'wall') continue;
    const edge = scene.frame.sheet === 'wall' ? 'below' : OUTER_EDGE[panel.rotationDegrees];
    const upright = edge === 'left' || edge === 'right';
    for (const { id, surface, members } of vignettes) {
      if (surface !== panel.surface) continue;
      const items = members.flatMap((pieceId) => scene.itemsOf(pieceId)).filter((item) => item.panel === panel);
      if (items.length === 0) continue;
      brackets.push({
        id,
        surface,
        edge,
        fromMm: Math.min(...items.map((item) => (upright ? item.minY : item.minX))),
        toMm: Math.max(...items.map((item) => (upright ? item.maxY : item.maxX))),
        atMm: edgeOf(panel, edge, scene.frame.sheet === 'wall'),
      });
    }
  }
  return brackets;
}

function edgeOf(panel: ScenePanel, edge: Edge, faced: boolean): number {
  if (faced) return panel.heightMm - panel.lowestMm + SLAB_MM;
  const { X, Y, width, height } = boxInDrawing(panel, {
    xMm: panel.widthMm / 2,
    yMm: panel.heightMm / 2,
    widthMm: panel.widthMm,
    heightMm: panel.heightMm,
  });
  return edge === 'above' ? Y : edge === 'below' ? Y + height : edge === 'left' ? X : X + width;
}

/** The first row in which each span lies clear of those before it by a gap; spans in any order. */
export function rowsOf(spans: readonly { readonly from: number; readonly to: number }[], gap: number): number[] {
  const rows = new Array<number>(spans.length).fill(0);
  const order = spans.map((_, index) => index).sort((a, b) => (spans[a]?.from ?? 0) - (spans[b]?.from ?? 0) || a - b);
  const ends: number[] = [];
  for (const index of order) {
    const span = spans[index] as { readonly from: number; readonly to: number };
    const free = ends.findIndex((end) => end + gap <= span.from);
    const row = free === -1 ? ends.length : free;
    ends[row] = span.to;
    rows[index] = row;
  }
  return rows;
}

/** A label of a width over the middle of a span, kept within limits; where it is wider than they are, from their start. */
export function labelSpanOf(
  span: { readonly from: number; readonly to: number },
  width: number,
  limits: { readonly from: number; readonly to: number },
): { readonly from: number; readonly to: number } {
  const middle = (span.from + span.to) / 2;
  const from = Math.max(limits.from, Math.min(limits.to - width, middle - width / 2));
  return { from, to: from + width };
}
