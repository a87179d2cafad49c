/** What is let go and where it comes to rest, in a panel's frame; and what a hand is helped with: grid and edges. */
import type { PieceId, Place } from '@enfilade/shared/schema';
import type { TrueSize } from '@enfilade/shared/true-size';
import type { ScenePanel } from './panels.ts';
import type { SceneItem } from './scene-items.ts';
import type { Standing } from './standing.ts';

export interface Dropped {
  readonly place: Place;
  /** Its centre on the panel once it rests. */
  readonly xMm: number;
  readonly yMm: number;
  readonly carrier: PieceId | null;
  readonly onCentreLine: boolean;
}

export interface Dropping {
  readonly panel: ScenePanel;
  /** Where its centre is held, in the panel's frame. */
  readonly xMm: number;
  readonly yMm: number;
  readonly size: TrueSize;
  /** Heights of the levels it offers itself; not empty for a carrier. */
  readonly levelsMm: readonly number[];
  /** Where it stood before, null when it comes from the rail. */
  readonly from: { readonly place: Place; readonly at: Standing } | null;
  /** What else is drawn on this panel and does not move. */
  readonly items: readonly SceneItem[];
  readonly centreLineMm: number;
  /** How near counts as meant (mm): some screen pixels. 0: settle on nothing. */
  readonly reachMm: number;
}

const GRID_MM = 10;

/** On the grid, where anything is settled on. */
export function settle(mm: number, reachMm: number): number {
  return reachMm > 0 ? Math.round(mm / GRID_MM) * GRID_MM : Math.round(mm);
}

/** With its edges within a length, where it is not longer. */
export function kept(mm: number, half: number, length: number): number {
  return half * 2 >= length ? mm : Math.min(length - half, Math.max(half, mm));
}
