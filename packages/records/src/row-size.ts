/** Sizes and weight of one row, with what is told of them. */
import { dimensionChoices } from './dimension-choices.ts';
import type { DimensionReading } from './dimension-reading.ts';
import { dimensionsFrom } from './dimensions.ts';
import { type OuterSize, outerSizeOf } from './outer-size.ts';
import type { Tell } from './row-issue.ts';
import { unitStatedBy, withStated } from './stated-by-heading.ts';

export interface RowSize {
  readonly size: OuterSize | null;
  readonly dimensions: DimensionReading | null;
  readonly framed: DimensionReading | null;
  /** With what the headings state written out. */
  readonly dimensionsText: string;
  readonly framedText: string;
  /** Cells that would be read in a wrong order, with their headings: for the notes. */
  readonly unread: readonly string[];
}

/** `dimensions` and `framed` are cells with their headings. */
export function rowSizeFrom(
  cells: { readonly dimensions: readonly [cell: string, heading: string]; readonly framed: readonly [string, string] },
  tell: Tell,
): RowSize {
  const unread: string[] = [];
  const read = ([cell, heading]: readonly [string, string], field: 'dimensions' | 'framedDimensions') => {
    if (cell === '') return { text: '', reading: null };
    const text = withStated(cell, heading);
    if (text !== null) return { text, reading: dimensionsFrom(text) };
    tell(field, 'order not understood', `The heading says “${heading}”; the figures cannot be put in that order.`);
    // The usual order would be wrong, also later.
    unread.push(`${heading}: ${cell}`);
    return { text: '', reading: null };
  };
  const dimensions = read(cells.dimensions, 'dimensions');
  const framed = read(cells.framed, 'framedDimensions');
  const size = outerSizeOf({
    ...(dimensions.reading ? { dimensions: dimensions.reading } : {}),
    ...(framed.reading ? { framed: framed.reading } : {}),
  });
  const told = tellReading(framed.reading, 'framedDimensions', size, tell);
  const toldToo = tellReading(dimensions.reading, 'dimensions', size, tell);
  if (size === null && !told && !toldToo && unread.length === 0) {
    const given = cells.dimensions[0] !== '' || cells.framed[0] !== '';
    tell('dimensions', 'size missing', given ? 'Height or width is not given.' : 'No size is given.');
  }
  return {
    size,
    dimensions: dimensions.reading,
    framed: framed.reading,
    dimensionsText: dimensions.text,
    framedText: framed.text,
    unread,
  };
}

function tellReading(
  reading: DimensionReading | null,
  field: 'dimensions' | 'framedDimensions',
  size: OuterSize | null,
  tell: Tell,
): boolean {
  if (reading === null) return false;
  const choices = dimensionChoices(reading);
  const seen = new Set<string>();
  const unread = [...new Set(reading.issues.filter(({ kind }) => kind === 'not understood').map(({ what }) => what))];
  for (const { kind, what } of reading.issues) {
    // Of no matter where the framed size is known.
    if (kind === 'sight size' && size?.basis === 'framed') continue;
    // A cell is asked about once for each kind of doubt, not for each figure.
    if (seen.has(kind)) continue;
    seen.add(kind);
    const sentence = kind === 'not understood' ? unread.join(' ') : what;
    tell(field, kind, sentence, kind === 'systems disagree' && choices.length > 0 ? { choices } : {});
  }
  return seen.size > 0;
}

/** Kilograms of a weight cell, or null with the reason told; an empty cell is no issue. */
export function weightKgFrom(cell: string, heading: string, tell: Tell): number | null {
  if (cell === '') return null;
  const unit = unitStatedBy(heading);
  const reading = dimensionsFrom(/^[\d.,\s]+$/.test(cell) && unit !== '' ? `${cell} ${unit}` : cell);
  const disagree = reading.issues.find(({ kind }) => kind === 'systems disagree');
  if (disagree) {
    tell('weight', 'systems disagree', disagree.what);
    return null;
  }
  if (reading.weight && reading.weight.kg > 0 && reading.parts.length === 0 && reading.issues.length === 0) {
    return reading.weight.kg;
  }
  if (/^[\d.,\s½¼¾/]+$/.test(cell)) {
    tell('weight', 'weight without unit', 'No unit. Not guessed.', { choices: [`${cell} kg`, `${cell} lb`] });
  } else tell('weight', 'weight not understood', 'The weight cannot be read; it is left open.');
  return null;
}
