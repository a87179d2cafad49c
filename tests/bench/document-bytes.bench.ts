/**
 * What a drop costs the hang's document after collection, against streaming the whole drag into it. A drop leaves behind
 * the one it replaces: nothing where the same piece is moved again by the same hand, a few bytes where it is another's
 * turn. So it is told for each way people work, with the short client id that the server gives to every page, and with
 * the random one that a page opened without a connection draws.
 */
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import type { Place } from '@enfilade/shared/schema';
import * as Y from 'yjs';

export const name = 'document-bytes';

const PIECES = 500;
const DROPS = 20_000;
const PEOPLE = 4;
const STEPS_A_DRAG = 30;
/** As the five hundredth page of a show. */
const SHORT_ID = 500;
const RANDOM_ID = 3_402_795_229;

function startingHang(clientId: number): ShowDocuments {
  const documents = new ShowDocuments();
  (documents.doc('hang') as Y.Doc).clientID = clientId;
  const places = new Map<string, Place>();
  for (let n = 0; n < PIECES; n++) places.set(`object${n}#1`, ['dye:head', n * 10, 1500, 0, 0]);
  documents.write(commands.place(documents, places).changes, 'bench');
  return documents;
}

function bytesOf(doc: Y.Doc): number {
  return Y.encodeStateAsUpdate(doc).length;
}

/** Numbers that are the same in every run. */
function seeded(): () => number {
  let state = 4711;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Which piece each drop moves. */
const WAYS = {
  /** In turn round all pieces, the worst there is: each drop on another one, nothing can be joined. */
  'each drop on the next piece': (n: number): number => n % PIECES,
  /** By lot. */
  'each drop on any piece': (_n: number, random: () => number): number => Math.floor(random() * PIECES),
  /** A piece is set down and then corrected five times by whoever set it down. */
  'each piece set down and corrected': (n: number): number =>
    (Math.floor(n / (6 * PEOPLE)) * PEOPLE + (n % PEOPLE)) % PIECES,
} as const;

/** Drops as the house writes them, one key, once, on release; by four people in turn, each on a page of their own. */
function dropped(way: keyof typeof WAYS, firstId: number): number {
  const first = startingHang(firstId);
  const pages = [first];
  for (let n = 1; n < PEOPLE; n++) {
    const page = new ShowDocuments();
    const doc = page.doc('hang') as Y.Doc;
    doc.clientID = firstId + n;
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(first.doc('hang') as Y.Doc));
    pages.push(page);
  }
  const docs = pages.map((page) => page.doc('hang') as Y.Doc);
  for (const doc of docs) {
    doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin === 'heard') return;
      for (const other of docs) if (other !== doc) Y.applyUpdate(other, update, 'heard');
    });
  }
  const random = seeded();
  const before = bytesOf(docs[0] as Y.Doc);
  for (let n = 0; n < DROPS; n++) {
    const page = pages[n % PEOPLE] as ShowDocuments;
    const place: Place = ['dye:head', Math.floor(random() * 6000), 800 + Math.floor(random() * 2000), 0, 0];
    const piece = `object${WAYS[way](n, random)}#1`;
    page.write(commands.place(page, new Map([[piece, place]])).changes, 'bench');
  }
  return (bytesOf(docs[0] as Y.Doc) - before) / DROPS;
}

/** The peer: the same drags streamed into the document, x and y as two keys a step. */
function streamed(drops: number): number {
  const doc = new Y.Doc();
  doc.clientID = RANDOM_ID;
  const map = doc.getMap<number>('places');
  for (let n = 0; n < PIECES; n++) {
    map.set(`object${n}#1/x`, n * 10);
    map.set(`object${n}#1/y`, 1500);
  }
  const before = Y.encodeStateAsUpdate(doc).length;
  for (let n = 0; n < drops; n++) {
    const id = `object${(n * 7) % PIECES}#1`;
    for (let step = 1; step <= STEPS_A_DRAG; step++) {
      map.set(`${id}/x`, ((n * 37) % 6000) - STEPS_A_DRAG + step);
      map.set(`${id}/y`, 800 + ((n * 53) % 2000) + step);
    }
  }
  return (Y.encodeStateAsUpdate(doc).length - before) / drops;
}

export async function run(): Promise<
  { row: string; ours: number; peer: number; ratio: number; unit: string; gate?: string }[]
> {
  const peer = streamed(DROPS / 10);
  const again = streamed(DROPS / 10);
  const row = (way: keyof typeof WAYS, id: 'short' | 'random', gate?: string) => {
    const ours = dropped(way, id === 'short' ? SHORT_ID : RANDOM_ID);
    const about = { row: `${way}, ${id} id`, ours, peer, ratio: peer / ours, unit: 'B' };
    return gate === undefined ? about : { ...about, gate };
  };
  return [
    row('each drop on the next piece', 'short', '≤ 6 B and ≥ 30'),
    row('each drop on any piece', 'short'),
    row('each piece set down and corrected', 'short'),
    row('each drop on the next piece', 'random'),
    row('each piece set down and corrected', 'random'),
    { row: 'null: streaming against itself', ours: again, peer, ratio: peer / again, unit: 'B', gate: 'about 1' },
  ];
}
