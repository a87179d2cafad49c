/** People at work at once: every act there is, drawn by lot, each as its screen performs it. */

import { type Act, ActHistory, type Outcome } from '@enfilade/shared/acts';
import { lineUp, spaceOut } from '@enfilade/shared/aligning';
import { takeArrangement } from '@enfilade/shared/arrange-acts';
import { arrangeTask } from '@enfilade/shared/arrange-tasks';
import { arrangementsOf } from '@enfilade/shared/arrange-ways';
import * as collection from '@enfilade/shared/collection';
import * as commands from '@enfilade/shared/commands';
import * as declining from '@enfilade/shared/declined-arrangements';
import { type ShowDocuments, sameJson, type Written } from '@enfilade/shared/documents';
import type { HangState } from '@enfilade/shared/hang-layer';
import { Judgements } from '@enfilade/shared/judgements';
import { hangStateFrom, hangStateOf, restoreState, restoreVignette } from '@enfilade/shared/kept-states';
import { planLight, readLight } from '@enfilade/shared/light-plan';
import { agreeToPlaces, correctLoan } from '@enfilade/shared/loans';
import { finishSurface } from '@enfilade/shared/paint-schedule';
import { PICTURE_CUTS } from '@enfilade/shared/picture-cuts';
import { setLimit } from '@enfilade/shared/practice-limits';
import { leaveMoves, movesOf, settleClash, takeMoves } from '@enfilade/shared/proposal-moves';
import * as proposals from '@enfilade/shared/proposals';
import * as remarks from '@enfilade/shared/remarks';
import * as samples from '@enfilade/shared/samples';
import {
  carrierOn,
  type Json,
  LOAN_STATUSES,
  type MuseumObject,
  type Place,
  ROOTS,
  type Room,
  type RootName,
} from '@enfilade/shared/schema';
import type { Role } from '@enfilade/shared/seats';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import * as suggestions from '@enfilade/shared/suggestions';
import { COLLECTION_SAID, type RemarkAbout, type Word } from '@enfilade/shared/talk';
import type * as Y from 'yjs';

/** Few things and many hands: nearly everything that can collide does. */
const OBJECTS = ['o1', 'o2', 'o3', 'o4', 'o5', 'o6'] as const;
const PIECES = [...OBJECTS.map((id) => `${id}#1`), 'o6#2', 'o6#3'];
const VIGNETTES = ['v1', 'v2', 'v3'] as const;
const PROPOSALS = ['p1', 'p2'] as const;
const SAMPLES = ['s1', 's2', 's3'] as const;
const REMARKS = ['r1', 'r2', 'r3'] as const;
const COLLECTED: collection.CollectionRecord = {
  number: 'OM 1.1',
  title: 'Eel trap',
  maker: '',
  date: '',
  medium: 'Willow',
  type: 'eel trap',
  dimensions: '78 × 34 cm',
  credit: '',
  shown: null,
  picture: null,
  storage: 'bay 3',
};
const PAINTS = ['weld', 'madder', 'woad'] as const;
const GROUNDS = ['ground 1', 'ground 2'] as const;
const ROOMS = ['dye', 'wheel'] as const;
const SURFACES = ['dye:head', 'dye:left', 'dye:floor', 'wheel:head', 'wheel:floor', 'layout', 'opening:door'] as const;

const ROOM: Room = {
  name: 'Dye House',
  order: 1,
  widthMm: 6000,
  depthMm: 6000,
  heightMm: 3600,
  headFaces: 'east',
  cornersMm: [0, -30, -30, 0],
  laserMm: 1000,
};

function record(id: string, fields: Partial<MuseumObject> = {}): MuseumObject {
  const count = id === 'o6' ? 3 : 1;
  const dimensionsText = 'H 60 x W 80 x D 40 cm';
  return {
    number: id,
    title: `Work ${id}`,
    count,
    lender: '',
    source: 'collection',
    dimensionsText,
    levelsMm: [600, 200],
    ...fields,
  };
}

