/**
 * Who may read and write which document. One Y.Doc per audience and power: a socket reads a whole document or not,
 * writes a whole document or not, because whatever is synced can be read.
 */

export const ROLES = ['lead', 'curator', 'registrar', 'preparator', 'conservator', 'guest artist', 'viewer'] as const;
export type Role = (typeof ROLES)[number];

export const DOCUMENT_NAMES = ['rooms', 'checklist', 'hang', 'talk', 'private', 'record'] as const;
export type DocumentName = (typeof DOCUMENT_NAMES)[number];

const STAFF_OF_VALUES: readonly Role[] = ['lead', 'curator', 'registrar'];

const READERS: Record<DocumentName, readonly Role[]> = {
  rooms: ROLES,
  checklist: ROLES,
  hang: ROLES,
  talk: ROLES,
  private: STAFF_OF_VALUES,
  record: ROLES,
};

const WRITERS: Record<DocumentName, readonly Role[]> = {
  rooms: ['lead', 'curator', 'preparator'],
  checklist: STAFF_OF_VALUES,
  hang: ['lead', 'curator', 'preparator', 'guest artist'],
  talk: ['lead', 'curator', 'registrar', 'preparator', 'conservator', 'guest artist'],
  private: STAFF_OF_VALUES,
  // The server alone writes the record, on acts sent over HTTP.
  record: [],
};

/** Roles whose word can be asked for on a vignette. */
export const SIGNING_ROLES: readonly Role[] = [
  'lead',
  'curator',
  'guest artist',
  'registrar',
  'preparator',
  'conservator',
];

export function mayRead(role: Role, document: DocumentName): boolean {
  return READERS[document].includes(role);
}

/** What a show has set about powers. */
export interface PowerSettings {
  /** The guest artist changes the hang through proposals alone. */
  readonly artistProposesOnly: boolean;
}

/** Asked of a write by a client and by the server alike; the settings are what stands in the hang now. */
export function mayWrite(role: Role, document: DocumentName, settings?: PowerSettings): boolean {
  if (role === 'guest artist' && document === 'hang' && settings?.artistProposesOnly === true) return false;
  return WRITERS[document].includes(role);
}

/** Pictures belong to the checklist: who may write records may bring pictures in. */
export function mayBringIn(role: Role): boolean {
  return mayWrite(role, 'checklist');
}

const STOREKEEPERS: readonly Role[] = ['lead', 'curator', 'registrar', 'preparator'];

/** Who is told where the collection's things are kept: those who value them, and those who fetch them. */
export function maySeeStorage(role: Role): boolean {
  return STOREKEEPERS.includes(role);
}

export function maySignOff(role: Role): boolean {
  return SIGNING_ROLES.includes(role);
}

const INVITING_ROLES: readonly Role[] = ['lead', 'curator'];

/** Who may open a seat, change its role, and take it back. */
export function mayInvite(role: Role): boolean {
  return INVITING_ROLES.includes(role);
}

/** Every power of a role, by name; a lead has one more, to make and unmake leads. */
export function powersOf(role: Role): ReadonlySet<string> {
  const powers = DOCUMENT_NAMES.flatMap((name) => [
    ...(mayRead(role, name) ? [`read ${name}`] : []),
    ...(mayWrite(role, name) ? [`write ${name}`] : []),
  ]);
  if (maySignOff(role)) powers.push('sign off');
  if (mayBringIn(role)) powers.push('bring in');
  if (maySeeStorage(role)) powers.push('see storage places');
  if (mayInvite(role)) powers.push('invite');
  if (role === 'lead') powers.push('make leads');
  return new Set(powers);
}

/**
 * Whether somebody of one role may give, change or take back a seat of another: only who may invite, and never a seat
 * with a power they have not got themselves. So a lead is made and unmade by leads alone. Nobody changes their own
 * seat, which whoever asks compares by its id.
 */
export function maySeat(by: Role, role: Role): boolean {
  const own = powersOf(by);
  return mayInvite(by) && [...powersOf(role)].every((power) => own.has(power));
}

export function isRole(text: string): text is Role {
  return (ROLES as readonly string[]).includes(text);
}

export function isDocumentName(text: string): text is DocumentName {
  return (DOCUMENT_NAMES as readonly string[]).includes(text);
}

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
}
