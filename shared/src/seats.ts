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

export function mayWrite(role: Role, document: DocumentName): boolean {
  return WRITERS[document].includes(role);
}

/** Pictures belong to the checklist: who may write records may bring pictures in. */
export function mayBringIn(role: Role): boolean {
  return mayWrite(role, 'checklist');
}

export function maySignOff(role: Role): boolean {
  return SIGNING_ROLES.includes(role);
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
