import type { Column, Look, NumberColumn, VectorColumn } from './columns.ts';
import { apartIn } from './mixed-distance.ts';
import { outlineWords } from './outline-words.ts';
import type { Tally } from './tallies.ts';

/** What most of a set share and few others have, in words and as figures; the shares are 0 to 1. */
export interface Reason {
  readonly look: Look;
  readonly trait: string;
  readonly words: string;
  /** The bounds of a number: millimetres for a length, years for an age. */
  readonly from?: number;
  readonly to?: number;
  readonly ofThese: number;
  readonly ofRest: number;
}

/** A reason with the test of a row behind it. */
export interface Rule {
  readonly column: Column;
  readonly words: string;
  readonly from?: number;
  readonly to?: number;
  readonly holds: (row: number) => boolean;
  /** Of a number, the bounds it holds between, so that a whole pool can be gone through without asking of each row. */
  readonly bounds?: readonly [least: number, most: number];
  /** Of how many in the whole pool it holds. */
  readonly inPool: () => number;
}

/** A colour in words, CIELAB D65, in the house's own; without it a colour is said to be like the others' alone. */
export type ColourWords = (colour: { readonly L: number; readonly a: number; readonly b: number }) => string;

const COVER = 0.75;
const LIFT = 2;
const MOST = 3;

/**
 * The rules that set members apart from the rest, at most three: learned on every other member and kept only where they hold
 * for three quarters of those not learned from and are at least twice as frequent there as in the rest. Rows are of the
 * tallies' columns.
 */
export function rulesOf(tallies: readonly Tally[], members: ArrayLike<number>, colourWords?: ColourWords): Rule[] {
  const learned = Array.from(members).filter((_, q) => q % 2 === 0);
  const held = Array.from(members).filter((_, q) => q % 2 === 1);
  const others = (tallies[0]?.n ?? 0) - members.length;
  const ranked = tallies
    .flatMap((tally) => candidatesIn(tally, learned, colourWords))
    .map((rule) => ({ rule, cover: shareOf(held, rule.holds) }))
    .filter(({ cover }) => cover >= COVER)
    .map((tried) => ({ ...tried, rest: restOf(tried.rule, members, others) }))
    .filter(({ cover, rest }) => cover >= LIFT * rest)
    .map((tried) => ({ ...tried, worth: tried.cover * Math.log(tried.cover / (tried.rest + 1 / (others + 1))) }))
    .sort((a, b) => b.worth - a.worth);
  const kept: Rule[] = [];
  for (const { rule } of ranked) {
    if (kept.length === MOST) break;
    // Each is true of most; together they must still be, for they are told in one sentence.
    if (shareOf(held, (row) => rule.holds(row) && kept.every((other) => other.holds(row))) >= COVER) kept.push(rule);
  }
  return kept;
}

export function shareOf(rows: ArrayLike<number>, holds: (row: number) => boolean): number {
  return rows.length > 0 ? countOf(rows, holds) / rows.length : 0;
}

/** The share of the `others` outside a set that a rule holds for. */
export function restOf(rule: Rule, members: ArrayLike<number>, others: number): number {
  return others > 0 ? (rule.inPool() - countOf(members, rule.holds)) / others : 0;
}

function countOf(rows: ArrayLike<number>, holds: (row: number) => boolean): number {
  let count = 0;
  for (let q = 0; q < rows.length; q++) if (holds(rows[q]!)) count++;
  return count;
}

function candidatesIn(tally: Tally, learned: readonly number[], colourWords?: ColourWords): Rule[] {
  const { column } = tally;
  switch (column.kind) {
    case 'word': {
      const code = mostFrequent(learned.map((row) => column.codes[row]!).filter((c) => c >= 0));
      if (code === undefined) return [];
      const words = wordFor(column.name, column.words[code]!);
      return [{ column, words, holds: (row) => column.codes[row] === code, inPool: () => tally.having(code) }];
    }
    case 'words':
      return column.words.flatMap((word, bit): Rule[] => {
        const holds = (row: number) => ((column.bits[row * column.width + (bit >> 5)]! >>> (bit & 31)) & 1) === 1;
        const inPool = () => tally.having(bit);
        return shareOf(learned, holds) >= COVER ? [{ column, words: word, holds, inPool }] : [];
      });
    case 'number':
      return rangeIn(column, tally, learned);
    case 'vector':
      return nearIn(column, tally.n, learned, colourWords);
  }
}

