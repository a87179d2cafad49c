/** A show's own bundle taken into a show that is empty: checked whole before a fact is written. */
import { randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import type { IncomingMessage } from 'node:http';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { BundleAnswer } from '@enfilade/shared/protocol';
import { type Json, ROOTS, type RootName, SCHEMA_VERSION } from '@enfilade/shared/schema';
import { DOCUMENT_NAMES, type DocumentName } from '@enfilade/shared/seats';
import { type Answer, json, refusal } from './answers.ts';
import { BUNDLE_BYTES, BUNDLE_FORMAT, BUNDLE_VERSION, type BundleIndex, INDEX_FILE, sha256Of } from './bundle.ts';
import type { Images } from './images.ts';
import type { Kept } from './kept.ts';
import { PictureRefused } from './picture-ingest.ts';
import type { Sessions } from './sessions.ts';
import { NoZip, ZipFile } from './zip-file.ts';

const TEXT_BYTES = 256 << 20;
const WHERE = 'bundle';

interface Into {
  readonly sessions: Sessions;
  readonly images: Images;
  readonly kept: Kept;
  readonly dataDirectory: string;
}

type Facts = Readonly<Record<string, Readonly<Record<string, Json>>>>;

export async function takeBundle(into: Into, request: IncomingMessage): Promise<Answer> {
  if (!isEmpty(into.sessions)) {
    const what =
      'This show is not empty. A whole show comes into an empty one: a server started with --empty on a folder of its own.';
    return refusal(409, `${what} Nothing was changed.`, WHERE);
  }
  const path = join(into.dataDirectory, 'images', 'incoming', `${randomUUID()}.zip`);
  let zip: ZipFile | undefined;
  try {
    await received(request, path);
    zip = await ZipFile.open(path);
    return await takeFrom(into, zip);
  } catch (error) {
    if (error instanceof TooLong) return refusal(413, 'It is larger than 4 GB. Nothing was changed.', WHERE);
    if (!(error instanceof NoZip)) throw error;
    const part = error.message === '' ? '' : ` “${error.message}” is missing in it or damaged.`;
    return refusal(422, `This is no show taken out of Enfilade, or not all of it.${part} Nothing was changed.`, WHERE);
  } finally {
    await zip?.close();
    await rm(path, { force: true });
  }
}

class TooLong extends Error {}

async function received(request: IncomingMessage, path: string): Promise<void> {
  let bytes = 0;
  await pipeline(
    request,
    async function* (chunks: AsyncIterable<Buffer>) {
      for await (const chunk of chunks) {
        bytes += chunk.length;
        if (bytes > BUNDLE_BYTES + (64 << 20)) throw new TooLong();
        yield chunk;
      }
    },
    createWriteStream(path),
  );
}

/** What is there from the first moment a page is open: settings, who has a seat, and what they have looked at. */
const THERE_ALREADY: readonly RootName[] = ['settings', 'people', 'readMarks'];

/** Nothing composed, recorded or said yet. */
function isEmpty({ documents }: Sessions): boolean {
  return (Object.keys(ROOTS) as RootName[]).every((root) => {
    return THERE_ALREADY.includes(root) || documents.facts(root)[Symbol.iterator]().next().done === true;
  });
}

async function takeFrom({ sessions, images, kept }: Into, zip: ZipFile): Promise<Answer> {
  const index = indexFrom(await zip.bytes(INDEX_FILE, 4 << 20));
  if (index === null) throw new NoZip(INDEX_FILE);
  if (index.version !== BUNDLE_VERSION || index.schemaVersion !== SCHEMA_VERSION) {
    const what = `It was taken out of another version (${index.version}.${index.schemaVersion}; here ${BUNDLE_VERSION}.${SCHEMA_VERSION}).`;
    return refusal(422, `${what} Nothing was changed.`, WHERE);
  }
  const documents = new Map<DocumentName, Facts>();
  for (const name of DOCUMENT_NAMES) {
    const text = (await zip.bytes(`documents/${name}.json`, TEXT_BYTES)).toString('utf8');
    const facts = sha256Of(text) === index.documents[name] ? factsFrom(text, name) : null;
    if (facts === null) throw new NoZip(`documents/${name}.json`);
    documents.set(name, facts);
  }
  for (const digest of index.kept) {
    const text = (await zip.bytes(`kept/${digest}.json`, TEXT_BYTES)).toString('utf8');
    const value = sha256Of(text) === digest ? parsed(text) : null;
    if (typeof value !== 'object' || value === null) throw new NoZip(`kept/${digest}.json`);
    await kept.put(value);
  }
  const refused: { fileName: string; what: string }[] = [];
  for (const sha256 of index.pictures) {
    try {
      const facts = await images.add(await zip.stored(`pictures/${sha256}`), sha256.slice(0, 8));
      if (facts.sha256 !== sha256) throw new NoZip(`pictures/${sha256}`);
    } catch (error) {
      // A picture of an engine that took more than this one does: the show stands without it.
      if (!(error instanceof PictureRefused)) throw error;
      refused.push({ fileName: sha256, what: error.message });
    }
  }
  // Asked again: somebody may have begun meanwhile.
  if (!isEmpty(sessions)) return refusal(409, 'Somebody has begun in this show meanwhile. Nothing was changed.', WHERE);
  for (const [name, facts] of documents) {
    await sessions.get(name).act((doc) => {
      for (const [root, entries] of Object.entries(facts)) {
        for (const [key, value] of Object.entries(entries)) {
          if (root !== 'people') doc.getMap(root).set(key, value);
          // Who had a seat there has none here; whoever has one keeps it.
          else if (!doc.getMap(root).has(key)) doc.getMap(root).set(key, { ...(value as object), gone: true });
        }
      }
    });
  }
  const records = Object.keys(documents.get('checklist')?.objects ?? {}).filter((key) => !key.includes('/')).length;
  const answer: BundleAnswer = {
    title: index.title,
    records,
    pictures: index.pictures.length - refused.length,
    refused,
  };
  return json(200, answer);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function indexFrom(bytes: Buffer): BundleIndex | null {
  const index = parsed(bytes.toString('utf8')) as Partial<BundleIndex> | null;
  const isDigests = (list: unknown): boolean =>
    Array.isArray(list) && list.every((one) => typeof one === 'string' && /^[0-9a-f]{64}$/.test(one));
  const whole =
    index?.format === BUNDLE_FORMAT &&
    typeof index.documents === 'object' &&
    index.documents !== null &&
    isDigests(index.kept) &&
    isDigests(index.pictures);
  return whole ? (index as BundleIndex) : null;
}

/** Null where it holds what is no root of that document. */
function factsFrom(text: string, name: DocumentName): Facts | null {
  const facts = parsed(text);
  if (typeof facts !== 'object' || facts === null) return null;
  for (const [root, entries] of Object.entries(facts)) {
    const known = Object.hasOwn(ROOTS, root) && ROOTS[root as RootName].document === name;
    if (!known || typeof entries !== 'object' || entries === null || Array.isArray(entries)) return null;
  }
  return facts as Facts;
}
