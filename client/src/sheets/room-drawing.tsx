/** The room as typed so far: its plan, and one wall as it is faced. Small, to scale, drawn anew with every figure. */
import type { Judgements } from '@enfilade/shared/judgements';
import { type RoomId, surfaceParts } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import {
  floorLevelAlong,
  planFromWall,
  type RoomShape,
  WALL_SIDES,
  type WallSide,
  wallLengthOf,
  wallNameOf,
} from '@enfilade/space/room';
import { type Unit, usePreferences } from '../preferences.ts';

interface PlanProps {
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
          <path d={`M${at(side, xMm)}L${at(side, xMm + opening.widthMm)}`} stroke="var(--card)" strokeWidth={8} />
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

const WALL = { width: 340, left: 44, right: 24, top: 10, bottom: 30 };

export function WallDrawing({ judgements, roomId, room, faced }: PlanProps) {
  const { unit } = usePreferences();
  const length = wallLengthOf(room, faced);
  const scale = Math.min((WALL.width - WALL.left - WALL.right) / length, 240 / room.heightMm);
  const low = Math.min(0, ...room.cornersMm);
  const base = WALL.top + room.heightMm * scale;
  const xOn = (mm: number): number => WALL.left + mm * scale;
  const yOn = (mm: number): number => base - mm * scale;
  const surface = `${roomId}:${faced}`;
  const openings = roomId === null ? [] : judgements.openingsOn(surface);
  const fixtures = roomId === null ? [] : judgements.fixturesOn(surface);
  const floorLeft = floorLevelAlong(room, faced, 0);
  const floorRight = floorLevelAlong(room, faced, length);
  return (
    <svg
      className="measure-plan"
      viewBox={`0 0 ${WALL.width} ${yOn(low) + WALL.bottom}`}
      role="img"
      aria-label={`The ${wallNameOf(room, faced)} as faced: ${openings.length} openings, ${fixtures.length} fixtures`}
    >
      <path
        d={`M${xOn(0)} ${yOn(floorLeft)}V${yOn(room.heightMm)}H${xOn(length)}V${yOn(floorRight)}z`}
        fill="var(--card)"
        stroke="#111"
        strokeWidth={1.25}
      />
      <path
        d={`M${xOn(0) - 8} ${yOn(floorLeft)}L${xOn(length) + 6} ${yOn(floorRight)}`}
        stroke="#111"
        strokeWidth={2.5}
      />
      {openings.map((box) => {
        const x = xOn(box.xMm - box.widthMm / 2);
        const y = yOn(box.yMm + box.heightMm / 2);
        const w = box.widthMm * scale;
        const h = box.heightMm * scale;
        return (
          <g key={box.id} stroke="#111" strokeWidth={1}>
            <rect x={x} y={y} width={w} height={h} fill="var(--board)" />
            <path d={`M${x} ${y}l${w} ${h}M${x + w} ${y}l${-w} ${h}`} strokeWidth={0.5} />
          </g>
        );
      })}
      {fixtures.map((box) => (
        <g key={box.id} stroke="#111">
          <rect
            x={xOn(box.xMm - box.widthMm / 2 - box.clearMm)}
            y={yOn(box.yMm + box.heightMm / 2 + box.clearMm)}
            width={(box.widthMm + 2 * box.clearMm) * scale}
            height={(box.heightMm + 2 * box.clearMm) * scale}
            fill="none"
            strokeWidth={0.75}
            strokeDasharray="2 2"
          />
          <rect
            x={xOn(box.xMm - box.widthMm / 2)}
            y={yOn(box.yMm + box.heightMm / 2)}
            width={Math.max(2, box.widthMm * scale)}
            height={Math.max(2, box.heightMm * scale)}
            fill="#111"
            strokeWidth={0}
          />
        </g>
      ))}
      <Level y={yOn(room.laserMm)} from={xOn(0) - 6} to={xOn(length)} words={lengthText(room.laserMm, unit)} />
      <text x={xOn(0) - 4} y={yOn(room.heightMm) + 10} textAnchor="end">
        {lengthText(room.heightMm, unit)}
      </text>
      <text x={xOn(length / 2)} y={yOn(low) + 20} textAnchor="middle">
        {widthWords(length, floorLeft - floorRight, unit)}
      </text>
    </svg>
  );
}

function Level({ y, from, to, words }: { y: number; from: number; to: number; words: string }) {
  return (
    <>
      <path d={`M${from} ${y}H${to}`} stroke="#111" strokeWidth={0.9} strokeDasharray="10 3 2 3" />
      <text x={from - 2} y={y - 3} textAnchor="end">
        {words}
      </text>
    </>
  );
}

function widthWords(length: number, fall: number, unit: Unit): string {
  const long = `${lengthText(length, unit)} long`;
  if (fall === 0) return `${long}, floor level`;
  return `${long}, floor falls ${lengthText(Math.abs(fall), unit)} to the ${fall > 0 ? 'right' : 'left'}`;
}

export function WallChoice({
  room,
  faced,
  face,
}: {
  readonly room: RoomShape;
  readonly faced: WallSide;
  readonly face: (side: WallSide) => void;
}) {
  return (
    <p className="measure-walls">
      {WALL_SIDES.map((side) => (
        <button
          key={side}
          type="button"
          className={side === faced ? 'cmd on' : 'cmd'}
          aria-pressed={side === faced}
          onClick={() => face(side)}
        >
          {wallNameOf(room, side)}
        </button>
      ))}
    </p>
  );
}