function rangeIn(column: NumberColumn, { between }: Tally, learned: readonly number[]): Rule[] {
  const known = learned
    .map((row) => column.values[row]!)
    .filter((v) => !Number.isNaN(v))
    .sort((a, b) => a - b);
  if (known.length < 2) return [];
  const [low, high] = [known[Math.floor(0.05 * (known.length - 1))]!, known[Math.ceil(0.95 * (known.length - 1))]!];
  const pad = 0.1 * (high - low);
  const [from, to] = widened(column.unit, low - pad, high + pad);
  const [inner, outer] = column.unit === 'ln mm' ? [Math.log(from), Math.log(to)] : [from, to];
  const [least, most] = [inner - 1e-9, outer + 1e-9];
  const holds = (row: number) => column.values[row]! >= least && column.values[row]! <= most;
  const words = rangeWords(column.name, column.unit, from, to);
  return [{ column, words, from, to, holds, bounds: [least, most], inPool: () => between(least, most) }];
}

/** Bounds as they are said: half centimetres over 2 cm, whole centimetres over 10, whole years. */
function widened(unit: 'ln mm' | 'year' | '', low: number, high: number): [number, number] {
  if (unit === '') return [low, high];
  const [from, to] = unit === 'ln mm' ? [Math.exp(low), Math.exp(high)] : [low, high];
  const step = unit === 'year' || to < 20 ? 1 : to < 100 ? 5 : 10;
  return [
    Math.max(unit === 'year' ? Number.NEGATIVE_INFINITY : 1, Math.floor(from / step) * step),
    Math.ceil(to / step) * step,
  ];
}

const high: Record<string, string> = { height: 'high', width: 'wide', depth: 'deep' };

function rangeWords(name: string, unit: 'ln mm' | 'year' | '', from: number, to: number): string {
  if (unit === 'ln mm') return `${from / 10} to ${to / 10} cm ${high[name] ?? name}`;
  if (unit === 'year') return from === to ? `made in ${from}` : `made ${from} to ${to}`;
  return `${name} ${Number(from.toPrecision(3))} to ${Number(to.toPrecision(3))}`;
}

function wordFor(name: string, word: string): string {
  return name === 'maker' ? `by ${word}` : name === 'from' ? `from ${word}` : word;
}

/** Near one thing of the set, the one the others learned from lie closest to. */
function nearIn(column: VectorColumn, n: number, learned: readonly number[], colourWords?: ColourWords): Rule[] {
  const known = learned.filter((row) => !Number.isNaN(column.values[row * column.width]!)).slice(0, 200);
  if (known.length < 2) return [];
  let [centre, least] = [known[0]!, Number.POSITIVE_INFINITY];
  for (const row of known) {
    const total = known.reduce((sum, other) => sum + apartIn(column, row, other), 0);
    if (total < least) [centre, least] = [row, total];
  }
  const spread = known.map((other) => apartIn(column, centre, other)).sort((a, b) => a - b);
  const reach = 1.1 * spread[Math.ceil(0.95 * (known.length - 1))]!;
  if (reach >= 1) return [];
  const holds = (row: number) => {
    const apart = apartIn(column, centre, row);
    return apart >= 0 && apart <= reach;
  };
  let counted: number | undefined;
  const inPool = () => {
    if (counted !== undefined) return counted;
    counted = 0;
    for (let row = 0; row < n; row++) if (holds(row)) counted++;
    return counted;
  };
  return [{ column, words: vectorWords(column, centre, colourWords), holds, inPool }];
}

/** What the middle one is like, for the others are near it. */
function vectorWords(column: VectorColumn, row: number, colourWords?: ColourWords): string {
  const values = column.values.subarray(row * column.width, (row + 1) * column.width);
  if (column.name === 'outline') return outlineWords(values);
  const [L, a, b] = values;
  if (column.name !== 'colour' || !colourWords) return `near one another in ${column.name}`;
  return `${colourWords({ L: L!, a: a!, b: b! })} on the whole`;
}

function mostFrequent(codes: readonly number[]): number | undefined {
  const count = new Map<number, number>();
  for (const code of codes) count.set(code, (count.get(code) ?? 0) + 1);
  return [...count].sort(([a, x], [b, y]) => y - x || a - b)[0]?.[0];
}

/** What is known of one thing in a column, in words: why it misses a rule. */
export function saidOf(column: Column, row: number): string {
  switch (column.kind) {
    case 'word': {
      const word = column.words[column.codes[row]!];
      return word === undefined ? `${column.name} not known` : wordFor(column.name, word);
    }
    case 'words': {
      const has = column.words.filter((_, bit) => (column.bits[row * column.width + (bit >> 5)]! >>> (bit & 31)) & 1);
      return has.length > 0 ? has.slice(0, 4).join(', ') : `${column.name} not known`;
    }
    case 'number': {
      const value = column.values[row]!;
      if (Number.isNaN(value)) return `${column.name} not known`;
      if (column.unit === 'ln mm') return `${Math.round(Math.exp(value)) / 10} cm ${high[column.name] ?? column.name}`;
      return column.unit === 'year'
        ? `made about ${Math.round(value)}`
        : `${column.name} ${Number(value.toPrecision(3))}`;
    }
    case 'vector':
      return Number.isNaN(column.values[row * column.width]!) ? `${column.name} not known` : `another ${column.name}`;
  }
}
