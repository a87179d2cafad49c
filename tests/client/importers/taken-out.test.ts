import { importFile } from '@enfilade/client/importers/importers';
import { xlsxFrom } from '@enfilade/client/importers/xlsx-out';
import { csvFrom } from '@enfilade/records/checklist-csv';
import { ActHistory } from '@enfilade/shared/acts';
import { checklistFromTable } from '@enfilade/shared/checklist-reading';
import { checklistTable } from '@enfilade/shared/checklist-table';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { recordsInFrom } from '@enfilade/shared/records-in';
import { describe, expect, test } from 'vitest';

const RECORDS: readonly commands.RecordIn[] = [
  {
    object: {
      number: '1987.12.5',
      title: '=Weir, "east"',
      maker: 'attributed to Jona Lind',
      dateText: 'c. 1880',
      medium: 'oil on canvas\nlined',
      dimensionsText: '24 1/2 x 36 in. (62.2 x 91.4 cm)',
      count: 1,
      lender: '',
      source: 'collection',
      weightKg: 4.5,
      frame: { kind: 'pale wood', widthMm: 42.5 },
    },
    private: { value: '£9,000', storage: 'Rack 3' },
  },
  { object: { number: '1-3', title: 'Mark', count: 14, lender: 'Parish of Saint Osk', source: 'loan', notes: '-2' } },
];

function filled(): ShowDocuments {
  const documents = new ShowDocuments();
  new ActHistory(documents, 'me').perform(commands.addObjects(documents, RECORDS));
  return documents;
}

describe('the checklist taken out', () => {
  test.each([
    ['checklist.csv', async (table: string[][]) => new TextEncoder().encode(`\ufeff${csvFrom(table)}`)],
    ['checklist.xlsx', (table: string[][]) => xlsxFrom(table, 'Checklist')],
  ])('law: %s comes in again as the same records, and nothing is added', async (name, written) => {
    const documents = filled();
    const table = checklistTable(documents, { withPrivate: true });
    const bytes = await written(table);
    const { table: read } = await importFile(new Blob([new Uint8Array(bytes)]), name, { sheet: null, tell: () => {} });
    const reading = checklistFromTable(read);
    const before = [...documents.all('objects').values()];
    const incoming = recordsInFrom(documents, reading.rows, new Map());
    expect([incoming.added, incoming.updated]).toEqual([0, 2]);
    // An apostrophe keeps a spreadsheet from running a title as a formula; in the workbook none is needed.
    const kept = (title: string) => title.replace(/^'(?==)/, '');
    for (const { object } of incoming.records) {
      const own = before.find(({ number }) => number === object.number);
      expect({ ...object, title: kept(object.title) }).toMatchObject(own ?? {});
    }
    expect(incoming.records.find(({ object }) => object.number === '1987.12.5')?.private).toEqual(RECORDS[0]?.private);
  });

  test('law: without the private columns nothing of them is in it', () => {
    const out = JSON.stringify(checklistTable(filled(), { withPrivate: false }));
    expect(out).not.toMatch(/9,000|Rack 3|Insurance|Storage/);
  });
});
