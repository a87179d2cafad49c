/**
 * One document, live. An update goes: decode → checks → log → apply → acknowledge → broadcast; nothing is applied,
 * acknowledged or shown to anyone before it is on the disk.
 */
import { CLOSE, type Notice } from '@enfilade/shared/protocol';
import type { DocumentName } from '@enfilade/shared/seats';
import * as Y from 'yjs';
import { mergedFor, type Outgoing, Tick } from './broadcast.ts';
import { ClientIds, type HeldId, SHORT_AT_MOST } from './client-ids.ts';
import type { GroupCommit } from './group-commit.ts';
import type { Limits } from './limits.ts';
import { PresenceRelay, type Speaker } from './presence-relay.ts';
import type { StoredDocument } from './store.ts';
import {
  type Arrived,
  CHECKS,
  clientsOf,
  decodedUpdate,
  leavesGap,
  type Standing,
  type Verdict,
} from './update-checks.ts';

/** A socket in a session. */
export interface Member extends Speaker {
  readonly mayWrite: boolean;
  /** Tells a document update or a presence update; the session decides when. */
  tellUpdate(update: Uint8Array): void;
  tellPresence(update: Uint8Array): void;
  notice(notice: Notice): void;
  close(code: number, reason: string): void;
}

export class ReadOnlyError extends Error {}

/** Share of what a document may hold from which its people are told so. */
const NEARLY_FULL = 0.85;

function nearlyFull(bytes: number, limit: number): Notice {
  const share = Math.min(100, Math.round((bytes / limit) * 100));
  const reason = `This show has reached ${share} % of the size it can hold. Everything is still taken; when it is full nothing more is. Tell whoever looks after the server.`;
  return { kind: 'nearly full', reason };
}

/** A document replayed from what is stored: the snapshot, then each update after it, as one transaction. */
export function docFrom(stored: StoredDocument): Y.Doc {
  const doc = new Y.Doc();
  doc.transact(() => {
    if (stored.snapshot !== null) Y.applyUpdateV2(doc, stored.snapshot.bytes, 'log');
    for (const { bytes } of stored.updates) Y.applyUpdate(doc, bytes, 'log');
  }, 'log');
  return doc;
}

export class Session {
  readonly name: DocumentName;
  /** Only what is in the log. Read it; write through `act`. */
  readonly doc: Y.Doc;
  readonly members = new Set<Member>();
  readonly presence: PresenceRelay;
  /** Everything of this document up to here is applied. */
  appliedSeq: number;
  updatesSinceSnapshot: number;
  bytesSinceSnapshot: number;
  snapshotBytes: number;
  private readonly commit: GroupCommit;
  private readonly limits: Limits;
  private readonly trouble: (error: unknown) => void;
  private outgoing: Outgoing<Member>[] = [];
  private presenceChanged = new Set<number>();
  private telling = false;
  private readonly presenceTick: Tick;
  private readonly onItsWay = new Map<number, { clock: number; updates: number }>();
  private gapUpdates = 0;
  private toldNearlyFull = false;
  private acts: Promise<unknown> = Promise.resolve();
  private readonly actClient = new Y.Doc().clientID;
  /** Whose hand each client id is. */
  private readonly ids: ClientIds;

  constructor(
    name: DocumentName,
    stored: StoredDocument,
    {
      commit,
      limits,
      trouble,
      held = [],
    }: {
      commit: GroupCommit;
      limits: Limits;
      trouble: (error: unknown) => void;
      held?: readonly HeldId[];
    },
  ) {
    this.name = name;
    this.commit = commit;
    this.limits = limits;
    this.trouble = trouble;
    this.doc = docFrom(stored);
    this.appliedSeq = stored.updates.at(-1)?.seq ?? stored.snapshot?.seq ?? 0;
    this.updatesSinceSnapshot = stored.updates.length;
    this.bytesSinceSnapshot = stored.updates.reduce((sum, { bytes }) => sum + bytes.length, 0);
    this.snapshotBytes = stored.snapshot?.bytes.length ?? 0;
    this.ids = new ClientIds(
      held,
      (client) => client === this.actClient || this.doc.store.clients.has(client) || this.onItsWay.has(client),
      (client, person) => commit.hold({ document: name, client, person }),
    );
    this.presence = new PresenceRelay(this.ids);
    this.presenceTick = new Tick(limits.tickMs, () => this.tellPresence());
    this.doc.on('update', (bytes: Uint8Array, origin: unknown) => {
      const from = this.members.has(origin as Member) ? (origin as Member) : null;
      this.outgoing.push({ bytes, from });
    });
  }

