/** One cell: the paint, the work's colours on it, a mark and a word. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import { hexFromLabD65, inkOn } from '@enfilade/colour/spaces';
import { countsOf, type DeskCell, deskCellOf, WORST_FIRST } from '@enfilade/shared/colour-desk';
import type { Judgements } from '@enfilade/shared/judgements';
import { Fragment, memo } from 'react';
import { ReadingMark } from '../shell/marks.tsx';
import { Picture } from '../shell/picture.tsx';
import type { DeskColumn } from './desk-table.ts';

/** Longest side of a work's picture in a cell, px. */
const SMALL_PX = 38;

interface CellProps {
  readonly judgements: Judgements;
  readonly column: DeskColumn;
  readonly lab: LabD65;
  readonly paintName: string;
  /** `row|column`, for the grid's focus. */
  readonly at: string;
  readonly index: number;
  readonly leftPx: number;
  readonly widthPx: number;
  readonly here: boolean;
  readonly active: boolean;
  readonly opened: boolean;
  readonly titled: boolean;
  /** Only so that a cell is worked out anew when what it says may have changed. */
  readonly version: string;
}

export const Cell = memo(function Cell(props: CellProps) {
  const { judgements, column, lab, paintName, here, opened, titled } = props;
  const cell = column.kind === 'work' ? deskCellOf(judgements, column.work, lab) : null;
  const counts = column.kind === 'group' ? countsOf(judgements, column.group.works, lab) : null;
  const said =
    column.kind === 'work' ? workText(column.work.title, cell, here) : groupText(column.group.works.length, counts);
  return (
    // biome-ignore lint/a11y/useSemanticElements: the grid is drawn in a window of its columns, as no table can be
    <div
      role="gridcell"
      aria-colindex={props.index + 2}
      aria-label={`${said}, on ${paintName}`}
      aria-selected={opened}
      tabIndex={props.active ? 0 : -1}
      data-at={props.at}
      className={`desk-cell${titled ? ' desk-titled' : here ? ' desk-here' : ''}${opened ? ' desk-opened' : ''}`}
      style={{ left: props.leftPx, width: props.widthPx, background: hexFromLabD65(lab), color: inkOn(lab) }}
    >
      {titled && column.kind === 'work' ? (
        <>
          {cell === null ? null : <Small judgements={judgements} pieceId={cell.pieceId} />}
          <span className="desk-cell-title">{column.work.title}</span>{' '}
        </>
      ) : null}
      {counts !== null ? (
        <GroupCounts counts={counts} />
      ) : cell === null ? (
        <span className="desk-unknown">no picture</span>
      ) : (
        <>
          <Palette judgements={judgements} cell={cell} />
          <span className="desk-word">
            <ReadingMark word={cell.reading.word} sizePx={12} />
            <span className={cell.reading.word === 'lost' ? 'b' : undefined}>{cell.reading.word}</span>
          </span>
        </>
      )}
    </div>
  );
});

function workText(title: string, cell: DeskCell | null, here: boolean): string {
  const hangs = here ? ', hangs there' : '';
  if (cell === null) return `${title}${hangs}: not known`;
  const words = WORST_FIRST.filter((word) => cell.counts[word] > 0);
  const many = words.length > 1 ? ` (${words.map((word) => `${cell.counts[word]} ${word}`).join(', ')})` : '';
  return `${title}: ${cell.reading.word}${many}${hangs}`;
}

type Counts = Readonly<Record<ReadingWord, number>>;

/** The words in the order they are drawn, with nothing between: whoever speaks them to it is understood. */
function groupText(works: number, counts: Counts | null): string {
  const words = WORST_FIRST.filter((word) => (counts?.[word] ?? 0) > 0).map((word) => `${counts?.[word]} ${word}`);
  return `${works === 1 ? '1 work' : `${works} works`} together: ${words.join(' ')}`;
}

/** The two worst words there are, with their numbers. */
function GroupCounts({ counts }: { readonly counts: Counts }) {
  const words = WORST_FIRST.filter((word) => counts[word] > 0).slice(0, 2);
  return (
    <span className="desk-counts">
      {words.map((word, index) => (
        <Fragment key={word}>
          {index === 0 ? null : ' '}
          <span className="desk-word">
            <ReadingMark word={word} sizePx={12} />
            <span className={word === 'lost' ? 'b' : undefined}>
              {counts[word]} {word}
            </span>
          </span>
        </Fragment>
      ))}
    </span>
  );
}

/** The work itself, where no head of a column shows it. */
function Small({ judgements, pieceId }: { readonly judgements: Judgements; readonly pieceId: string }) {
  const picture = judgements.pictureOf(pieceId);
  if (picture === undefined) return null;
  const scale = SMALL_PX / Math.max(picture.widthPx, picture.heightPx);
  return (
    <span className="desk-cell-picture">
      <Picture sha256={picture.sha256} widthPx={picture.widthPx * scale} heightPx={picture.heightPx * scale} small />
    </span>
  );
}

/** The work's colours by area, the largest first, within what meets the wall: its edge, or its frame. */
function Palette({ judgements, cell }: { readonly judgements: Judgements; readonly cell: DeskCell }) {
  const colours = judgements.coloursOf(cell.pieceId);
  if (colours === null) return null;
  const body = [...colours.body].sort((a, b) => b.share - a.share);
  const edge = [...colours.edge].sort((a, b) => b.share - a.share)[0];
  const whole = body.reduce((sum, { share }) => sum + share, 0);
  let at = 0;
  const stops = body.map(({ lab, share }) => {
    const from = at;
    at += (share / whole) * 100;
    return `${hexFromLabD65(lab)} ${from.toFixed(1)}% ${at.toFixed(1)}%`;
  });
  return (
    <i
      className="desk-palette"
      style={{
        background: `linear-gradient(90deg, ${stops.join(', ')})`,
        borderColor: edge === undefined ? 'transparent' : hexFromLabD65(edge.lab),
      }}
    />
  );
}
