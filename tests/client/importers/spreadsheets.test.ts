import type { Imported } from '@enfilade/client/importers/importer';
import { importFile } from '@enfilade/client/importers/importers';
import { checklistFromTable, sourceCellsOf } from '@enfilade/shared/checklist-reading';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { messyOds, messyXlsx, ODS_CONTENT } from './sheets.ts';

function read(bytes: Uint8Array<ArrayBuffer>, fileName: string, sheet: string | null = null): Promise<Imported> {
  return importFile(new Blob([bytes]), fileName, { sheet, tell: () => {} });
}

const whatIn = ({ table }: Imported): string[] => table.issues.map(({ where, what }) => `${where}: ${what}`);

describe('an XLSX as registrars send it', () => {
  test('story: titles, merged headings, a hidden sheet, a number become a date: understood, and told', async () => {
    const imported = await read(messyXlsx(), 'loans.xlsx');
    expect(imported.sheet).toBe('Loans');
    expect(imported.sheets).toEqual([
      { name: 'Notes', hidden: false },
      { name: 'Loans', hidden: false },
      { name: 'Withdrawn', hidden: true },
    ]);
    const { cells } = imported.table;
    expect(cells[0]).toEqual([
      'Accession No',
      'Title',
      'Dimensions unframed',
      'Dimensions framed',
      'Insurance Value',
      'Date',
    ]);
    expect(cells[1]).toEqual(['1987.12.4', 'Weir panel', '40 x 60 cm', '45 x 65 cm', '£9,000', '1887']);
    // 32116 is 5 December 1987 counted from 1900, as spreadsheets count.
    expect(cells[2]?.[0]).toBe('1987.12.5');
    expect(whatIn(imported).join('\n')).toMatch(/Row 1 stands above the headings.*Slow Water/s);
    expect(whatIn(imported).join('\n')).toMatch(/Sheet “Withdrawn”: It is hidden in the file and was not read/);
    expect(imported.table.told?.map(({ line, kind, value }) => [line, kind, value])).toContainEqual([
      3,
      'number changed',
      '1987.12.5',
    ]);
  });

  test('story: each value stands beside its cell, and what a person has to say is asked with it', async () => {
    const { table } = await read(messyXlsx(), 'loans.xlsx');
    const reading = checklistFromTable(table);
    expect(reading.rows.map(({ object }) => object.number)).toEqual(['1987.12.4', '1987.12.5', '1987.12.6']);
    expect(reading.notes.map(({ place, what }) => `${place}: ${what}`)).toContainEqual(
      'Sheet “Loans”, A8: “Total” is no object number: a row of sums, by its looks. It stays out.',
    );
    expect(reading.rows[1]?.place).toBe('Sheet “Loans”, row 6');
    const [changed] = reading.rows[1]?.waits ?? [];
    expect(changed?.place).toBe('Sheet “Loans”, A6');
    expect(changed?.issue.what).toMatch(/5 December 1987.*Put back.*1987\.12\.5/);
    expect(sourceCellsOf(table, reading.mapping, 2).map(({ place, text, field }) => [place, text, field])).toEqual([
      ['Sheet “Loans”, A5', '1987.12.4', 'number'],
      ['Sheet “Loans”, B5', 'Weir panel', 'title'],
      ['Sheet “Loans”, C5', '40 x 60 cm', 'dimensions'],
      ['Sheet “Loans”, D5', '45 x 65 cm', 'framedDimensions'],
      ['Sheet “Loans”, E5', '£9,000', 'value'],
      ['Sheet “Loans”, F5', '1887', 'date'],
    ]);
    // A formula's value is read, an error value is told; of a private column the value is never in what is told.
    expect(reading.rows[2]?.object.title).toBe('Mangle');
    const fault = reading.rows[2]?.waits.find(({ issue }) => issue.kind === 'cell at fault');
    expect(fault).toMatchObject({ place: 'Sheet “Loans”, E7', issue: { field: 'value', value: '' } });
  });

  test('story: a hidden sheet is read where a person asks for it', async () => {
    const imported = await read(messyXlsx(), 'loans.xlsx', 'Withdrawn');
    expect(imported.table.cells).toEqual([
      ['Number', 'Title'],
      ['W.1', 'Withdrawn gear'],
    ]);
    expect(whatIn(imported)[0]).toMatch(/hidden in the file, and read because you asked/);
  });

  test.each([
    ['an older or locked workbook', new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0, 0, 0, 0]), /older XLS workbook/],
    ['a zip that is none', messyXlsx().slice(0, 900), /damaged or incomplete/],
    ['another zip', zipSync({ 'a.txt': strToU8('x') }) as Uint8Array<ArrayBuffer>, /no XLSX workbook/],
    ['nothing', new Uint8Array(0), /0 bytes/],
  ])('story: %s is refused with a sentence', async (_, bytes, what) => {
    await expect(read(bytes, 'list.xlsx')).rejects.toThrow(what);
  });

  test('law: a part that unpacks to gigabytes is refused before anything is unpacked', async () => {
    const sheet = zipSync({
      'xl/workbook.xml': strToU8('<workbook/>'),
      'xl/worksheets/sheet1.xml': new Uint8Array(500),
    });
    // The size it says it has, in the central directory: bytes 24 to 27 of its entry (APPNOTE 4.3.12).
    const at = Buffer.from(sheet).lastIndexOf(Buffer.from([0x50, 0x4b, 1, 2]));
    new DataView(sheet.buffer).setUint32(at + 24, 0xf0000000, true);
    await expect(read(sheet as Uint8Array<ArrayBuffer>, 'bomb.xlsx')).rejects.toThrow(/unpacks to 4\d{3} MB/);
  });
});

describe('an ODS as office programs write it', () => {
  test('story: spans, repeats, a remark, a hidden table and a date in place of a number', async () => {
    const imported = await read(messyOds(), 'maps.ods');
    expect(imported.sheet).toBe('Maps & marks');
    expect(imported.sheets).toEqual([
      { name: 'Maps & marks', hidden: false },
      { name: 'Old', hidden: true },
    ]);
    expect(imported.table.cells).toEqual([
      ['Object number', 'Title', 'Dimensions', 'Lender'],
      ['1902.7.1', 'Flood   of 1888\nsecond line', '40 x 60 cm', 'Parish of Saint Osk'],
      ['1902.7.2', 'Weir', '20 x 30 cm', 'Parish of Saint Osk'],
    ]);
    expect(imported.table.sheet?.rowNumbers).toEqual([5, 6]);
    expect(imported.table.told).toMatchObject([{ line: 3, column: 0, kind: 'number changed', value: '02.07.02' }]);
  });

  test('law: filled cells said to be repeated for ever are refused, and a document type expands to nothing', async () => {
    const wide = ODS_CONTENT.replace(
      '<table:table-row>',
      '<table:table-row table:number-rows-repeated="1048576">',
    ).replace(
      'office:value-type="string" table:number-columns-spanned="4" table:number-rows-spanned="1"',
      'office:value-type="string" table:number-columns-repeated="16384"',
    );
    await expect(read(messyOds(wide), 'wide.ods')).rejects.toThrow(/million filled cells/);
    const laughs = Array.from({ length: 30 }, (_, n) => `<!ENTITY l${n + 1} "&l${n};&l${n};">`).join('');
    const laughing = ODS_CONTENT.replace(
      '<office:document-content',
      `<!DOCTYPE x [<!ENTITY l0 "ha">${laughs}]><office:document-content`,
    ).replace('River and flood maps', '&l30;');
    await expect(read(messyOds(laughing), 'laughing.ods')).rejects.toThrow(/damaged/);
  });
});
