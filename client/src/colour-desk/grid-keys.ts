/** Where the arrows lead in the desk's grid: its rows, the heads above them, and the wall's head at the left. Pure. */

export interface At {
  readonly row: string;
  readonly column: string;
}

export const GROUPS_ROW = 'groups';
export const HEADS_ROW = 'heads';
export const WALL_COLUMN = 'wall';

export interface GridShape {
  /** Keys from the top; the two rows of heads among them where they are shown. */
  readonly rows: readonly string[];
  /** Keys from the left, the wall's head first. */
  columnsOf(row: string): readonly string[];
  /** The group a column is in, as one step of the row of groups. */
  groupOf(column: string): string;
}

/** How many rows a page up or down goes. */
const PAGE = 6;

/** The cell a key leads to, or null for a key that leads nowhere. */
export function stepIn(shape: GridShape, at: At, key: string, withControl: boolean): At | null {
  const rows = shape.rows;
  const row = Math.max(0, rows.indexOf(at.row));
  const columns = shape.columnsOf(rows[row] ?? '');
  const column = Math.max(0, columns.indexOf(at.column));
  const along = (to: number): At => ({ row: at.row, column: columns[clamp(to, columns.length)] ?? WALL_COLUMN });
  const down = (to: number, keep: number = column): At => {
    const next = rows[clamp(to, rows.length)] ?? at.row;
    const there = shape.columnsOf(next);
    // The same column where the row has it, else the one as far along.
    const same = there.includes(at.column) && keep === column ? at.column : there[clamp(keep, there.length)];
    return { row: next, column: same ?? WALL_COLUMN };
  };
  switch (key) {
    case 'ArrowRight':
      return at.row === GROUPS_ROW ? along(nextGroup(shape, columns, column, 1)) : along(column + 1);
    case 'ArrowLeft':
      return at.row === GROUPS_ROW ? along(nextGroup(shape, columns, column, -1)) : along(column - 1);
    case 'ArrowDown':
      return down(row + 1);
    case 'ArrowUp':
      return down(row - 1);
    case 'PageDown':
      return down(row + PAGE);
    case 'PageUp':
      return down(row - PAGE);
    case 'Home':
      return withControl ? down(0, 0) : along(0);
    case 'End':
      return withControl ? down(rows.length - 1, Number.MAX_SAFE_INTEGER) : along(columns.length - 1);
    default:
      return null;
  }
}

function nextGroup(shape: GridShape, columns: readonly string[], from: number, step: 1 | -1): number {
  const groupAt = (index: number): string | undefined => {
    const key = columns[index];
    return key === undefined ? undefined : shape.groupOf(key);
  };
  let to = from + step;
  while (groupAt(to) !== undefined && groupAt(to) === groupAt(from)) to += step;
  // Leftwards it stops at the first column of the group.
  if (step === -1) while (groupAt(to - 1) !== undefined && groupAt(to - 1) === groupAt(to)) to -= 1;
  return groupAt(to) === undefined ? from : to;
}

function clamp(index: number, length: number): number {
  return Math.max(0, Math.min(length - 1, index));
}
