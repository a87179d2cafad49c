/**
 * Rows B3.1 and B3.2 of crdt-benchmarks (many clients at once set one key of one map: a number, a plain object), as they
 * are written there (github.com/dmonad/crdt-benchmarks, js-lib/b3.js), and our own drop done the same way: everybody sets
 * the place of one piece at once. The published figures for Yjs (its README, N = 6,000, √N = 77 clients) stand as the
 * peer of the first rows; bytes there and here depend on the random client ids' lengths, which are nearly always five.
 */
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import type { Place } from '@enfilade/shared/schema';
import * as Y from 'yjs';

export const name = 'crdt-benchmarks B3.1 and B3.2 beside a drop';

/** √N and 20√N for N = 6,000: of the published figures, and of the suite as it is today. */
const CLIENTS_PUBLISHED = 77;
const CLIENTS_TODAY = 1540;
/** Yjs in the published table, bytes. */
const PUBLISHED = {
  'B3.1': { updates: 1548, document: 1834 },
  'B3.2': { updates: 4518, document: 2025 },
} as const;

interface Measured {
  /** Bytes of all updates together. */
  readonly updates: number;
  /** Bytes of the document of one client that has taken all of them. */
  readonly document: number;
  /** CPU to take all of them, ms. */
  readonly takeMs: number;
}

/** Each client changes a document of its own; the second then takes every update in one transaction. */
function conflict(clients: number, change: (doc: Y.Doc, n: number) => void): Measured {
  const updates: Uint8Array[] = [];
  const docs = Array.from({ length: clients }, (_, n) => {
    const doc = new Y.Doc();
    // Five bytes as nearly all random ids, and the same in every run.
    doc.clientID = 2 ** 31 + ((n * 2_654_435_761) % 2 ** 31);
    doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin !== 'heard') updates.push(update);
    });
    change(doc, n);
    return doc;
  });
  const taking = docs[1] as Y.Doc;
  const before = process.cpuUsage();
  taking.transact(() => {
    for (const update of updates) Y.applyUpdate(taking, update, 'heard');
  }, 'heard');
  const { user, system } = process.cpuUsage(before);
  return {
    updates: updates.reduce((sum, { length }) => sum + length, 0),
    document: Y.encodeStateAsUpdate(taking).length,
    takeMs: (user + system) / 1000,
  };
}

const WAYS = {
  'B3.1': (doc: Y.Doc, n: number): void => void doc.getMap('map').set('v', n),
  'B3.2': (doc: Y.Doc, n: number): void => void doc.getMap('map').set('v', { name: n.toString(), address: 'here' }),
  drop: (doc: Y.Doc, n: number): void => {
    const documents = new ShowDocuments(new Map([['hang', doc]]));
    const place: Place = ['dye:head', 1000 + n, 1500, 0, 0];
    documents.write(commands.place(documents, new Map([['oil#1', place]])).changes, 'bench');
  },
} as const;

interface Row {
  readonly row: string;
  readonly ours: number;
  readonly peer: number;
  readonly ratio: number;
  readonly unit: string;
  readonly gate?: string;
}

function rowOf(row: string, ours: number, peer: number, unit: string): Row {
  return { row, ours, peer, ratio: peer / ours, unit };
}

export async function run(): Promise<Row[]> {
  const rows: Row[] = [];
  for (const way of ['B3.1', 'B3.2'] as const) {
    const here = conflict(CLIENTS_PUBLISHED, WAYS[way]);
    rows.push(rowOf(`${way}, 77 clients, updates; peer: as published`, here.updates, PUBLISHED[way].updates, 'B'));
    rows.push(rowOf(`${way}, 77 clients, document; peer: as published`, here.document, PUBLISHED[way].document, 'B'));
  }
  for (const way of Object.values(WAYS)) conflict(CLIENTS_TODAY, way);
  const number = conflict(CLIENTS_TODAY, WAYS['B3.1']);
  const object = conflict(CLIENTS_TODAY, WAYS['B3.2']);
  const drop = conflict(CLIENTS_TODAY, WAYS.drop);
  const again = conflict(CLIENTS_TODAY, WAYS.drop);
  const each = (bytes: number): number => bytes / CLIENTS_TODAY;
  for (const [peer, figures] of [
    ['B3.1', number],
    ['B3.2', object],
  ] as const) {
    rows.push(rowOf(`1,540 drop one piece, an update; peer: ${peer}`, each(drop.updates), each(figures.updates), 'B'));
    rows.push(rowOf(`… what each leaves; peer: ${peer}`, each(drop.document), each(figures.document), 'B'));
    rows.push(rowOf(`… taking all of them; peer: ${peer}`, drop.takeMs, figures.takeMs, 'ms CPU'));
  }
  rows.push({ ...rowOf('null: a drop against itself', drop.document, again.document, 'B'), gate: '1' });
  return rows;
}
