/** What is asked of the worker that looks for likenesses, and what it answers. */
import type { Echo } from '@enfilade/grouping/echoes';
import type { GoesWith } from '@enfilade/grouping/goes-with';
import type { Kind } from '@enfilade/grouping/kinds';
import type { Likenesses } from '@enfilade/grouping/likeness';
import type { Weights } from '@enfilade/grouping/mixed-distance';
import type { GroupingRecord } from '@enfilade/grouping/records';

export type LikenessQuestion =
  | {
      readonly kind: 'sets';
      readonly records: readonly GroupingRecord[];
      readonly weights: Weights;
      /** Each trait is dealt out again first, so that nothing is there to find. */
      readonly dealt: boolean;
    }
  | {
      readonly kind: 'beside';
      readonly records: readonly GroupingRecord[];
      readonly id: string;
      /** What is no focal work: others stand on it, or it stands itself. */
      readonly notFocal: readonly string[];
    };

/** What goes with one thing, and what echoes it. */
export interface Beside {
  readonly goes: GoesWith;
  /** The members of the set it is in or would join; empty where there is none. */
  readonly set: readonly string[];
  readonly echoes: readonly Echo[];
}

/** The sets found and the types there are; `ms` of the worker's time it took. */
export interface FoundSets {
  readonly likenesses: Likenesses;
  readonly kinds: readonly Kind[];
  readonly ms: number;
}

export type LikenessAnswer =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'sets'; readonly found: FoundSets }
  | { readonly kind: 'beside'; readonly beside: Beside }
  | { readonly kind: 'failed'; readonly what: string };
