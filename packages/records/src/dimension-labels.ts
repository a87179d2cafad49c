/** The words beside figures: `Frame (Salon), H:` names an extent and a dimension, `(W x H)` an order, `(cm)` a unit. */
import type { Axis } from './dimension-reading.ts';
import { axisNamed, type Extent, extentNamed } from './dimension-words.ts';
import type { ChainFigure } from './measure-chains.ts';
import { isMark, type Token, type Word } from './measure-tokens.ts';
import { isLength, type LengthUnit, unitNamed } from './measure-units.ts';

export interface Label {
  /** One for a single dimension, several for an order such as `W x H`; none where no dimension is named. */
  readonly axes: readonly Axis[];
  readonly unit: LengthUnit | null;
  /** Null where the words name no extent. */
  readonly extent: Extent | null;
  readonly text: string;
}

const EMPTY: Label = { axes: [], unit: null, extent: null, text: '' };

/** Reads the tokens of one label; `text` is what they are tokens of, `others`: German and French letters count. */
export function labelFrom(tokens: readonly Token[], text: string, others: boolean): Label {
  const [first] = tokens;
  if (first === undefined) return EMPTY;
  const rest = [...tokens];
  const axes = takeOrder(rest, others) ?? takeAxis(rest, others);
  const units = rest.filter((token): token is Word => token.kind === 'word' && isUnit(token.word));
  const only = units.length === 1 ? unitNamed(units[0]?.word ?? '') : null;
  const words = rest.map((token) => (token.kind === 'word' ? token.word : text.slice(token.start, token.end)));
  return {
    axes,
    unit: isLength(only) ? only : null,
    extent: extentNamed(spaced(words)),
    text: text.slice(first.start, tokens.at(-1)?.end).trim(),
  };
}

/** `in` is a word more often than a unit. */
function isUnit(word: string): boolean {
  return /^(cm|mm|inches|in)$/.test(word);
}

/** `W x H`, with the times signs of a list of dimensions, taken out of `tokens`. */
function takeOrder(tokens: Token[], others: boolean): Axis[] | null {
  const at = tokens.findIndex((token, i) => token.kind === 'times' && tokens[i - 1]?.kind === 'word');
  if (at < 1) return null;
  const axes: Axis[] = [];
  let end = at - 1;
  for (;;) {
    const word = tokens[end];
    const axis = word?.kind === 'word' ? axisNamed(word.word, true) : null;
    if (axis === null) return null;
    end += 1;
    // `H x B x L/T`: the other word is for things that lie; the depth is meant where they stand.
    const other = tokens[end + 1];
    const second = isMark(tokens[end], '/') && other?.kind === 'word' ? axisNamed(other.word, true) : null;
    axes.push(second === 'depth' ? second : axis);
    if (second !== null) end += 2;
    if (tokens[end]?.kind !== 'times') break;
    end += 1;
  }
  // A lone B or T is a letter of German only beside others.
  if (new Set(axes).size < axes.length && !others) return null;
  tokens.splice(at - 1, end - at + 1);
  return axes;
}

/** `H`, `Diam. of base`, `overall height`, `H (max.)`: a dimension that begins or ends a label. */
function takeAxis(tokens: Token[], others: boolean): Axis[] {
  const isWord = (token: Token | undefined): token is Word => token?.kind === 'word';
  const words = tokens.filter(isWord);
  const [first] = words;
  const last = words.at(-1);
  for (const word of [first, last]) {
    const axis = word === undefined ? null : axisNamed(word.word, others);
    if (word === undefined || axis === null) continue;
    tokens.splice(tokens.indexOf(word), 1);
    return [axis];
  }
  return [];
}

function spaced(words: readonly string[]): string {
  return words
    .join(' ')
    .replace(/ ?\( ?/g, ' (')
    .replace(/ ?\)/g, ')')
    .replace(/ ,/g, ',')
    .trim();
}

/** True for words that say nothing. */
export function isBare({ axes, unit, extent }: Label): boolean {
  return axes.length === 0 && unit === null && extent === null;
}

/** True for a single letter before a chain that names no dimensions: `d: 3 × 4 × 4 in.` after `c:` is a part called d. */
export function isPartLetter({ text }: Label, figures: readonly ChainFigure[]): boolean {
  return /^[a-h]$/i.test(text) && figures.length > 1 && figures.every(({ axis }) => axis === null);
}

/** Gives figures the dimensions and the unit that stand before them; false where the dimensions do not fit. */
export function headFigures(figures: readonly ChainFigure[], label: Label): boolean {
  const { axes, unit } = label;
  const open = figures.every((figure) => figure.unit === null);
  if (unit !== null && open) for (const figure of figures) figure.unit = unit;
  if (axes.length === 1 && !isPartLetter(label, figures)) (figures[0] as ChainFigure).axis ??= axes[0] ?? null;
  if (axes.length > 1) for (const [i, figure] of figures.entries()) figure.axis ??= axes[i] ?? null;
  return axes.length <= 1 || axes.length >= figures.length;
}
