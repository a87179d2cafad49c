/** Shows stored by earlier versions open as they stood, through every door a stored document comes in by. */

import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import { logTo } from '@enfilade/server/log';
import { startServer } from '@enfilade/server/server';
import { Store } from '@enfilade/server/store';
import { membersOf } from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import { movesOf } from '@enfilade/shared/proposal-moves';
import { layerOfProposal } from '@enfilade/shared/proposals';
import { threadsOf } from '@enfilade/shared/remarks';
import { ROOTS, type RootName } from '@enfilade/shared/schema';
import { DOCUMENT_NAMES, type DocumentName } from '@enfilade/shared/seats';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { vignetteListOf } from '@enfilade/shared/vignette-list';
import { waitingOf } from '@enfilade/shared/waiting';
import { describe, expect, onTestFinished, test } from 'vitest';
import * as Y from 'yjs';

interface Older {
  readonly schemaVersion: number;
  readonly documents: Partial<Record<DocumentName, string>>;
  readonly snapshots: Partial<Record<DocumentName, string>>;
  readonly entities: Partial<Record<RootName, Record<string, unknown>>>;
}

const FOLDER = join(import.meta.dirname, '..', 'reference', 'older-bytes');
const olderOf = (name: string): Older => JSON.parse(readFileSync(join(FOLDER, `${name}.json`), 'utf8')) as Older;
const bytesOf = (text: string | undefined): Uint8Array | null =>
  text === undefined ? null : new Uint8Array(Buffer.from(text, 'base64'));

/** What can be read of every root; a root that was not there yet reads as empty. */
function entitiesIn(documents: ShowDocuments): Record<string, Record<string, unknown>> {
  const roots = (Object.keys(ROOTS) as RootName[]).map(
    (root) => [root, Object.fromEntries(documents.all(root))] as const,
  );
  return Object.fromEntries(roots.filter(([, entities]) => Object.keys(entities).length > 0));
}

/** The screens' first looks at a show: none may break on what an older version wrote. */
function lookedAt(documents: ShowDocuments): void {
  const judgements = new Judgements(documents, { get: () => undefined });
  expect(vignetteListOf(judgements)).toHaveLength(1);
  expect(waitingOf(judgements).length).toBeGreaterThan(0);
  expect(judgements.elevationOf('dye:head').map(({ pieceId }) => pieceId)).toEqual(['oil#1']);
  expect(membersOf(documents, 'sixty')).toEqual(['blocks#3', 'oil#1']);
  expect(threadsOf(documents)).toHaveLength(documents.all('proposals').size);
  // Signed then, and agreed still: the canonical form has not moved under the signature.
  const signed = documents.get('signatures', 'sixty/dc')?.digest;
  expect(digestOf(toCanonicalText(canonicalVignetteOf(documents, 'sixty') as object))).toBe(signed);
}

describe.each(['schema-1-first', 'schema-1-whole'])('%s', (name) => {
  const older = olderOf(name);

  test('law: every root reads as it was written, from updates and from snapshots', () => {
    for (const stored of [older.documents, older.snapshots]) {
      const docs = new Map(DOCUMENT_NAMES.map((document) => [document, new Y.Doc()]));
      for (const [document, doc] of docs) {
        const bytes = bytesOf(stored[document]);
        if (bytes !== null) (stored === older.documents ? Y.applyUpdate : Y.applyUpdateV2)(doc, bytes);
      }
      const documents = new ShowDocuments(docs);
      expect(entitiesIn(documents)).toEqual(older.entities);
      lookedAt(documents);
    }
  });

  test('story: a server of today opens the folder, serves it as it stood, and takes what is written on top', async () => {
    const dataDirectory = await mkdtemp(join(tmpdir(), 'enfilade-'));
    onTestFinished(() => rm(dataDirectory, { recursive: true, force: true }));
    const store = await Store.open(dataDirectory);
    await store.setMeta('schema-version', String(older.schemaVersion));
    for (const document of DOCUMENT_NAMES) {
      const bytes = bytesOf(older.documents[document]);
      if (bytes !== null) await store.appendAll([{ document, bytes }]);
    }
    // One document as compaction left it.
    const snapshot = bytesOf(older.snapshots.hang);
    const seq = (await store.load('hang')).updates.at(-1)?.seq ?? 0;
    if (snapshot !== null) await store.replaceBySnapshot('hang', { seq, bytes: snapshot });
    await store.close();
    const logger = logTo(new Writable({ write: (_chunk, _encoding, done) => done() }), 'fatal');
    const server = await startServer({ port: 0, host: '127.0.0.1', dataDirectory, logger });
    onTestFinished(() => server.close());
    const { documents } = server.sessions;
    expect(entitiesIn(documents)).toMatchObject(older.entities);
    lookedAt(documents);
    await server.sessions.get('talk').act((doc) => doc.getMap('readMarks').set('if/later', '2026-05-13T09:00:00.000Z'));
    expect(documents.get('readMarks', 'if/later')).toBe('2026-05-13T09:00:00.000Z');
  });
});

test('law: the whole one of version 1 holds every root that version 1 has, and its proposal can still be laid over', () => {
  const { documents: stored, entities } = olderOf('schema-1-whole');
  // A root that comes later is in no bytes of this version; none of this version's may ever go.
  expect(Object.keys(entities)).toHaveLength(20);
  expect(Object.keys(entities).filter((root) => !(root in ROOTS))).toEqual([]);
  const docs = new Map(DOCUMENT_NAMES.map((name) => [name, new Y.Doc()]));
  for (const [name, doc] of docs) Y.applyUpdate(doc, bytesOf(stored[name]) as Uint8Array);
  const documents = new ShowDocuments(docs);
  expect(movesOf(documents, 'night').map(({ id, standing }) => [id, standing])).toEqual([
    ['wall:dye:head', 'open'],
    ['piece:oil#1', 'open'],
  ]);
  const laid = documents.laidOver(layerOfProposal(documents, 'night'));
  expect(laid.get('paints', 'dye:head')).toBe('weld');
});
