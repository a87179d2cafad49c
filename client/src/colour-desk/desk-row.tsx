/** One wall of the desk, or a paint on trial on it: its head, then the cells in sight. */
import type { LabD65 } from '@enfilade/colour/lab';
import { hexFromLabD65, lrvOf } from '@enfilade/colour/spaces';
import { lrvText } from '@enfilade/shared/paint-records';
import { memo } from 'react';
import { Ring } from '../shell/ring.tsx';
import { useShow } from '../sync/hooks.ts';
import { Cell } from './desk-cell.tsx';
import { useDeskLight } from './desk-light.tsx';
import type { DeskColumn, DeskRow } from './desk-table.ts';
import { paintFrom, type TrialPaint, useTrialOn } from './desk-trial.ts';
import { WALL_COLUMN } from './grid-keys.ts';

export interface Geometry {
  readonly headPx: number;
  readonly columnPx: number;
  readonly rowPx: number;
}

interface RowProps {
  readonly row: DeskRow;
  readonly index: number;
  readonly columns: readonly DeskColumn[];
  /** Indexes of the columns in sight, and of the one with the focus. */
  readonly inSight: readonly number[];
  readonly geometry: Geometry;
  /** The first of its room: the room is named. */
  readonly first: boolean;
  readonly chosen: boolean;
  readonly activeColumn: string | null;
  readonly openedColumn: string | null;
  readonly own: boolean;
  readonly version: string;
}

export const Row = memo(function Row(props: RowProps) {
  const { row } = props;
  if (row.kind === 'wall') return <HungRow {...props} />;
  return row.kind === 'trial' ? <TrialRow {...props} /> : <TheirRow {...props} row={row} />;
});

function HungRow(props: RowProps) {
  const { documents } = useShow();
  return <PaintedRow {...props} paint={paintFrom(documents, props.row.wall.paint.id)} />;
}

/** Drawn anew with every paint one comes to in the deck; no other row is. */
function TrialRow(props: RowProps) {
  const tried = useTrialOn(props.row.wall.surface);
  return <PaintedRow {...props} paint={tried} />;
}

function TheirRow(props: RowProps & { readonly row: Extract<DeskRow, { kind: 'theirs' }> }) {
  const { documents } = useShow();
  const paint = paintFrom(documents, props.row.paintId);
  return <PaintedRow {...props} paint={paint} />;
}

function PaintedRow(props: RowProps & { readonly paint: TrialPaint | null }) {
  const { judgements, look } = useDeskLight();
  const { row, columns, geometry, paint, activeColumn } = props;
  const lab = paint === null ? null : look(paint);
  const paintName = paint?.name ?? '';
  const known = props.inSight.flatMap((index) => {
    const column = columns[index];
    return column === undefined ? [] : [{ column, index }];
  });
  return (
    // biome-ignore lint/a11y/useSemanticElements: the grid is drawn in a window of its columns, as no table can be
    // biome-ignore lint/a11y/useFocusableInteractive: the focus is with its cells
    <div
      role="row"
      aria-rowindex={props.index}
      className={`desk-row desk-row-${row.kind}${row.kind === 'trial' && props.chosen ? ' desk-row-chosen' : ''}${props.first ? ' desk-row-first' : ''}`}
      style={{ height: geometry.rowPx }}
    >
      <RowHead {...props} lab={lab} />
      {lab === null ? (
        // biome-ignore lint/a11y/useSemanticElements: as above
        // biome-ignore lint/a11y/useFocusableInteractive: there is nothing to do in it
        <div role="gridcell" className="desk-try" aria-colindex={2} style={{ left: geometry.headPx }}>
          Move along the deck: the whole row changes. A press holds the paint.
        </div>
      ) : (
        known.map(({ column, index }) => (
          <Cell
            key={column.key}
            judgements={judgements}
            column={column}
            lab={lab}
            paintName={paintName}
            at={`${row.key}|${column.key}`}
            index={index}
            widthPx={geometry.columnPx}
            leftPx={geometry.headPx + index * geometry.columnPx}
            here={column.kind === 'work' && column.work.surface === row.wall.surface}
            active={activeColumn === column.key}
            opened={props.openedColumn === column.key}
            titled={props.own}
            version={props.version}
          />
        ))
      )}
    </div>
  );
}

function RowHead(props: RowProps & { readonly paint: TrialPaint | null; readonly lab: LabD65 | null }) {
  const { row, lab, paint: shown, chosen, geometry } = props;
  const paintName = shown?.name ?? '';
  const { wall } = row;
  const { documents } = useShow();
  const record = shown?.id == null ? undefined : documents.get('deck', shown.id);
  // It is daylight's, whatever the lamp.
  const lrv = shown === null ? null : record === undefined ? String(Math.round(lrvOf(shown.lab))) : lrvText(record);
  const words = {
    wall: '',
    trial: 'on trial, ',
    theirs: row.kind === 'theirs' ? `${row.other.person.name} tries ` : '',
  };
  const paint = lab === null ? 'nothing yet' : `${paintName}, LRV ${lrv}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: as the row
    <div
      role="rowheader"
      aria-colindex={1}
      aria-label={`${wall.roomName}, ${wall.wallName}: ${words[row.kind]}${paint}${chosen && row.kind === 'wall' ? ', paints are tried here' : ''}`}
      tabIndex={props.activeColumn === WALL_COLUMN ? 0 : -1}
      data-at={`${row.key}|${WALL_COLUMN}`}
      className={`desk-rowhead${chosen && row.kind === 'wall' ? ' desk-rowhead-chosen' : ''}`}
      style={{ width: geometry.headPx }}
    >
      {row.kind === 'wall' ? (
        <span className="desk-rowname">
          {props.first ? <b className="desk-room">{wall.roomName}</b> : null}
          <span>{wall.wallName}</span>
          <i className="it">{paintName}</i>
        </span>
      ) : row.kind === 'trial' ? (
        <span className="desk-rowname">
          <i className="it desk-ontrial">on trial</i>
          <span>{lab === null ? wall.wallName : paintName}</span>
        </span>
      ) : (
        <span className="desk-rowname desk-theirs">
          <Ring name={row.other.person.name} pattern={row.other.ring} radiusPx={9.5} />
          <span>
            <i className="it">{row.other.person.name.split(' ')[0]} tries</i>
            <br />
            {paintName}
          </span>
        </span>
      )}
      {lab === null ? null : (
        <>
          <i className="desk-patch" style={{ background: hexFromLabD65(lab) }} />
          <span className="desk-lrv">
            LRV
            <br />
            <b className="b">{lrv}</b>
          </span>
        </>
      )}
    </div>
  );
}
