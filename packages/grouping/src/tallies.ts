import type { Column } from './columns.ts';

/** A column with what it takes to count in it without going through the whole pool each time. */
export interface Tally {
  readonly column: Column;
  readonly n: number;
  /** How many numbers lie between two bounds, both counted in. */
  readonly between: (least: number, most: number) => number;
  /** How many have a word, by its place among the words. */
  readonly having: (word: number) => number;
}

/** The tallies of a pool of n things; a column is gone through when it is first asked. */
export function talliesOf(columns: readonly Column[], n: number): Tally[] {
  return columns.map((column) => {
    const sorted = once(() => (column.kind === 'number' ? sortedOf(column.values) : new Float64Array(0)));
    const counts = once(() => countsOf(column, n));
    return {
      column,
      n,
      between: (least, most) => before(sorted(), most, true) - before(sorted(), least, false),
      having: (word) => counts()[word] ?? 0,
    };
  });
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

function sortedOf(values: Float64Array): Float64Array {
  return values.filter((value) => !Number.isNaN(value)).sort();
}

function countsOf(column: Column, n: number): Int32Array {
  if (column.kind !== 'word' && column.kind !== 'words') return new Int32Array(0);
  const counts = new Int32Array(column.words.length);
  if (column.kind === 'word') {
    for (const code of column.codes) if (code >= 0) counts[code]!++;
    return counts;
  }
  for (let i = 0; i < n; i++)
    for (let w = 0; w < column.width; w++)
      for (let bits = column.bits[i * column.width + w]!; bits !== 0; bits &= bits - 1) {
        const word = 32 * w + 31 - Math.clz32(bits & -bits);
        if (word < counts.length) counts[word]!++;
      }
  return counts;
}

/** How many of sorted numbers are less than a bound, or also equal to it. */
function before(sorted: Float64Array, bound: number, equalToo: boolean): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < bound || (equalToo && sorted[middle]! === bound)) low = middle + 1;
    else high = middle;
  }
  return low;
}
