import type { Box, Extent } from './boxes.ts';
import type { HangPiece } from './hang-task.ts';
import type { MassPlace, StandingThing } from './mass-task.ts';
import type { Spot } from './nearest-free.ts';

/** A carrier before a wall, seen from the front, with what is to go on it, beside it on the floor and above it. In mm. */
export interface AroundTask {
  /** Where on the wall things may hang and stand. */
  readonly surface: Extent;
  readonly floorMm: number;
  readonly carrier: StandingThing & { readonly xMm: number };
  readonly on: readonly StandingThing[];
  readonly around: readonly StandingThing[];
  readonly above: readonly HangPiece[];
  /** Openings, fixtures, label places, other things, as seen from the front. */
  readonly keepClear: readonly Box[];
  readonly gapMm: number;
  /** From the carrier and its load up to what hangs: 3 to 8 in is usual practice; 100 unless given. */
  readonly overMm?: number;
  readonly centreLineMm: number;
  /** As in mass-task. */
  readonly riserMm?: number;
}

export type AroundName = 'symmetrical' | 'to one side' | 'in a line';

export interface AroundCandidate {
  readonly name: AroundName;
  /** On the carrier, as in mass-task; y from its front edge. */
  readonly on: readonly (MassPlace | null)[];
  /** On the floor: along the wall, and the height of the thing's middle. */
  readonly around: readonly (Spot | null)[];
  readonly above: readonly (Spot | null)[];
  /** How many found no room, of all. */
  readonly unplaced: number;
  readonly measures: {
    /** −1 … 1: where the weight of the whole lies from the carrier's middle; positive is right. */
    readonly balanceX: number;
    readonly largestVoidMm: number;
    readonly outline: { readonly widthMm: number; readonly heightMm: number };
    /** The least from the carrier or its load up to what hangs straight over it; null where nothing does. */
    readonly overLoadMm: number | null;
  };
}

/** The load as seen from the front. */
export function boxesOn({ carrier, floorMm, on }: AroundTask, places: readonly (MassPlace | null)[]): Box[] {
  return places.flatMap((at, i) => {
    if (at === null) return [];
    const { widthMm, heightMm } = on[i]!;
    const yMm = floorMm + carrier.heightMm + at.liftMm + heightMm / 2;
    return [{ xMm: carrier.xMm - carrier.widthMm / 2 + at.xMm, yMm, widthMm, heightMm }];
  });
}

/** Its size as seen from the front. */
export function sizeOf({ widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }) {
  return { widthMm, heightMm };
}
