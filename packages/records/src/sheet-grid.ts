/** A sheet of a spreadsheet as its importer hands it over: cells as they are shown, and what stands behind them. */

/** A cell that is more than its text. */
export interface GridValue {
  /** As it goes on: a date by ISO 8601, as far as it is shown. */
  readonly text: string;
  /** As the spreadsheet shows it, where that is another text. */
  readonly shown?: string;
  /** A figure shown without a format of its own. */
  readonly figure?: number;
  readonly date?: { readonly year: number; readonly month: number; readonly day: number };
  /** Why it is empty, as a sentence: an error value, a formula without its value. */
  readonly fault?: string;
}

/** Plain text, or text with what stands behind it; undefined is empty. */
export type GridCell = string | GridValue | undefined;

/** Rows and columns from 0, the ends counted in. */
export interface MergedCells {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface SheetGrid {
  readonly name: string;
  readonly hidden: boolean;
  readonly rows: readonly (readonly GridCell[])[];
  readonly merged: readonly MergedCells[];
}

export function gridText(cell: GridCell): string {
  return cell === undefined ? '' : typeof cell === 'string' ? cell : cell.text;
}

/** 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  if (!(column >= 0)) throw new RangeError(`column is ${column}; the first is 0`);
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : columnLetters(Math.floor(column / 26) - 1) + last;
}
