/** Texts kept whole under the SHA-256 of their bytes: states of the hang, frozen lists. Written once, never changed. */
import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { ARRANGED_ROOTS } from '@enfilade/shared/hang-layer';
import { newId } from '@enfilade/shared/identity';
import { hangStateOf } from '@enfilade/shared/kept-states';
import type { KeptState } from '@enfilade/shared/protocol';
import type { DocumentName } from '@enfilade/shared/seats';
import { toCanonicalText } from '@enfilade/shared/sign-off';
import type { Logger } from 'pino';
import type { Session } from './session.ts';
import type { Store } from './store.ts';

const packed = promisify(gzip);
const unpacked = promisify(gunzip);

export class Kept {
  private readonly store: Store;

  constructor(store: Store) {
    this.store = store;
  }

  /** Keeps a value as canonical JSON (RFC 8785); answers with its digest. The same value twice is kept once. */
  async put(value: object): Promise<string> {
    const text = toCanonicalText(value);
    const digest = createHash('sha256').update(text).digest('hex');
    const bytes = new Uint8Array(await packed(text));
    await this.store.query
      .insertInto('kept')
      .values({ digest, bytes })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    return digest;
  }

  /** @returns the canonical text, or undefined where nothing is kept under this digest. */
  async text(digest: string): Promise<string | undefined> {
    const row = await this.store.query
      .selectFrom('kept')
      .select('bytes')
      .where('digest', '=', digest)
      .executeTakeFirst();
    return row === undefined ? undefined : (await unpacked(row.bytes)).toString('utf8');
  }
}

/** Keeps the hang as it stands under a name in the record. A state that is the newest one already is not kept again. */
export async function keepState(
  kept: Kept,
  record: Session,
  documents: ShowDocuments,
  words: Omit<KeptState, 'digest'>,
  state = hangStateOf(documents),
): Promise<KeptState | null> {
  if (ARRANGED_ROOTS.every((root) => Object.keys(state[root] ?? {}).length === 0)) return null;
  const digest = await kept.put(state);
  const newest = [...documents.all('states').values()].reduce<KeptState | null>(
    (last, next) => (last === null || next.at > last.at ? next : last),
    null,
  );
  if (words.kind !== 'named' && newest?.digest === digest) return null;
  const whole: KeptState = { ...words, digest };
  await record.act((doc) => doc.getMap('states').set(newId(), whole));
  return whole;
}

/**
 * Keeps the hang as each day found it: before the first change of a day, the state of the day before is kept under that
 * day's date. Days are the server's.
 */
export function keepEachDay(
  kept: Kept,
  sessions: ReadonlyMap<DocumentName, Session>,
  documents: ShowDocuments,
  log: Logger,
  now: () => Date = () => new Date(),
): { settled(): Promise<void> } {
  const hang = sessions.get('hang') as Session;
  const record = sessions.get('record') as Session;
  const newest = [...documents.all('states').values()].reduce(
    (last, { kind, at }) => (kind === 'day' && at > last ? at : last),
    '',
  );
  let lastChange = newest === '' ? null : dayOf(new Date(newest));
  let writing: Promise<unknown> = Promise.resolve();
  hang.doc.on('beforeTransaction', () => {
    const today = dayOf(now());
    if (lastChange === today) return;
    const first = lastChange === null;
    lastChange = today;
    if (first && documents.all('places').size === 0) return;
    const state = hangStateOf(documents);
    const words = { kind: 'day', name: today, at: now().toISOString(), by: '' } as const;
    writing = writing
      .then(() => keepState(kept, record, documents, words, state))
      .catch((error: unknown) => {
        log.warn({ event: 'day state', kind: error instanceof Error ? error.name : typeof error });
      });
  });
  return {
    async settled() {
      await writing;
    },
  };
}

function dayOf(date: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
