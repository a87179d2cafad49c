/**
 * A show as one open file: a zip of JSON documents, of the texts kept under digests, and of its pictures as they were brought
 * in. Layout: DEVELOPERS.md. What a person takes out of one server is taken into an empty one without loss.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { type Json, ROOTS, type RootName, SCHEMA_VERSION } from '@enfilade/shared/schema';
import { DOCUMENT_NAMES, type DocumentName } from '@enfilade/shared/seats';
import { toCanonicalText } from '@enfilade/shared/sign-off';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { Images } from './images.ts';
import type { Kept } from './kept.ts';

export const BUNDLE_FORMAT = 'enfilade show';
export const BUNDLE_VERSION = 1;
export const INDEX_FILE = 'show.json';
/** A zip without its 64-bit extension holds 4 GB. */
export const BUNDLE_BYTES = 4_000_000_000;

export interface BundleIndex {
  readonly format: typeof BUNDLE_FORMAT;
  readonly version: number;
  readonly schemaVersion: number;
  readonly title: string;
  readonly takenOutAt: string;
  readonly by: string;
  /** SHA-256 of each document's text. */
  readonly documents: Readonly<Record<string, string>>;
  readonly kept: readonly string[];
  readonly pictures: readonly string[];
}

/** Every fact of a document under its root and key: what its digest is of. */
export function documentFacts(documents: ShowDocuments, name: DocumentName): Record<string, Record<string, Json>> {
  const roots = (Object.keys(ROOTS) as RootName[]).filter((root) => ROOTS[root].document === name);
  return Object.fromEntries(roots.map((root) => [root, Object.fromEntries(documents.facts(root))]));
}

export function sha256Of(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

export class BundleTooLarge extends Error {}

interface BundleSource {
  readonly documents: ShowDocuments;
  readonly images: Images;
  readonly kept: Kept;
}

/** The parts of a zip, as they come. @throws BundleTooLarge before the first. */
export async function bundleOf(
  { documents, images, kept }: BundleSource,
  { title, by }: { readonly title: string; readonly by: string },
): Promise<AsyncIterable<Uint8Array>> {
  // All documents as of one moment: nothing is awaited between them.
  const texts = DOCUMENT_NAMES.map((name) => [name, toCanonicalText(documentFacts(documents, name))] as const);
  const digests = digestsIn(documents);
  const states: (readonly [digest: string, text: string])[] = [];
  for (const digest of digests) {
    const text = await kept.text(digest);
    if (text !== undefined) states.push([digest, text]);
  }
  const pictures: { readonly sha256: string; readonly path: string }[] = [];
  let bytes = texts.reduce((sum, [, text]) => sum + text.length, 0);
  for (const { sha256 } of images.facts()) {
    const path = /^[0-9a-f]{64}$/.test(sha256) ? images.originalOf(sha256) : undefined;
    if (path === undefined) continue;
    pictures.push({ sha256, path });
    bytes += (await stat(path)).size;
  }
  if (bytes > BUNDLE_BYTES) throw new BundleTooLarge();
  const index: BundleIndex = {
    format: BUNDLE_FORMAT,
    version: BUNDLE_VERSION,
    schemaVersion: SCHEMA_VERSION,
    title,
    takenOutAt: new Date().toISOString(),
    by,
    documents: Object.fromEntries(texts.map(([name, text]) => [name, sha256Of(text)])),
    kept: states.map(([digest]) => digest),
    pictures: pictures.map(({ sha256 }) => sha256),
  };
  return zipped([
    { name: INDEX_FILE, text: JSON.stringify(index, null, 2) },
    { name: 'README.txt', text: readme(title) },
    ...texts.map(([name, text]) => ({ name: `documents/${name}.json`, text })),
    ...states.map(([digest, text]) => ({ name: `kept/${digest}.json`, text })),
    ...pictures.map(({ sha256, path }) => ({ name: `pictures/${sha256}`, path })),
  ]);
}

/** Digests under which the record and the talk name texts: states of the hang, frozen lists. */
function digestsIn(documents: ShowDocuments): readonly string[] {
  const states = [...documents.all('states').values()].map(({ digest }) => digest);
  const versions = [...documents.all('versions').values()].map(({ digest }) => digest);
  return [...new Set([...states, ...versions])].sort();
}

type Part = { readonly name: string } & ({ readonly text: string } | { readonly path: string });

async function* zipped(parts: readonly Part[]): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  for (const part of parts) {
    if ('text' in part) {
      const entry = new ZipDeflate(part.name, { level: 6 });
      zip.add(entry);
      entry.push(new TextEncoder().encode(part.text), true);
    } else {
      // Pictures do not pack.
      const entry = new ZipPassThrough(part.name);
      zip.add(entry);
      for await (const chunk of createReadStream(part.path)) {
        entry.push(new Uint8Array(chunk as Buffer));
        yield* ready.splice(0);
      }
      entry.push(new Uint8Array(), true);
    }
    yield* ready.splice(0);
  }
  zip.end();
  yield* ready.splice(0);
}

function readme(title: string): string {
  return [
    `${title}: a whole show, taken out of Enfilade.`,
    '',
    `${INDEX_FILE}         what is here, with the SHA-256 of each document`,
    'documents/*.json   every stored fact: root, key, value. What is private is in documents/private.json',
    'kept/*.json        states of the hang and frozen lists, each under the SHA-256 of its text',
    'pictures/*         pictures as they were brought in, each under the SHA-256 of its bytes',
    '',
    'An empty show takes it in: choose this file under Bring in, in the lead’s seat.',
    'Seats, links, the history of who did what, and the museum’s whole collection are not here: a backup has those.',
    '',
  ].join('\r\n');
}
