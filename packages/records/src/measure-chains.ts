/** Figures joined by times signs, each with its dimension, range and unit as far as they are written: `H 12 × 8–9 cm`. */
import type { Axis } from './dimension-reading.ts';
import { axisNamed, standsAfter } from './dimension-words.ts';
import { type Figure, isMark, type Token } from './measure-tokens.ts';
import type { Unit } from './measure-units.ts';

export interface ChainFigure {
  readonly figure: Figure;
  /** Upper end of a range. */
  readonly upTo: Figure | null;
  axis: Axis | null;
  unit: Unit | null;
}

export interface Chain {
  readonly figures: readonly ChainFigure[];
  /** Token after the last. */
  readonly next: number;
}

/** One chain of lengths with all that is said of it. */
export interface ReadChain {
  readonly figures: readonly ChainFigure[];
  readonly written: string;
  readonly segment: number;
  readonly line: number;
  /** Null where nothing says it. */
  extent: string | null;
  /** The same figures in the second system, in order. */
  second: readonly ChainFigure[] | null;
}

/** The chain that begins at the figure `tokens[from]`; `others`: German and French letters name dimensions. */
export function chainAt(tokens: readonly Token[], from: number, others: boolean): Chain {
  const figures: ChainFigure[] = [];
  let at = from;
  let axis: Axis | null = null;
  for (;;) {
    const [item, after] = figureAt(tokens, at, axis, others);
    if (item === null) break;
    figures.push(item);
    at = after;
    if (tokens[at]?.kind !== 'times') break;
    let next = at + 1;
    const open = isMark(tokens[next], '(') && isMark(tokens[next + 2], ')') ? 1 : 0;
    const word = tokens[next + open];
    axis = word?.kind === 'word' ? axisNamed(word.word, others) : null;
    if (axis !== null) next += 1 + 2 * open;
    if (axis !== null && (isMark(tokens[next], ':') || isMark(tokens[next], '.'))) next += 1;
    if (tokens[next]?.kind !== 'figure') break;
    at = next;
  }
  spreadUnit(figures);
  return { figures, next: at };
}

/** A unit closes its chain: `30 x 40 cm` is 30 cm and 40 cm. What follows the last unit has none. */
export function spreadUnit(figures: readonly ChainFigure[]): void {
  let unit: Unit | null = null;
  for (const figure of figures.toReversed()) {
    unit = figure.unit ?? unit;
    figure.unit = unit;
  }
}

function figureAt(
  tokens: readonly Token[],
  from: number,
  axis: Axis | null,
  others: boolean,
): [item: ChainFigure | null, next: number] {
  const figure = tokens[from];
  if (figure?.kind !== 'figure') return [null, from];
  let [unit, at] = unitAt(tokens, from + 1);
  let upTo: Figure | null = null;
  const upper = tokens[at + 1];
  const dash = tokens[at];
  const ranges = isMark(dash, '-') || (dash?.kind === 'word' && (dash.word === 'to' || dash.word === 'bis'));
  if (ranges && upper?.kind === 'figure' && upper.value > figure.value) {
    upTo = upper;
    const [upperUnit, next] = unitAt(tokens, at + 2);
    unit ??= upperUnit;
    at = next;
  }
  const item: ChainFigure = { figure, upTo, axis, unit };
  if (axis !== null) return [item, at];
  const open = isMark(tokens[at], '(') && isMark(tokens[at + 2], ')') ? 1 : 0;
  const word = tokens[at + open];
  const named = word?.kind === 'word' ? axisNamed(word.word, others) : null;
  if (named === null || word?.kind !== 'word') return [item, at];
  const last = at + 1 + 2 * open;
  const following = tokens[isMark(tokens[last], ':') ? last + 1 : last];
  // `20 cm high`, but not the H of a next `H. 12 cm`, nor of a list `W x H`.
  const heads = following?.kind === 'figure' || (following?.kind === 'word' && following.word === 'of');
  if ((heads || isList(tokens, last, others)) && !standsAfter(word.word)) return [item, at];
  item.axis = named;
  return [item, last];
}

function isList(tokens: readonly Token[], at: number, others: boolean): boolean {
  const word = tokens[at + 1];
  return (
    tokens[at]?.kind === 'times' &&
    word?.kind === 'word' &&
    axisNamed(word.word, others) !== null &&
    tokens[at + 2]?.kind !== 'figure'
  );
}

function unitAt(tokens: readonly Token[], at: number): [Unit | null, number] {
  const token = tokens[at];
  return token?.kind === 'unit' ? [token.unit, at + 1] : [null, at];
}
