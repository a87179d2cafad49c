/**
 * The vignette list as of a moment: frozen into a plain value that says everything by itself, and two such lists compared
 * row by row in sentences. Built on the canonical form that is signed.
 */
import { type ChangeWords, changeSentences, piecesIn } from './change-sentences.ts';
import type { Judgements, VignetteState } from './judgements.ts';
import { likeMembersOf } from './like-members.ts';
import { type ObjectId, objectOfPiece, type PieceId, pieceNumberOf, type VignetteId } from './schema.ts';
import {
  type CanonicalVignette,
  canonicalVignetteOf,
  changesBetween,
  digestOf,
  toCanonicalText,
  type VignetteChange,
} from './sign-off.ts';
import { onName } from './surface-names.ts';
import { sourceTexts, type VignetteListRow, vignetteListOf, whereText } from './vignette-list.ts';

export interface FrozenRow {
  readonly id: VignetteId;
  /** Place in the list, from 1. */
  readonly number: number;
  readonly form: CanonicalVignette;
  /** As the list printed them. */
  readonly where: string;
  readonly focal: string;
  readonly members: readonly { readonly text: string; readonly numbers: string; readonly unplaced: number }[];
  readonly from: readonly string[];
  /** Never 'proposed': a list tells the hang, and a proposal leaves that as it is. */
  readonly state: VignetteState;
  /** `changed`: it was no longer what they had signed. */
  readonly signatures: readonly {
    readonly name: string;
    readonly role: string;
    readonly at: string;
    readonly changed: boolean;
  }[];
  readonly waitingFor: readonly string[];
  /** What had changed since the newest signature that did not stand any more. */
  readonly changes: readonly VignetteChange[];
}

export interface FrozenList {
  readonly title: string;
  readonly museum: string;
  readonly rows: readonly FrozenRow[];
  /** What the pieces and the things they are on were called then, for those that are gone since. */
  readonly records: { readonly [objectId: ObjectId]: { readonly title: string; readonly count: number } };
  readonly surfaces: { readonly [on: string]: string };
}

/** The list as it stands. Open facts alone: nothing of the private document can be in it. */
export function frozenListOf(judgements: Judgements): FrozenList {
  const { documents } = judgements;
  const rows: FrozenRow[] = [];
  const records: Record<ObjectId, { title: string; count: number }> = {};
  const surfaces: Record<string, string> = {};
  for (const row of vignetteListOf(judgements)) {
    const form = canonicalVignetteOf(documents, row.id);
    if (form === null) continue;
    rows.push(frozenRow(row, form));
    const { changes } = row.standing;
    for (const pieceId of new Set([...Object.keys(form.places), ...piecesIn(changes)])) {
      const object = judgements.objectOf(pieceId);
      if (object === undefined) continue;
      records[objectOfPiece(pieceId)] = { title: object.title || object.number, count: object.count };
      const place = form.places[pieceId] ?? null;
      if (place !== null) surfaces[place[0]] = onName(judgements, place[0]);
    }
    for (const change of changes) {
      if (change.kind === 'moved elsewhere') surfaces[change.from] = onName(judgements, change.from);
      if (change.kind === 'repainted') surfaces[change.surface] = onName(judgements, change.surface);
    }
  }
  return { title: judgements.setting('title'), museum: judgements.setting('museum'), rows, records, surfaces };
}

function frozenRow(row: VignetteListRow, form: CanonicalVignette): FrozenRow {
  return {
    id: row.id,
    number: row.number,
    form,
    where: whereText(row.where),
    focal: row.focal === null ? '' : `${row.focal.name} (${row.focal.objectNumber})`,
    members: likeMembersOf(row.members, row.focal?.pieceId ?? null).map(({ text, numbers, unplaced }) => ({
      text,
      numbers,
      unplaced,
    })),
    from: sourceTexts(row.members),
    state: row.standing.state === 'proposed' ? 'drafted' : row.standing.state,
    signatures: row.standing.signatures.map(({ name, role, at, changes }) => {
      return { name, role, at, changed: changes.length > 0 };
    }),
    waitingFor: row.standing.waitingFor,
    changes: row.standing.changes,
  };
}

/** RFC 8785 text of a frozen list: the same facts are the same text. */
export function toFrozenText(list: FrozenList): string {
  return toCanonicalText(list);
}

/** SHA-256 of it, hex: an older print is told from the newest by this. */
export function frozenDigestOf(list: FrozenList): string {
  return digestOf(toFrozenText(list));
}

