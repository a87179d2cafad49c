/** What a dimension text was understood to say. */
import type { Axis, LengthUnit, WeightUnit } from './measure-tokens.ts';

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

/** One measured part: its extent ('overall', 'framed', 'sheet' … or its label as written) and what is stated of it. */
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

export interface DimensionReading {
  readonly written: string;
  readonly parts: readonly DimensionPart[];
  readonly issues: readonly DimensionIssue[];
  readonly quantity?: number;
  readonly perItem?: boolean;
  readonly approximate?: boolean;
  readonly irregular?: boolean;
  readonly variable?: boolean;
  readonly weight?: { readonly value: number; readonly unit: WeightUnit; readonly kg: number };
}
