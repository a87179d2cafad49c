/** Who did what, when: each change of a document that all may read, written down beside the log as it is applied. */
import type { Deed, DeedChange, HistoryAnswer } from '@enfilade/shared/deeds';
import { isArranged } from '@enfilade/shared/hang-layer';
import { type Json, ROOTS, type RootName } from '@enfilade/shared/schema';
import type { DocumentName, Person, Role } from '@enfilade/shared/seats';
import { sql } from 'kysely';
import type { Logger } from 'pino';
import type * as Y from 'yjs';
import type { Session } from './session.ts';
import type { Store } from './store.ts';

/** Of one change no more is written down; the rest is a number. */
const CHANGES_KEPT = 200;
/**
 * A day's work without a connection comes as one change: whoever returns after is told from it what both have changed, so
 * of the hang's facts all are written down, as many as the largest show has.
 */
const HANG_CHANGES_KEPT = 20_000;
/** Nudges of the same things by one person within this time are one deed, ms. */
const ONE_DEED_MS = 60_000;
/** Lines of the history wait so long for others, to be one commit: each of its own costs more than the change it tells of. */
const WRITTEN_WITHIN_MS = 200;
export const HISTORY_LIMIT = 500;
/** Of one answer, in characters of what changed; one deed is told whole all the same. */
const ANSWER_AT_MOST = 4_000_000;

/** Documents whose changes everybody at the show may know of. Reading marks and private facts are nobody's history. */
const WATCHED: readonly DocumentName[] = ['rooms', 'checklist', 'hang', 'talk'];
const NOT_TOLD: readonly RootName[] = ['readMarks'];

interface Open {
  readonly n: number;
  readonly since: number;
  readonly signature: string;
  readonly changes: readonly DeedChange[];
}

interface Unwritten {
  readonly n: number;
  readonly at: string;
  readonly person: Person;
  readonly changes: readonly DeedChange[];
  readonly more: number;
}

export class History {
  private readonly store: Store;
  private readonly log: Logger;
  private readonly now: () => Date;
  private lastN: number;
  private readonly open = new Map<string, Open>();
  /** By number: a deed that goes on is written as it stands at last. */
  private readonly unwritten = new Map<number, Unwritten>();
  private timer: NodeJS.Timeout | null = null;
  private writing: Promise<void> = Promise.resolve();

  private constructor(store: Store, log: Logger, now: () => Date, lastN: number) {
    this.store = store;
    this.log = log;
    this.now = now;
    this.lastN = lastN;
  }

  static async watch(
    store: Store,
    sessions: ReadonlyMap<DocumentName, Session>,
    log: Logger,
    now: () => Date = () => new Date(),
  ): Promise<History> {
    const row = await store.query
      .selectFrom('deeds')
      .select(({ fn }) => fn.max('n').as('n'))
      .executeTakeFirst();
    const history = new History(store, log, now, Number(row?.n ?? 0));
    for (const name of WATCHED) {
      const session = sessions.get(name);
      if (session !== undefined) history.follow(session);
    }
    return history;
  }

  /** Newest first. */
  async read(asked: { before?: number; since?: string; limit?: number }): Promise<HistoryAnswer> {
    await this.settled();
    const limit = Math.min(Math.max(1, asked.limit ?? 100), HISTORY_LIMIT);
    let query = this.store.query.selectFrom('deeds').orderBy('n', 'desc');
    if (asked.before !== undefined) query = query.where('n', '<', asked.before);
    if (asked.since !== undefined) query = query.where('at', '>', asked.since);
    const sizes = await query
      .select(['n', sql<number>`length(changes)`.as('size')])
      .limit(limit + 1)
      .execute();
    let [count, characters] = [0, 0];
    for (const { size } of sizes.slice(0, limit)) {
      characters += Number(size);
      if (count > 0 && characters > ANSWER_AT_MOST) break;
      count += 1;
    }
    const last = sizes[count - 1];
    const rows = last === undefined ? [] : await query.selectAll().where('n', '>=', last.n).limit(count).execute();
    const deeds = rows.map(
      (row): Deed => ({
        n: Number(row.n),
        at: row.at,
        personId: row.person,
        name: row.name,
        role: row.role as Role,
        changes: JSON.parse(row.changes) as DeedChange[],
        more: Number(row.more),
      }),
    );
    return { deeds, older: sizes.length > count };
  }

