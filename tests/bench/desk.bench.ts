import type { LabD65 } from '@enfilade/colour/lab';
import { rankPaints } from '@enfilade/colour/rank-paints';
import { labD65FromSrgb } from '@enfilade/colour/spaces';
import { type DeskWork, deskCellOf, deskWorksOf } from '@enfilade/shared/colour-desk';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import { lampLightOf } from '@enfilade/shared/lamps';
import { wishedWorksOf } from '@enfilade/shared/paint-wishes';
import type { ImageFacts } from '@enfilade/shared/protocol';
import type { Place } from '@enfilade/shared/schema';
import { judgementsUnder } from '@enfilade/shared/under-lamps';
import { differenceCiede2000 } from 'culori';
import { randomOf } from '../colour/samples.ts';

export const name =
  'colour desk: 12 walls × 400 works of 8 colours and 3 at the edge, and a deck of 1,000 ranked for them, beside culori (lab65) on the bare differences';

const WALLS = 12;
const WORKS = 400;
const DECK = 1000;
// The peer takes a part of the deck, and its time is counted so many times.
const PEER_PART = 20;
const ROUNDS = 5;

const culori = differenceCiede2000();
const lab65 = ({ L, a, b }: LabD65) => ({ mode: 'lab65' as const, l: L, a, b });
const random = randomOf(4343);
const colour = (): LabD65 => labD65FromSrgb(random() * 255, random() * 255, random() * 255);

/** 400 hung works with a picture each. */
function show(): { documents: ShowDocuments; pictures: Map<string, ImageFacts> } {
  const documents = new ShowDocuments();
  const pictures = new Map<string, ImageFacts>();
  const places = new Map<string, Place>();
  const swatches = (count: number) => Array.from({ length: count }, () => ({ lab: colour(), share: 1 / count }));
  const records = Array.from({ length: WORKS }, (_, i) => {
    const picture = `picture ${i}`;
    const size = { widthPx: 90, heightPx: 60, opaqueShare: 1, engine: 'bench', cell: { page: 0, index: 0 } };
    pictures.set(picture, { sha256: picture, ...size, body: swatches(8), edge: swatches(3) });
    places.set(`work${i}#1`, [`room${i % 3}:head`, 100 + i * 10, 1500, 0, 0]);
    const base = { number: `${i}`, title: `Work ${i}`, count: 1, lender: '', source: 'collection' as const, picture };
    return { id: `work${i}`, object: { ...base, dimensionsText: '60 × 90 cm' } };
  });
  const write = (act: { readonly changes: Parameters<ShowDocuments['write']>[0] }) =>
    documents.write(act.changes, null);
  const room = { widthMm: 8000, depthMm: 6000, heightMm: 3600, headFaces: 'east' as const, laserMm: 1000 };
  for (let n = 0; n < 3; n++) {
    write(commands.addRoom({ ...room, name: `Room ${n}`, order: n, cornersMm: [0, 0, 0, 0] }, `room${n}`));
  }
  write(commands.addObjects(documents, records));
  write(commands.place(documents, places));
  return { documents, pictures };
}

function cpuOf(job: () => unknown): number {
  const before = process.cpuUsage();
  job();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Median CPU, ms, of each job, in turns, after one round to warm up. */
function mediansOf<K extends string>(jobs: Readonly<Record<K, () => unknown>>): Record<K, number> {
  const times = Object.fromEntries(Object.keys(jobs).map((key) => [key, [] as number[]])) as Record<K, number[]>;
  for (let round = 0; round <= ROUNDS; round++) {
    for (const key of Object.keys(jobs) as K[]) {
      const ms = cpuOf(jobs[key]);
      if (round > 0) times[key].push(ms);
    }
  }
  const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
  return Object.fromEntries((Object.keys(times) as K[]).map((key) => [key, median(times[key])])) as Record<K, number>;
}

export async function run() {
  const { documents, pictures } = show();
  const judgements = new Judgements(documents, pictures);
  const works = deskWorksOf(judgements, 'hung');
  const theirs = [...pictures.values()].map(({ body, edge }) => [...body, ...edge].map(({ lab }) => lab65(lab)));
  const bare = (paint: LabD65): number => {
    const one = lab65(paint);
    let sum = 0;
    for (const swatches of theirs) for (const swatch of swatches) sum += culori(one, swatch);
    return sum;
  };
  const across = (on: Judgements, paint: LabD65): number => {
    return works.reduce((sum, work: DeskWork) => sum + (deskCellOf(on, work, paint)?.reading.body.deltaE ?? 0), 0);
  };
  const { wished } = wishedWorksOf(
    judgements,
    works.map((work, i) => ({ work, wish: i % 5 === 0 ? 'keep quiet' : 'let carry' })),
  );
  const deck = Array.from({ length: DECK }, () => ({ lab: colour() }));
  const part = deck.slice(0, DECK / PEER_PART);
  const light = lampLightOf('gallery 3000 K');
  // The first time, each colour's likely reflectance is found; a browser does it a few at a time.
  const firstMs = cpuOf(() => across(judgementsUnder(documents, pictures, light), colour()));
  // A fresh paint every time, or the answers would be remembered.
  const ms = mediansOf({
    one: () => across(judgements, colour()),
    onePeer: () => bare(colour()),
    table: () => Array.from({ length: WALLS }, () => across(judgements, colour())),
    tablePeer: () => Array.from({ length: WALLS }, () => bare(colour())),
    again: () => Array.from({ length: WALLS }, () => bare(colour())),
    rank: () => rankPaints(deck, wished, { most: 12, thresholds: judgements.readingThresholds() }),
    rankPeer: () => part.map(({ lab }) => bare(lab)),
    under: () => across(judgementsUnder(documents, pictures, light), colour()),
  });
  const row = (what: string, ours: number, peer: number, gate?: string) => ({
    row: what,
    ours,
    peer,
    ratio: peer / ours,
    unit: 'ms CPU',
    ...(gate ? { gate } : {}),
  });
  return [
    row('one paint tried across 400 works, with words and reasons', ms.one, ms.onePeer),
    row('the whole table, 12 walls', ms.table, ms.tablePeer),
    row('1,000 paints ranked for 400 works, the best 12 with reasons', ms.rank, ms.rankPeer * PEER_PART),
    row('one paint across 400 works under tungsten, colours known', ms.under, ms.onePeer),
    row('the same the first time, 4,400 likely reflectances found', firstMs, ms.onePeer),
    row('null test: the peer against itself', ms.again, ms.tablePeer, '1'),
  ];
}
