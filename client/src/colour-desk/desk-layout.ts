/** How this person has the desk laid out: what stands across, in which order, and what is folded. */
import type { DeskPool, WallOrder, WorkOrder } from '@enfilade/shared/colour-desk';
import { Store } from '../selection.ts';

/** 'own': each wall has only what hangs on it; otherwise every work stands on every wall. */
export type Across = 'own' | DeskPool;

export interface DeskLayout {
  readonly across: Across;
  readonly works: WorkOrder;
  readonly walls: WallOrder;
  /** Groups folded or opened by hand; the others as is best for their number. */
  readonly folds: ReadonlyMap<string, boolean>;
}

export const deskLayout = new Store<DeskLayout>({ across: 'hung', works: 'wall', walls: 'room', folds: new Map() });

export function layOut(change: Partial<DeskLayout>): void {
  deskLayout.set({ ...deskLayout.get(), ...change });
}