/** @returns the frozen list that a text holds, or null when it holds none. */
export function frozenListFrom(text: string): FrozenList | null {
  try {
    const value = JSON.parse(text) as Partial<FrozenList> | null;
    const whole =
      Array.isArray(value?.rows) &&
      value.rows.every(({ id, form }) => typeof id === 'string' && typeof form?.places === 'object') &&
      typeof value.records === 'object' &&
      typeof value.surfaces === 'object';
    return whole ? (value as FrozenList) : null;
  } catch {
    return null;
  }
}

export interface RowDifference {
  readonly id: VignetteId;
  /** As it is called now, or was when it went. */
  readonly name: string;
  readonly kind: 'new' | 'gone' | 'changed' | 'same';
  /** In the middle of a text: 'moved 12.0 cm left'. Empty where it is the same. */
  readonly sentences: readonly string[];
}

/**
 * What differs between two frozen lists, one row a vignette: those of the later in its order, then those that are gone.
 * `length` says a length with its unit; moves up to `toleranceMm` are not told.
 */
export function differencesOf(
  before: FrozenList,
  after: FrozenList,
  toleranceMm: number,
  length: (mm: number) => string,
): readonly RowDifference[] {
  const known = new Map(before.rows.map((row) => [row.id, row]));
  const standing = new Set(after.rows.map(({ id }) => id));
  return [
    ...after.rows.map((row): RowDifference => {
      const was = known.get(row.id);
      const { id } = row;
      const { name } = row.form;
      if (was === undefined) return { id, name, kind: 'new', sentences: ['new'] };
      const sentences = rowSentences(was, row, before, after, toleranceMm, length);
      return { id, name, kind: sentences.length === 0 ? 'same' : 'changed', sentences };
    }),
    ...before.rows.flatMap(({ id, form }): RowDifference[] =>
      standing.has(id) ? [] : [{ id, name: form.name, kind: 'gone', sentences: ['gone'] }],
    ),
  ];
}

function rowSentences(
  was: FrozenRow,
  row: FrozenRow,
  before: FrozenList,
  after: FrozenList,
  toleranceMm: number,
  length: (mm: number) => string,
): string[] {
  const words = frozenWordsOf(row, [after, before], length);
  const sentences = changeSentences(changesBetween(was.form, row.form, toleranceMm), words);
  const [fromWas, fromNow] = [was.from.join('; '), row.from.join('; ')];
  if (fromWas !== fromNow) sentences.push(`where from: ${fromWas || 'nowhere'}, now ${fromNow || 'nowhere'}`);
  if (was.state !== row.state) sentences.push(`${was.state}, now ${row.state}`);
  const signed = new Set(was.signatures.map(signatureKey));
  for (const signature of row.signatures) {
    if (!signed.has(signatureKey(signature))) sentences.push(`signed off by ${signature.name}, ${signature.role}`);
  }
  // What is where is the same, and reads otherwise: a title, a number or a room's name was put right.
  const reads = ({ where, focal, members }: FrozenRow): string => toCanonicalText({ where, focal, members });
  if (sentences.length === 0 && reads(was) !== reads(row)) sentences.push('its records or rooms are worded otherwise');
  return sentences;
}

/** The words for changes of a row, from the lists it is on; the first that knows a name says it. */
export function frozenWordsOf(
  row: FrozenRow,
  lists: readonly FrozenList[],
  length: (mm: number) => string,
): ChangeWords {
  const first = <T>(say: (list: FrozenList) => T | null | undefined): T | undefined =>
    lists.map(say).find((said) => said !== null && said !== undefined) ?? undefined;
  return {
    nameOf: (pieceId) => first((list) => pieceName(pieceId, list)) ?? 'a record that is gone',
    surfaceName: (on) => first(({ surfaces }) => surfaces[on]) ?? 'a surface that is gone',
    length,
    onOf: (pieceId) => row.form.places[pieceId]?.[0] ?? null,
    recordOf: (pieceId) => first(({ records }) => records[objectOfPiece(pieceId)]) ?? null,
  };
}

function signatureKey({ name, role, at }: FrozenRow['signatures'][number]): string {
  return `${name}\n${role}\n${at}`;
}

function pieceName(pieceId: PieceId, { records }: FrozenList): string | null {
  const record = records[objectOfPiece(pieceId)];
  if (record === undefined) return null;
  return record.count > 1 ? `${record.title}, piece ${pieceNumberOf(pieceId)}` : record.title;
}
