/** What is asked of the worker that looks for likenesses, and what it answers. */
import type { Look } from '@enfilade/grouping/columns';
import type { Echo } from '@enfilade/grouping/echoes';
import type { GoesWith } from '@enfilade/grouping/goes-with';
import type { Kind } from '@enfilade/grouping/kinds';
import type { Likeness, Likenesses } from '@enfilade/grouping/likeness';
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
      /** The sets found in these records before; null where they are to be looked for first. */
      readonly sets: readonly SetsByLooks[] | null;
    }
  | { readonly kind: 'echoes'; readonly records: readonly GroupingRecord[]; readonly id: string };

/** The sets found by all looks together, or by some. */
export interface SetsByLooks {
  readonly looks: readonly Look[];
  readonly sets: readonly Likeness[];
}

/** What goes with one thing. */
export interface Beside {
  readonly goes: GoesWith;
  /** The set it is in or would join, and by which looks; of its type where none was found; null where there is neither. */
  readonly set:
    | { readonly kind: 'found'; readonly likeness: Likeness; readonly looks: readonly Look[] }
    | { readonly kind: 'type'; readonly members: readonly string[] }
    | null;
  /** All that were found, for the next thing that is asked about. */
  readonly sets: readonly SetsByLooks[];
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
  | { readonly kind: 'echoes'; readonly echoes: readonly Echo[] }
  | { readonly kind: 'failed'; readonly what: string };
