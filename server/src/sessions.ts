/** All documents of the show, loaded whole before anyone is answered, with their one log. */
import { ShowDocuments } from '@enfilade/shared/documents';
import { DOCUMENT_NAMES, type DocumentName, type PowerSettings } from '@enfilade/shared/seats';
import type { Logger } from 'pino';
import { type HeldId, SHORT_AT_MOST } from './client-ids.ts';
import { compact, wantsCompaction } from './compaction.ts';
import { GroupCommit } from './group-commit.ts';
import type { Limits } from './limits.ts';
import { Session } from './session.ts';
import type { SeatSocket } from './socket.ts';
import type { Store, StoredDocument } from './store.ts';

/** After a compaction that failed, the next is not tried at once: ms. */
const COMPACTION_PAUSE_MS = 60_000;

export class Sessions {
  readonly byName: ReadonlyMap<DocumentName, Session>;
  /** What is committed, as plain snapshots. */
  readonly documents: ShowDocuments;
  readonly sockets = new Set<SeatSocket>();
  readonly commit: GroupCommit;
  commits = 0;
  updates = 0;
  compactions = 0;
  private readonly store: Store;
  private readonly limits: Limits;
  private readonly log: Logger;
  private compacting: Promise<void> | null = null;
  private compactNotBefore = 0;
  private lastShortId: number | null = null;

  private constructor(
    store: Store,
    limits: Limits,
    log: Logger,
    stored: ReadonlyMap<DocumentName, StoredDocument>,
    held: ReadonlyMap<DocumentName, readonly HeldId[]>,
  ) {
    this.store = store;
    this.limits = limits;
    this.log = log;
    this.commit = new GroupCommit(store, limits.retryMs, {
      readOnly: (reason) => {
        log.error({ event: 'read-only' }, reason);
        for (const socket of this.sockets) socket.notice({ kind: 'read-only', reason });
      },
      writable: () => {
        log.warn({ event: 'writable' }, 'the log can be written again');
        for (const socket of this.sockets) {
          socket.notice({ kind: 'writable' });
          socket.recover();
        }
      },
      committed: (updates) => {
        this.commits += 1;
        this.updates += updates;
        this.compactWhatIsLong();
      },
    });
    const trouble = (error: unknown): void => {
      log.error(
        { event: 'apply', kind: error instanceof Error ? error.name : typeof error },
        'an update applied badly',
      );
    };
    const byName = new Map<DocumentName, Session>();
    for (const [name, document] of stored) {
      byName.set(
        name,
        new Session(name, document, { commit: this.commit, limits, trouble, held: held.get(name) ?? [] }),
      );
    }
    this.byName = byName;
    this.documents = new ShowDocuments(new Map([...byName].map(([name, { doc }]) => [name, doc])));
  }

  static async open(store: Store, limits: Limits, log: Logger): Promise<Sessions> {
    const stored = new Map<DocumentName, StoredDocument>();
    const held = new Map<DocumentName, readonly HeldId[]>();
    for (const name of DOCUMENT_NAMES) {
      stored.set(name, await store.load(name));
      held.set(name, await store.heldClients(name));
    }
    return new Sessions(store, limits, log, stored, held);
  }

  /** What the show has set about powers, as it is committed. */
  get powerSettings(): PowerSettings {
    return { artistProposesOnly: this.get('hang').doc.getMap('settings').get('artistProposesOnly') === true };
  }

  get(name: DocumentName): Session {
    return this.byName.get(name) as Session;
  }

  /**
   * A short client id for a page that is being opened, this person's from now on in every document; undefined when all
   * are given or the log cannot be written. Answered when it is on the disk, so that no other page ever gets it.
   */
  async clientIdFor(person: string): Promise<number | undefined> {
    if (this.lastShortId === null) {
      const inUse = [...this.byName.values()].map((session) => session.highestShortId());
      this.lastShortId = Math.max(0, ...inUse);
    }
    if (this.lastShortId >= SHORT_AT_MOST || this.commit.readOnly !== null) return undefined;
    this.lastShortId += 1;
    const client = this.lastShortId;
    for (const session of this.byName.values()) session.giveId(client, person);
    return await new Promise((answer) =>
      this.commit.whenWritten(
        () => answer(client),
        () => answer(undefined),
      ),
    );
  }

  /** Compacts every document that has a log at all, one after another. */
  async compactAll(): Promise<void> {
    await this.compacting;
    for (const session of this.byName.values()) await this.compactOne(session);
  }

  async close(): Promise<void> {
    await this.commit.drain();
    this.commit.stop();
    await this.compacting;
    for (const session of this.byName.values()) session.close();
  }

  private compactWhatIsLong(): void {
    if (this.compacting !== null || performance.now() < this.compactNotBefore) return;
    const long = [...this.byName.values()].find((session) => wantsCompaction(session, this.limits));
    if (long === undefined) return;
    this.compacting = this.compactOne(long)
      .catch((error: unknown) => {
        this.compactNotBefore = performance.now() + COMPACTION_PAUSE_MS;
        this.log.error({ event: 'compaction', document: long.name }, error instanceof Error ? error.message : 'failed');
      })
      .finally(() => {
        this.compacting = null;
      });
  }

  private async compactOne(session: Session): Promise<void> {
    await compact(session, this.store);
    this.compactions += 1;
  }
}
