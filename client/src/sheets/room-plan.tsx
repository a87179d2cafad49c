/** The plan of a room as typed so far: small, to scale, drawn anew with every figure. */
import type { Judgements } from '@enfilade/shared/judgements';
import { type RoomId, surfaceParts } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { planFromWall, type RoomShape, type WallSide, wallLengthOf, wallNameOf } from '@enfilade/space/room';
import { usePreferences } from '../preferences.ts';

export interface PlanProps {
  readonly judgements: Judgements;
  readonly roomId: RoomId | null;
  readonly room: RoomShape;
  readonly faced: WallSide;
}

const PLAN = { width: 340, margin: 44 };

export function RoomPlan({ judgements, roomId, room, faced }: PlanProps) {
  const { unit } = usePreferences();
  const scale = Math.min((PLAN.width - 2 * PLAN.margin) / room.widthMm, 260 / room.depthMm);
  const width = room.widthMm * scale;
  const depth = room.depthMm * scale;
  const left = (PLAN.width - width) / 2;
  const height = depth + 2 * PLAN.margin;
  const at = (side: WallSide, xMm: number): string => {
    const point = planFromWall(room, side, xMm);
    return `${(left + point.xMm * scale).toFixed(1)} ${(PLAN.margin + depth - point.yMm * scale).toFixed(1)}`;
  };
  const openings =
    roomId === null
      ? []
      : [...judgements.documents.all('openings')].flatMap(([id, opening]) =>
          opening.sides.flatMap((side) => {
            const parts = surfaceParts(side.surface);
            return parts?.roomId === roomId ? [{ id, opening, side: parts.side as WallSide, xMm: side.xMm }] : [];
          }),
        );
  const falls = room.cornersMm.some((mm) => mm !== 0);
  const corners = [
    [left + 6, PLAN.margin + depth - 6, 'start'],
    [left + width - 6, PLAN.margin + depth - 6, 'end'],
    [left + width - 6, PLAN.margin + 15, 'end'],
    [left + 6, PLAN.margin + 15, 'start'],
  ] as const;
  return (
    <svg className="measure-plan" viewBox={`0 0 ${PLAN.width} ${height}`} role="img" aria-label="Plan of the room">
      <rect x={left} y={PLAN.margin} width={width} height={depth} fill="var(--card)" stroke="#111" strokeWidth={3} />
      <path d={`M${at(faced, 0)}L${at(faced, wallLengthOf(room, faced))}`} stroke="#111" strokeWidth={7} />
      {openings.map(({ id, opening, side, xMm }) => (
        <g key={`${id}${side}`}>
          <path
            d={`M${at(side, xMm)}L${at(side, xMm + opening.widthMm)}`}
            stroke="var(--card)"
            strokeWidth={side === faced ? 8 : 4}
          />
          {opening.kind === 'window' ? (
            <path d={`M${at(side, xMm)}L${at(side, xMm + opening.widthMm)}`} stroke="#111" strokeWidth={1.5} />
          ) : null}
        </g>
      ))}
      {falls
        ? corners.map(([x, y, anchor], index) => (
            <text key={`${x} ${y}`} x={x} y={y} textAnchor={anchor}>
              {lengthText(room.cornersMm[index] ?? 0, unit)}
            </text>
          ))
        : null}
      <text x={left + width / 2} y={PLAN.margin - 24} textAnchor="middle" className="s">
        {wallNameOf(room, 'head')}
      </text>
      <text x={left + width / 2} y={PLAN.margin - 9} textAnchor="middle">
        {lengthText(room.widthMm, unit)}
      </text>
      <text x={left + width / 2} y={PLAN.margin + depth + 20} textAnchor="middle" className="s">
        {wallNameOf(room, 'foot')}, the entrance
      </text>
      <g transform={`translate(${left - 10} ${PLAN.margin + depth / 2}) rotate(-90)`}>
        <text textAnchor="middle" className="s">
          {wallNameOf(room, 'left')}
        </text>
      </g>
      <g transform={`translate(${left + width + 10} ${PLAN.margin + depth / 2}) rotate(90)`}>
        <text textAnchor="middle" className="s">
          {wallNameOf(room, 'right')}
        </text>
      </g>
      <g transform={`translate(${left + width + 26} ${PLAN.margin + depth / 2}) rotate(90)`}>
        <text textAnchor="middle">{lengthText(room.depthMm, unit)}</text>
      </g>
    </svg>
  );
}
