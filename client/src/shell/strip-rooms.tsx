/** The strip's rooms as drawn: each wall a band in its paint, windows, and the doorways straight through. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { surfaceParts } from '@enfilade/shared/schema';
import type { WallSide } from '@enfilade/space/room';
import { useShow } from '../sync/hooks.ts';
import { boxOf, STRIP_SIDES, type StripRoom, wallSpanOf } from './strip-plan.ts';

const CARD = '#e8e8e8';

export interface StripRoomProps {
  readonly at: StripRoom;
  readonly pxPerMm: number;
  readonly thick: number;
}

export function StripRoomPlan({ at, pxPerMm, thick: t }: StripRoomProps) {
  const { judgements, documents } = useShow();
  const { x, y, w, d } = boxOf(at, pxPerMm);
  // Each wall is a mitred band, so that two paints meet at the corner.
  const bands: Record<WallSide, string> = {
    head: `M${x} ${y}h${w}l${-t} ${t}h${2 * t - w}z`,
    foot: `M${x} ${y + d}h${w}l${-t} ${-t}h${2 * t - w}z`,
    left: `M${x} ${y}v${d}l${t} ${-t}v${2 * t - d}z`,
    right: `M${x + w} ${y}v${d}l${-t} ${-t}v${2 * t - d}z`,
  };
  const windows = [...documents.all('openings')].flatMap(([id, opening]) =>
    opening.sides
      .filter(({ surface }) => opening.sides.length === 1 && surfaceParts(surface)?.roomId === at.roomId)
      .map((side) => ({ id, opening, side })),
  );
  return (
    <>
      <rect x={x} y={y} width={w} height={d} fill={CARD} stroke="#111" strokeWidth={0.75} />
      {STRIP_SIDES.map((side) => {
        const paint = judgements.paintOf(`${at.roomId}:${side}`);
        return <path key={side} d={bands[side]} fill={paint === null ? CARD : hexFromLabD65(paint.lab)} />;
      })}
      {windows.map(({ id, opening, side }) => {
        const wall = surfaceParts(side.surface)?.side as WallSide;
        const span = wallSpanOf(at, wall, side.xMm, opening.widthMm, t / pxPerMm);
        return (
          <rect
            key={`${id}${side.surface}`}
            x={span.xMm * pxPerMm}
            y={span.yMm * pxPerMm}
            width={span.widthMm * pxPerMm}
            height={span.heightMm * pxPerMm}
            fill={opening.kind === 'window' ? '#f6f6f6' : CARD}
            stroke="#111"
            strokeWidth={opening.kind === 'window' ? 0.75 : 0}
          />
        );
      })}
    </>
  );
}

export function StripDoorways({
  rooms,
  pxPerMm,
  thick: t,
}: {
  rooms: readonly StripRoom[];
  pxPerMm: number;
  thick: number;
}) {
  const { documents } = useShow();
  const shapes = [...documents.all('openings')].flatMap(([id, opening]) => {
    if (opening.sides.length !== 2) return [];
    const ends = opening.sides.flatMap((side) => {
      const parts = surfaceParts(side.surface);
      const at = rooms.find(({ roomId }) => roomId === parts?.roomId);
      return at === undefined || parts === null
        ? []
        : [wallSpanOf(at, parts.side as WallSide, side.xMm, opening.widthMm, t / pxPerMm)];
    });
    const [a, b] = ends;
    return a === undefined || b === undefined ? [] : [{ id, a, b }];
  });
  return (
    <>
      {shapes.map(({ id, a, b }) => {
        const x0 = Math.min(a.xMm, b.xMm) * pxPerMm;
        const x1 = Math.max(a.xMm + a.widthMm, b.xMm + b.widthMm) * pxPerMm;
        const y0 = Math.min(a.yMm, b.yMm) * pxPerMm;
        const y1 = Math.max(a.yMm + a.heightMm, b.yMm + b.heightMm) * pxPerMm;
        // Only where the two ends face each other; a doorway between rooms that are not neighbours is drawn at both.
        if (x1 - x0 > 6 * t || Math.abs(a.yMm - b.yMm) > 50) return null;
        return (
          <g key={id}>
            <rect x={x0} y={y0} width={x1 - x0} height={y1 - y0} fill={CARD} />
            <path d={`M${x0} ${y0}H${x1}M${x0} ${y1}H${x1}`} stroke="#111" strokeWidth={0.75} />
          </g>
        );
      })}
      {axisOf(shapes.map(({ a }) => (a.yMm + a.heightMm / 2) * pxPerMm)).map((y) => (
        <path
          key={y}
          d={`M-8 ${y}H${Math.max(...rooms.map((at) => (at.leftMm + at.room.widthMm) * pxPerMm)) + 6}`}
          stroke="#111"
          strokeWidth={0.75}
          strokeDasharray="8 3 1.5 3"
        />
      ))}
    </>
  );
}

/** One axis where all doorways lie on it; none where they do not. */
function axisOf(ys: readonly number[]): readonly number[] {
  const first = ys[0];
  return first !== undefined && ys.every((y) => Math.abs(y - first) < 2) ? [first] : [];
}
