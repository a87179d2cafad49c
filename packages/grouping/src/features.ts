import type { Column, Look, WordColumn } from './columns.ts';
import type { GroupingRecord, Swatch } from './records.ts';

/** Something in the data that was left out, and what was there. */
export interface Issue {
  readonly where: string;
  readonly what: string;
  readonly value: unknown;
}

/** A pool made ready to compare: rows in the order of their ids, whatever order they came in. */
export interface Features {
  readonly ids: readonly string[];
  readonly columns: readonly Column[];
  readonly records: readonly GroupingRecord[];
  readonly issues: readonly Issue[];
}

const FREQUENT_WORDS = 128;
const NUMBERS = ['earliestYear', 'latestYear', 'heightMm', 'widthMm', 'depthMm'] as const;

/** The features of records; numbers that cannot be and ids met twice are left out and told as issues. */
export function featuresOf(given: readonly GroupingRecord[]): Features {
  const issues: Issue[] = [];
  const byId = new Map<string, GroupingRecord>();
  for (const record of given)
    if (byId.has(record.id))
      issues.push({ where: record.id, what: 'id met twice, the first is kept', value: record.id });
    else byId.set(record.id, sane(record, issues));
  const records = [...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const words = (name: string, of: (r: GroupingRecord) => string | undefined) =>
    wordColumn(name, 'use', records.map(of));
  const size = (name: string, of: (r: GroupingRecord) => number | undefined) =>
    numberColumn(name, 'size', 'ln mm', records, (r) => Math.log(of(r) ?? Number.NaN));
  const columns = [
    words('type', (r) => r.type),
    wordsColumn(
      'material',
      'use',
      records.map((r) => r.materials ?? []),
    ),
    wordsColumn(
      'tag',
      'use',
      records.map((r) => r.tags ?? []),
    ),
    words('maker', (r) => r.maker),
    words('from', (r) => r.from),
    numberColumn('made', 'age', 'year', records, ({ earliestYear: e, latestYear: l }) => ((e ?? l)! + (l ?? e)!) / 2),
    size('height', (r) => r.heightMm),
    size('width', (r) => r.widthMm),
    size('depth', (r) => r.depthMm),
    vectorColumn('colour', 'colour', 3, 60, records, ({ palette }) => palette && meanColour(palette)),
    vectorColumn(
      'outline',
      'shape',
      10,
      0.7,
      records,
      ({ silhouette: s }) => s && [...s.outline, 0.5 * Math.log(s.aspect), s.fill],
    ),
  ];
  return { ids: records.map(({ id }) => id), columns: columns.filter((c) => c !== undefined), records, issues };
}

/** The column of types, by which what is alike at first sight is told from what is found. */
export function typeColumn({ columns }: Pick<Features, 'columns'>): WordColumn | undefined {
  return columns.find((c): c is WordColumn => c.kind === 'word' && c.name === 'type');
}

/** The mean of a palette as L, a, b, D65, or undefined when nothing has a share. */
export function meanColour(palette: readonly Swatch[]): [number, number, number] | undefined {
  const all = palette.reduce((sum, { share }) => sum + share, 0);
  const mean = (of: (swatch: Swatch) => number) => palette.reduce((sum, s) => sum + of(s) * s.share, 0) / all;
  return all > 0 ? [mean((s) => s.L), mean((s) => s.a), mean((s) => s.b)] : undefined;
}

function sane(record: GroupingRecord, issues: Issue[]): GroupingRecord {
  const kept: { -readonly [K in keyof GroupingRecord]: GroupingRecord[K] } = { ...record };
  for (const field of NUMBERS) {
    const value = kept[field];
    if (value === undefined || (Number.isFinite(value) && (!field.endsWith('Mm') || value > 0))) continue;
    issues.push({ where: `${record.id}/${field}`, what: 'not a number that can be', value });
    delete kept[field];
  }
  const palette = kept.palette?.filter((s) => [s.L, s.a, s.b].every(Number.isFinite) && s.share > 0);
  if (palette?.length !== kept.palette?.length)
    issues.push({ where: `${record.id}/palette`, what: 'swatches without a colour or a share', value: record.palette });
  if (palette && palette.length > 0) kept.palette = palette;
  else delete kept.palette;
  return kept;
}

const plain = (word: string | undefined) => word?.trim().toLowerCase() ?? '';

function wordColumn(name: string, look: Look, given: readonly (string | undefined)[]): WordColumn | undefined {
  // Said as it is written; of two ways of writing one word, as the first in order.
  const written = new Map<string, string>();
  for (const word of given.flatMap((one) => one?.trim() || []))
    if (word < (written.get(plain(word)) ?? '\uffff')) written.set(plain(word), word);
  const sorted = [...written].sort(([a], [b]) => (a < b ? -1 : 1));
  const at = new Map(sorted.map(([word], code) => [word, code]));
  if (sorted.length === 0) return undefined;
  return {
    kind: 'word',
    name,
    look,
    words: sorted.map(([, word]) => word),
    codes: Int32Array.from(given, (word) => at.get(plain(word)) ?? -1),
  };
}

/** The frequent words have a bit each; the rest share 32 by their letters, so that two rare ones are seldom taken for one. */
function wordsColumn(name: string, look: Look, given: readonly (readonly string[])[]): Column | undefined {
  const count = new Map<string, number>();
  for (const list of given) for (const word of new Set(list.map(plain))) count.set(word, (count.get(word) ?? 0) + 1);
  count.delete('');
  const ranked = [...count].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1)).map(([word]) => word);
  if (ranked.length === 0) return undefined;
  const words = ranked.slice(0, FREQUENT_WORDS);
  const at = new Map(words.map((word, bit) => [word, bit]));
  const frequent = Math.ceil(words.length / 32);
  const width = frequent + (ranked.length > words.length ? 1 : 0);
  const bits = new Int32Array(given.length * width);
  for (const [i, list] of given.entries())
    for (const word of list.map(plain)) {
      if (word === '') continue;
      const bit = at.get(word) ?? 32 * frequent + ([...word].reduce((h, c) => (31 * h + c.charCodeAt(0)) | 0, 7) & 31);
      bits[i * width + (bit >> 5)]! |= 1 << (bit & 31);
    }
  return { kind: 'words', name, look, bits, width, words };
}

function numberColumn(
  name: string,
  look: Look,
  unit: 'ln mm' | 'year',
  records: readonly GroupingRecord[],
  of: (record: GroupingRecord) => number,
): Column | undefined {
  const values = Float64Array.from(records, of);
  const known = values.filter((value) => !Number.isNaN(value)).sort();
  if (known.length === 0) return undefined;
  // What the middle 96 of 100 span: one barge among the thimbles leaves the thimbles their differences.
  const span = known[Math.ceil(0.98 * (known.length - 1))]! - known[Math.floor(0.02 * (known.length - 1))]!;
  return { kind: 'number', name, look, unit, values, range: span > 1e-6 ? span : 1 };
}

function vectorColumn(
  name: string,
  look: Look,
  width: number,
  range: number,
  records: readonly GroupingRecord[],
  of: (record: GroupingRecord) => readonly number[] | undefined,
): Column | undefined {
  const values = new Float32Array(records.length * width).fill(Number.NaN);
  let some = false;
  for (const [i, record] of records.entries()) {
    const row = of(record);
    if (!row) continue;
    values.set(row, i * width);
    some = true;
  }
  return some ? { kind: 'vector', name, look, values, width, range } : undefined;
}
