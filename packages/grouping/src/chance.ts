import { type Column, columnOf } from './columns.ts';
import type { Distance } from './mixed-distance.ts';
import { seeded, shuffledUpTo } from './seeded.ts';

const PAIRS = 400;

/** Rows by type, and every row's type; a pool without types is of one. */
export interface Types {
  readonly codes: Int32Array;
  readonly rows: readonly Int32Array[];
}

export function typesOf(n: number, type: Column | undefined): Types {
  const codes = new Int32Array(n);
  if (type?.kind === 'word') codes.set(type.codes.map((code) => code + 1));
  const rows: number[][] = Array.from({ length: Math.max(0, ...codes) + 1 }, () => []);
  for (const [i, code] of codes.entries()) rows[code]!.push(i);
  return { codes, rows: rows.map((list) => Int32Array.from(list)) };
}

/**
 * How much closer a group is than its types are of themselves: 1 − its mean distance over that of random things of the same
 * types. Estimated from 400 pairs, seeded.
 */
export function tightness(members: ArrayLike<number>, { codes, rows }: Types, distance: Distance): number {
  const random = seeded(members.length);
  const one = (list: ArrayLike<number>) => list[Math.floor(random() * list.length)]!;
  let [within, expected] = [0, 0];
  for (let pair = 0; pair < PAIRS; ) {
    const [a, b] = [one(members), one(members)];
    if (a === b) continue;
    within += distance(a, b);
    expected += distance(one(rows[codes[a]!]!), one(rows[codes[b]!]!));
    pair++;
  }
  return expected > 0 ? 1 - within / expected : 0;
}

/**
 * The pool as chance would have it: in every type, what is known of one thing is dealt out again, each trait for itself
 * (heights, widths and depths together). Where only one trait counts, its numbers are drawn evenly between their ends.
 */
export function shuffledColumns(columns: readonly Column[], types: Types, n: number, seed: number): Column[] {
  const random = seeded(seed);
  const deal = (): Int32Array => {
    const order = new Int32Array(n);
    for (const rows of types.rows) {
      const shuffled = shuffledUpTo(rows.length, random);
      for (const [q, row] of rows.entries()) order[row] = rows[shuffled[q]!]!;
    }
    return order;
  };
  const traits = new Set(columns.map(traitOf));
  if (traits.size === 1) return columns.map((column) => even(column, deal, random));
  const dealt = new Map([...traits].map((trait) => [trait, deal()]));
  return columns.map((column) => columnOf(column, dealt.get(traitOf(column))!));
}

const traitOf = (column: Column): string =>
  column.kind === 'number' && column.unit === 'ln mm' ? 'size' : `${column.look} ${column.name}`;

function even(column: Column, deal: () => Int32Array, random: () => number): Column {
  if (column.kind !== 'vector' && column.kind !== 'number') return columnOf(column, deal());
  const width = column.kind === 'vector' ? column.width : 1;
  const values = column.values.slice();
  for (let w = 0; w < width; w++) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let at = w; at < values.length; at += width) {
      if (column.values[at]! < low) low = column.values[at]!;
      if (column.values[at]! > high) high = column.values[at]!;
    }
    for (let at = w; at < values.length; at += width)
      if (!Number.isNaN(values[at]!)) values[at] = low + (high - low) * random();
  }
  return { ...column, values } as Column;
}