/** What the show begins with, by one person before the others come. */
export function beginning(documents: ShowDocuments): void {
  const write = (act: Act): void => documents.write(act.changes, 'beginning');
  for (const [n, id] of ROOMS.entries()) write(commands.addRoom({ ...ROOM, name: id, order: n + 1 }, id));
  const door = { kind: 'doorway', name: 'door', widthMm: 1200, heightMm: 2200, sillMm: 0 } as const;
  write(commands.addOpening({ ...door, sides: [{ surface: 'dye:left', xMm: 400 }] }, 'door'));
  write(
    commands.addObjects(
      documents,
      OBJECTS.map((id) => ({ id, object: record(id) })),
    ),
  );
  for (const id of PAINTS) write(commands.addPaint(documents, { name: id, lab: { L: 50, a: 0, b: 0 } }, id));
}

/** How often each kind of act was performed, and what undo came to. */
export class Tally {
  readonly acts = new Map<string, number>();
  undone = 0;
  inPart = 0;
  count(name: string): void {
    this.acts.set(name, (this.acts.get(name) ?? 0) + 1);
  }
}

/** One fact as the act of a person left it. */
interface Fact {
  readonly before: Written;
  /** Somebody else has made it another since, though it may be the same again. */
  overtaken: boolean;
}

/** A person at one replica: their acts, their undo, and every proposal as it is laid over on their screen. */
export class Hand {
  readonly live: ShowDocuments;
  readonly judgements: Judgements;
  readonly laid = new Map<string, ShowDocuments>();
  private readonly history: ActHistory;
  private readonly word: Word;
  private readonly random: () => number;
  private readonly kept: HangState[];
  private readonly tally: Tally;
  /** Kept by this test itself, from what was truly written: what each act changed, oldest first. */
  private readonly done: (readonly Fact[])[] = [];
  private readonly undone: (readonly Fact[])[] = [];
  private written: Written[] = [];
  readonly broken: string[] = [];

  constructor(
    live: ShowDocuments,
    n: number,
    random: () => number,
    kept: HangState[],
    tally: Tally,
    isHeard: (origin: unknown) => boolean,
  ) {
    this.live = live;
    this.judgements = new Judgements(live, { get: () => undefined });
    this.history = new ActHistory(live, { person: `person ${n}` });
    const role = (['curator', 'guest artist', 'preparator', 'lead'] as const)[n % 4] as Role;
    this.word = { by: `person ${n}`, name: `Person ${n}`, role, at: '2026-05-12T09:00:00.000Z' };
    this.random = random;
    this.kept = kept;
    this.tally = tally;
    live.onWrite((written) => this.written.push(...written));
    for (const root of Object.keys(ROOTS) as RootName[]) {
      const map = (live.doc(ROOTS[root].document) as Y.Doc).getMap<Json>(root);
      const known = new Map<string, string>(Object.entries(map.toJSON()).map(([key, value]) => [key, textOf(value)]));
      map.observe(({ keysChanged }, { origin }) => {
        for (const key of keysChanged as Set<string>) {
          const now = textOf(map.get(key));
          const before = known.get(key) ?? textOf(undefined);
          known.set(key, now);
          if (now !== before && isHeard(origin)) this.overtake(root, key);
        }
      });
    }
    for (const id of PROPOSALS) this.laid.set(id, live.laidOver(proposals.layerOfProposal(live, id)));
  }

  private overtake(root: RootName, key: string): void {
    for (const fact of [...this.done, ...this.undone].flat()) {
      if (fact.before.root === root && fact.before.key === key) fact.overtaken = true;
    }
  }

  /** Does one thing by lot. */
  work(): void {
    const lot = this.random();
    if (lot < 0.14) this.undo();
    else if (lot < 0.19) this.redo();
    else if (lot < 0.21) this.kept.push(hangStateFrom(JSON.parse(JSON.stringify(hangStateOf(this.live)))) as HangState);
    else if (lot < 0.23) this.sign();
    else if (lot < 0.45) this.inProposal(this.one(PROPOSALS));
    else this.perform(this.ofShow());
  }

