/**
 * A day without a connection: three people work on by themselves while two others stay, and return one after the other to
 * a real server. All end alike; and each is told, on return, exactly the facts that they and somebody else changed.
 */
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments, sameJson } from '@enfilade/shared/documents';
import { isArranged } from '@enfilade/shared/hang-layer';
import { type Json, type Place, ROOTS, type RootName } from '@enfilade/shared/schema';
import type { DocumentName, Role } from '@enfilade/shared/seats';
import { expect, test } from 'vitest';
import type { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { type BothSides, bothSidesOf, NOTICED_LATE_MS } from '../../client/src/offline/clashes.ts';
import { deedsSince } from '../../client/src/offline/deeds-since.ts';
import { type KeptWork, NO_WORK, withWritten } from '../../client/src/offline/kept-work.ts';
import { type Scene, scene, synced, type TakenSeat, whenDoc } from '../server/scene.ts';
import { seeded } from '../shared/replicas.ts';
import { work } from '../shared/sample-show.ts';

const OBJECTS = 400;
/** Acts of each person while they are away; of those who stayed, in all. */
const AWAY_ACTS = 320;
const STAYED_ACTS = 240;
/** Of what each does, the share that is on works of their own wall. */
const OWN_SHARE = 0.7;

/** One word that took effect on the server, as its document itself told it. */
interface Effect {
  readonly root: RootName;
  readonly key: string;
  readonly to: Json | undefined;
  readonly personId: string;
}

class Colleague {
  readonly seat: TakenSeat;
  readonly documents: ShowDocuments;
  readonly provider: WebsocketProvider;
  readonly hang: Y.Doc;
  work: KeptWork = NO_WORK;
  /** Set while away. */
  since: string | null = null;
  private readonly first: number;
  private readonly random: () => number;

  constructor(here: Scene, seat: TakenSeat, checklist: Uint8Array, first: number, random: () => number) {
    this.seat = seat;
    this.first = first;
    this.random = random;
    const docs = new Map<DocumentName, Y.Doc>([
      ['checklist', new Y.Doc()],
      ['hang', new Y.Doc()],
    ]);
    Y.applyUpdate(docs.get('checklist') as Y.Doc, checklist);
    this.hang = docs.get('hang') as Y.Doc;
    this.documents = new ShowDocuments(docs);
    this.provider = here.stock(seat, 'hang', this.hang);
    this.documents.onWrite((written) => {
      if (this.since !== null) this.work = withWritten(this.work, written, this.since);
    });
  }

  /** One act on the hang, by lot: mostly on the works of one's own wall. */
  act(): void {
    const { documents, random } = this;
    const one = (): string => {
      const n = random() < OWN_SHARE ? this.first + Math.floor(random() * 160) : Math.floor(random() * OBJECTS);
      return `o${n}#1`;
    };
    const vignette = `v${Math.floor(random() * 12)}`;
    const pieces = [one(), one()];
    const spot = (): Place => ['dye:head', Math.floor(random() * 40) * 10, 1500, 0, 0];
    const ways = [
      () => commands.place(documents, new Map([[one(), spot()]])),
      () => commands.place(documents, new Map([[one(), spot()]])),
      () => commands.move(documents, pieces, { dxMm: 10, dyMm: 0 }),
      // There and back: written, and the same as before.
      () => commands.move(documents, pieces.slice(0, 1), { dxMm: random() < 0.5 ? 10 : -10, dyMm: 0 }),
      () => commands.unplace(documents, [one()]),
      () =>
        commands.repaint(`dye:${Math.floor(random() * 6)}`, random() < 0.3 ? null : `paint${Math.floor(random() * 3)}`),
      () => commands.join(vignette, pieces),
      () => commands.leave(documents, pieces),
      () => commands.describe(vignette, { intent: `${Math.floor(random() * 4)}` }),
      () => commands.gather(documents, { name: vignette, intent: '', focal: null }, pieces, vignette),
    ];
    const way = ways[Math.floor(random() * ways.length)];
    if (way !== undefined) documents.write(way().changes, 'me');
  }

  leave(): void {
    this.since = new Date().toISOString();
    this.provider.disconnect();
  }
}

/** The same as plain data, root by root. */
const plain = (doc: Y.Doc): unknown =>
  ['places', 'memberOf', 'paints', 'vignettes', 'pinned'].map((root) => doc.getMap(root).toJSON());

test('law: a day apart, hundreds of acts each: all end alike, and each is told exactly what two people changed', async () => {
  const here = await scene();
  const { sessions } = here.server;
  await sessions.get('checklist').act((doc) => {
    for (let n = 0; n < OBJECTS; n++) doc.getMap('objects').set(`o${n}`, work(`${n}`));
  });
  const checklist = Y.encodeStateAsUpdate(sessions.get('checklist').doc);
  const server = sessions.get('hang').doc;
  const log: Effect[] = [];
  for (const root of (Object.keys(ROOTS) as RootName[]).filter(isArranged)) {
    server.getMap<Json>(root).observe((event, { origin }) => {
      const personId = (origin as { person?: { id: string } } | null)?.person?.id ?? '';
      for (const key of event.changes.keys.keys()) log.push({ root, key, to: event.target.get(key), personId });
    });
  }
  const random = seeded(20261125);
  const people: Colleague[] = [];
  const roles: readonly Role[] = ['curator', 'preparator', 'guest artist', 'lead', 'lead'];
  for (const [n, role] of roles.entries()) {
    const seat = await here.seat(role, `person ${n}`);
    people.push(new Colleague(here, seat, checklist, Math.min(n, 3) * 80, random));
  }
  await Promise.all(people.map(({ provider }) => synced(provider)));
  const alike = async (some: readonly Colleague[]): Promise<void> => {
    for (const { hang } of some) {
      const same = (): boolean => Y.equalSnapshots(Y.snapshot(hang), Y.snapshot(server));
      while (!same()) await Promise.race([server, hang].map((doc) => whenDoc(doc, same)));
    }
  };
  const away = people.slice(0, 3);
  const staying = people.slice(3);
  let told = 0;
  let toldFew = 0;

  for (let day = 0; day < 3; day++) {
    // Together first, so that everybody knows the same.
    for (let n = 0; n < 60; n++) people[n % people.length]?.act();
    await alike(people);
    const known = new Map(away.map(({ hang }) => [hang, plain(hang)]));
    const from = log.length;
    const before = new Map(away.map((one) => [one, new ShowDocuments(new Map([['hang', copyOf(one.hang)]]))]));
    for (const one of away) one.leave();
    for (const { hang } of away) expect(plain(hang)).toEqual(known.get(hang));
    for (let n = 0; n < AWAY_ACTS * away.length; n++) away[n % away.length]?.act();
    for (let n = 0; n < STAYED_ACTS; n++) {
      staying[n % 2]?.act();
      // Two nudge one work in turn, each several times within a minute.
      if (n % 40 === 0) {
        for (let turn = 0; turn < 5; turn++) {
          const { documents } = staying[turn % 2] as Colleague;
          documents.write(
            commands.place(documents, new Map([[`o${n / 40}#1`, ['layout', n, turn, 0, 0]]])).changes,
            'me',
          );
          await alike(staying);
        }
      }
    }
    await alike(staying);
    for (const one of [...away].sort(() => random() - 0.5)) {
      const mineAt = new Map(
        one.work.facts.map(({ root, key }) => [`${root}|${key}`, one.documents.stored(root, key)]),
      );
      const mine = one.work.facts;
      const others = log.slice(from).filter(({ personId }) => personId !== one.seat.personId);
      one.provider.connect();
      await synced(one.provider);
      await alike([one]);
      const found = await bothSides(here, one);
      // By brute force, from what the server's document itself told: my fact, and the last word of another on it since.
      const wanted: string[] = [];
      const had = before.get(one) as ShowDocuments;
      for (const { root, key } of mine) {
        const theirs = others.filter((effect) => effect.root === root && effect.key === key).at(-1);
        if (theirs === undefined || sameJson(theirs.to, had.stored(root, key))) continue;
        if (sameJson(theirs.to, mineAt.get(`${root}|${key}`))) continue;
        wanted.push(
          lineOf({ root, key, from: had.stored(root, key), mine: mineAt.get(`${root}|${key}`), theirs: theirs.to }),
        );
      }
      expect(found.map(lineOf).sort()).toEqual(wanted.sort());
      told += wanted.length;
      toldFew += wanted.length < mine.length / 2 ? 1 : 0;
      one.since = null;
      one.work = NO_WORK;
    }
    await alike(people);
    for (const { hang } of people) expect(plain(hang)).toEqual(plain(server));
  }
  // The law says nothing unless much was told, and much was not.
  expect(told).toBeGreaterThan(200);
  expect(toldFew).toBeGreaterThan(3);
}, 60_000);

function copyOf(doc: Y.Doc): Y.Doc {
  const copy = new Y.Doc();
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc));
  return copy;
}

/** As a returning page asks. */
async function bothSides(here: Scene, { seat, work, since }: Colleague): Promise<readonly BothSides[]> {
  if (since === null) return [];
  const get = async (query: string): Promise<unknown> => (await here.get(seat, `history?${query}`)).json();
  const deeds = await deedsSince(get as never, Date.parse(since) - NOTICED_LATE_MS);
  return bothSidesOf(work.facts, deeds, seat.personId, since);
}

function lineOf(one: { root: string; key: string; from?: unknown; mine?: unknown; theirs?: unknown }): string {
  const text = (value: unknown): string => (value === undefined ? 'gone' : JSON.stringify(value));
  return `${one.root} ${one.key}: was ${text(one.from)}, mine ${text(one.mine)}, theirs ${text(one.theirs)}`;
}
