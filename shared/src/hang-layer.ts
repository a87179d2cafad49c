/** What can be laid over the hang without touching it: the moves of a proposal, or a state kept earlier. */
import type { Change, RawFacts } from './root-snapshot.ts';
import type { Json, RootName } from './schema.ts';

export interface HangLayer {
  /** The root's facts with this layer over them, or null where the layer leaves the root as it is. */
  over(root: RootName, under: RawFacts): RawFacts | null;
  /** The changes to the live documents that make these changes in the layer. @throws RangeError where it is read only. */
  changesFor(changes: readonly Change[]): Change[];
}

/** The hang's roots a layer may hold; settings are not arranged, so they stay the show's. */
export const ARRANGED_ROOTS = [
  'places',
  'memberOf',
  'paints',
  'vignettes',
  'pinned',
] as const satisfies readonly RootName[];
export type ArrangedRoot = (typeof ARRANGED_ROOTS)[number];

export function isArranged(root: RootName): root is ArrangedRoot {
  return (ARRANGED_ROOTS as readonly RootName[]).includes(root);
}

type Facts = { readonly [key: string]: Json };

/** Every arranged fact, by root and raw key: what a kept state holds. States kept in earlier versions say nothing of pins. */
export type HangState = { readonly [R in Exclude<ArrangedRoot, 'pinned'>]: Facts } & { readonly pinned?: Facts };

/** A whole state of the hang as it was; nothing can be changed in it. */
export function layerOfState(state: HangState): HangLayer {
  return {
    over(root) {
      const kept = isArranged(root) ? state[root] : undefined;
      if (kept === undefined) return null;
      const facts = new Map(Object.entries(kept));
      return { get: (key) => facts.get(key), entries: () => facts.entries(), observe: () => () => {} };
    },
    changesFor() {
      throw new RangeError('a kept state cannot be changed; restore it, or go back to the hang');
    },
  };
}
