/** Who is competent to accept which caution, as data. */
import type { CautionKind } from './caution.ts';

export type CautionSubject = 'load and hanging' | 'light and materials' | 'ways and exits' | 'loans';

/** What each kind is about. A new kind does not compile until it is said here. Common practice, no source. */
export const CAUTION_SUBJECTS: Readonly<Record<CautionKind, CautionSubject>> = {
  'size not known': 'load and hanging',
  'size estimated': 'load and hanging',
  'weight not known': 'load and hanging',
  'one hook': 'load and hanging',
  'wire too flat': 'load and hanging',
  'above reach': 'load and hanging',
  'can tip': 'load and hanging',
  'floor load': 'load and hanging',
  'hung overhead': 'load and hanging',
  'label without room': 'load and hanging',
  // A fixture to keep clear may be an exit sign or an extinguisher.
  'fixture not kept clear': 'ways and exits',
  'stands out': 'ways and exits',
  headroom: 'ways and exits',
  'way out': 'ways and exits',
  'way narrowed': 'ways and exits',
  'too much light': 'light and materials',
  'light class not known': 'light and materials',
  'lead paint': 'light and materials',
  arsenic: 'light and materials',
  mercury: 'light and materials',
  pesticide: 'light and materials',
  asbestos: 'light and materials',
  pests: 'light and materials',
  glazing: 'light and materials',
  'open flame': 'ways and exits',
  electrified: 'load and hanging',
  'small and open': 'loans',
  'loan not agreed': 'loans',
  'loan dates': 'loans',
  'loan terms': 'loans',
};

/** Whether a word is a kind of caution that is known here: a record may hold one of another version. */
export function isCautionKind(text: string): text is CautionKind {
  return Object.hasOwn(CAUTION_SUBJECTS, text);
}

export interface Acceptor {
  readonly role: 'preparator' | 'conservator' | 'registrar' | 'lead';
  /** Accepts only on the word of this one, who is named with the reason. */
  readonly onTheWordOf?: 'conservator';
}

/** Who may accept cautions of a subject. Source: the issue's own rule; common practice, no source. */
export const ACCEPTORS: Readonly<Record<CautionSubject, readonly Acceptor[]>> = {
  'load and hanging': [{ role: 'preparator' }],
  'light and materials': [{ role: 'conservator' }, { role: 'registrar', onTheWordOf: 'conservator' }],
  'ways and exits': [{ role: 'lead' }],
  loans: [{ role: 'registrar' }],
};

/** Who may accept a caution of this kind. */
export function acceptorsOf(kind: CautionKind): readonly Acceptor[] {
  return ACCEPTORS[CAUTION_SUBJECTS[kind]];
}

/** Whether a role, on whoever's word, is competent to accept a caution of this kind. */
export function mayAccept(kind: CautionKind, role: string, onTheWordOf?: string): boolean {
  return acceptorsOf(kind).some((each) => each.role === role && (each.onTheWordOf ?? onTheWordOf) === onTheWordOf);
}
