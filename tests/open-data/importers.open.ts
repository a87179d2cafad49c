import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Imported, NotImported } from '@enfilade/client/importers/importer';
import { importFile } from '@enfilade/client/importers/importers';
import { checklistFromTable } from '@enfilade/shared/checklist-reading';
import fc from 'fast-check';
import { expect, test } from 'vitest';

function filesIn(...path: string[]): { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> }[] {
  const folder = join(process.env.OPEN_DATA ?? '', ...path);
  const names = existsSync(folder) ? readdirSync(folder).filter((name) => /\.(xml|json)$/.test(name)) : [];
  return names.map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(folder, name))) }));
}

const read = (bytes: Uint8Array<ArrayBuffer>, name: string): Promise<Imported> =>
  importFile(new Blob([bytes]), name, { sheet: null, tell: () => {} });

test('reference: each LIDO record of the open data comes to the review with its title, and is told with its path', async () => {
  const files = filesIn('lido', 'records');
  let rows = 0;
  for (const { name, bytes } of files) {
    const { table } = await read(bytes, name);
    const [headings = []] = table.cells;
    rows += table.cells.length - 1;
    for (const row of table.cells.slice(1)) expect([name, row[headings.indexOf('Title')]]).not.toEqual([name, '']);
    expect(table.places[0]).toBe('lido 1');
    checklistFromTable(table);
  }
  console.log(`LIDO: ${rows} records of ${files.length} files, 1.0 and 1.1.`);
});

test('law: real LIDO and IIIF files, damaged, are read or refused with a sentence', async () => {
  const files = [...filesIn('lido', 'records'), ...filesIn('iiif', 'cookbook')];
  if (files.length === 0) return;
  const damaged = fc.constantFrom(...files).chain(({ name, bytes }) => {
    const at = fc.nat(bytes.length - 1);
    return fc.oneof(
      fc.tuple(at, at).map(([a, b]) => ({ name, bytes: bytes.slice(Math.min(a, b), Math.max(a, b)) })),
      fc.array(fc.tuple(at, fc.nat(255)), { minLength: 1, maxLength: 20 }).map((changes) => {
        const own = bytes.slice();
        for (const [place, byte] of changes) own[place] = byte;
        return { name, bytes: own };
      }),
    );
  });
  await fc.assert(
    fc.asyncProperty(damaged, async ({ name, bytes }) => {
      try {
        checklistFromTable((await read(bytes, name)).table);
      } catch (error) {
        expect(error).toBeInstanceOf(NotImported);
      }
    }),
    { seed: 6, numRuns: 400 },
  );
}, 120_000);
