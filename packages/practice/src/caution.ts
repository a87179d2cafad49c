/** One notice: what it says, whom to ask, and on what ground. */

export type CautionKind =
  | 'size not known'
  | 'size estimated'
  | 'weight not known'
  | 'one hook'
  | 'wire too flat'
  | 'above reach'
  | 'fixture not kept clear'
  | 'label without room'
  | 'stands out'
  | 'can tip'
  | 'floor load'
  | 'hung overhead'
  | 'headroom'
  | 'way out'
  | 'way narrowed'
  | 'too much light'
  | 'light class not known'
  | 'lead paint'
  | 'arsenic'
  | 'mercury'
  | 'pesticide'
  | 'asbestos'
  | 'pests'
  | 'glazing'
  | 'open flame'
  | 'electrified'
  | 'small and open'
  | 'loan not agreed'
  | 'loan dates'
  | 'loan terms';

export interface Caution {
  readonly kind: CautionKind;
  /** One or two sentences, lengths in the reader's unit. */
  readonly what: string;
  readonly ask: string;
  readonly source: string;
}

/** How figures are worded; centimetres and kilograms unless the reader's own are given. */
export interface CautionWords {
  length(mm: number): string;
  weight(kg: number): string;
}