  /** As the server writes it: several within one millisecond. */
  private sign(): void {
    const vignetteId = this.one(VIGNETTES);
    const form = canonicalVignetteOf(this.live, vignetteId);
    if (form === null) return;
    const { by: personId, ...word } = this.word;
    const canonical = toCanonicalText(form);
    const signature = { vignetteId, personId, ...word, digest: digestOf(canonical), canonical };
    this.live.write([{ root: 'signatures', key: `${vignetteId}/${personId}`, value: signature }], 'server');
  }

  private one<T>(list: readonly T[]): T {
    return list[Math.floor(this.random() * list.length)] as T;
  }

  private some<T>(list: readonly T[]): T[] {
    // Now and then one of them twice, as a selection made in two ways may hold it.
    return Array.from({ length: 1 + Math.floor(this.random() * 3) }, () => this.one(list));
  }

  private maybe<T>(value: T): T | null {
    return this.random() < 0.3 ? null : value;
  }

  /** Now and then cut in the middle of a letter that is two, as a paste or a length can. */
  private text(word: string): string {
    return `${word} ${this.mm()}${this.random() < 0.2 ? '\ud83e' : ''}`;
  }

  private mm(): number {
    return Math.round(this.random() * 5000);
  }

  private place(): Place {
    const on = this.random() < 0.4 ? carrierOn(this.one(PIECES), this.random() < 0.5 ? 0 : 1) : this.one(SURFACES);
    return [on, this.mm(), this.mm(), 0, this.one([0, 4500, 9000])];
  }

  /** As a screen places: what would stand on what it carries, as far as one sees here, is not offered. */
  private placing(documents: ShowDocuments): Act {
    const places = new Map(this.some(PIECES).map((pieceId) => [pieceId, this.place()] as const));
    try {
      return commands.place(documents, places);
    } catch (error) {
      if (error instanceof RangeError && error.message.includes('what it carries'))
        return commands.repaint('dye:head', 'weld');
      throw error;
    }
  }

  /** The first way found; nothing is arranged where a wall has gone. */
  private arranging(judgements: Judgements): Act {
    const pieceIds = [...new Set(this.some(PIECES))];
    const task = arrangeTask(judgements, { kind: 'line', pieceIds, surface: 'dye:head', gapMm: 100 });
    const none = { round: 1, away: new Set<string>(), found: () => {}, progress: () => {} };
    const [way] = 'why' in task ? [] : arrangementsOf(task, none);
    try {
      if (way !== undefined && 'ground' in task) return takeArrangement(judgements, task, way);
    } catch (error) {
      if (!(error instanceof RangeError && error.message.includes('what it carries'))) throw error;
    }
    return commands.repaint('dye:head', 'weld');
  }

