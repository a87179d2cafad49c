/** A seat at a show: its documents live, its person's acts, who else is here, and whether all of it is saved. */
import { type Act, ActHistory } from '@enfilade/shared/acts';
import type { HistoryAnswer } from '@enfilade/shared/deeds';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import type { Me } from '@enfilade/shared/protocol';
import { ROOTS, SCHEMA_VERSION } from '@enfilade/shared/schema';
import { DOCUMENT_NAMES, type DocumentName, mayRead, mayWrite } from '@enfilade/shared/seats';
import * as Y from 'yjs';
import { type BothSides, bothSidesOf, NOTICED_LATE_MS, ringsOf } from '../offline/clashes.ts';
import { deedsSince } from '../offline/deeds-since.ts';
import {
  type KeptWork,
  keepBothSides,
  keepWork,
  keptBothSidesOf,
  keptWorkOf,
  NO_WORK,
  withWritten,
} from '../offline/kept-work.ts';
import { keepCopies, type LocalCopies } from '../offline/local-copies.ts';
import {
  type Closing,
  DocumentLink,
  type LinkSeat,
  OLDER_PAGE,
  RESTORED,
  SEAT_CHANGED,
  SEAT_GONE,
} from './document-link.ts';
import { forgetSeat } from './forget-seat.ts';
import { PictureStore } from './picture-store.ts';
import { PresenceRoom } from './presence-room.ts';

/** Where the work stands, as the head says it. */
export type Saving =
  | { readonly kind: 'opening' }
  /** Everything is in the server's log. */
  | { readonly kind: 'saved'; readonly at: Date }
  | { readonly kind: 'saving' }
  /**
   * No connection: work goes on and is sent when it returns. `unsent`: the acts not sent yet. `kept`: on this device, so
   * that they outlive the page.
   */
  | { readonly kind: 'no connection'; readonly since: Date; readonly unsent: readonly string[]; readonly kept: boolean }
  /** The server cannot write its log: nothing is taken until it can. `unsent`: acts of this page that are not in it. */
  | { readonly kind: 'read-only'; readonly reason: string; readonly unsent: readonly string[] }
  /** For good, until the page is loaded again. */
  | ({ readonly kind: 'closed'; readonly unsent: readonly string[] } & Closing);

/** What the server said of this person's work while the connection stands. */
export interface Told {
  readonly strong: string;
  readonly reason: string;
  /** This page holds something that was refused: it is right again once fetched anew. */
  readonly discard?: 'gone' | 'anew';
}

/** What every screen works with: the show as it is, or with a layer laid over it (laid-show.ts). */
export interface ShowSession {
  readonly me: Me;
  /** `/seat/<id>` */
  readonly base: string;
  readonly documents: ShowDocuments;
  readonly judgements: Judgements;
  readonly history: ActHistory;
  readonly pictures: PictureStore;
  readonly presence: PresenceRoom;
  /** The proposal or kept state this is the show of; null for the show itself. */
  readonly layerId: string | null;
  readonly arrived: boolean;
  readonly savingState: Saving;
  readonly toldState: Told | null;
  /** What was changed here and elsewhere while this seat was away, to be settled by this person. */
  readonly bothSides: readonly BothSides[];
  settle(settled: BothSides): void;
  may(document: DocumentName): boolean;
  perform(act: Act): boolean;
  /** Writes what is no act of anybody's and so no step of undo: a reading mark. */
  note(act: Act): boolean;
  send(name: string, body: unknown): Promise<Sent>;
  subscribe(listener: () => void): () => void;
}

/** What came of an act sent to the server. */
export type Sent = { readonly ok: true; readonly body: unknown } | { readonly ok: false; readonly what: string };

/** How long a page with a copy of its own waits for the server before it says that there is no connection, ms. */
const OPENING_MS = 4000;
/** How long after a failed question to the history it is asked again, ms. */
const ASK_AGAIN_MS = 5000;

export class LiveShow implements ShowSession {
  readonly me: Me;
  /** `/seat/<id>` */
  readonly base: string;
  readonly documents: ShowDocuments;
  readonly judgements: Judgements;
  readonly history: ActHistory;
  readonly pictures: PictureStore;
  readonly presence: PresenceRoom;
  readonly layerId = null;
  private readonly links: DocumentLink[] = [];
  private readonly listeners = new Set<() => void>();
  private saving: Saving = { kind: 'opening' };
  private lostAt: Date | null = null;
  private readonly begunAt = performance.now();
  /** What was done here since everything was last in the server's log. */
  private work: KeptWork;
  private away = false;
  private both: readonly BothSides[];
  private readonly copies: LocalCopies;
  private told: Told | null = null;
  private discarded = false;
  private asking: Promise<Closing | null> | null = null;

