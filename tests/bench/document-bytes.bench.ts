/** What a drop costs the hang's document after collection, against streaming the whole drag into it. */
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import type { Place } from '@enfilade/shared/schema';
import * as Y from 'yjs';

export const name = 'document-bytes';

const PIECES = 400;
const DROPS = 20_000;
const STEPS_A_DRAG = 30;

function startingHang(): ShowDocuments {
  const documents = new ShowDocuments();
  const places = new Map<string, Place>();
  for (let n = 0; n < PIECES; n++) places.set(`object${n}#1`, ['dye:head', n * 10, 1500, 0, 0]);
  documents.write(commands.place(documents, places).changes, 'bench');
  return documents;
}

function bytesOf(documents: ShowDocuments): number {
  return Y.encodeStateAsUpdate(documents.doc('hang') as Y.Doc).length;
}

/** Drops as the house writes them: one key, once, on release. */
function dropped(drops: number): number {
  const documents = startingHang();
  const before = bytesOf(documents);
  for (let n = 0; n < drops; n++) {
    const place: Place = ['dye:head', (n * 37) % 6000, 800 + ((n * 53) % 2000), 0, 0];
    documents.write(commands.place(documents, new Map([[`object${(n * 7) % PIECES}#1`, place]])).changes, 'bench');
  }
  return (bytesOf(documents) - before) / drops;
}

/** The peer: the same drags streamed into the document, x and y as two keys a step. */
function streamed(drops: number): number {
  const doc = new Y.Doc();
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
  const ours = dropped(DROPS);
  const peer = streamed(DROPS / 10);
  const again = streamed(DROPS / 10);
  return [
    { row: 'bytes a drop, V1 after collection', ours, peer, ratio: peer / ours, unit: 'B', gate: '≤ 6 B and ≥ 30' },
    { row: 'null: streaming against itself', ours: again, peer, ratio: peer / again, unit: 'B', gate: 'about 1' },
  ];
}
