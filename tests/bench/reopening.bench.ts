/** Opening a document of 100,000 edits: from its snapshot as the server keeps it, against its log applied one by one. */
import { docFrom } from '@enfilade/server/session';
import * as Y from 'yjs';

export const name = 'opening a document of 100,000 edits';

const EDITS = 100_000;

interface Way {
  readonly people: number;
  readonly pieces: number;
  /**
   * How often a piece is edited, on average, before the next is taken by lot: with 1 every edit is on another piece, and
   * Yjs can join none of what they leave.
   */
  readonly run: number;
  /** Of pieces taken, the share that is put back to the unplaced afterwards. */
  readonly putBack: number;
}

/** The log of a hang. Seeded. */
function logOfEdits({ people: count, pieces, run, putBack }: Way): Uint8Array[] {
  let state = 4711;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const log: Uint8Array[] = [];
  const people = Array.from({ length: count }, (_, index) => {
    const doc = new Y.Doc();
    doc.clientID = index + 1;
    return doc;
  });
  for (const doc of people) {
    doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin === 'heard') return;
      log.push(update);
      for (const other of people) if (other !== doc) Y.applyUpdate(other, update, 'heard');
    });
  }
  while (log.length < EDITS) {
    const places = (people[Math.floor(random() * people.length)] as Y.Doc).getMap('places');
    const key = `piece${Math.floor(random() * pieces)}#1`;
    const edits = run === 1 ? 1 : 1 + Math.floor(random() * (2 * run - 1));
    for (let n = 0; n < edits && log.length < EDITS; n++) {
      places.set(key, ['wheel:head', Math.floor(random() * 8400), Math.floor(random() * 3600), 0, 0]);
    }
    if (random() < putBack && log.length < EDITS) places.delete(key);
  }
  return log;
}

/** CPU, ms, of this process. */
function cpuOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] as number;
}

function medianCpuOf(times: number, work: () => void): number {
  return median(Array.from({ length: times }, () => cpuOf(work)));
}

interface Row {
  readonly row: string;
  readonly ours: number;
  readonly peer: number;
  readonly ratio: number;
  readonly gate?: string;
  readonly unit: string;
}

function rowsOf(way: Way, row: string, gate?: string): Row[] {
  const log = logOfEdits(way);
  const oneByOne = (): Y.Doc => {
    const doc = new Y.Doc();
    for (const update of log) Y.applyUpdate(doc, update);
    return doc;
  };
  const whole = oneByOne();
  const stored = { snapshot: { seq: log.length, bytes: Y.encodeStateAsUpdateV2(whole) }, updates: [] };
  if (!Y.equalSnapshots(Y.snapshot(docFrom(stored)), Y.snapshot(whole))) throw new Error('the snapshot differs');
  const again = medianCpuOf(5, oneByOne);
  const peer = medianCpuOf(5, oneByOne);
  const ours = medianCpuOf(9, () => docFrom(stored));
  const unit = 'ms CPU';
  return [
    { row, ours, peer, ratio: peer / ours, unit, ...(gate === undefined ? {} : { gate }) },
    { row: '  null: the peer against itself', ours: again, peer, ratio: peer / again, unit },
  ];
}

export async function run(): Promise<Row[]> {
  const nudged = { people: 4, pieces: 3000, run: 10, putBack: 0.05 };
  return [
    // The pattern the figure was found with: one person, 500 pieces, sixty edits to each that is taken up.
    ...rowsOf({ people: 1, pieces: 500, run: 60, putBack: 0 }, 'a piece at a time, sixty edits to each', '≥ 15'),
    ...rowsOf(nudged, 'four people at 3,000 pieces, about ten edits to each'),
    ...rowsOf({ ...nudged, run: 1 }, 'each edit on another piece, the worst there is'),
  ];
}