  constructor(me: Me, base: string, docs: ReadonlyMap<DocumentName, Y.Doc>, copies: LocalCopies) {
    this.me = me;
    this.base = base;
    this.copies = copies;
    this.work = keptWorkOf(me.seatId);
    this.both = keptBothSidesOf(me.seatId);
    this.documents = new ShowDocuments(docs);
    this.pictures = new PictureStore(base);
    this.judgements = new Judgements(this.documents, this.pictures);
    this.history = new ActHistory(this.documents, { person: me.person.id }, (document) => this.may(document));
    this.presence = new PresenceRoom(docs.get('hang') as Y.Doc, me.person, () => this.documents.all('people').keys());
    const seat: LinkSeat = {
      address: `${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}${base}/doc`,
      me,
      beginsUnsent: this.work.facts.length > 0,
      isFromCopy: (origin) => copies.isOrigin(origin),
      closingNow: () => this.closingNow(),
      changed: () => this.judgeSaving(),
    };
    for (const [name, doc] of docs) {
      this.links.push(new DocumentLink(name, doc, seat, name === 'hang' ? this.presence.awareness : undefined));
    }
    this.documents.onWrite((written) => {
      this.work = withWritten(this.work, written, this.lostAt?.toISOString() ?? new Date().toISOString());
      if (copies.kept) keepWork(me.seatId, this.work);
    });
    // A copy that is here is shown at once; whether there is a connection is known a little later.
    if (copies.held) setTimeout(() => this.judgeSaving(), OPENING_MS);
    void this.pictures.refresh();
  }

  may(document: DocumentName): boolean {
    const artistProposesOnly = this.documents.get('settings', 'artistProposesOnly') === true;
    return mayWrite(this.me.person.role, document, { artistProposesOnly });
  }

  /** Every document has arrived at least once, from the server or from this device's own copy. */
  get arrived(): boolean {
    return this.saving.kind !== 'opening' || this.copies.held;
  }

  get bothSides(): readonly BothSides[] {
    return this.both;
  }

  settle(settled: BothSides): void {
    this.bothSidesAre(this.both.filter((one) => one !== settled));
  }

  get savingState(): Saving {
    return this.saving;
  }

  /** A refusal, or a warning before one; the same object until it changes. */
  get toldState(): Told | null {
    return this.told;
  }

  /**
   * Performs an act as this person: one step of undo.
   * @returns false, and does nothing, where this seat may not write or the server cannot.
   */
  perform(act: Act): boolean {
    if (this.saving.kind === 'read-only' || this.saving.kind === 'closed') return false;
    if (!act.changes.every(({ root }) => this.may(ROOTS[root].document))) return false;
    // Before it is done: the links are told of the change while it is made.
    this.work = { ...this.work, unsent: [...this.work.unsent, act.name] };
    this.history.perform(act);
    return true;
  }

  note(act: Act): boolean {
    if (this.saving.kind === 'read-only' || this.saving.kind === 'closed') return false;
    if (!act.changes.every(({ root }) => this.may(ROOTS[root].document))) return false;
    this.documents.write(act.changes, { person: this.me.person.id });
    return true;
  }

