/** CSV in the encodings that spreadsheets write, parted by commas, semicolons or tabs. */
import { csvTextFrom, delimiterOf } from '@enfilade/records/csv-text';
import { tableFromRows } from '@enfilade/records/imported-table';
import { textEncodingOf } from '@enfilade/records/text-encoding';
import Papa from 'papaparse';
import { bytesOf, type Importer, NotImported } from './importer.ts';

const MOST_BYTES = 60_000_000;
const ENCODINGS = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Windows-1252',
} as const;
const PARTED = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;

export const csv: Importer = {
  knows: (_, fileName) => /\.(csv|tsv|txt)$/i.test(fileName),
  read: async (file, { tell }) => {
    tell('reading', null);
    const bytes = await bytesOf(file, MOST_BYTES);
    const written = textEncodingOf(bytes);
    const decoded = new TextDecoder(written).decode(bytes);
    if (decoded.includes('\0')) throw new NotImported('It is no text, whatever its name says.');
    const text = csvTextFrom(decoded);
    const delimiter = delimiterOf(text);
    const cells = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false }).data;
    if (cells.at(-1)?.length === 1 && cells.at(-1)?.[0] === '') cells.pop();
    if (cells.length < 2) throw new NotImported('It has headings at most, and no row below them.');
    return {
      table: tableFromRows(cells),
      about: `${PARTED[delimiter]}, ${ENCODINGS[written]}`,
      sheets: [],
      sheet: null,
    };
  },
};
