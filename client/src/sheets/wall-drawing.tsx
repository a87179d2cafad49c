/** One wall of a room as it is faced, with its openings, fixtures and levels. */
import { lengthText } from '@enfilade/space/lengths';
import { floorLevelAlong, wallLengthOf, wallNameOf } from '@enfilade/space/room';
import { type Unit, usePreferences } from '../preferences.ts';
import type { PlanProps } from './room-plan.tsx';

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
