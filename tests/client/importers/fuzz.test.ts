/** Whatever the bytes of a file are, an importer answers with a table or with a sentence. */
import { NotImported } from '@enfilade/client/importers/importer';
import { importFile } from '@enfilade/client/importers/importers';
import { unpackPictures } from '@enfilade/client/importers/picture-zip';
import { iiifTableFrom } from '@enfilade/records/iiif-manifest';
import type { GridCell } from '@enfilade/records/sheet-grid';
import { sheetTableFrom } from '@enfilade/records/sheet-table';
import { checklistFromTable } from '@enfilade/shared/checklist-reading';
import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { LIDO, MANIFEST } from './records.ts';
import { messyOds, messyXlsx } from './sheets.ts';

type Bytes = Uint8Array<ArrayBuffer>;

/** A file with bytes overwritten, cut out or doubled. */
function damaged(whole: Bytes): fc.Arbitrary<Bytes> {
  const place = fc.nat(whole.length - 1);
  return fc.oneof(
    fc.array(fc.tuple(place, fc.nat(255)), { minLength: 1, maxLength: 12 }).map((changes) => {
      const bytes = whole.slice();
      for (const [at, byte] of changes) bytes[at] = byte;
      return bytes;
    }),
    fc.tuple(place, place).map(([a, b]) => whole.slice(Math.min(a, b), Math.max(a, b))),
    fc.tuple(place, place).map(([a, b]) => {
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      return Uint8Array.from([...whole.subarray(0, to), ...whole.subarray(from)]);
    }),
  );
}

/** A zip whose texts are damaged inside and which is itself whole: what a parser behind the unpacking meets. */
function damagedInside(zip: Bytes): fc.Arbitrary<Bytes> {
  const parts = unzipSync(zip);
  const names = Object.keys(parts).filter((name) => (parts[name]?.length ?? 0) > 0);
  return fc
    .constantFrom(...names)
    .chain((name) =>
      damaged(parts[name] as Bytes).map((part) => zipSync({ ...parts, [name]: part }, { level: 1 }) as Bytes),
    );
}

async function readOrRefused(bytes: Bytes, fileName: string): Promise<void> {
  try {
    const { table } = await importFile(new Blob([bytes]), fileName, { sheet: null, tell: () => {} });
    const reading = checklistFromTable(table);
    expect(reading.rows.length).toBeLessThanOrEqual(Math.max(0, table.cells.length - 1));
  } catch (error) {
    expect(error).toBeInstanceOf(NotImported);
    expect((error as Error).message).toMatch(/^\S.{10,}\.$/s);
  }
}

describe('files, damaged', () => {
  test.each([
    ['XLSX', 'a.xlsx', fc.oneof(damaged(messyXlsx()), damagedInside(messyXlsx()))],
    ['ODS', 'a.ods', fc.oneof(damaged(messyOds()), damagedInside(messyOds()))],
    ['LIDO', 'a.xml', damaged(strToU8(LIDO) as Bytes)],
    ['IIIF', 'a.json', damaged(strToU8(MANIFEST) as Bytes)],
    ['CSV', 'a.csv', damaged(strToU8('\ufeffNumber;Title\n"1";"two\nlines"\n') as Bytes)],
    ['anything', 'a.xlsx', fc.uint8Array({ maxLength: 4000 }).map((bytes) => new Uint8Array(bytes))],
    ['any text', 'a.xml', fc.string({ unit: 'grapheme' }).map((text) => strToU8(text) as Bytes)],
  ] as const)(
    'law: %s is read, or refused with a sentence',
    async (_, name, files) => {
      await fc.assert(
        fc.asyncProperty(files, (bytes) => readOrRefused(bytes, name)),
        { seed: 6, numRuns: 120 },
      );
    },
    120_000,
  );

  test('law: a zip of pictures is unpacked, or refused with a sentence', async () => {
    const zip = zipSync({ 'a/1.png': new Uint8Array(900).fill(7), '../2.png': new Uint8Array(9) }) as Bytes;
    await fc.assert(
      fc.asyncProperty(damaged(zip), async (bytes) => {
        await unpackPictures(new Blob([bytes]), { tell: () => {}, give: () => {} }).catch((error: unknown) => {
          expect(error).toBeInstanceOf(NotImported);
        });
      }),
      { seed: 6, numRuns: 300 },
    );
  });
});

