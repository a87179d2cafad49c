/** The table itself: only the columns in sight are drawn, so that 400 works stay quick; arrows go from cell to cell. */
import { type KeyboardEvent, type MouseEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useStore } from '../selection.ts';
import { useFold } from '../shell/media.ts';
import { GroupHeads, WorkHeads } from './desk-heads.tsx';
import { type Geometry, Row } from './desk-row.tsx';
import type { DeskTable } from './desk-table.ts';
import { deskWall } from './desk-trial.ts';
import { type At, GROUPS_ROW, type GridShape, HEADS_ROW, stepIn, WALL_COLUMN } from './grid-keys.ts';
import { useColumnsInSight } from './in-sight.ts';
import './desk-grid.css';

interface GridProps {
  readonly table: DeskTable;
  readonly active: At;
  readonly setActive: (at: At) => void;
  readonly opened: At | null;
  /** Enter, or a press: on a cell, a wall's head, a work's head, or a group's. */
  readonly press: (at: At) => void;
  /** Escape: folds the opened reading away. */
  readonly fold: () => void;
}

const OWN_ROW_PX = 74;
const ROW_PX = 54;

export function DeskGrid({ table, active, setActive, opened, press, fold: foldCard }: GridProps) {
  const fold = useFold();
  const chosen = useStore(deskWall);
  const own = useRef<HTMLDivElement>(null);
  const [wantsFocus, setWantsFocus] = useState(0);
  const geometry = useMemo<Geometry>(
    () => ({
      headPx: fold === 'narrow' ? 124 : 184,
      columnPx: table.own ? 132 : 84,
      rowPx: table.own ? OWN_ROW_PX : ROW_PX,
    }),
    [fold, table.own],
  );
  const [from, to] = useColumnsInSight(own, geometry, table.widest);
  const heads = table.columnsOf(null);
  const grouped = !table.own && (table.groups.length > 1 || table.groups.some(table.folded));

  const shape = useMemo<GridShape>(() => {
    const byKey = new Map(table.rows.map((row) => [row.key, row]));
    const groups = new Map(heads.map((column) => [column.key, column.group.id]));
    const headKeys = [WALL_COLUMN, ...heads.map(({ key }) => key)];
    const rowKeys = new Map<string, readonly string[]>();
    const columnsOf = (row: string): readonly string[] => {
      if (row === GROUPS_ROW || row === HEADS_ROW) return headKeys.slice(1);
      if (!table.own) return headKeys;
      const known = rowKeys.get(row) ?? [WALL_COLUMN, ...table.columnsOf(byKey.get(row) ?? null).map(({ key }) => key)];
      rowKeys.set(row, known);
      return known;
    };
    return {
      rows: [...(grouped ? [GROUPS_ROW] : []), ...(table.own ? [] : [HEADS_ROW]), ...table.rows.map(({ key }) => key)],
      columnsOf,
      groupOf: (column) => groups.get(column) ?? column,
    };
  }, [table, heads, grouped]);

  // What had the focus may be gone by now: folded away, or another's act.
  const at = standing(shape, active);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the count is the occasion
  useLayoutEffect(() => {
    if (wantsFocus === 0) return;
    const found = own.current?.querySelector<HTMLElement>(
      at.row === GROUPS_ROW
        ? `[data-group="${CSS.escape(shape.groupOf(at.column))}"]`
        : `[data-at="${CSS.escape(`${at.row}|${at.column}`)}"]`,
    );
    found?.focus({ preventScroll: true });
    if (at.row !== GROUPS_ROW) found?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [wantsFocus, at.row, at.column]);

  // The row on trial stays in sight beneath its wall, however the table's room changes; nothing but the table moves.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the wall chosen is the occasion
  useLayoutEffect(() => {
    const box = own.current;
    if (box === null) return;
    const observer = new ResizeObserver(() => {
      const trial = box.querySelector('.desk-row-chosen')?.getBoundingClientRect();
      const beneath = (trial?.bottom ?? 0) - box.getBoundingClientRect().top - box.clientHeight;
      if (beneath > 0) box.scrollTop += beneath;
    });
    observer.observe(box);
    return () => observer.disconnect();
  }, [chosen]);

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.altKey || event.metaKey) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      press(at);
      setWantsFocus((count) => count + 1);
      return;
    }
    if (event.key === 'Escape' && opened !== null) {
      event.stopPropagation();
      foldCard();
      return;
    }
    const next = stepIn(shape, at, event.key, event.ctrlKey);
    if (next === null) return;
    event.preventDefault();
    setActive(next);
    setWantsFocus((count) => count + 1);
  };
  const onClick = (event: MouseEvent): void => {
    const found = (event.target as HTMLElement).closest<HTMLElement>('[data-at]')?.dataset.at;
    if (found === undefined) return;
    const cut = found.indexOf('|');
    const pressed = { row: found.slice(0, cut), column: found.slice(cut + 1) };
    setActive(pressed);
    press(pressed);
  };

  const inSightOf = (columns: readonly { readonly key: string }[], row: string): readonly number[] => {
    const indexes: number[] = [];
    for (let index = from; index < Math.min(to, columns.length); index++) indexes.push(index);
    const focused = row === at.row ? columns.findIndex(({ key }) => key === at.column) : -1;
    if (focused >= 0 && !indexes.includes(focused)) indexes.push(focused);
    return indexes;
  };
  const headsInSight = inSightOf(heads, HEADS_ROW);
  const width = geometry.headPx + table.widest * geometry.columnPx;
  const above = (grouped ? 1 : 0) + (table.own ? 0 : 1);
  let room = '';
  return (
    // biome-ignore lint/a11y/useSemanticElements: the grid is drawn in a window of its columns, as no table can be
    <div
      ref={own}
      role="grid"
      tabIndex={-1}
      aria-label="How works read on walls"
      aria-rowcount={table.rows.length + above}
      aria-colcount={table.widest + 1}
      className="desk-grid"
      style={{ scrollPaddingLeft: geometry.headPx + 4, scrollPaddingTop: table.own ? 4 : grouped ? 130 : 106 }}
      onKeyDown={onKeyDown}
      onClick={onClick}
    >
      <div className="desk-wide" role="presentation" style={{ width }}>
        {table.own ? null : (
          <div className="desk-above">
            {grouped ? (
              <GroupHeads
                table={table}
                columns={heads}
                inSight={headsInSight.length === 0 ? [0] : headsInSight}
                geometry={geometry}
                active={at}
              />
            ) : null}
            <WorkHeads table={table} columns={heads} inSight={headsInSight} geometry={geometry} active={at} />
          </div>
        )}
        <div>
          {table.rows.map((row, index) => {
            const first = row.kind === 'wall' && row.wall.roomName !== room;
            if (row.kind === 'wall') room = row.wall.roomName;
            const columns = table.columnsOf(row);
            return (
              <Row
                key={row.key}
                row={row}
                index={index + above + 1}
                columns={columns}
                inSight={sameIndexes(inSightOf(columns, row.key))}
                geometry={geometry}
                first={first}
                chosen={row.wall.surface === chosen}
                activeColumn={row.key === at.row ? at.column : null}
                openedColumn={opened !== null && row.key === opened.row ? opened.column : null}
                own={table.own}
                version={table.version}
              />
            );
          })}
        </div>
      </div>
    </div>
  );
}

const same = new Map<string, readonly number[]>();

/** The same array for the same indexes, so that a row that shows what it showed is not drawn anew. */
function sameIndexes(indexes: readonly number[]): readonly number[] {
  const key = indexes.join();
  const known = same.get(key);
  if (known !== undefined) return known;
  if (same.size > 500) same.clear();
  same.set(key, indexes);
  return indexes;
}

function standing(shape: GridShape, at: At): At {
  const row = shape.rows.includes(at.row)
    ? at.row
    : (shape.rows.find((key) => key !== GROUPS_ROW && key !== HEADS_ROW) ?? HEADS_ROW);
  const columns = shape.columnsOf(row);
  return { row, column: columns.includes(at.column) ? at.column : (columns[1] ?? columns[0] ?? WALL_COLUMN) };
}
