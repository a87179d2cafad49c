/**
 * One transaction a tick for all sessions. Whoever hands in an update is called back, in order, once it is on the disk;
 * if it cannot be written it stays at the head and is tried again, and nothing more is taken until then. Whoever would
 * wait for an answer meanwhile (an act) hands in what is to be called when it cannot be written, and is not tried again.
 */
import type { DocumentName } from '@enfilade/shared/seats';
import { DEFAULT_LIMITS } from './limits.ts';
import type { HeldClient, LogEntry, Store } from './store.ts';

interface Waiting {
  /** Null for what only waits its turn. */
  readonly entry: LogEntry | null;
  readonly written: (seq: number) => void;
  /** Where given: called once if it could not be written, which then it never will be. */
  readonly failed?: (reason: string) => void;
}

export interface GroupCommitEvents {
  /** The log cannot be written; `reason` is a sentence for people. */
  readOnly(reason: string): void;
  /** It can again, and everything kept back has been written. */
  writable(): void;
  /** A transaction is on the disk and all its callbacks have run. */
  committed(updates: number): void;
}

/**
 * Least time between two commits, ms, so that many editors share one; a lone one finds it already past. A little less
 * than a tick of presence, which then goes out along with it.
 */
const LEAST_MS_BETWEEN = DEFAULT_LIMITS.tickMs - 4;
/** And at least so many times what the last one took: a slow disk must not keep the server from everything else. */
const TIMES_THE_LAST = 2;
const MOST_MS_BETWEEN = 200;

/** Hellos that wait for an update's commit before they get one of their own. */
const HELD_AT_MOST = 1000;

/** Why the log cannot be written, for people. */
function reasonFrom(error: unknown): string {
  const full = (error as { code?: unknown }).code === 'SQLITE_FULL';
  const why = full ? 'its disk is full' : error instanceof Error ? error.message : 'unknown error';
  return `The server cannot write its log: ${why}.`;
}

export class GroupCommit {
  private readonly store: Store;
  private readonly events: GroupCommitEvents;
  private readonly retryMs: number;
  private waiting: Waiting[] = [];
  private held: HeldClient[] = [];
  private running: Promise<void> | null = null;
  private scheduled = false;
  private retry: NodeJS.Timeout | null = null;
  private lastAt = 0;
  private lastTookMs = 0;
  private reason: string | null = null;

  constructor(store: Store, retryMs: number, events: GroupCommitEvents) {
    this.store = store;
    this.retryMs = retryMs;
    this.events = events;
  }

  /** Why nothing is taken, or null. */
  get readOnly(): string | null {
    return this.reason;
  }

  /**
   * Takes an update for the log; false when nothing is taken. `written` is called when it is on the disk. With `failed`
   * it is tried once: when it cannot be written it is let go and `failed` is called.
   */
  append(
    document: DocumentName,
    bytes: Uint8Array,
    written: (seq: number) => void,
    failed?: (reason: string) => void,
  ): boolean {
    if (this.reason !== null) return false;
    this.waiting.push({ entry: { document, bytes }, written, ...(failed === undefined ? {} : { failed }) });
    this.schedule();
    return true;
  }

  /** Writes down whose a client id is, in the same transaction as the next update: no commit of its own. */
  hold(held: HeldClient): void {
    this.held.push(held);
    // A crowd that only says hello must not pile up here.
    if (this.held.length >= HELD_AT_MOST && this.reason === null) this.schedule();
  }

  /**
   * Calls back once everything handed in before is on the disk: at once when nothing waits. With `failed` it does not
   * wait for a disk that cannot be written.
   */
  whenWritten(written: () => void, failed?: (reason: string) => void): void {
    if (failed !== undefined && this.reason !== null) failed(this.reason);
    else if (this.waiting.length + this.held.length === 0 && this.running === null) written();
    else {
      this.waiting.push({ entry: null, written, ...(failed === undefined ? {} : { failed }) });
      this.schedule();
    }
  }

  /** Answers when everything handed in so far is on the disk, or cannot be. */
  async drain(): Promise<void> {
    while ((this.waiting.length + this.held.length > 0 || this.running !== null) && this.reason === null) {
      await (this.running ?? this.commit());
    }
  }

  stop(): void {
    if (this.retry !== null) clearTimeout(this.retry);
    this.retry = null;
  }

  private schedule(): void {
    if (this.scheduled || this.running !== null) return;
    this.scheduled = true;
    const between = Math.min(MOST_MS_BETWEEN, Math.max(LEAST_MS_BETWEEN, TIMES_THE_LAST * this.lastTookMs));
    const wait = this.lastAt + between - performance.now();
    const go = (): void => {
      this.scheduled = false;
      if (this.running === null && this.reason === null) void this.commit();
    };
    if (wait <= 0) setImmediate(go);
    else setTimeout(go, wait);
  }

  private commit(): Promise<void> {
    const began = performance.now();
    this.running = this.write().finally(() => {
      this.running = null;
      this.lastAt = performance.now();
      this.lastTookMs = this.lastAt - began;
      if (this.waiting.length > 0 && this.reason === null) this.schedule();
    });
    return this.running;
  }

  private async write(): Promise<void> {
    const batch = this.waiting;
    this.waiting = [];
    const held = this.held;
    this.held = [];
    const entries = batch.flatMap(({ entry }) => (entry === null ? [] : [entry]));
    let seqs: number[];
    try {
      seqs = entries.length + held.length === 0 ? [] : await this.store.appendAll(entries, held);
    } catch (error) {
      this.waiting = [...batch, ...this.waiting];
      this.held = [...held, ...this.held];
      this.fail(error);
      return;
    }
    let at = 0;
    for (const { entry, written } of batch) written(entry === null ? 0 : (seqs[at++] as number));
    this.events.committed(entries.length);
    if (this.reason !== null) {
      this.reason = null;
      this.events.writable();
    }
  }

  private fail(error: unknown): void {
    const first = this.reason === null;
    this.reason = reasonFrom(error);
    const given = this.waiting.filter(({ failed }) => failed !== undefined);
    this.waiting = this.waiting.filter(({ failed }) => failed === undefined);
    for (const { failed } of given) failed?.(this.reason);
    this.retry = setTimeout(() => {
      this.retry = null;
      if (this.running === null) void this.commit();
    }, this.retryMs);
    if (first) this.events.readOnly(this.reason);
  }
}
