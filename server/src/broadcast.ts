/**
 * What a document's members are told. Updates go out with the commit that wrote them (group-commit.ts), merged, and not
 * back to whom they came from; presence once a tick, a lone sender's at once.
 */
import * as Y from 'yjs';

export interface Outgoing<Member> {
  readonly bytes: Uint8Array;
  /** Null: the server's own. */
  readonly from: Member | null;
}

/** How long nobody else may have spoken for a sender to count as alone, ms. */
const ALONE_AFTER_MS = 1000;

/** Decides when to tell: at once for a lone sender or after a pause, else once a tick. */
export class Tick {
  private readonly tickMs: number;
  private readonly flush: () => void;
  private timer: NodeJS.Timeout | null = null;
  private lastFlush = Number.NEGATIVE_INFINITY;
  private lastSender: unknown = null;
  private asked = false;
  private otherAt = Number.NEGATIVE_INFINITY;

  constructor(tickMs: number, flush: () => void) {
    this.tickMs = tickMs;
    this.flush = flush;
  }

  ask(sender: unknown): void {
    const now = performance.now();
    if (this.lastSender !== sender) {
      if (this.lastSender !== null) this.otherAt = now;
      this.lastSender = sender;
    }
    if (this.timer !== null) return;
    const wait = this.lastFlush + this.tickMs - now;
    if (now - this.otherAt > ALONE_AFTER_MS || wait <= 0) this.soon();
    else this.timer = setTimeout(() => this.now(), wait);
  }

  /** After everything of the same commit, so that a burst is one frame. */
  private soon(): void {
    if (this.asked) return;
    this.asked = true;
    queueMicrotask(() => {
      this.asked = false;
      if (this.timer === null) this.now();
    });
  }

  now(): void {
    this.stop();
    this.lastFlush = performance.now();
    this.flush();
  }

  stop(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
  }
}

/**
 * One update for all members, merged once; null for whoever sent all there is. Who sent a part of it gets that back too:
 * a document knows what it has, and leaving it out would mean a merge for each of them.
 */
export function mergedFor<Member>(outgoing: readonly Outgoing<Member>[]): (member: Member) => Uint8Array | null {
  const [first, ...rest] = outgoing;
  if (first === undefined) return () => null;
  const lone = rest.every(({ from }) => from === first.from) ? first.from : null;
  let merged: Uint8Array | undefined;
  return (member) => {
    if (member === lone) return null;
    merged ??= rest.length === 0 ? first.bytes : Y.mergeUpdates(outgoing.map(({ bytes }) => bytes));
    return merged;
  };
}
