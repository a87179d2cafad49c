/** What a dimension text was understood to say. */
import type { LengthUnit, WeightUnit } from './measure-units.ts';

/** `drop` is how far a hanging thing hangs down, `repeat` after what length a cloth's pattern begins again. */
export type Axis = 'height' | 'width' | 'depth' | 'diameter' | 'length' | 'circumference' | 'drop' | 'repeat';

export interface Measure {
  readonly value: number;
  /** Upper end of a range. */
  readonly maxValue?: number;
  /** As stated; null when none is. */
  readonly unit: LengthUnit | null;
  readonly mm: number | null;
  readonly maxMm?: number;
  /** What the second stated system says, where it disagrees. */
  readonly conflictMm?: number;
}

/**
 * One measured part: its extent ('overall', 'framed', 'sheet' … or its label as written) and what is stated of it. A text may
 * state one extent several times; each is a part.
 */
export type DimensionPart = { readonly extent: string } & { readonly [axis in Axis]?: Measure };

export type DimensionIssueKind =
  | 'unit unknown'
  | 'systems disagree'
  | 'sight size'
  | 'one measure only'
  | 'said twice'
  | 'not understood';

export interface DimensionIssue {
  readonly kind: DimensionIssueKind;
  /** Part and dimension concerned. */
  readonly where: string;
  /** A sentence for a person. */
  readonly what: string;
  readonly value: string;
}

export interface Weight {
  readonly value: number;
  readonly unit: WeightUnit;
  readonly kg: number;
}

export interface DimensionReading {
  readonly written: string;
  readonly parts: readonly DimensionPart[];
  readonly issues: readonly DimensionIssue[];
  readonly quantity?: number;
  /** One thing of so many parts or sheets: `24 sheets`. */
  readonly partCount?: number;
  readonly perItem?: boolean;
  readonly approximate?: boolean;
  readonly irregular?: boolean;
  readonly variable?: boolean;
  /** How long a film or sound runs, as written: no size. */
  readonly duration?: string;
  readonly weight?: Weight;
}
