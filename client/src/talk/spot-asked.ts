/** A spot is asked for: pressed on the stage, or typed beside it. */
import type { SurfaceId } from '@enfilade/shared/schema';
import { Store } from '../selection.ts';

export interface Spotted {
  readonly surface: SurfaceId;
  readonly xMm: number;
  readonly yMm: number;
}

/** The surfaces a spot may lie on while one is asked for; null while none is. */
export const spotAsked = new Store<readonly SurfaceId[] | null>(null);
/** The spot a remark is being written on. */
export const spotTaken = new Store<Spotted | null>(null);

export function leaveSpot(): void {
  spotAsked.set(null);
  spotTaken.set(null);
}