  /** Answers when all that was done so far is written down. */
  settled(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    this.writing = this.writing.then(() => this.write());
    return this.writing;
  }

  private follow({ doc, members }: Session): void {
    const inHand = new Map<Y.Transaction, DeedChange[]>();
    for (const root of Object.keys(ROOTS) as RootName[]) {
      if (!doc.share.has(root) || NOT_TOLD.includes(root)) continue;
      doc.getMap<Json>(root).observe((event, transaction) => {
        const list = inHand.get(transaction) ?? [];
        inHand.set(transaction, list);
        for (const [key, { action, oldValue }] of event.changes.keys) {
          const to = action === 'delete' ? undefined : told(root, key, event.target.get(key));
          const from = action === 'add' ? undefined : told(root, key, oldValue as Json);
          list.push({ root, key, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) });
        }
      });
    }
    doc.on('afterTransaction', (transaction: Y.Transaction) => {
      const changes = inHand.get(transaction);
      inHand.delete(transaction);
      const member = transaction.origin as { person?: Person } | null;
      if (changes === undefined || changes.length === 0 || !members.has(member as never)) return;
      this.take((member as { person: Person }).person, changes);
    });
  }

  /** A deed that another's overtakes is done: nudged on, it is a deed of its own, told after theirs. */
  private endOthers(person: Person, changes: readonly DeedChange[]): void {
    const touched = new Set(changes.map(({ root, key }) => `${root}|${key}`));
    for (const [personId, open] of this.open) {
      if (personId !== person.id && open.changes.some(({ root, key }) => touched.has(`${root}|${key}`))) {
        this.open.delete(personId);
      }
    }
  }

  private take(person: Person, changes: readonly DeedChange[]): void {
    const at = this.now();
    this.endOthers(person, changes);
    const signature = changes.map(({ root, key }) => `${root}|${key}`).join('\n');
    const before = this.open.get(person.id);
    const same = before?.signature === signature && at.getTime() - before.since < ONE_DEED_MS;
    const bound = changes.every(({ root }) => isArranged(root)) ? HANG_CHANGES_KEPT : CHANGES_KEPT;
    const kept = same ? joined(before.changes, changes) : changes.slice(0, bound);
    const n = same ? before.n : ++this.lastN;
    this.open.set(person.id, { n, since: same ? before.since : at.getTime(), signature, changes: kept });
    const more = Math.max(0, changes.length - bound);
    this.unwritten.set(n, { n, at: at.toISOString(), person, changes: kept, more });
    this.timer ??= setTimeout(() => void this.settled(), WRITTEN_WITHIN_MS).unref();
  }

  private async write(): Promise<void> {
    const rows = [...this.unwritten.values()].map(({ n, at, person: { id, name, role }, changes, more }) => {
      return { n, at, person: id, name, role, changes: JSON.stringify(changes), more };
    });
    this.unwritten.clear();
    if (rows.length === 0) return;
    try {
      await this.store.writeDeeds(rows);
    } catch (error) {
      // The changes themselves are in the log; what is lost is lines of the history, and only while the disk is full.
      this.log.warn({ event: 'history', kind: error instanceof Error ? error.name : typeof error });
    }
  }
}

/** Of a record or a paint that comes in only what names it: its texts and readings stand in the checklist. */
function told(root: RootName, key: string, value: Json | undefined): Json | undefined {
  if (root === 'deck' && !key.includes('/') && typeof value === 'object' && value !== null) {
    return { name: (value as { name?: Json }).name ?? '' };
  }
  if (root !== 'objects' || key.includes('/') || typeof value !== 'object' || value === null) return value;
  const { number, title } = value as { number?: Json; title?: Json };
  return { number: number ?? '', title: title ?? '' };
}

/** Two changes of the same facts, one after the other, as one. */
function joined(first: readonly DeedChange[], then: readonly DeedChange[]): DeedChange[] {
  return first.map(({ root, key, from }, index) => {
    const to = then[index]?.to;
    return { root, key, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
  });
}
