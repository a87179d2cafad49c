/** The checklist as the museum would send it, and its pictures by object number: for trying Bring in. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { CHECKLIST, type DemoRecord } from './checklist.ts';
import { pictureOf } from './drawing/picture.ts';
import { onStudioGround, type StudioGround } from './studio-ground.ts';

export const CHECKLIST_FILE = 'overwick-checklist.csv';

type Column = readonly [heading: string, cell: (record: DemoRecord) => string];

const COLUMNS: readonly Column[] = [
  ['Accession No', (r) => r.number],
  ['Object Name', (r) => r.type],
  ['Title', (r) => r.title],
  ['Artist/Maker', (r) => r.maker],
  ['Date', (r) => r.dateText],
  ['Medium', (r) => r.medium],
  ['Dimensions', (r) => r.dimensionsText],
  ['Framed Dimensions', (r) => r.framedText],
  ['Weight', (r) => (r.weightKg === null ? '' : `${r.weightKg} kg`)],
  ['Count', (r) => String(r.count)],
  ['Lender', (r) => r.lender],
  ['Credit Line', (r) => r.creditLine],
  ['Hardware', (r) => r.hardwareText],
  ['Notes', (r) => r.notes],
  ['Location', (r) => r.private.storage],
  ['Value', (r) => r.private.value],
  ['Old shelf', () => ''],
];

function cell(text: string): string {
  return /[;"\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The checklist as CSV text: byte order mark, semicolons, some cells over several lines, the value in a column. */
export function toChecklistCsv(records: readonly DemoRecord[] = CHECKLIST): string {
  const lines = [COLUMNS.map(([heading]) => heading), ...records.map((r) => COLUMNS.map(([, of]) => of(r)))];
  return `\uFEFF${lines.map((line) => line.map(cell).join(';')).join('\r\n')}\r\n`;
}

/** A picture's file name: the object number, with what file systems dislike written otherwise. */
export function pictureFileOf(number: string): string {
  return `${number.replaceAll('–', '-').replaceAll(' ', '_')}.png`;
}

export interface FilesWritten {
  readonly checklist: string;
  readonly pictures: readonly string[];
}

/**
 * Writes the checklist and a picture for each record into `folder`.
 * `only` picks records by id; with `faults`, a cut-off picture, an empty one and one without a number lie among them.
 */
export async function writeDemoFiles(
  folder: string,
  { only, faults = false }: { readonly only?: readonly string[]; readonly faults?: boolean } = {},
): Promise<FilesWritten> {
  await mkdir(folder, { recursive: true });
  const records = only === undefined ? CHECKLIST : CHECKLIST.filter(({ id }) => only.includes(id));
  const pictures: string[] = [];
  const write = async (name: string, bytes: Buffer) => {
    await writeFile(join(folder, name), bytes);
    pictures.push(name);
  };
  let last: Buffer | undefined;
  for (const record of records) {
    const png = await photographOf(record);
    last = png;
    await write(pictureFileOf(record.number), png);
  }
  if (faults && last !== undefined) {
    await write('IMG_2207.png', last.subarray(0, Math.floor(last.length / 3)));
    await write('IMG_2208.png', Buffer.alloc(0));
    await write('DSC_0412.png', last);
  }
  const checklist = join(folder, CHECKLIST_FILE);
  await writeFile(checklist, toChecklistCsv(records), 'utf8');
  return { checklist, pictures };
}

/** A record's or piece's picture as PNG with alpha. */
export async function pngOf(pictured: Parameters<typeof pictureOf>[0], longestPx?: number): Promise<Buffer> {
  return sharp(Buffer.from(pictureOf(pictured, 0, longestPx).svg))
    .png({ compressionLevel: 3 })
    .toBuffer();
}

/** A record's or piece's picture as it is sent: on the ground it was photographed on, or cut out where it has none. */
export async function photographOf(
  pictured: Parameters<typeof pictureOf>[0] & { readonly number?: string; readonly ground?: StudioGround | null },
  longestPx?: number,
): Promise<Buffer> {
  const cut = await pngOf(pictured, longestPx);
  return pictured.ground ? onStudioGround(cut, pictured.number ?? '', pictured.ground) : cut;
}
