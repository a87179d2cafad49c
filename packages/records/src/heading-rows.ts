/** Where in a sheet the table begins: titles above it, headings in one row, or in two with groups merged over them. */
import { mappingFrom, smellsPrivate } from './checklist-headings.ts';
import { gridText, type MergedCells, type SheetGrid } from './sheet-grid.ts';

export interface HeadingRows {
  /** Row from 0 whose next is the first of the body. */
  readonly last: number;
  /** The first of the heading rows: `last`, or the one above it. */
  readonly first: number;
  readonly headings: readonly string[];
}

/** Titles and addresses above a table are a few rows. */
const LOOKED_AT = 40;

/**
 * The heading row is the one in which most cells are headings of a checklist, the first of them; null where no row has two
 * cells. What stands in groups of merged cells above joins its headings: “Dimensions” over “framed” is “Dimensions framed”.
 */
export function headingRowsOf(grid: SheetGrid): HeadingRows | null {
  let best: { readonly found: HeadingRows; readonly score: number } | null = null;
  const filled = grid.rows.slice(0, LOOKED_AT).map((row) => row.filter((cell) => gridText(cell).trim() !== '').length);
  const top = { ...grid, merged: grid.merged.filter(({ bottom }) => bottom < LOOKED_AT) };
  for (const [row, count] of filled.entries()) {
    if (count < 2) continue;
    const found = headingsAt(top, row);
    const mapping = mappingFrom(found.headings);
    const score = mapping.filter((field) => field !== null).length + (mapping.includes('number') ? 2 : 0);
    if (best === null || score > best.score) best = { found, score };
  }
  return best?.found ?? null;
}

function headingsAt(grid: SheetGrid, row: number): HeadingRows {
  const width = Math.max(0, ...grid.rows.slice(0, row + 1).map(({ length }) => length));
  const above = row === 0 ? [] : groupsIn(grid, row - 1, width);
  const textAt = (y: number, x: number): string => gridText(grid.rows[y]?.[x]).replace(/\s+/g, ' ').trim();
  const headings = Array.from({ length: width }, (_, column): string => {
    const tall = grid.merged.find(({ top, bottom, left, right }) => {
      return top < row && bottom === row && left <= column && right >= column;
    });
    if (tall !== undefined) return textAt(tall.top, tall.left);
    const own = textAt(row, column);
    const group = above.find(({ left, right }) => left <= column && right >= column);
    // Beside groups, a heading that was not merged over both rows stands in the upper one.
    if (group === undefined) return own === '' && above.length > 0 ? textAt(row - 1, column) : own;
    return grouped(textAt(group.top, group.left), own);
  });
  const wide = groupsIn(grid, row, width);
  for (const { left, right, top } of wide) {
    for (let column = left + 1; column <= right; column++) {
      // A heading over two columns is the first one's; the second keeps its name, so that nothing private loses it.
      if (headings[column] === '') headings[column] = `${textAt(top, left)}, ${column - left + 1}`;
    }
  }
  const taller = grid.merged.some(({ top, bottom }) => top === row - 1 && bottom === row);
  return { last: row, first: above.length > 0 || taller ? row - 1 : row, headings };
}

/** Cells merged over several columns of a row, but not over the whole of it: that is a title. */
function groupsIn({ merged }: SheetGrid, row: number, width: number): MergedCells[] {
  return merged.filter(({ top, bottom, left, right }) => {
    return top === row && bottom === row && right > left && right - left + 1 < width;
  });
}

/** “Storage” over “Number” is no object number: where the group may be private its heading says so. */
function grouped(group: string, own: string): string {
  const both = [group, own].filter((text) => text !== '').join(' ');
  if (own === '' || smellsPrivate(both) || mappingFrom([both])[0] !== null) return both;
  return mappingFrom([own])[0] === null ? both : own;
}