  /** What a client that knows this much lacks. @throws when the state vector does not parse. */
  answerTo(stateVector: Uint8Array): Uint8Array {
    return Y.encodeStateAsUpdate(this.doc, stateVector);
  }

  stateVector(): Uint8Array {
    return Y.encodeStateVector(this.doc);
  }

  /**
   * Takes an update from a member. `settled` is called, in the order of arrival, once it is in the log (or needs no
   * place there); a verdict other than null says why it never will be.
   */
  take(member: Member, bytes: Uint8Array, settled: () => void): Verdict | 'read-only' | null {
    const decoded = decodedUpdate(bytes);
    if (decoded === null) return { kind: 'close', code: CLOSE.malformed, reason: 'an update that does not parse' };
    const arrived: Arrived = { bytes, decoded, mayWrite: member.mayWrite, personId: member.person.id };
    const standing = this.standing();
    for (const { judge } of CHECKS) {
      const verdict = judge(arrived, standing);
      if (verdict?.kind === 'known') {
        this.commit.whenWritten(settled);
        return null;
      }
      if (verdict !== null) return verdict;
    }
    const gap = leavesGap(arrived, standing);
    const taken = this.commit.append(this.name, bytes, (seq) => {
      if (!gap) this.arrived(arrived);
      this.apply(bytes, seq, member);
      settled();
    });
    if (!taken) return 'read-only';
    for (const client of clientsOf(arrived)) this.ids.bind(client, member.person.id, true);
    if (gap) this.gapUpdates += 1;
    else this.expect(arrived);
    return null;
  }

  /**
   * A write of the server's own, on a copy; it goes the same way to the log as everybody's.
   * @throws ReadOnlyError when the log cannot be written.
   */
  act(change: (doc: Y.Doc) => void): Promise<void> {
    const done = this.acts.then(async () => {
      const copy = new Y.Doc();
      Y.applyUpdate(copy, Y.encodeStateAsUpdate(this.doc));
      copy.clientID = this.actClient;
      let made: Uint8Array | null = null;
      copy.once('update', (update: Uint8Array) => {
        made = update;
      });
      copy.transact(() => change(copy));
      copy.destroy();
      if (made === null) return;
      const bytes: Uint8Array = made;
      await new Promise<void>((written, failed) => {
        const refuse = (reason: string): void =>
          failed(new ReadOnlyError(`${reason} Nothing was done; try again later.`));
        const logged = (seq: number): void => {
          this.apply(bytes, seq, null);
          written();
        };
        // Nobody waits at a desk for a disk: what cannot be written now is refused.
        const taken = this.commit.append(this.name, bytes, logged, refuse);
        if (!taken) refuse(this.commit.readOnly ?? 'The log cannot be written.');
      });
    });
    this.acts = done.catch(() => {});
    return done;
  }

  /** The highest short client id that is given out or written under here. */
  highestShortId(): number {
    let highest = this.ids.highestShort();
    for (const client of this.doc.store.clients.keys())
      if (client <= SHORT_AT_MOST) highest = Math.max(highest, client);
    return highest;
  }

  /** A short client id is this person's from now on. */
  giveId(client: number, person: string): void {
    this.ids.bind(client, person, false);
  }

  /** A member says which client id it writes under; false when that is another's. */
  greet(member: Member, client: number): boolean {
    if (!this.ids.mayHold(client, member.person.id)) return false;
    this.ids.bind(client, member.person.id, false);
    this.presence.greet(member, client);
    return true;
  }