test('law: a sheet of any cells and any merges has a table whose rows stand where they say', () => {
  const date = { text: '1987-12-05', shown: '5.12.87', date: { year: 1987, month: 12, day: 5 } };
  const cell: fc.Arbitrary<GridCell> = fc.oneof(
    fc.constantFrom('Number', 'Title', 'Dimensions', '1987.12.4', '12-5', ''),
    fc.string({ maxLength: 8 }),
    fc.constantFrom(undefined, date, { text: '1950.1', figure: 1950.1 }, { text: '#REF!', fault: 'At fault.' }),
  );
  const at = fc.nat(7);
  const merged = fc
    .record({ top: at, left: at, down: at, across: at })
    .map(({ top, left, down, across }) => ({ top, left, bottom: top + down, right: left + across }));
  const grid = fc.record({
    rows: fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 8 }),
    merged: fc.array(merged, { maxLength: 5 }),
  });
  fc.assert(
    fc.property(grid, fc.option(fc.nat(7), { nil: undefined }), (one, column) => {
      const table = sheetTableFrom({ ...one, name: 'A', hidden: false }, column);
      const [headings = []] = table.cells;
      expect(table.cells.every((row) => row.length === headings.length)).toBe(true);
      expect(table.columns.length).toBe(headings.length);
      expect(table.sheet?.rowNumbers ?? []).toHaveLength(Math.max(0, table.cells.length - 1));
      checklistFromTable(table);
    }),
    { seed: 6, numRuns: 1500 },
  );
});

test('law: JSON of any shape is a manifest or none, and nothing is thrown', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 5 }), fc.string(), (json, type) => {
      iiifTableFrom(json);
      iiifTableFrom({ type: 'Manifest', items: json, metadata: json, label: type });
    }),
    { seed: 6, numRuns: 1500 },
  );
});

describe('XML that means harm', () => {
  const wrapped = (doctype: string, title: string): Bytes =>
    strToU8(LIDO.replace('?>', `?>${doctype}`).replace('River map of the lower weir', title)) as Bytes;

  // The well-known "billion laughs": each entity is ten of the one before it.
  test('law: entities are not expanded, and the records before them are read', async () => {
    const laughs = Array.from({ length: 9 }, (_, n) => `<!ENTITY l${n + 1} "${`&l${n};`.repeat(10)}">`).join('');
    const bytes = wrapped(`<!DOCTYPE lido [<!ENTITY l0 "ha">${laughs}]>`, '&l9;');
    const before = performance.now();
    await expect(importFile(new Blob([bytes]), 'a.xml', { sheet: null, tell: () => {} })).rejects.toThrow(
      /breaks off at line/,
    );
    expect(performance.now() - before).toBeLessThan(2000);
  });

  test('law: what an external entity names is not asked for and not in the table', async () => {
    const asked: string[] = [];
    const fetched = globalThis.fetch;
    globalThis.fetch = async (input) => {
      asked.push(String(input));
      throw new Error('nothing is fetched');
    };
    try {
      const bytes = wrapped('<!DOCTYPE lido [<!ENTITY x SYSTEM "file:///etc/hostname">]>', 'Map &x;');
      const read = await importFile(new Blob([bytes]), 'a.xml', { sheet: null, tell: () => {} }).catch(
        (error: Error) => error.message,
      );
      expect(JSON.stringify(read)).toMatch(/breaks off at line/);
      expect(asked).toEqual([]);
    } finally {
      globalThis.fetch = fetched;
    }
  });

  test('law: a file in which one record is whole keeps that record', async () => {
    const second = LIDO.slice(LIDO.indexOf('<lido:lido>'), LIDO.indexOf('</lido:lidoWrap>')).replace(
      '1902.7.1',
      '1902.7.2',
    );
    const cut = LIDO.replace('</lido:lidoWrap>', second.slice(0, second.length / 2));
    const { table } = await importFile(new Blob([strToU8(cut) as Bytes]), 'a.xml', { sheet: null, tell: () => {} });
    expect(table.cells.slice(1).map(([number]) => number)).toEqual(['1902.7.1']);
    expect(table.issues[0]?.what).toMatch(/breaks off at line \d+, column \d+\. The record before it is read/);
  });
});
