import type { Column, Look, NumberColumn } from './columns.ts';

/**
 * How far apart the things in rows i and j are: 0 alike in everything known of both, 1 different in everything. Who cares
 * for what is nearer than `within` alone says so, and may be told of the rest no more than some number not under it.
 */
export type Distance = (i: number, j: number, within?: number) => number;

/** How much each look counts; what is left out counts 1, 0 looks away. */
export type Weights = Partial<Readonly<Record<Look, number>>>;

function countOf(bits: number): number {
  let b = bits - ((bits >>> 1) & 0x55555555);
  b = (b & 0x33333333) + ((b >>> 2) & 0x33333333);
  return Math.imul((b + (b >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** How far rows i and j are apart in one column, 0 to 1, or −1 when either is not known there. */
export function apartIn(column: Column, i: number, j: number): number {
  switch (column.kind) {
    case 'number': {
      const apart = Math.abs(column.values[i]! - column.values[j]!) / column.range;
      return apart < 1 ? apart : Number.isNaN(apart) ? -1 : 1;
    }
    case 'word': {
      const a = column.codes[i]!;
      const b = column.codes[j]!;
      return a < 0 || b < 0 ? -1 : a === b ? 0 : 1;
    }
    case 'words': {
      const { bits, width } = column;
      let both = 0;
      let either = 0;
      let ofI = 0;
      let ofJ = 0;
      for (let w = 0, a = i * width, b = j * width; w < width; w++, a++, b++) {
        ofI |= bits[a]!;
        ofJ |= bits[b]!;
        both += countOf(bits[a]! & bits[b]!);
        either += countOf(bits[a]! | bits[b]!);
      }
      return ofI === 0 || ofJ === 0 ? -1 : 1 - both / either;
    }
    case 'vector': {
      const { values, width } = column;
      let sum = 0;
      for (let w = 0, a = i * width, b = j * width; w < width; w++, a++, b++) {
        const apart = values[a]! - values[b]!;
        sum += apart * apart;
      }
      const apart = Math.sqrt(sum) / column.range;
      return apart < 1 ? apart : Number.isNaN(apart) ? -1 : 1;
    }
  }
}

/** Each column's weight: its look's, shared evenly among the columns of that look. RangeError on a weight under 0. */
export function columnWeights(columns: readonly Column[], weights: Weights): Float64Array {
  for (const [look, weight] of Object.entries(weights))
    if (!(weight >= 0)) throw new RangeError(`mixedDistance: the weight of ${look} is ${weight}, needs 0 or more`);
  return Float64Array.from(
    columns,
    ({ look }) => (weights[look] ?? 1) / columns.filter((other) => other.look === look).length,
  );
}

/**
 * Gower's distance: the weighted mean, over the columns known of both, of how far apart they are there. Where less than
 * half of the weight is known of both, what is wanting to the half counts as different, so that ignorance is not likeness.
 * J. C. Gower, "A general coefficient of similarity and some of its properties", Biometrics 27, 1971; the half is ours.
 * RangeError when no column counts.
 */
export function mixedDistance(columns: readonly Column[], perColumn: ArrayLike<number>): Distance {
  const counted = columns.map((column, c) => ({ column, weight: perColumn[c]! })).filter(({ weight }) => weight > 0);
  if (counted.length === 0) throw new RangeError('mixedDistance: every weight is 0, needs one look to count');
  const all = counted.reduce((sum, { weight }) => sum + weight, 0);
  const half = all / 2;
  const numbers = counted.flatMap(({ column, weight }) => (column.kind === 'number' ? [{ column, weight }] : []));
  const plain = numbers.filter(({ column }) => knownOfAll(column));
  const careful = numbers.filter((number) => !plain.includes(number));
  const words = counted.flatMap(({ column, weight }) => (column.kind === 'word' ? [{ column, weight }] : []));
  const others = counted.filter(({ column }) => column.kind === 'words' || column.kind === 'vector');
  const ofPlain = plainDistance(plain);
  if (careful.length + words.length + others.length === 0)
    return (i, j, within = Number.POSITIVE_INFINITY) => ofPlain(i, j, within * all) / all;
  const width = careful.length;
  const weights = Float64Array.from(careful, ({ weight }) => weight);
  const rows = sideBySide(careful, width, (value, { column }) => value / column.range);
  const codes = words.map(({ column }) => column.codes);
  const ofWords = words.map(({ weight }) => weight);
  return (i, j, within = Number.POSITIVE_INFINITY) => {
    let sum = plain.length > 0 ? ofPlain(i, j, within * all) : 0;
    // What else is known of both, or not known, only takes them farther apart than this.
    if (sum >= within * all) return sum / all;
    let unknown = 0;
    for (let w = 0, a = i * width, b = j * width; w < width; w++, a++, b++) {
      const apart = Math.abs(rows[a]! - rows[b]!);
      if (apart < 1) sum += weights[w]! * apart;
      else if (apart >= 1) sum += weights[w]!;
      else unknown += weights[w]!;
    }
    for (let c = 0; c < codes.length; c++) {
      const one = codes[c]![i]!;
      const other = codes[c]![j]!;
      if ((one | other) < 0) unknown += ofWords[c]!;
      else if (one !== other) sum += ofWords[c]!;
    }
    for (let c = 0; c < others.length; c++) {
      const { column, weight } = others[c]!;
      const apart = apartIn(column, i, j);
      if (apart < 0) unknown += weight;
      else sum += weight * apart;
    }
    const known = all - unknown;
    return known < half ? (sum + half - known) / half : sum / known;
  };
}

type Counted = { readonly column: NumberColumn; readonly weight: number };

/** Whether everything is known in a column, and no two things are farther apart than its range. */
function knownOfAll({ values, range }: NumberColumn): boolean {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (Number.isNaN(value)) return false;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low <= range;
}

/** Numbers of all columns side by side, a thing's in one row, for they are most of the work in a large pool. */
function sideBySide(numbers: readonly Counted[], width: number, scaled: (value: number, of: Counted) => number) {
  const rows = new Float32Array(width * (numbers[0]?.column.values.length ?? 0));
  for (const [w, number] of numbers.entries())
    for (const [i, value] of number.column.values.entries()) rows[i * width + w] = scaled(value, number);
  return rows;
}

/** The weighted sum of differences of which nothing need be asked: eight at a time, the rows filled up with noughts. */
function plainDistance(numbers: readonly Counted[]): Distance {
  const width = 8 * Math.ceil(numbers.length / 8);
  const rows = sideBySide(numbers, width, (value, { column, weight }) => (weight * value) / column.range);
  return (i, j, within = Number.POSITIVE_INFINITY) => {
    let [one, two, three, four] = [0, 0, 0, 0];
    let sum = 0;
    for (let a = i * width, b = j * width, end = a + width; a < end && sum < within; a += 8, b += 8) {
      one += Math.abs(rows[a]! - rows[b]!);
      two += Math.abs(rows[a + 1]! - rows[b + 1]!);
      three += Math.abs(rows[a + 2]! - rows[b + 2]!);
      four += Math.abs(rows[a + 3]! - rows[b + 3]!);
      one += Math.abs(rows[a + 4]! - rows[b + 4]!);
      two += Math.abs(rows[a + 5]! - rows[b + 5]!);
      three += Math.abs(rows[a + 6]! - rows[b + 6]!);
      four += Math.abs(rows[a + 7]! - rows[b + 7]!);
      sum = one + two + three + four;
    }
    return sum;
  };
}

/** Euclid's distance of rows of `width` numbers. */
export function euclidean(values: Float32Array | Float64Array, width: number): Distance {
  return (i, j, within = Number.POSITIVE_INFINITY) => {
    const most = within * within;
    const end = (i + 1) * width;
    let sum = 0;
    // Asked of every eighth number alone, for the asking costs as much as a number does.
    for (let a = i * width, b = j * width; a < end && sum < most; ) {
      for (const stop = Math.min(end, a + 8); a < stop; a++, b++) {
        const apart = values[a]! - values[b]!;
        sum += apart * apart;
      }
    }
    return Math.sqrt(sum);
  };
}
