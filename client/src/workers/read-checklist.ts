/** Reads a checklist apart from the page: bytes to cells to rows. The cells stay here, so that a mended heading is quick. */
import { csvTextFrom, delimiterOf } from '@enfilade/records/csv-text';
import { textEncodingOf } from '@enfilade/records/text-encoding';
import { checklistFrom } from '@enfilade/shared/checklist-reading';
import Papa from 'papaparse';
import type { ChecklistAnswer, ChecklistQuestion } from './checklist-task.ts';

const MOST_BYTES = 60_000_000;
const ENCODINGS = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Windows-1252',
} as const;
const PARTED = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;

let cells: string[][] = [];
let parted = 'commas';
let encoding: (typeof ENCODINGS)[keyof typeof ENCODINGS] = 'UTF-8';

addEventListener('message', async ({ data }: MessageEvent<ChecklistQuestion>) => {
  try {
    if (data.kind === 'mend') {
      answer({ kind: 'read', reading: checklistFrom(cells, data.mapping), parted, encoding });
      return;
    }
    const what = await read(data.file);
    if (what === null) answer({ kind: 'read', reading: checklistFrom(cells), parted, encoding });
    else answer({ kind: 'failed', what });
  } catch {
    answer({ kind: 'failed', what: 'It could not be read to its end. Nothing of it was brought in.' });
  }
});

/** Fills the cells; answers what is wrong with the file as a whole, or null. */
async function read(file: File): Promise<string | null> {
  if (file.size === 0) return 'It is empty: 0 bytes.';
  if (file.size > MOST_BYTES) return 'It is larger than 60 MB: no checklist, or many. Bring it in by parts.';
  const bytes = new Uint8Array(await file.arrayBuffer());
  const written = textEncodingOf(bytes);
  encoding = ENCODINGS[written];
  let text = new TextDecoder(written).decode(bytes);
  if (text.includes('\0')) return 'It is no text. A spreadsheet has to be saved as CSV first.';
  text = csvTextFrom(text);
  const delimiter = delimiterOf(text);
  parted = PARTED[delimiter];
  cells = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false }).data;
  if (cells.at(-1)?.length === 1 && cells.at(-1)?.[0] === '') cells.pop();
  if (cells.length < 2) return 'It has headings at most, and no row below them.';
  return null;
}

function answer(said: ChecklistAnswer): void {
  postMessage(said);
}
