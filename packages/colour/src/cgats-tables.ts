/** One data set of a CGATS table: its line, and its texts in the order of the fields. */
export interface CgatsSet {
  readonly line: number;
  readonly texts: readonly string[];
}

/** One table of a CGATS.17 file: what its keywords say (the last word of each), its fields and its data sets. */
export interface CgatsTable {
  readonly keywords: ReadonlyMap<string, readonly string[]>;
  readonly fields: readonly string[];
  readonly sets: readonly CgatsSet[];
}

/** What is wrong with the table's own frame. */
export interface CgatsFault {
  readonly line: number;
  readonly field: string;
  readonly what: string;
  readonly value: string;
}

interface Line {
  readonly line: number;
  readonly texts: readonly string[];
}

/** Words and quoted texts of each line that has any; "" within quotes is one quote, # starts a comment. */
function linesOf(text: string): Line[] {
  return text.split(/\r\n|\n|\r/).flatMap((row, i) => {
    const texts = [...row.matchAll(/"((?:[^"]|"")*)"?|#.*|[^\s"]+/g)]
      .filter(([found]) => !found.startsWith('#'))
      .map(([found, quoted]) => (found.startsWith('"') ? (quoted ?? '').replaceAll('""', '"') : found));
    return texts.length > 0 ? [{ line: i + 1, texts }] : [];
  });
}

/** The tables of CGATS.17 text in their order (also as IT8.7 files have them), with what is wrong of their frames. */
export function cgatsTables(text: string): { tables: CgatsTable[]; faults: CgatsFault[] } {
  const tables: CgatsTable[] = [];
  const faults: CgatsFault[] = [];
  const keywords = new Map<string, readonly string[]>();
  let fields: string[] = [];
  let rows: Line[] = [];
  let part: 'keywords' | 'format' | 'data' = 'keywords';
  const endTable = (): void => {
    tables.push({ keywords: new Map(keywords), fields, sets: setsOf(rows, fields, keywords, faults) });
    rows = [];
    part = 'keywords';
  };
  const all = linesOf(text);
  for (const { line, texts } of all) {
    const first = texts[0]!.toUpperCase();
    if (first === 'BEGIN_DATA_FORMAT') {
      fields = [];
      part = 'format';
      fields.push(...texts.slice(1).filter((each) => each !== 'END_DATA_FORMAT'));
      if (texts.length > 1 && texts.at(-1) === 'END_DATA_FORMAT') part = 'keywords';
    } else if (first === 'END_DATA_FORMAT') {
      part = 'keywords';
      const stated = Number(keywords.get('NUMBER_OF_FIELDS')?.[0] ?? fields.length);
      if (stated !== fields.length) {
        const what = `The file says ${stated} fields and names ${fields.length}; the named ones are read.`;
        faults.push({ line, field: 'NUMBER_OF_FIELDS', what, value: keywords.get('NUMBER_OF_FIELDS')![0]! });
      }
    } else if (first === 'BEGIN_DATA') {
      part = 'data';
      if (fields.length === 0) {
        faults.push({
          line,
          field: 'BEGIN_DATA_FORMAT',
          what: 'The data comes before its fields are named.',
          value: '',
        });
      }
    } else if (first === 'END_DATA') endTable();
    else if (part === 'format') fields.push(...texts);
    else if (part === 'data') rows.push({ line, texts });
    // A weighting is stated in two lines of one keyword: both are kept.
    else
      keywords.set(
        first,
        first === 'WEIGHTING_FUNCTION' ? [...(keywords.get(first) ?? []), ...texts.slice(1)] : texts.slice(1),
      );
  }
  if (part === 'data') {
    faults.push({
      line: all.at(-1)!.line,
      field: 'END_DATA',
      what: 'The data has no end; what is there is read.',
      value: '',
    });
    endTable();
  }
  return { tables, faults };
}

/** Rows as sets: line by line, or, where sets run over lines, by counting when the whole comes out even. */
function setsOf(
  rows: readonly Line[],
  fields: readonly string[],
  keywords: ReadonlyMap<string, readonly string[]>,
  faults: CgatsFault[],
): CgatsSet[] {
  const n = fields.length;
  if (n === 0) return [];
  const stated = Number(keywords.get('NUMBER_OF_SETS')?.[0] ?? Number.NaN);
  const words = rows.flatMap(({ line, texts }) => texts.map((text) => ({ line, text })));
  if (rows.length > stated && words.length === n * stated) {
    return Array.from({ length: stated }, (_, i) => {
      const own = words.slice(i * n, (i + 1) * n);
      return { line: own[0]!.line, texts: own.map(({ text }) => text) };
    });
  }
  const whole = rows.filter(({ line, texts }) => {
    if (texts.length === n) return true;
    const what = `It has ${texts.length} values where ${n} fields are named, so it is left out.`;
    faults.push({ line, field: fields[texts.length] ?? fields[n - 1]!, what, value: texts.join(' ').slice(0, 200) });
    return false;
  });
  if (!Number.isNaN(stated) && stated !== rows.length) {
    const line = rows.at(-1)?.line ?? 0;
    faults.push({
      line,
      field: 'NUMBER_OF_SETS',
      what: `The file says ${stated} sets and has ${rows.length}; those are read.`,
      value: `${stated}`,
    });
  }
  return whole;
}
