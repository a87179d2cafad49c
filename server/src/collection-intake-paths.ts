/** `POST /seat/<id>/collection/…`: what comes into the collection, and the way back; for whoever may bring in. */
import type { IncomingMessage } from 'node:http';
import { objectNumberKey } from '@enfilade/records/object-number';
import { COLLECTION_PART_BYTES, COLLECTION_ROWS, COLLECTION_ROWS_AT_ONCE } from '@enfilade/shared/collection-in';
import { mayBringIn, type Person } from '@enfilade/shared/seats';
import { type Answer, bodyOf, json, refusal } from './answers.ts';
import type { Collection } from './collection.ts';
import { type CollectionIntake, IntakeRefused } from './collection-intake.ts';
import { toldTo } from './collection-paths.ts';
import { NUMBER_LONG, type RowAsSent, rowFrom } from './collection-row-checks.ts';

interface Asked {
  readonly request: IncomingMessage;
  readonly collection: Collection;
  readonly intake: CollectionIntake;
  /** Whether the server has a picture of that hash. */
  readonly hasPicture: (sha256: string) => boolean;
  /** Whoever has the seat as it stands at that moment; undefined when it was taken back. */
  readonly personNow: () => Person | undefined;
  /** Why nothing can be written, or null. */
  readonly readOnly: () => string | null;
}

/** `path`: what follows `collection`. */
export async function collectionIntakePath(path: readonly string[], asked: Asked): Promise<Answer> {
  const [first, id, last] = path;
  const isPhotograph = first === 'photograph' && path.length === 1;
  const isImport = first === 'imports' && path.length <= 3 && (last === undefined || last === 'back');
  if (!isPhotograph && !isImport) return refusal(404, 'There is nothing here.', 'address');
  if (!allowed(asked.personNow())) return refusal(403, NOT_ALLOWED, 'seat');
  const text = await bodyOf(asked.request, COLLECTION_PART_BYTES);
  if (text === null) {
    return refusal(
      413,
      `A part is at most ${COLLECTION_PART_BYTES >> 20} MB of text. Nothing of it was taken.`,
      'part',
    );
  }
  // Asked anew: the seat may have been taken back, or its role changed, while the part was on its way.
  const person = asked.personNow();
  if (person === undefined || !allowed(person)) return refusal(403, NOT_ALLOWED, 'seat');
  const reason = asked.readOnly();
  if (reason !== null) return refusal(503, `${reason} Nothing of this part was taken.`, 'server');
  let body: unknown;
  try {
    body = JSON.parse(text === '' ? '{}' : text);
  } catch {
    return refusal(400, 'This is not JSON. Nothing of it was taken.', 'part');
  }
  const fields = typeof body === 'object' && body !== null ? (body as Readonly<Record<string, unknown>>) : {};
  try {
    if (isPhotograph) return await photograph(fields, person, asked);
    if (id === undefined) return await begin(fields, person, asked);
    if (last === 'back') return json(200, await asked.intake.takeBack(id));
    return await takePart(id, fields, asked);
  } catch (error) {
    if (error instanceof IntakeRefused) return refusal(error.status, error.message, 'import');
    if ((error as { code?: unknown }).code === 'SQLITE_FULL') {
      return refusal(503, 'The server’s disk is full. What was answered before is in; nothing after it.', 'server');
    }
    throw error;
  }
}

const NOT_ALLOWED = 'The lead, the curator and the registrar bring things into the collection. Nothing was changed.';

function allowed(person: Person | undefined): boolean {
  return person !== undefined && mayBringIn(person.role);
}

async function begin({ file, rows }: Fields, { name }: Person, { intake }: Asked): Promise<Answer> {
  if (typeof file !== 'string' || file.trim() === '' || file.length > 300) {
    return refusal(400, 'Say which file it is, in at most 300 letters. Nothing was begun.', 'file');
  }
  if (typeof rows !== 'number' || !Number.isInteger(rows) || rows < 1 || rows > COLLECTION_ROWS) {
    const most = COLLECTION_ROWS.toLocaleString('en-GB');
    return refusal(400, `From 1 to ${most} rows are brought in at once. Nothing was begun.`, 'rows');
  }
  return json(200, await intake.begin(file, rows, name));
}

async function takePart(id: string, { rows }: Fields, { intake, hasPicture }: Asked): Promise<Answer> {
  if (!Array.isArray(rows) || rows.length === 0 || rows.length > COLLECTION_ROWS_AT_ONCE) {
    return refusal(400, `From 1 to ${COLLECTION_ROWS_AT_ONCE} rows come in one part. Nothing of it was taken.`, 'rows');
  }
  const checked = rows.map((row): RowAsSent => rowFrom(row, hasPicture));
  const good = checked.flatMap((row, at) => ('number' in row ? [{ row, at }] : []));
  const taken =
    good.length === 0
      ? { added: 0, updated: 0, same: 0, refused: [] }
      : await intake.take(
          id,
          good.map(({ row }) => row),
        );
  const refused = [
    ...checked.flatMap((row, at) => ('what' in row ? [{ row: at, what: row.what }] : [])),
    ...taken.refused.map(({ row, what }) => ({ row: good[row]?.at ?? 0, what })),
  ].sort((a, b) => a.row - b.row);
  return json(200, { ...taken, refused });
}

async function photograph({ number, picture }: Fields, person: Person, asked: Asked): Promise<Answer> {
  const { intake, hasPicture, collection } = asked;
  if (typeof number !== 'string' || number.length > NUMBER_LONG || objectNumberKey(number) === '') {
    return refusal(400, 'Say which record it is: its number. Nothing was changed.', 'number');
  }
  if (typeof picture !== 'string' || !hasPicture(picture)) {
    return refusal(400, 'The server has no such picture. Send it first. Nothing was changed.', 'picture');
  }
  if (!(await intake.photograph(number, picture))) {
    return refusal(404, `No record of the collection has the number ${number}. Nothing was changed.`, 'number');
  }
  const [record] = await toldTo(person, collection, await collection.byNumbers([number]));
  return json(200, record);
}

type Fields = Readonly<Record<string, unknown>>;
