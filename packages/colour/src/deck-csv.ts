import { delimitedRows, delimiterOf, toCell } from './delimited.ts';
import {
  type FileIssue,
  numberFrom,
  type Origin,
  type PaintFile,
  type PaintFileOptions,
  paintFrom,
  type RawPaint,
  tidy,
} from './paint-file.ts';
import type { MeasuredPaint } from './paints.ts';
import { evenWavelengths, wavelengthOf, wholeOf } from './wavelengths.ts';

type Field =
  | 'name'
  | 'code'
  | 'L'
  | 'a'
  | 'b'
  | 'illuminant'
  | 'observer'
  | 'lrv'
  | 'sheen'
  | 'measured'
  | 'instrument';

// Headings with all but letters and digits taken out.
const HEADINGS: ReadonlyMap<string, Field> = new Map([
  ...headed('name', 'name paint colour color colourname colorname paintname samplename sample'),
  ...headed('code', 'code colourcode colorcode paintcode reference ref number no sampleid id'),
  ...headed('L', 'l labl ciel lstar lightness'),
  ...headed('a', 'a laba ciea astar'),
  ...headed('b', 'b labb cieb bstar'),
  ...headed('illuminant', 'illuminant illuminantobserver whitepoint'),
  ...headed('observer', 'observer observerangle'),
  ...headed('lrv', 'lrv lightreflectancevalue'),
  ...headed('sheen', 'sheen finish'),
  ...headed('measured', 'measured measuredat date read'),
  ...headed('instrument', 'instrument reader device'),
]);

function headed(field: Field, words: string): [string, Field][] {
  return words.split(' ').map((word) => [word, field]);
}

// "L* (D65/10°)", "a* D50/2": the white point stands in the heading itself.
const WITH_WHITE = /^(L|a|b)\*? ?[ (] ?([A-Z]\d{0,2}) ?\/ ?(2|10)\D{0,4}$/i;

/**
 * Paints of a deck or of readings as CSV (commas, semicolons or tabs; one heading row). Columns are known by heading:
 * name, code, L*, a*, b*, illuminant, observer, LRV, sheen, and one a wavelength ("400 nm", "SPEC_400", "R400").
 */
export function paintsFromCsv(text: string, options: PaintFileOptions): PaintFile {
  const issues: FileIssue[] = [];
  const [heading, ...rows] = delimitedRows(text, delimiterOf(text));
  const columns = new Map<Field, number>();
  const spectral: { nm: number; column: number }[] = [];
  let [headedIlluminant, headedObserver]: (string | undefined)[] = [];
  for (const [column, cell] of (heading?.cells ?? []).entries()) {
    const nm = wavelengthOf(cell);
    const stated = WITH_WHITE.exec(cell.trim().slice(0, 40));
    if (stated) [, , headedIlluminant, headedObserver] = stated;
    const field = HEADINGS.get((stated?.[1] ?? cell).toLowerCase().replace(/[^a-z0-9]/g, ''));
    if (nm !== null) spectral.push({ nm, column });
    else if (field && !columns.has(field)) columns.set(field, column);
  }
  spectral.sort((p, q) => p.nm - q.nm);
  const hasLab = columns.has('L') && columns.has('a') && columns.has('b');
  if (!hasLab && spectral.length === 0) {
    const where = `${options.file}, line ${heading?.line ?? 1}`;
    issues.push({
      where,
      what: 'No columns are headed L*, a*, b* or with wavelengths.',
      value: (heading?.cells ?? []).join(' | ').slice(0, 200),
    });
    return { paints: [], origins: [], issues };
  }
  const whole = wholeOf(rows.map(({ cells }) => spectral.map(({ column }) => numberFrom(cells[column] ?? ''))));
  const paints: MeasuredPaint[] = [];
  const origins: Origin[] = [];
  for (const { line, cells } of rows) {
    const placed = (field: string): string => `${options.file}, line ${line}, ${field}`;
    const of = (field: Field): string => cells[columns.get(field) ?? -1] ?? '';
    const filled = spectral.filter(({ column }) => (cells[column] ?? '').trim() !== '');
    const even = filled.length > 0 && evenWavelengths(filled.map(({ nm }) => nm));
    if (typeof even === 'string')
      issues.push({ where: placed('reflectance'), what: `${even} It is left out.`, value: `${filled.length} values` });
    const raw: RawPaint = {
      name: of('name'),
      code: of('code'),
      illuminant: of('illuminant') || (headedIlluminant ?? ''),
      observer: of('observer') || (headedObserver ?? ''),
      lrv: of('lrv'),
      sheen: of('sheen'),
      measured: of('measured'),
      instrument: of('instrument'),
      ...(hasLab && { lab: [of('L'), of('a'), of('b')] as const }),
      ...(typeof even === 'object' && {
        spectrum: { ...even, whole, texts: filled.map(({ column }) => cells[column]!) },
      }),
    };
    const paint = paintFrom(raw, options, placed, issues);
    if (!paint) continue;
    paints.push(paint);
    origins.push({ where: `line ${line}`, source: tidy(cells.join(' | ')) });
  }
  return { paints, origins, issues };
}

const NAMED = ['name', 'code', 'L*', 'a*', 'b*', 'illuminant', 'observer', 'LRV', 'sheen', 'measured', 'instrument'];

/** A deck as CSV that `paintsFromCsv` reads back alike: shares 0..1, one column for each wavelength that any paint has. */
export function toDeckCsv(paints: readonly MeasuredPaint[]): string {
  const nmOf = ({ reflectance }: MeasuredPaint): number[] =>
    reflectance ? reflectance.values.map((_, i) => reflectance.startNm + i * reflectance.stepNm) : [];
  const wavelengths = [...new Set(paints.flatMap(nmOf))].sort((p, q) => p - q);
  const rows = paints.map((paint) => {
    const { name, code, lab, lrv, sheen, measured, instrument, reflectance } = paint;
    const shares = new Map(nmOf(paint).map((nm, i) => [nm, reflectance!.values[i]!]));
    return [
      name,
      code,
      lab?.L,
      lab?.a,
      lab?.b,
      lab?.illuminant,
      lab?.observer,
      lrv,
      sheen,
      measured,
      instrument,
    ].concat(wavelengths.map((nm) => shares.get(nm)));
  });
  return [[...NAMED, ...wavelengths.map((nm) => `${nm} nm`)], ...rows]
    .map((cells) => cells.map((cell) => toCell(String(cell ?? ''))).join(','))
    .join('\r\n')
    .concat('\r\n');
}