  private perform({ name, act }: { readonly name: string; readonly act: Act }): void {
    this.tally.count(name);
    this.written = [];
    this.history.perform(act);
    if (this.written.length === 0) return;
    // One fact may be written twice within an act: what it was first, what it is last.
    const facts = new Map<string, Fact>();
    for (const one of this.written) {
      const id = `${one.root}|${one.key}`;
      const first = facts.get(id)?.before ?? one;
      const { from } = first;
      const { root, key, to } = one;
      facts.set(id, {
        before: { root, key, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) },
        overtaken: false,
      });
    }
    this.done.push([...facts.values()]);
    this.undone.length = 0;
  }

  /** Undone are exactly the facts that stand as this person left them; whatever anyone changed since is not touched. */
  private undo(): void {
    const facts = this.done.pop();
    this.reverse(facts, this.undone, 'to', 'from', () => this.history.undo());
  }

  private redo(): void {
    const facts = this.undone.pop();
    this.reverse(facts, this.done, 'from', 'to', () => this.history.redo());
  }

  private reverse(
    facts: readonly Fact[] | undefined,
    onto: (readonly Fact[])[],
    expected: 'from' | 'to',
    wanted: 'from' | 'to',
    take: () => Outcome | undefined,
  ): void {
    const { broken, live } = this;
    const stands = (facts ?? []).filter(
      ({ before: { root, key, ...values }, overtaken }) =>
        !overtaken && sameJson(live.stored(root, key), values[expected]),
    );
    this.written = [];
    const outcome = take();
    if (facts === undefined) {
      if (outcome !== undefined) broken.push('something was undone that nobody had done');
      return;
    }
    onto.push(facts);
    if (outcome === undefined) broken.push('what was done cannot be undone');
    else if (outcome.done !== stands.length || outcome.of !== facts.length) {
      broken.push(
        `${outcome.done} of ${outcome.of} said, ${stands.length} of ${facts.length} is true: ${outcome.name}`,
      );
    }
    const mine = new Set(stands.map(({ before: { root, key } }) => `${root}|${key}`));
    for (const { root, key } of this.written) {
      if (!mine.has(`${root}|${key}`)) broken.push(`undo took back another's ${root} ${key}`);
    }
    for (const { before } of stands) {
      if (!sameJson(live.stored(before.root, before.key), before[wanted]))
        broken.push(`not undone: ${before.root} ${before.key}`);
    }
    this.tally.undone += 1;
    if (stands.length < facts.length) this.tally.inPart += 1;
  }

  /** An act of the hang done in a proposal, or one about the proposal itself. */
  private inProposal(id: (typeof PROPOSALS)[number]): void {
    const { live, word } = this;
    const laid = this.laid.get(id) as ShowDocuments;
    if (this.random() < 0.6) {
      const { name, act } = this.ofHang(laid);
      this.perform({ name, act: { name, changes: proposals.layerOfProposal(live, id).changesFor(act.changes) } });
      return;
    }
    const moves = movesOf(live, id).map((move) => move.id);
    const chosen = new Set(this.some(moves.length > 0 ? moves : ['piece:none']));
    const outcome = { ...word, outcome: this.one(['declined', 'withdrawn'] as const), why: 'not now' };
    const ways: Record<string, () => Act> = {
      propose: () => proposals.propose({ title: `Title ${this.mm()}`, reason: '' }, word, id),
      describeProposal: () => proposals.describeProposal(id, { reason: this.text('Why') }),
      endProposal: () => proposals.endProposal(id, outcome),
      reopenProposal: () => proposals.reopenProposal(id),
      takeMoves: () => takeMoves(live, id, chosen, word),
      'takeMoves, whole': () => takeMoves(live, id, new Set(moves), word),
      leaveMoves: () => leaveMoves(live, id, chosen, this.random() < 0.7),
      settleClash: () => settleClash(live, id, this.one([...chosen]), this.one(['hang', 'proposal'] as const)),
    };
    this.drawn(ways);
  }

  private drawn(ways: Record<string, () => Act>): void {
    const [name, way] = this.one(Object.entries(ways));
    this.perform({ name: name.split(',')[0] as string, act: way() });
  }

  /** An act on the hang, live or laid over. */
  private ofHang(documents: ShowDocuments): { readonly name: string; readonly act: Act } {
    const judgements = documents === this.live ? this.judgements : new Judgements(documents, { get: () => undefined });
    const pieces = this.some(PIECES);
    const vignette = this.one(VIGNETTES);
    const surface = this.one(SURFACES);
    const state = this.kept.at(Math.floor(this.random() * this.kept.length));
    const by = this.one(['tops', 'centres', 'feet', 'lefts', 'middles', 'rights'] as const);
    const ways: Record<string, () => Act> = {
      place: () => this.placing(documents),
      'place, again': () => this.placing(documents),
      move: () => commands.move(documents, pieces, { dxMm: 10, dyMm: -20, turnCentidegrees: this.one([0, 9000]) }),
      unplace: () => commands.unplace(documents, pieces),
      repaint: () => commands.repaint(surface, this.maybe(this.one(PAINTS))),
      gather: () => {
        const focal = this.maybe(this.one(pieces));
        return commands.gather(documents, { name: `Vignette ${this.mm()}`, intent: '', focal }, pieces, vignette);
      },
      takeArrangement: () => this.arranging(judgements),
      describe: () =>
        commands.describe(vignette, this.random() < 0.5 ? { name: this.text('Name') } : { focal: this.one(PIECES) }),
      join: () => commands.join(vignette, pieces),
      leave: () => commands.leave(documents, pieces),
      pin: () => commands.pin(pieces, this.random() < 0.6),
      ungroup: () => commands.ungroup(documents, vignette),
      'remove, a vignette': () => commands.remove('vignettes', vignette, 'a vignette'),
      lineUp: () => lineUp(judgements, surface, pieces, by),
      spaceOut: () => spaceOut(judgements, surface, pieces, this.one(['across', 'up'] as const)),
      restoreVignette: () =>
        state === undefined ? commands.repaint(surface, null) : restoreVignette(documents, state, vignette),
    };
    if (state !== undefined && this.random() < 0.02)
      return { name: 'restoreState', act: restoreState(documents, state, 'kept') };
    const [name, way] = this.one(Object.entries(ways));
    return { name: name.split(',')[0] as string, act: way() };
  }

  /** An act on the show as it is. */
  private ofShow(): { readonly name: string; readonly act: Act } {
    if (this.random() < 0.6) return this.ofHang(this.live);
    const { live, word } = this;
    const object = this.one(OBJECTS);
    const piece = this.one(PIECES);
    const room = this.one(ROOMS);
    const remark = this.one(REMARKS);
    const sample = this.one(SAMPLES);
    const first = this.one([...live.all('remarks').keys(), '']);
    const fixture = {
      kind: 'socket',
      surface: 'dye:head',
      xMm: this.mm(),
      yMm: 300,
      widthMm: 80,
      heightMm: 80,
      clearMm: 0,
    };
    const opening = { kind: 'doorway', name: 'door', widthMm: 1200, heightMm: 2200, sillMm: 0 } as const;
    const about: RemarkAbout = this.one([
      { kind: 'piece', pieceId: piece },
      { kind: 'vignette', vignetteId: 'v1' },
      { kind: 'proposal', proposalId: 'p1' },
    ] as const);
    const asked = { personId: 'person 0', name: 'Person 0', byDay: '2026-05-20' };
    const table = this.one([
      ['rooms', room],
      ['openings', 'door'],
      ['fixtures', 'socket'],
      ['objects', object],
      ['pieces', piece],
      ['deck', this.one(PAINTS)],
      ['remarks', remark],
      ['proposals', this.one(PROPOSALS)],
      ['values', object],
      ['loans', object],
    ] as const);
    const ways: Record<string, () => Act> = {
      addRoom: () => commands.addRoom({ ...ROOM, order: Math.ceil(this.random() * 3) }, room),
      correctRoom: () => commands.correctRoom(room, { heightMm: 3000 + this.mm() }),
      addOpening: () => commands.addOpening({ ...opening, sides: [{ surface: 'dye:left', xMm: this.mm() }] }, 'door'),
      correctOpening: () => commands.correctOpening('door', { widthMm: 900 + this.mm() }),
      addFixture: () => commands.addFixture(fixture, 'socket'),
      correctFixture: () => commands.correctFixture('socket', { yMm: this.mm() }),
      remove: () => commands.remove(table[0], table[1], 'it'),
      addObjects: () =>
        commands.addObjects(live, [
          {
            id: object,
            object: record(object, { medium: `${this.mm()}` }),
            private: { value: '9' },
            pictures: ['a', null, 'b'],
          },
        ]),
      correctObject: () =>
        commands.correctObject(object, this.random() < 0.5 ? { title: `T ${this.mm()}` } : { weightKg: 7 }),
      correctPiece: () => commands.correctPiece(piece, { picture: this.maybe('c') }),
      correctPrivate: () => commands.correctPrivate(object, { storage: `rack ${this.mm()}` }),
      addPaint: () => commands.addPaint(live, { name: 'p', lab: { L: this.mm() / 50, a: 0, b: 0 } }, this.one(PAINTS)),
      addPaints: () =>
        commands.addPaints(live, [
          { id: this.one(PAINTS), paint: { name: this.text('Paint'), lab: { L: 40, a: 0, b: 0 } } },
          { paint: { name: 'another', lab: { L: 60, a: 0, b: 0 } } },
        ]),
      cutPicture: () => commands.cutPicture(this.one(['one', 'two']), this.one([...PICTURE_CUTS, null])),
      correctPaint: () => commands.correctPaint(this.one(PAINTS), { name: this.text('Paint') }),
      askForSample: () => samples.askForSample(this.one(PAINTS), { kind: 'drawdown', to: asked }, sample),
      sendSample: () => samples.sendSample(sample, this.one(['', '2026-05-12', '2026-05-13'])),
      dropSample: () => samples.dropSample(sample),
      sayOfSample: () =>
        samples.sayOfSample(
          sample,
          this.one([{ said: 'seen', under: 'daylight' }, { said: 'approved' }] as const),
          word,
        ),
      declineSuggestion: () =>
        suggestions.declineSuggestion(live, suggestions.suggestionKey('echo', ['o1', this.one(OBJECTS)]), word),
      offerSuggestions: () =>
        suggestions.offerSuggestions([suggestions.suggestionKey('echo', ['o1', this.one(OBJECTS)])]),
      takeApprovalBack: () => samples.takeApprovalBack(sample, word.by),
      correctLoan: () =>
        correctLoan(object, this.random() < 0.5 ? { mostLux: this.mm() } : { status: this.one(LOAN_STATUSES) }),
      agreeToPlaces: () => agreeToPlaces(this.judgements, object),
      planLight: () => planLight(live, this.random() < 0.5 ? piece : this.one(SURFACES), this.maybe(this.mm())),
      readLight: () =>
        readLight(live, this.one(SURFACES), this.maybe({ lux: this.mm(), by: 'Person 0', on: '2026-05-12' })),
      finishSurface: () =>
        finishSurface(this.one(SURFACES), this.random() < 0.5 ? { lastCoat: '2026-05-12' } : { covering: null }),
      setLimit: () => setLimit('luxR2', this.maybe({ value: this.mm() + 1, source: this.text('our conservator') })),
      sayOfCollection: () =>
        collection.sayOfCollection(this.one(['OM 1.1', 'om 1-1']), this.maybe(this.one(COLLECTION_SAID)), word),
      takeFromCollection: () => collection.takeFromCollection(live, [COLLECTED, { ...COLLECTED, number: 'OM 2' }]),
      labelOn: () => commands.labelOn(this.some(PIECES), this.one(['left', 'below', 'none', null] as const)),
      declineArrangement: () =>
        declining.declineArrangement(this.one(GROUNDS), { digest: this.one(['way 1', 'way 2']), name: 'line' }, word),
      offerAgain: () => declining.offerAgain(live, this.one(GROUNDS)),
      setSetting: () =>
        this.random() < 0.5
          ? commands.setSetting('toleranceMm', this.mm())
          : commands.setSetting('labelsOnWalls', this.random() < 0.7),
      remark: () => remarks.remark({ about, text: `Text ${this.mm()}`, asked: this.maybe(asked) }, word, remark),
      answer: () =>
        first === '' ? remarks.ask(remark, asked) : remarks.answer(live, first, 'Yes.', word, `a${this.mm() % 4}`),
      settleRemark: () => remarks.settleRemark(remark, this.maybe(word)),
      ask: () => remarks.ask(remark, this.maybe(asked)),
      takeBack: () => remarks.takeBack(remark),
      markRead: () => remarks.markRead(word.by, remark, word.at),
    };
    const [name, way] = this.one(Object.entries(ways));
    return { name, act: way() };
  }
}

function textOf(value: Json | undefined): string {
  return value === undefined ? 'none' : JSON.stringify(value);
}
