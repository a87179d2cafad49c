/**
 * Builds the show Slow Water through the same commands a person uses: rooms, deck, records with their pictures, the
 * hang and its vignettes. Fresh documents, ids and client id fixed, so that the same code builds the same bytes.
 */
import type { Act } from '@enfilade/shared/acts';
import {
  addFixture,
  addObjects,
  addOpening,
  addPaint,
  addRoom,
  correctPiece,
  gather,
  place,
  type RecordIn,
  repaint,
  setSetting,
} from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { type MuseumObject, pieceIdOf } from '@enfilade/shared/schema';
import { DOCUMENT_NAMES, type DocumentName } from '@enfilade/shared/seats';
import * as Y from 'yjs';
import type { CollectionIn } from '../collection.ts';
import { CHECKLIST, type DemoRecord } from './checklist.ts';
import {
  COLLECTION_COUNT,
  COLLECTION_PX,
  collectionDrawings,
  collectionRecords,
  LARGE_COLLECTION_COUNT,
} from './collection.ts';
import { DECK, WALL_PAINTS } from './deck.ts';
import type { Pictured } from './drawing/picture.ts';
import { photographOf, pictureFileOf } from './files.ts';
import { startingHang } from './hang.ts';
import { furtherPlaces, furtherRecords, POOL_PX, picturePool } from './large.ts';
import { fillLoans } from './loans.ts';
import { fillProposal } from './proposal.ts';
import { FIXTURES, OPENINGS, ROOMS } from './rooms.ts';
import { fillSamples } from './samples.ts';

export interface DemoOptions {
  /** Keeps a picture's bytes (PNG) and answers the SHA-256 they are kept under. */
  readonly takePicture: (bytes: Uint8Array, name: string) => Promise<string>;
  /** The 3,000-record show. */
  readonly large?: boolean;
  /** Told now and then, in words. */
  readonly progress?: (line: string) => void;
  /** Given the collection's records once the pictures are kept; without it neither records nor pictures of it are made. */
  readonly takeCollection?: (records: readonly CollectionIn[]) => Promise<void>;
  /** How a picture is made; drawn and rendered unless given. */
  readonly draw?: (pictured: Pictured, longestPx?: number) => Promise<Uint8Array>;
}

/** Drawn and taken at once: one drawing while another is being reduced. */
const AT_ONCE = 3;
const CLIENT_ID = 2026;

interface Job {
  readonly key: string;
  readonly name: string;
  readonly pictured: Pictured;
  readonly longestPx?: number;
}

/**
 * The demo show's documents, filled. `values` go to the private document and to no other.
 * Rejects with what `takePicture` rejected with, when it cannot keep a picture.
 */
export async function buildDemoShow(options: DemoOptions): Promise<ShowDocuments> {
  const { large = false, progress = () => {} } = options;
  const documents = emptyShow();
  const perform = (act: Act) => documents.write(act.changes, 'demo');

  const further = large ? furtherRecords() : [];
  const { takeCollection } = options;
  const hashes = await takePictures([...jobsOf(large), ...(takeCollection ? collectionJobs() : [])], options);
  const pictureOf = (key: string): string => hashes.get(key) ?? '';
  await takeCollection?.(
    collectionRecords((key) => hashes.get(key) ?? null, large ? LARGE_COLLECTION_COUNT : COLLECTION_COUNT),
  );

  perform(setSetting('title', 'Slow Water'));
  perform(setSetting('museum', 'Overwick Museum'));
  // Those whose links are printed at the start, so that a vignette can come to be agreed.
  perform(setSetting('signers', ['curator', 'guest artist']));
  for (const [id, room] of Object.entries(ROOMS)) perform(addRoom(room, id));
  for (const [id, opening] of Object.entries(OPENINGS)) perform(addOpening(opening, id));
  for (const [id, fixture] of Object.entries(FIXTURES)) perform(addFixture(fixture, id));
  for (const [id, paint] of Object.entries(DECK)) perform(addPaint(documents, paint, id));
  for (const [surface, paintId] of WALL_PAINTS) perform(repaint(surface, paintId));

  const records: RecordIn[] = CHECKLIST.map((record) => ({
    id: record.id,
    object: objectFrom(record),
    private: record.private,
    pictures: Array.from({ length: record.count }, (_, i) => pictureOf(keyOf(record, i))),
  }));
  for (const record of further) {
    records.push({
      id: record.id,
      object: objectFrom(record),
      private: record.private,
      pictures: [pictureOf(`pool-${record.pool}`)],
    });
  }
  perform(addObjects(documents, records));
  // The registrar measured each block of the set; its record only says between what and what they are.
  for (const { id, pieces, type } of CHECKLIST) {
    if (type !== 'printing block') continue;
    for (const [i, { heightMm, widthMm, depthMm }] of (pieces ?? []).entries()) {
      perform(correctPiece(pieceIdOf(id, i + 1), { measured: { heightMm, widthMm, depthMm, estimated: false } }));
    }
  }

  const hang = startingHang();
  perform(place(documents, new Map([...hang.places, ...furtherPlaces(further)])));
  for (const { id, members, ...vignette } of hang.vignettes) perform(gather(documents, vignette, members, id));
  fillProposal(documents, perform);
  fillSamples(perform);
  fillLoans(perform);
  progress(`The show is set up: ${records.length} records, ${documents.all('places').size} things in their places.`);
  return documents;
}

