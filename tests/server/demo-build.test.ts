import { createHash } from 'node:crypto';
import { CHECKLIST } from '@enfilade/server/demo/checklist';
import { NIGHT_PROPOSAL } from '@enfilade/server/demo/proposal';
import { buildDemoShow, toUpdates } from '@enfilade/server/demo/show';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { movesOf } from '@enfilade/shared/proposal-moves';
import { layerOfProposal } from '@enfilade/shared/proposals';
import { DOCUMENT_NAMES } from '@enfilade/shared/seats';
import { trueSizeOf } from '@enfilade/shared/true-size';
import { Whereabouts } from '@enfilade/shared/whereabouts';
import { describe, expect, test } from 'vitest';
import * as Y from 'yjs';

const sha = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** The show with what is to be drawn for pictures: what is under test is the documents, not the rendering. */
async function built(large = false) {
  const taken: string[] = [];
  const documents = await buildDemoShow({
    large,
    draw: async ({ subject, heightMm, widthMm }) => Buffer.from(JSON.stringify([subject, heightMm, widthMm])),
    takePicture: async (bytes, name) => {
      taken.push(name);
      return sha(bytes);
    },
  });
  return { documents, taken };
}

const bytesOf = (documents: ShowDocuments) =>
  DOCUMENT_NAMES.map((name) => Buffer.from(Y.encodeStateAsUpdate(documents.doc(name)!)));

const show = await built();

describe('the demo show as documents', () => {
  test('law: built twice it is the same to the byte', async () => {
    const again = bytesOf((await built()).documents);
    for (const [i, bytes] of bytesOf(show.documents).entries()) {
      expect(Buffer.compare(bytes, again[i]!)).toBe(0);
    }
  });

  test('story: 160 records, 219 pictures, four vignettes, every place on something that is there', () => {
    const { documents, taken } = show;
    expect(taken).toHaveLength(219);
    expect(documents.all('objects').size).toBe(160);
    expect(documents.all('vignettes').size).toBe(4);
    expect(documents.all('deck').size).toBeGreaterThanOrEqual(60);
    expect([documents.all('samples').size, documents.all('sampleWords').size]).toEqual([3, 4]);
    expect(documents.get('settings', 'title')).toBe('Slow Water');
    const where = new Whereabouts(documents);
    for (const [pieceId] of documents.all('places')) expect(where.surfaceOf(pieceId)).not.toBeNull();
    for (const [id, object] of documents.all('objects')) expect([id, object.picture?.length]).toEqual([id, 64]);
    expect(documents.get('pieces', 'block-1#60')?.picture).toHaveLength(64);
  });

  test('law: all that hangs or stands has a true size that agrees with its drawing, and the frame chosen round it', () => {
    const { documents } = show;
    const drawn = new Map(CHECKLIST.map((record) => [record.id, record]));
    for (const pieceId of documents.all('places').keys()) {
      const [id, n] = pieceId.split('#') as [string, string];
      const size = trueSizeOf(documents.get('objects', id)!, documents.get('pieces', pieceId));
      const record = drawn.get(id)!;
      const piece = record.pieces?.[Number(n) - 1] ?? record;
      const frameMm = record.frame?.widthMm ?? 0;
      expect([id, size.known]).toEqual([id, true]);
      expect(Math.abs(size.heightMm - 2 * frameMm - piece.heightMm)).toBeLessThanOrEqual(1);
      expect(Math.abs(size.widthMm - 2 * frameMm - piece.widthMm)).toBeLessThanOrEqual(1);
    }
  });

  test('story: the artist’s proposal of the night repaints the wall on which the view is lost and moves four things', () => {
    const { documents } = show;
    expect(documents.get('proposals', NIGHT_PROPOSAL)).toMatchObject({ by: 'fennimarsh', role: 'guest artist' });
    const moves = movesOf(documents, NIGHT_PROPOSAL);
    expect(moves.map(({ id, standing }) => [id, standing])).toEqual([
      ['wall:dye:head', 'open'],
      ['piece:hanging-2#1', 'open'],
      ['piece:oil-1#1', 'open'],
      ['piece:trap-1#1', 'clash'],
      ['piece:trap-5#1', 'open'],
    ]);
    // As proposed it breaks none of the hang's own rules: nothing meets, the thermostat is clear.
    const laid = documents.laidOver(layerOfProposal(documents, NIGHT_PROPOSAL));
    const where = new Whereabouts(laid);
    const onWall = where.elevationOf('dye:head').filter(({ direct }) => direct);
    const view = onWall.find(({ pieceId }) => pieceId === 'oil-1#1');
    expect((view?.xMm ?? 0) + (view?.widthMm ?? 0) / 2).toBeLessThanOrEqual(5830 - 40 - 300);
    for (const [i, a] of onWall.entries()) {
      for (const b of onWall.slice(i + 1)) {
        const apart =
          Math.abs(a.xMm - b.xMm) >= (a.widthMm + b.widthMm) / 2 ||
          Math.abs(a.yMm - b.yMm) >= (a.heightMm + b.heightMm) / 2;
        expect([a.pieceId, b.pieceId, apart]).toEqual([a.pieceId, b.pieceId, true]);
      }
    }
    laid.close();
  });

  test('law: value, storage and contact are in the private document and in no other', () => {
    const { documents } = show;
    const secrets = CHECKLIST.flatMap(({ private: kept }) => Object.values(kept) as string[]);
    for (const name of DOCUMENT_NAMES) {
      const text = Buffer.from(Y.encodeStateAsUpdate(documents.doc(name)!)).toString('utf8');
      const found = secrets.filter((secret) => text.includes(secret));
      expect([name, found.length]).toEqual([name, name === 'private' ? secrets.length : 0]);
    }
  });

  test('law: a log of its updates opens as the same show', () => {
    const { documents } = show;
    const updates = toUpdates(documents);
    expect(updates.map(({ document }) => document)).toEqual(['rooms', 'checklist', 'hang', 'talk', 'private']);
    for (const { document, bytes } of updates) {
      const opened = new Y.Doc();
      Y.applyUpdate(opened, bytes);
      const [again, whole] = [opened, documents.doc(document)!].map((doc) => Buffer.from(Y.encodeStateAsUpdate(doc)));
      expect(Buffer.compare(again!, whole!)).toBe(0);
    }
  });

  test('story: the large show has 3,000 records that share their pictures', async () => {
    const { documents, taken } = await built(true);
    expect(documents.all('objects').size).toBe(3000);
    expect(taken.length).toBeLessThan(600);
    for (const object of documents.all('objects').values()) expect(object.picture).toHaveLength(64);
    expect(documents.all('places').size).toBeGreaterThan(2000);
  });
});
