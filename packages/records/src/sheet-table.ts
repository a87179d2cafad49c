/** A spreadsheet's sheet as a checklist's table: what stands above it told, merged cells undone, numbers put back. */
import { NumberShapes } from './changed-numbers.ts';
import { mappingFrom } from './checklist-headings.ts';
import { headingRowsOf } from './heading-rows.ts';
import { type CellTold, type ImportedTable, type ImportIssue, tableFrom } from './imported-table.ts';
import { columnLetters, gridText, type SheetGrid } from './sheet-grid.ts';

/**
 * `numberColumn`: which column of the table holds object numbers, where a person has said so; else as the headings say.
 * Never throws; a sheet without headings has no rows and says why.
 */
export function sheetTableFrom(grid: SheetGrid, numberColumn?: number | null): ImportedTable {
  const where = `Sheet “${grid.name}”`;
  const found = headingRowsOf(grid);
  if (found === null)
    return tableFrom([], [{ where, what: 'It holds no table: no row has two cells that are filled.', value: '' }]);
  const issues: ImportIssue[] = [];
  const { rows, stands } = bodyOf(grid, found.last + 1);
  if (stands > 0) {
    const many = stands === 1 ? 'One merged cell stands' : `${stands} merged cells stand`;
    issues.push({ where, what: `${many} for each of the rows they reach over.`, value: '' });
  }
  const above = grid.rows.slice(0, found.first).flatMap((row, y) => {
    const text = row
      .map(gridText)
      .filter((one) => one.trim() !== '')
      .join(' ');
    return text === '' ? [] : [{ y, text }];
  });
  if (above.length > 0) {
    const [first, last] = [above[0]?.y ?? 0, above.at(-1)?.y ?? 0];
    const which = first === last ? `Row ${first + 1} stands` : `Rows ${first + 1} to ${last + 1} stand`;
    const value = above
      .map(({ text }) => text)
      .join(' / ')
      .slice(0, 200);
    issues.push({
      where,
      what: `${which} above the headings and ${first === last ? 'is' : 'are'} no record: “${value}”.`,
      value,
    });
  }
  const width = Math.max(found.headings.length, ...rows.map(({ cells }) => cells.length));
  const kept = Array.from({ length: width }, (_, x) => x).filter(
    (x) => (found.headings[x] ?? '') !== '' || rows.some(({ cells }) => (cells[x] ?? '') !== ''),
  );
  const headings = kept.map((x) => found.headings[x] ?? '');
  const numbers = numberColumn === undefined ? mappingFrom(headings).indexOf('number') : (numberColumn ?? -1);
  const told: CellTold[] = [];
  const cells = rows.map(({ cells: row, y }, index) => {
    for (const [column, x] of kept.entries()) {
      const cell = grid.rows[y]?.[x];
      if (typeof cell === 'object' && cell.fault !== undefined) {
        told.push({ line: index + 2, column, kind: 'cell at fault', what: cell.fault, value: cell.text, choices: [] });
      }
    }
    return kept.map((x) => row[x] ?? '');
  });
  const source = kept[numbers];
  if (source !== undefined) putBack(grid, { rows, cells, column: numbers, source, told });
  return {
    cells: [headings, ...cells],
    places: rows.map(({ y }) => `row ${y + 1}`),
    columns: kept.map(columnLetters),
    sheet: { name: grid.name, rowNumbers: rows.map(({ y }) => y + 1) },
    pictures: rows.map(() => []),
    issues,
    told,
  };
}

interface BodyRow {
  readonly y: number;
  readonly cells: string[];
}

/** Rows below the headings that hold anything; a cell merged downwards stands in each of its rows. */
function bodyOf(grid: SheetGrid, from: number): { readonly rows: readonly BodyRow[]; readonly stands: number } {
  const rows = new Map<number, BodyRow>();
  for (const [y, row] of grid.rows.entries()) {
    if (y < from) continue;
    const cells = Array.from(row, (cell) =>
      typeof cell === 'object' && cell.fault !== undefined ? '' : gridText(cell),
    );
    if (cells.some((text) => text.trim() !== '')) rows.set(y, { y, cells });
  }
  let stands = 0;
  for (const { top, left, bottom } of grid.merged) {
    const text = rows.get(top)?.cells[left] ?? '';
    if (top < from || bottom === top || text === '') continue;
    stands += 1;
    for (let y = top + 1; y <= bottom; y++) {
      // Only rows that say something of their own are records.
      const row = rows.get(y);
      if (row !== undefined && (row.cells[left] ?? '') === '') row.cells[left] = text;
    }
  }
  return { rows: [...rows.values()], stands };
}

function putBack(
  grid: SheetGrid,
  table: {
    readonly rows: readonly BodyRow[];
    readonly cells: readonly string[][];
    readonly column: number;
    readonly source: number;
    readonly told: CellTold[];
  },
): void {
  const { rows, cells, column, source, told } = table;
  const cellOf = ({ y }: BodyRow) => grid.rows[y]?.[source];
  const shapes = new NumberShapes(rows.map(cellOf).filter((cell) => typeof cell === 'string'));
  for (const [index, row] of rows.entries()) {
    const cell = cellOf(row);
    const changed = typeof cell === 'object' && cell.fault === undefined ? shapes.changed(cell) : null;
    if (changed === null || typeof cell !== 'object') continue;
    const { restored, what, choices } = changed;
    (cells[index] as string[])[column] = restored ?? cell.shown ?? cell.text;
    const others = choices.filter((choice) => choice !== restored);
    told.push({
      line: index + 2,
      column,
      kind: 'number changed',
      what,
      value: cell.shown ?? cell.text,
      choices: others,
    });
  }
}
