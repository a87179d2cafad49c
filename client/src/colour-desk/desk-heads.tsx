/** Above the rows: which wall or word columns belong to, and each work's picture and title. They stay in sight. */
import type { DeskGroup } from '@enfilade/shared/colour-desk';
import { capital, surfaceName } from '@enfilade/shared/surface-names';
import { Picture } from '../shell/picture.tsx';
import { useShow } from '../sync/hooks.ts';
import type { Geometry } from './desk-row.tsx';
import type { DeskColumn, DeskTable } from './desk-table.ts';
import { GROUPS_ROW, HEADS_ROW } from './grid-keys.ts';

/** Longest side of a work's picture, px. */
const THUMB_PX = 44;

interface HeadsProps {
  readonly table: DeskTable;
  readonly columns: readonly DeskColumn[];
  readonly inSight: readonly number[];
  readonly geometry: Geometry;
  readonly active: { readonly row: string; readonly column: string };
}

export function GroupHeads({ table, columns, inSight, geometry, active }: HeadsProps) {
  const { documents } = useShow();
  const first = Math.min(...inSight);
  const last = Math.max(...inSight);
  let from = 0;
  const spans = table.groups.map((group) => {
    const span = { group, from, count: table.folded(group) ? 1 : group.works.length };
    from += span.count;
    return span;
  });
  return (
    // biome-ignore lint/a11y/useSemanticElements: the grid is drawn in a window of its columns, as no table can be
    // biome-ignore lint/a11y/useFocusableInteractive: the focus is with its cells
    <div role="row" aria-rowindex={1} className="desk-groups">
      {spans
        .filter((span) => span.from <= last && span.from + span.count > first)
        .map(({ group, from: at, count }) => {
          const folded = table.folded(group);
          const key = columns[at]?.key ?? '';
          const inside = active.row === GROUPS_ROW && columns[at + count - 1] !== undefined;
          const isActive = inside && columns.slice(at, at + count).some((column) => column.key === active.column);
          const name = groupName(group, (surface) => surfaceName(documents, surface));
          return (
            // biome-ignore lint/a11y/useSemanticElements: as above
            <div
              key={group.id}
              role="columnheader"
              aria-colindex={at + 2}
              aria-colspan={count}
              aria-expanded={!folded}
              aria-label={`${name}, ${worksText(group.works.length)}${folded ? ', together' : ''}`}
              tabIndex={isActive ? 0 : -1}
              data-at={`${GROUPS_ROW}|${key}`}
              data-group={group.id}
              className="desk-group"
              style={{ left: geometry.headPx + at * geometry.columnPx, width: count * geometry.columnPx }}
            >
              <span style={{ left: geometry.headPx + 4 }}>
                <b aria-hidden="true">{folded ? '+' : '−'}</b> {folded ? shortOf(name) : name}
                {folded ? null : ` · ${group.works.length}`}
              </span>
            </div>
          );
        })}
    </div>
  );
}

function groupName(group: DeskGroup, name: (surface: string) => string): string {
  if (group.word !== null) return capital(group.word);
  return group.surface === null ? 'On no wall' : name(group.surface);
}

function worksText(count: number): string {
  return count === 1 ? '1 work' : `${count} works`;
}

/** 'east wall' of 'Dye House, east wall' keeps a narrow column readable; the room is in its label. */
function shortOf(name: string): string {
  return name.split(', ').at(-1) ?? name;
}

export function WorkHeads({ table, columns, inSight, geometry, active }: HeadsProps) {
  const { judgements, documents } = useShow();
  return (
    // biome-ignore lint/a11y/useSemanticElements: the grid is drawn in a window of its columns, as no table can be
    // biome-ignore lint/a11y/useFocusableInteractive: the focus is with its cells
    <div role="row" aria-rowindex={2} className="desk-heads">
      {inSight.map((index) => {
        const column = columns[index];
        if (column === undefined) return null;
        const isActive = active.row === HEADS_ROW && active.column === column.key;
        const style = { left: geometry.headPx + index * geometry.columnPx, width: geometry.columnPx };
        const common = {
          'aria-colindex': index + 2,

          'data-at': `${HEADS_ROW}|${column.key}`,
          className: 'desk-head',
          style,
        } as const;
        if (column.kind === 'group') {
          const room = surfaceName(documents, column.group.surface ?? '').split(', ');
          return (
            // biome-ignore lint/a11y/useSemanticElements: as above
            <div
              key={column.key}
              role="columnheader"
              tabIndex={isActive ? 0 : -1}
              {...common}
              aria-label={`${worksText(column.group.works.length)} together: open them`}
            >
              <span className="desk-head-many">{column.group.works.length}</span>
              <span>
                {column.group.works.length === 1 ? 'work' : 'works'}
                {room.length > 1 ? ` in the ${room[0]}` : ''}
              </span>
            </div>
          );
        }
        const { work } = column;
        const pieceId = work.pieces[0] ?? '';
        const picture = judgements.pictureOf(pieceId);
        const scale = picture === undefined ? 0 : THUMB_PX / Math.max(picture.widthPx, picture.heightPx);
        const title = work.pieces.length > 1 ? `${work.title} (${work.pieces.length})` : work.title;
        return (
          // biome-ignore lint/a11y/useSemanticElements: as above
          <div
            key={column.key}
            role="columnheader"
            tabIndex={isActive ? 0 : -1}
            {...common}
            aria-label={`${title}, ${work.number}`}
            title={`${title}, ${work.number}`}
          >
            <span className="desk-head-picture">
              {picture === undefined ? null : (
                <Picture
                  sha256={picture.sha256}
                  widthPx={picture.widthPx * scale}
                  heightPx={picture.heightPx * scale}
                  small
                />
              )}
            </span>
            <span className="desk-head-title">{title}</span>
            {table.own ? null : <span className="spoken">{work.number}</span>}
          </div>
        );
      })}
    </div>
  );
}
