/** What a date text was understood to say. */

/** `year` as CCO counts: 12 BCE is -12 and there is no year 0. */
export interface CalendarDate {
  readonly year: number;
  /** 1–12. */
  readonly month?: number;
  readonly day?: number;
}

/** `period`: a named period with its years. `several`: more than one date is meant, `one of`: one of those stated. */
export type DateFlag =
  | 'approximate'
  | 'uncertain'
  | 'open start'
  | 'open end'
  | 'one of'
  | 'several'
  | 'undated'
  | 'BCE'
  | 'period';

export interface DateSpan {
  /** Null: open or not known. */
  readonly earliest: CalendarDate | null;
  readonly latest: CalendarDate | null;
  readonly flags: readonly DateFlag[];
  /** ISO 8601-2:2019 (EDTF), whose years are astronomical: 12 BCE is -0011. Null where nothing is dated. */
  readonly edtf: string | null;
}

export interface DateEvent extends DateSpan {
  /** 'made' unless the text says designed, printed, cast, published … */
  readonly kind: string;
  /** The part this is said of (`frame c. 1840`); absent for the whole. */
  readonly part?: string;
  /** The period's name as written. */
  readonly period?: string;
}

export interface DateIssue {
  readonly kind: 'not understood' | 'two readings' | 'undated';
  readonly where: string;
  /** A sentence for a person. */
  readonly what: string;
  readonly value: string;
}

/** The span is that of the making of the whole thing, else of the first event; events are in the order of the text. */
export interface DateReading extends DateSpan {
  readonly written: string;
  readonly events: readonly DateEvent[];
  readonly issues: readonly DateIssue[];
}
