/** By what a person looks for likeness. */
export type Look = 'colour' | 'shape' | 'size' | 'use' | 'age';

/**
 * One number a thing, NaN where it is not known; a difference of `range` or more counts as wholly different. A length is
 * kept as the natural logarithm of its millimetres: likeness in size is a matter of proportion.
 */
export interface NumberColumn {
  readonly kind: 'number';
  readonly name: string;
  readonly look: Look;
  readonly unit: 'ln mm' | 'year' | '';
  readonly values: Float64Array;
  readonly range: number;
}

/** One word a thing, as its place in `words`, −1 where it is not known. */
export interface WordColumn {
  readonly kind: 'word';
  readonly name: string;
  readonly look: Look;
  readonly codes: Int32Array;
  readonly words: readonly string[];
}

/** Several words a thing: its row of bits, `width` numbers of 32, all empty where nothing is known. */
export interface WordsColumn {
  readonly kind: 'words';
  readonly name: string;
  readonly look: Look;
  readonly bits: Int32Array;
  readonly width: number;
  readonly words: readonly string[];
}

/** `width` numbers a thing that only mean something together, the first NaN where they are not known. */
export interface VectorColumn {
  readonly kind: 'vector';
  readonly name: string;
  readonly look: Look;
  readonly values: Float32Array;
  readonly width: number;
  readonly range: number;
}

export type Column = NumberColumn | WordColumn | WordsColumn | VectorColumn;

/** Whether the thing in row i has anything in a column. */
export function knownIn(column: Column, i: number): boolean {
  switch (column.kind) {
    case 'number':
      return !Number.isNaN(column.values[i]!);
    case 'word':
      return column.codes[i]! >= 0;
    case 'words':
      for (let w = 0; w < column.width; w++) if (column.bits[i * column.width + w] !== 0) return true;
      return false;
    case 'vector':
      return !Number.isNaN(column.values[i * column.width]!);
  }
}

/** The same column with row i taken from row rows[i]: a part of a pool, or a pool shuffled. */
export function columnOf(column: Column, rows: ArrayLike<number>): Column {
  const n = rows.length;
  switch (column.kind) {
    case 'number':
      return { ...column, values: Float64Array.from({ length: n }, (_, i) => column.values[rows[i]!]!) };
    case 'word':
      return { ...column, codes: Int32Array.from({ length: n }, (_, i) => column.codes[rows[i]!]!) };
    case 'words': {
      const bits = new Int32Array(n * column.width);
      for (let i = 0; i < n; i++) bits.set(rowOf(column.bits, rows[i]!, column.width), i * column.width);
      return { ...column, bits };
    }
    case 'vector': {
      const values = new Float32Array(n * column.width);
      for (let i = 0; i < n; i++) values.set(rowOf(column.values, rows[i]!, column.width), i * column.width);
      return { ...column, values };
    }
  }
}

function rowOf<T extends Int32Array | Float32Array>(values: T, i: number, width: number): T {
  return values.subarray(i * width, (i + 1) * width) as T;
}