  /** Presence from a member. @throws when it does not parse. */
  takePresence(member: Member, update: Uint8Array): void {
    const changed = this.presence.take(member, update);
    if (changed.length === 0) return;
    for (const client of changed) this.presenceChanged.add(client);
    this.presenceTick.ask(member);
  }

  join(member: Member): void {
    this.members.add(member);
    const here = this.presence.toUpdate(this.presence.clients(), member);
    if (here !== null) member.tellPresence(here);
    if (this.isNearlyFull) member.notice(nearlyFull(this.bytes, this.limits.documentBytes));
  }

  leave(member: Member): void {
    this.members.delete(member);
    for (const client of this.presence.leave(member)) this.presenceChanged.add(client);
    if (this.presenceChanged.size > 0) this.presenceTick.ask(member);
  }

  close(): void {
    this.presenceTick.stop();
    this.doc.destroy();
  }

  /** Snapshot and log together. */
  private get bytes(): number {
    return this.snapshotBytes + this.bytesSinceSnapshot;
  }

  private get isNearlyFull(): boolean {
    return this.bytes >= NEARLY_FULL * this.limits.documentBytes;
  }

  /** Once each time it comes near, before anything is refused. */
  private warnWhenNearlyFull(): void {
    const told = this.toldNearlyFull;
    this.toldNearlyFull = this.isNearlyFull;
    if (told || !this.toldNearlyFull) return;
    for (const member of this.members) member.notice(nearlyFull(this.bytes, this.limits.documentBytes));
  }

  private standing(): Standing {
    const { doc, limits } = this;
    const pending = doc.store.pendingStructs;
    return {
      doc,
      limits,
      ids: this.ids,
      nextClockOf: (client) => Math.max(Y.getState(doc.store, client), this.onItsWay.get(client)?.clock ?? 0),
      pendingUpdates: this.gapUpdates,
      pendingBytes: (pending?.update.length ?? 0) + (doc.store.pendingDs?.length ?? 0),
      documentBytes: this.bytes,
    };
  }

  private expect({ decoded }: Arrived): void {
    for (const { id, length } of decoded.structs) {
      const known = this.onItsWay.get(id.client);
      const clock = Math.max(known?.clock ?? 0, id.clock + length);
      this.onItsWay.set(id.client, { clock, updates: (known?.updates ?? 0) + 1 });
    }
  }

  private arrived({ decoded }: Arrived): void {
    for (const { id } of decoded.structs) {
      const known = this.onItsWay.get(id.client);
      if (known !== undefined && --known.updates <= 0) this.onItsWay.delete(id.client);
    }
  }

  private apply(bytes: Uint8Array, seq: number, from: Member | null): void {
    try {
      Y.applyUpdate(this.doc, bytes, from);
    } catch (error) {
      // It is in the log and parses; whatever a listener or an odd struct made of it must not stop the others.
      this.trouble(error);
    }
    this.appliedSeq = seq;
    this.updatesSinceSnapshot += 1;
    this.bytesSinceSnapshot += bytes.length;
    this.warnWhenNearlyFull();
    if (this.doc.store.pendingStructs === null && this.doc.store.pendingDs === null) this.gapUpdates = 0;
    if (this.outgoing.length > 0) this.tellSoon();
  }

  /** After everything of the same commit: commits are a tick apart where many work, so each is one frame to each. */
  private tellSoon(): void {
    if (this.telling) return;
    this.telling = true;
    queueMicrotask(() => {
      this.telling = false;
      this.tellUpdates();
      // It goes along with what is sent anyway.
      if (this.presenceChanged.size > 0) this.presenceTick.now();
    });
  }

  private tellUpdates(): void {
    const updateFor = mergedFor(this.outgoing);
    this.outgoing = [];
    for (const member of this.members) {
      const update = updateFor(member);
      if (update !== null) member.tellUpdate(update);
    }
  }

  private tellPresence(): void {
    const changed = this.presenceChanged;
    this.presenceChanged = new Set();
    const updateFor = this.presence.toUpdates(changed);
    for (const member of this.members) {
      const update = updateFor(member);
      if (update !== null) member.tellPresence(update);
    }
  }
}
