/**
 * What holds of a show that many hands change at once over a network that fails: every replica ends with the same plain
 * snapshot, and every invariant holds, as stored and as shown. Seeds are those of mulberry32; `LAW_SEEDS` asks for more.
 */
import * as arrangeActs from '@enfilade/shared/arrange-acts';
import * as commands from '@enfilade/shared/commands';
import * as declining from '@enfilade/shared/declined-arrangements';
import type { HangState } from '@enfilade/shared/hang-layer';
import { Judgements } from '@enfilade/shared/judgements';
import * as moves from '@enfilade/shared/proposal-moves';
import * as proposals from '@enfilade/shared/proposals';
import * as remarks from '@enfilade/shared/remarks';
import * as samples from '@enfilade/shared/samples';
import * as suggestions from '@enfilade/shared/suggestions';
import { describe, expect, test } from 'vitest';
import { seeded } from '../shared/replicas.ts';
import { beginning, Hand, Tally } from './everybody.ts';
import { FakeNetwork } from './fake-network.ts';
import { brokenIn, layersOf, shownIn, storedIn, toldIn } from './invariants.ts';

const SEEDS = Number(process.env.LAW_SEEDS ?? 50);
const ACTS = 140;

/** Readers beside the commands: they make no act. */
const READERS = new Set([
  ...['membersOf', 'focalOf', 'vignetteOf'],
  ...['takenDown', 'declinedOn'],
  ...['movesOf', 'placesOfMove', 'withWhatTheyNeed'],
  ...['proposedKey', 'proposedKeyParts', 'wordOf', 'proposedFactsOf', 'layerOfProposal'],
  ...['suggestionKey', 'poolKeyOf', 'declinedSuggestions'],
  ...['samplesByPaint', 'surfacesByPaint', 'samplesToPost', 'paintsInOrder'],
  ...['threadsOf', 'isUnread', 'sameAbout', 'aboutKey'],
]);

/** Commands in files that hold readers for the most part. */
const ELSEWHERE = [
  ...['lineUp', 'spaceOut', 'restoreState', 'restoreVignette'],
  ...['correctLoan', 'agreeToPlaces', 'planLight', 'readLight', 'setLimit', 'finishSurface'],
];

interface Ended {
  readonly broken: string[];
  readonly stored: Record<string, unknown>[];
  readonly shown: Record<string, string>[];
  readonly laid: Record<string, string>[];
  readonly told: Record<string, string>[];
  readonly happened: FakeNetwork['happened'];
}

/** Three to eight people, a hundred and forty acts, and everything that can go wrong between them. */
function run(seed: number, tally: Tally): Ended {
  const random = seeded(seed);
  const count = 3 + (seed % 6);
  const network = new FakeNetwork({ count, seed: seed * 7919, shape: seed % 2 === 0 ? 'mesh' : 'star' });
  beginning(network.documents(0));
  network.heal();
  for (let n = 0; n < count; n++) network.save(n);
  const kept: HangState[] = [];
  const broken: string[] = [];
  const handOf = (n: number): Hand =>
    new Hand(network.documents(n), n, random, kept, tally, (origin) => network.isHeard(origin));
  const hands = Array.from({ length: count }, (_, n) => handOf(n));
  const check = (n: number, when: string): void => {
    const { judgements, live, laid, broken: undone } = hands[n] as Hand;
    // What is kept of a judgement is what would be judged anew.
    const anew = toldIn(new Judgements(live, { get: () => undefined }));
    for (const [what, told] of Object.entries(toldIn(judgements))) {
      if (told !== anew[what]) broken.push(`${when}: ${what} is told from what it was`);
    }
    broken.push(
      ...[...brokenIn(judgements), ...layersOf(live, laid).broken, ...undone.splice(0)].map((b) => `${when}: ${b}`),
    );
  };
  for (let step = 0; step < ACTS; step++) {
    const n = Math.floor(random() * count);
    (hands[n] as Hand).work();
    const lot = random();
    if (lot < 0.03) network.part();
    else if (lot < 0.06) network.breakOne();
    else if (lot < 0.3) network.joinOne();
    else if (lot < 0.4) network.save(n);
    else if (lot < 0.425) {
      // A page whose device keeps every act returns with all of it; the others with what they last wrote down.
      if (n % 2 === 1) network.save(n);
      network.crash(n);
      hands[n] = handOf(n);
    }
    for (let letters = Math.floor(random() * 2 * count); letters > 0; letters--) network.deliverOne(0.03);
    if (step % 20 === 19) check(n, `seed ${seed}, act ${step}, replica ${n}`);
  }
  network.heal();
  for (let n = 0; n < count; n++) check(n, `seed ${seed}, healed, replica ${n}`);
  return {
    broken,
    stored: hands.map(({ live }) => storedIn(live)),
    shown: hands.map(({ live }) => shownIn(live)),
    laid: hands.map(({ live, laid }) => layersOf(live, laid).shown),
    told: hands.map(({ judgements }) => toldIn(judgements)),
    happened: network.happened,
  };
}

describe('many hands at once', () => {
  test(
    'law: over a network that delays, drops, reorders, parts and crashes, all end alike and every invariant holds',
    () => {
      const tally = new Tally();
      const happened: Record<string, number> = {};
      for (let seed = 1; seed <= SEEDS; seed++) {
        const ended = run(seed, tally);
        expect(ended.broken).toEqual([]);
        for (const [n, stored] of ended.stored.entries()) {
          expect(stored, `seed ${seed}, replica ${n}`).toEqual(ended.stored[0]);
          expect(ended.shown[n], `seed ${seed}, replica ${n}`).toEqual(ended.shown[0]);
          expect(ended.told[n], `seed ${seed}, replica ${n}`).toEqual(ended.told[0]);
          expect(ended.laid[n], `seed ${seed}, replica ${n}`).toEqual(ended.laid[0]);
        }
        for (const [what, times] of Object.entries(ended.happened)) happened[what] = (happened[what] ?? 0) + times;
      }
      // The law says nothing unless everything has happened, and every command was performed.
      for (const [what, times] of Object.entries(happened)) expect([what, times > SEEDS / 4]).toEqual([what, true]);
      const all = [arrangeActs, commands, declining, moves, proposals, remarks, samples, suggestions].flatMap(
        (module) => Object.entries(module).flatMap(([name, value]) => (typeof value === 'function' ? [name] : [])),
      );
      const wanted = [...all, ...ELSEWHERE].filter((name) => !READERS.has(name));
      expect(wanted.filter((name) => !tally.acts.has(name))).toEqual([]);
      expect(tally.undone).toBeGreaterThan(SEEDS);
      expect(tally.inPart).toBeGreaterThan(SEEDS / 4);
    },
    30_000 + SEEDS * 2_000,
  );
});
