import type { Reason } from './reasons.ts';

/** Something outside a set that comes close, and what it lacks. */
export interface NearMiss {
  readonly id: string;
  readonly distance: number;
  readonly words: string;
}

/** A set of like things, with what speaks for it. */
export interface Likeness {
  readonly members: readonly string[];
  /** One that lies amidst it, by which it may be shown. */
  readonly middle: string;
  readonly found: 'by density' | 'by shared neighbours';
  readonly strength: 'firm' | 'loose';
  /** Mean best Jaccard when parts of the pool are left away, 0 to 1. */
  readonly stability: number;
  /** How much closer than random things of the same types, 0 to 1, and how close chance came. */
  readonly tightness: number;
  readonly chance: number;
  readonly reasons: readonly Reason[];
  /** How many of it satisfy all the reasons at once, and what part of the rest does. */
  readonly together: {
    readonly words: string;
    readonly count: number;
    readonly ofThese: number;
    readonly ofRest: number;
  };
  readonly nearMisses: readonly NearMiss[];
}

export type WhyLeftOut =
  | 'too little is known of it'
  | 'like no others closely enough'
  | 'its set fell apart when others were left away'
  | 'its set is no closer than chance would make it'
  | 'nothing can be said of its set that few others share';

/** A set that was tried and does not stand, with the figures it fell by. */
export interface Fallen extends Pick<Likeness, 'members' | 'found' | 'stability' | 'tightness' | 'chance'> {
  readonly why: WhyLeftOut;
}

/** The sets found in a pool, what is in none and why, and one sentence that says how it went. */
export interface Likenesses {
  readonly sets: readonly Likeness[];
  readonly fallen: readonly Fallen[];
  readonly leftOut: readonly { readonly id: string; readonly why: WhyLeftOut }[];
  readonly words: string;
}