  /** Sends an act that only the server may write: a signature, a frozen version. */
  async send(name: string, body: unknown): Promise<Sent> {
    try {
      const answer = await fetch(`${this.base}/acts/${name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
      if (answer.ok) return { ok: true, body: await answer.json() };
      return { ok: false, what: ((await answer.json()) as { what?: string }).what ?? 'The server refused it.' };
    } catch {
      return { ok: false, what: 'No connection to the server. Nothing was done; try again when it is back.' };
    }
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Asked by every link whose socket was refused without a word: whether this page's seat is what it was. */
  private closingNow(): Promise<Closing | null> {
    this.asking ??= fetch(`${this.base}/me`)
      .then(async (answer): Promise<Closing | null> => {
        if (answer.status === 401 || answer.status === 403) return SEAT_GONE;
        if (!answer.ok) return null;
        const now = (await answer.json()) as Me;
        if (now.epoch !== this.me.epoch) return RESTORED;
        if (now.schemaVersion !== SCHEMA_VERSION) return OLDER_PAGE;
        return now.person.role === this.me.person.role ? null : SEAT_CHANGED;
      })
      .catch(() => null)
      .finally(() => {
        this.asking = null;
      });
    return this.asking;
  }

  private judgeSaving(): void {
    const next = this.savingNow();
    if (next.kind === 'saved') this.sent();
    const told = this.toldNow();
    const same = JSON.stringify([next, told]) === JSON.stringify([this.saving, this.told]);
    if (same || (next.kind === 'saved' && this.saving.kind === 'saved' && told === this.told)) return;
    this.saving = next;
    this.told = told;
    for (const listener of this.listeners) listener();
  }

  private savingNow(): Saving {
    const states = this.links.map(({ state }) => state);
    const unsaved = states.some((state) => state.unsaved);
    const unsent = unsaved ? this.work.unsent : [];
    const closing = states.find((state) => state.closing !== null)?.closing;
    if (closing) {
      if (closing.discard !== undefined) this.discard();
      return { kind: 'closed', ...closing, unsent };
    }
    const readOnly = states.find((state) => state.readOnly !== null)?.readOnly;
    if (readOnly) return { kind: 'read-only', reason: readOnly, unsent };
    const lost = states.some((state) => !state.connected || !state.synced);
    const opening = this.saving.kind === 'opening';
    if (opening && lost && !(this.copies.held && performance.now() - this.begunAt >= OPENING_MS)) return this.saving;
    if (lost) {
      this.lostAt ??= new Date();
      this.away = true;
      return { kind: 'no connection', since: this.lostAt, unsent, kept: this.copies.kept };
    }
    this.lostAt = null;
    return unsaved ? { kind: 'saving' } : { kind: 'saved', at: new Date() };
  }

  /** Everything is in the log: what was changed on both sides meanwhile is found, and nothing is unsent any more. */
  private sent(): void {
    const { facts, since } = this.work;
    const { away } = this;
    this.away = false;
    this.work = NO_WORK;
    if (this.copies.kept) keepWork(this.me.seatId, NO_WORK);
    if (away && facts.length > 0 && since !== null) void this.findBothSides(facts, since);
  }

  private async findBothSides(facts: KeptWork['facts'], since: string): Promise<void> {
    try {
      const deeds = await deedsSince(async (query) => {
        const answer = await fetch(`${this.base}/history?${query}`);
        if (!answer.ok) throw new Error(`history: ${answer.status}`);
        return (await answer.json()) as HistoryAnswer;
      }, Date.parse(since) - NOTICED_LATE_MS);
      const found = [
        ...bothSidesOf(facts, deeds, this.me.person.id, since),
        ...ringsOf(facts, deeds, this.me.person.id, (id) => this.documents.get('places', id)),
      ];
      if (found.length > 0) this.bothSidesAre([...this.both, ...found]);
    } catch {
      // Gone again before it could be asked: what both have changed must not go untold.
      if (this.saving.kind !== 'closed') setTimeout(() => void this.findBothSides(facts, since), ASK_AGAIN_MS);
    }
  }

  private bothSidesAre(both: readonly BothSides[]): void {
    this.both = both;
    keepBothSides(this.me.seatId, both);
    for (const listener of this.listeners) listener();
  }

  /** Ends every link, and throws away what this browser keeps of the seat. */
  private discard(): void {
    if (this.discarded) return;
    this.discarded = true;
    for (const link of this.links) link.stop();
    // A destroyed document lets go of this device's copy, which then can be taken away.
    for (const name of DOCUMENT_NAMES) this.documents.doc(name)?.destroy();
    void forgetSeat(this.me.seatId);
  }

  private toldNow(): Told | null {
    const told = this.links.map(({ state }) => state.told).find((one) => one !== null) ?? null;
    return told !== null && this.told !== null && told.reason === this.told.reason ? this.told : told;
  }
}

/** A short id for this page to write under, from the server; null where none is given, and Yjs draws one by lot. */
async function shortClientId(base: string): Promise<number | null> {
  try {
    const answer = await fetch(`${base}/client-id`, { method: 'POST' });
    return answer.ok ? ((await answer.json()) as { clientId: number }).clientId : null;
  } catch {
    return null;
  }
}

/** Opens the seat this page was served for. @throws Error with a sentence for the person when it cannot. */
export async function openShow(): Promise<ShowSession> {
  const base = /^\/seat\/[^/]+/.exec(location.pathname)?.[0];
  if (base === undefined) throw new Error('This address is no seat. Open the invitation link you were sent.');
  // Without a connection the service worker answers as the server last did.
  const answer = await fetch(`${base}/me`);
  if (!answer.ok) throw new Error('This seat is not known here. Open the invitation link you were sent once more.');
  const me = (await answer.json()) as Me;
  const docs = new Map<DocumentName, Y.Doc>();
  const clientId = await shortClientId(base);
  for (const name of DOCUMENT_NAMES) {
    if (!mayRead(me.person.role, name)) continue;
    const doc = new Y.Doc();
    if (clientId !== null) doc.clientID = clientId;
    docs.set(name, doc);
  }
  return new LiveShow(me, base, docs, await keepCopies(me.seatId, me.epoch, docs));
}
