/** ODS spreadsheets (OpenDocument 1.3, ISO/IEC 26300): the tables of `content.xml`, as they are shown. */
import type { GridCell, MergedCells, SheetGrid } from '@enfilade/records/sheet-grid';
import { bytesOf, type Importer, NotImported } from './importer.ts';
import { importedSheet, likeliestSheet } from './sheet-choice.ts';
import { isZip } from './xlsx.ts';
import { parseXml } from './xml-parsing.ts';
import { entriesOf, zipEntries } from './zip-entries.ts';

const MOST_BYTES = 120_000_000;
const MOST_UNPACKED = 400_000_000;
const MOST_ENTRIES = 10_000;
const CONTENT = 'content.xml';

export const ods: Importer = {
  knows: (head, fileName) => isZip(head) && /\.ods$/i.test(fileName),
  read: async (file, { sheet: asked, tell }) => {
    tell('unpacking', null);
    const packed = await bytesOf(file, MOST_BYTES);
    const content = zipEntries(packed, MOST_ENTRIES).find(({ name }) => name === CONTENT);
    if (content === undefined) throw new NotImported('It is no ODS spreadsheet, whatever its name says.');
    if (content.bytes > MOST_UNPACKED) {
      throw new NotImported(
        `It unpacks to ${Math.round(content.bytes / 1e6)} MB; at most ${MOST_UNPACKED / 1e6} are taken.`,
      );
    }
    const text = new TextDecoder().decode(entriesOf(packed, new Set([CONTENT])).get(CONTENT));
    const reading = new OdsReading();
    const broken = await parseXml(text, reading, (share) => tell('reading its sheets', share));
    if (broken !== null) throw new NotImported(`It is damaged: what it holds breaks off at ${broken}.`);
    const { grids } = reading;
    const name = grids.find((grid) => grid.name === asked)?.name ?? likeliestSheet(grids) ?? grids[0]?.name;
    const grid = grids.find((one) => one.name === name);
    if (grid === undefined) throw new NotImported('There is no sheet in it.');
    tell(`reading sheet “${grid.name}”`, null);
    return importedSheet(
      grid,
      grids.map((one) => ({ name: one.name, hidden: one.hidden })),
      'ODS',
    );
  },
};

/** A cell said to be repeated is written so often at most; a spreadsheet fills its width with empty ones. */
const MOST_CELLS = 3_000_000;
const MOST_COLUMNS = 16_384;

interface OpenGrid extends SheetGrid {
  readonly rows: (readonly GridCell[])[];
  readonly merged: MergedCells[];
}

class OdsReading {
  readonly grids: OpenGrid[] = [];
  private readonly hiddenStyles = new Set<string>();
  private style = '';
  private row: GridCell[] = [];
  private rowRepeat = 1;
  private y = 0;
  private cells = 0;
  private cell: { readonly attributes: Readonly<Record<string, string>>; readonly paragraphs: string[] } | null = null;
  /** Inside a remark on a cell, or a table within a cell. */
  private aside = 0;

  readonly open = (name: string, attributes: Readonly<Record<string, string>>): void => {
    if (this.aside > 0 || name === 'annotation') {
      this.aside += 1;
      return;
    }
    switch (name) {
      case 'style':
        this.style = attributes.name ?? '';
        return;
      case 'table-properties':
        if (attributes.display === 'false') this.hiddenStyles.add(this.style);
        return;
      case 'table':
        this.y = 0;
        this.grids.push({
          name: attributes.name ?? `Sheet ${this.grids.length + 1}`,
          hidden: this.hiddenStyles.has(attributes['style-name'] ?? ''),
          rows: [],
          merged: [],
        });
        return;
      case 'table-row':
        this.row = [];
        this.rowRepeat = countOf(attributes['number-rows-repeated']);
        return;
      case 'table-cell':
      case 'covered-table-cell':
        this.cell = { attributes, paragraphs: [] };
        return;
      case 'p':
        this.cell?.paragraphs.push('');
        return;
      case 's':
        this.text(' '.repeat(Math.min(100, countOf(attributes.c))));
        return;
      case 'tab':
      case 'line-break':
        this.text(name === 'tab' ? ' ' : '\n');
    }
  };

