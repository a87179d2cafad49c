/** What every importer answers: a table as a checklist has it, with where each row, each cell and each picture come from. */

/** A picture that the source names. It is fetched by whoever may call addresses, and only where a person asked. */
export interface PictureSource {
  readonly address: string;
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  /** Base address of an image service (IIIF Image API) that gives other sizes; null where there is none. */
  readonly service: string | null;
}

export interface ImportIssue {
  /** Path in the source: 'manifest', 'canvas 3', 'canvas 3, picture 1'. */
  readonly where: string;
  /** A sentence for a person. */
  readonly what: string;
  readonly value: string;
}

/** What is told of one cell: it is empty because it could not be read, or it stands otherwise than in the source. */
export interface CellTold {
  /** Row of the table; 1 is the headings. */
  readonly line: number;
  readonly column: number;
  readonly kind: 'number changed' | 'cell at fault';
  /** A sentence for a person. */
  readonly what: string;
  /** As it stands in the source. */
  readonly value: string;
  /** What could be put in its place. */
  readonly choices: readonly string[];
}

export interface ImportedTable {
  /** The headings, then a row for each object, as `checklistRowsFrom` takes them; [] where nothing could be read. */
  readonly cells: readonly (readonly string[])[];
  /** Of each row after the headings: where it stands in the source, 'lido 3', 'row 14'. */
  readonly places: readonly string[];
  /** Of each column: its name in the source, 'C' of a sheet, 'titleWrap/titleSet' of a record. */
  readonly columns: readonly string[];
  /** The sheet it stands in, with the number of each row after the headings in that sheet. */
  readonly sheet?: { readonly name: string; readonly rowNumbers: readonly number[] };
  readonly pictures: readonly (readonly PictureSource[])[];
  readonly issues: readonly ImportIssue[];
  readonly told?: readonly CellTold[];
}

/** One object before its table is made: what is said of it under which headings, in order. */
export interface ImportedObject {
  readonly place: string;
  readonly said: readonly (readonly [heading: string, text: string, path?: string])[];
  readonly pictures: readonly PictureSource[];
}

/** Brings objects that say different things under common headings, in the order first met; what is said twice is joined. */
export function tableFrom(objects: readonly ImportedObject[], issues: readonly ImportIssue[]): ImportedTable {
  const headings = new Map<string, number>();
  const columns: string[] = [];
  for (const { said } of objects) {
    for (const [heading, , path] of said) {
      if (headings.has(heading)) continue;
      headings.set(heading, headings.size);
      columns.push(path ?? `“${heading}”`);
    }
  }
  const rows = objects.map(({ said }) => {
    const row = Array.from({ length: headings.size }, (): string[] => []);
    for (const [heading, text] of said) row[headings.get(heading) as number]?.push(text);
    return row.map((texts) => [...new Set(texts)].join('; '));
  });
  return {
    cells: objects.length === 0 ? [] : [[...headings.keys()], ...rows],
    places: objects.map(({ place }) => place),
    columns,
    pictures: objects.map(({ pictures }) => pictures),
    issues,
  };
}

/** The headings and rows of a text file, each row under its number in the file. */
export function tableFromRows(cells: readonly (readonly string[])[]): ImportedTable {
  return {
    cells,
    places: cells.slice(1).map((_, index) => `row ${index + 2}`),
    columns: (cells[0] ?? []).map((heading, index) =>
      heading.trim() === '' ? `column ${index + 1}` : `“${heading.trim()}”`,
    ),
    pictures: cells.slice(1).map(() => []),
    issues: [],
  };
}

/** Where a cell stands in the source, for a person: 'Sheet “Loans”, C14', 'lido 3, titleWrap/titleSet'; null: the whole row. */
export function placeIn(
  table: Pick<ImportedTable, 'places' | 'columns' | 'sheet'>,
  line: number,
  column: number | null,
): string {
  const name = column === null ? undefined : table.columns[column];
  const place = table.places[line - 2] ?? '';
  if (table.sheet === undefined) return [place, name].filter((one) => one !== undefined && one !== '').join(', ');
  const row = table.sheet.rowNumbers[line - 2];
  return `Sheet “${table.sheet.name}”, ${name === undefined ? `row ${row}` : `${name}${row}`}`;
}