function emptyShow(): ShowDocuments {
  return new ShowDocuments(
    new Map(
      DOCUMENT_NAMES.map((name) => {
        const doc = new Y.Doc();
        doc.clientID = CLIENT_ID;
        return [name, doc];
      }),
    ),
  );
}

function objectFrom(record: DemoRecord): MuseumObject {
  const { number, title, maker, dateText, medium, type, dimensionsText, framedText, weightKg } = record;
  const { count, lender, creditLine, source, hardwareText, levelsMm, notes, frame } = record;
  return {
    number,
    title,
    maker,
    dateText,
    medium,
    type,
    dimensionsText,
    ...(framedText === '' ? {} : { framedText }),
    weightKg,
    count,
    lender,
    creditLine,
    source,
    ...(hardwareText === '' ? {} : { hardwareText }),
    levelsMm,
    ...(frame === null ? {} : { frame }),
    ...(notes === '' ? {} : { notes }),
  };
}

/** Pieces that look alike share a picture. */
function keyOf(record: DemoRecord, index: number): string {
  return record.type === 'printing block' ? `${record.id}#${index + 1}` : record.id;
}

function jobsOf(large: boolean): readonly Job[] {
  const jobs: Job[] = CHECKLIST.flatMap((record) =>
    record.type === 'printing block'
      ? (record.pieces ?? []).map((pictured, i) => ({ key: keyOf(record, i), name: `block ${i + 1}.png`, pictured }))
      : [{ key: record.id, name: pictureFileOf(record.number), pictured: record }],
  );
  if (!large) return jobs;
  const pool = picturePool().map((pictured, k) => ({ key: `pool-${k}`, name: `pool ${k}.png`, pictured }));
  return [...jobs, ...pool.map((job) => ({ ...job, longestPx: POOL_PX }))];
}

function collectionJobs(): readonly Job[] {
  return collectionDrawings().map((pictured) => ({
    key: pictured.key,
    name: `${pictured.key}.png`,
    pictured,
    longestPx: COLLECTION_PX,
  }));
}

async function takePictures(jobs: readonly Job[], options: DemoOptions): Promise<ReadonlyMap<string, string>> {
  const { takePicture, progress = () => {}, draw = photographOf } = options;
  const hashes = new Map<string, string>();
  let next = 0;
  const step = Math.ceil(jobs.length / 5);
  const worker = async () => {
    for (let job = jobs[next++]; job !== undefined; job = jobs[next++]) {
      hashes.set(job.key, await takePicture(await draw(job.pictured, job.longestPx), job.name));
      if (hashes.size % step === 0 || hashes.size === jobs.length) {
        progress(`Drawing the demo’s pictures: ${hashes.size} of ${jobs.length}.`);
      }
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  return hashes;
}

/** Each document that holds anything, as one update (V1) for the log of a new show. */
export function toUpdates(documents: ShowDocuments): { readonly document: DocumentName; readonly bytes: Uint8Array }[] {
  return DOCUMENT_NAMES.flatMap((document) => {
    const doc = documents.doc(document);
    if (doc === undefined || doc.store.clients.size === 0) return [];
    return [{ document, bytes: Y.encodeStateAsUpdate(doc) }];
  });
}