  readonly text = (said: string): void => {
    const paragraphs = this.cell?.paragraphs;
    if (this.aside === 0 && paragraphs !== undefined && paragraphs.length > 0)
      paragraphs.push(`${paragraphs.pop()}${said}`);
  };

  readonly close = (name: string): void => {
    if (this.aside > 0) this.aside -= 1;
    else if (name === 'table-cell' || name === 'covered-table-cell') this.endCell(name);
    else if (name === 'table-row') this.endRow();
  };

  private endCell(name: string): void {
    if (this.cell === null) return;
    const { attributes, paragraphs } = this.cell;
    this.cell = null;
    const times = Math.min(countOf(attributes['number-columns-repeated']), MOST_COLUMNS);
    const value = name === 'covered-table-cell' ? undefined : cellFrom(attributes, paragraphs.join('\n'));
    const [down, across] = [attributes['number-rows-spanned'], attributes['number-columns-spanned']].map(countOf) as [
      number,
      number,
    ];
    const left = this.row.length;
    if (down * across > 1) {
      this.grids.at(-1)?.merged.push({ top: this.y, left, bottom: this.y + down - 1, right: left + across - 1 });
    }
    if (value !== undefined) this.counted(times * this.rowRepeat);
    for (let n = 0; n < times && this.row.length < MOST_COLUMNS; n++) this.row.push(value);
  }

  private endRow(): void {
    const grid = this.grids.at(-1);
    while (this.row.length > 0 && this.row.at(-1) === undefined) this.row.pop();
    if (grid !== undefined && this.row.length > 0) {
      while (grid.rows.length < this.y) grid.rows.push([]);
      for (let n = 0; n < this.rowRepeat; n++) grid.rows.push(this.row);
    }
    this.y += this.rowRepeat;
  }

  private counted(cells: number): void {
    this.cells += cells;
    if (this.cells > MOST_CELLS)
      throw new NotImported(`It says it has more than ${MOST_CELLS / 1e6} million filled cells.`);
  }
}

function countOf(text: string | undefined): number {
  const count = Number(text ?? 1);
  return Number.isInteger(count) && count >= 1 && count <= 2 ** 21 ? count : 1;
}

/** By its value type (19.387): a date by its ISO value, everything else as it is shown. */
function cellFrom(attributes: Readonly<Record<string, string>>, shown: string): GridCell {
  const type = attributes['value-type'];
  if (/^(#|Err:)/.test(shown) && (attributes.formula !== undefined || type === undefined)) {
    return { text: shown, fault: `The spreadsheet shows ${shown} here; the cell is taken as empty.` };
  }
  if (attributes.formula !== undefined && type === undefined && shown === '') {
    const fault =
      'A formula whose value is not kept in the file; the cell is taken as empty. Opened in a spreadsheet and saved, it will be.';
    return { text: attributes.formula, fault };
  }
  const date = /^(-?\d{1,6})-(\d\d)-(\d\d)(?:T|$)/.exec(attributes['date-value'] ?? '');
  if (type === 'date' && date !== null) {
    const [year, month, day] = date.slice(1).map(Number) as [number, number, number];
    const text = /\d{1,2}\D+\d{1,2}\D|\d.*\d{4}|\d{4}.*\d/.test(shown) ? `${date[1]}-${date[2]}-${date[3]}` : shown;
    return { text, shown, date: { year, month, day } };
  }
  if (type === 'float' && shown === attributes.value) return { text: shown, figure: Number(shown) };
  if (shown === '') return attributes['string-value'] || attributes.value || undefined;
  return shown;
}
