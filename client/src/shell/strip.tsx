/** The building, to go about by: plans of the rooms in a row, in their paints, with what is agreed on each wall. */
import { hexFromLabD65, inkOn } from '@enfilade/colour/spaces';
import { surfaceParts } from '@enfilade/shared/schema';
import type { WallSide } from '@enfilade/space/room';
import { agreementIn, vignettesOf } from '../cards/vignettes-on.ts';
import { useOthers, useRoots, useShow } from '../sync/hooks.ts';
import { type View, viewFrom } from '../view-address.ts';
import { roomOfView } from './current-view.ts';
import { StateShapes } from './marks.tsx';
import { RingShapes } from './ring.tsx';
import { StripButtons } from './strip-buttons.tsx';
import { northDegreesOf, STRIP_SIDES, type StripRoom, stripPlanOf, wallSpanOf } from './strip-plan.ts';
import './strip.css';

const PAD = { left: 44, top: 15, right: 12, bottom: 10 };
const CARD = '#e8e8e8';

export function Strip({ view, heightPx = 87, widestPx = 330 }: { view: View; heightPx?: number; widestPx?: number }) {
  const show = useShow();
  useRoots('rooms', 'openings', 'paints', 'deck', 'vignettes', 'memberOf', 'places', 'signatures');
  const { documents } = show;
  const plan = stripPlanOf(documents.all('rooms'), documents.all('openings').values(), 420);
  if (plan.rooms.length === 0) return <p className="strip-none">No room is measured yet.</p>;
  const pxPerMm = Math.min(heightPx / plan.heightMm, widestPx / plan.widthMm);
  const width = plan.widthMm * pxPerMm + PAD.left + PAD.right;
  const height = heightPx + PAD.top + PAD.bottom;
  const thick = Math.max(4, 300 * pxPerMm);
  return (
    <nav className="strip" aria-label="The building" style={{ width, height }}>
      <svg width={width} height={height} aria-hidden="true">
        <g transform={`translate(${PAD.left} ${PAD.top})`}>
          {plan.rooms.map((at) => (
            <RoomPlan key={at.roomId} at={at} pxPerMm={pxPerMm} thick={thick} />
          ))}
          <Doorways rooms={plan.rooms} pxPerMm={pxPerMm} thick={thick} />
          {plan.rooms.map((at) => (
            <RoomMarks key={at.roomId} at={at} pxPerMm={pxPerMm} thick={thick} />
          ))}
          <Faced rooms={plan.rooms} view={view} pxPerMm={pxPerMm} thick={thick} />
          <People rooms={plan.rooms} view={view} pxPerMm={pxPerMm} />
        </g>
        <g transform={`translate(20 21) rotate(${northDegreesOf(plan.rooms[0]!.room.headFaces)})`}>
          <path d="M0 8V-8M-4 -3L0 -8L4 -3" fill="none" stroke="currentColor" />
        </g>
        <text x={36} y={25} textAnchor="end" style={{ fontSize: 11.5 }} dx={northShift(plan.rooms[0]!)}>
          N
        </text>
      </svg>
      <StripButtons plan={plan} view={view} pxPerMm={pxPerMm} left={PAD.left} top={PAD.top} thick={thick} />
    </nav>
  );
}

function northShift(first: StripRoom): number {
  // Beside the arrow's foot, whichever way it points.
  return first.room.headFaces === 'east' ? 4 : first.room.headFaces === 'west' ? -24 : 0;
}

interface PlanProps {
  readonly at: StripRoom;
  readonly pxPerMm: number;
  readonly thick: number;
}

function box(at: StripRoom, pxPerMm: number) {
  return {
    x: at.leftMm * pxPerMm,
    y: at.topMm * pxPerMm,
    w: at.room.widthMm * pxPerMm,
    d: at.room.depthMm * pxPerMm,
  };
}

function RoomPlan({ at, pxPerMm, thick: t }: PlanProps) {
  const { judgements, documents } = useShow();
  const { x, y, w, d } = box(at, pxPerMm);
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

function Doorways({ rooms, pxPerMm, thick: t }: { rooms: readonly StripRoom[]; pxPerMm: number; thick: number }) {
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

function RoomMarks({ at, pxPerMm, thick: t }: PlanProps) {
  const { judgements } = useShow();
  const { x, y, w, d } = box(at, pxPerMm);
  const size = Math.min(9, 600 * pxPerMm);
  const { agreed, of } = agreementIn(judgements, at.roomId);
  const small = w < 72 || d < 74;
  return (
    <g className="strip-marks">
      {STRIP_SIDES.map((side) => {
        const here = vignettesOf(judgements).filter(({ surface }) => surface === `${at.roomId}:${side}`);
        const run = here.length * (size + 4) - 4;
        const [sx, sy] = {
          head: [x + w / 2 - run / 2, y + t + 3],
          foot: [x + w / 2 - run / 2, y + d - t - 3 - size],
          left: [x + t + 3, y + d - t - 3 - size],
          right: [x + w - t - 3 - run, y + d - t - 3 - size],
        }[side] as [number, number];
        return here.map(({ id }, index) => (
          <g key={id} transform={`translate(${sx + index * (size + 4)} ${sy})`}>
            <StateShapes state={judgements.standingOf(id)?.state ?? 'drafted'} sizePx={size} />
          </g>
        ));
      })}
      {small ? null : (
        <>
          <text
            className="s"
            x={x + w / 2}
            y={y + t + 26}
            textAnchor="middle"
            textLength={at.room.name.length * 6.4 > w - 2 * t - 6 ? w - 2 * t - 6 : undefined}
            lengthAdjust="spacingAndGlyphs"
            style={{ fontSize: 12.5 }}
          >
            {at.room.name}
          </text>
          {of === 0 || d < 76 ? null : (
            <text x={x + w / 2} y={y + t + 39} textAnchor="middle" style={{ fontSize: 11.5 }}>
              {agreed} of {of} agreed
            </text>
          )}
        </>
      )}
    </g>
  );
}

function Faced(props: { rooms: readonly StripRoom[]; view: View; pxPerMm: number; thick: number }) {
  const { rooms, view, pxPerMm, thick } = props;
  const { judgements } = useShow();
  const at = rooms.find(({ roomId }) => roomId === roomOfView(view));
  if (at === undefined) return null;
  const { x, y, w, d } = box(at, pxPerMm);
  if (view.sheet !== 'wall') {
    return <rect x={x - 2.5} y={y - 2.5} width={w + 5} height={d + 5} fill="none" stroke="#111" strokeWidth={2} />;
  }
  const side = surfaceParts(view.surface)?.side as WallSide;
  const long = side === 'head' || side === 'foot' ? at.room.widthMm : at.room.depthMm;
  const span = wallSpanOf(at, side, 0, long, thick / pxPerMm);
  const turn = { head: 0, right: 90, foot: 180, left: 270 }[side];
  const [tipX, tipY] = {
    head: [x + w / 2, y - 5],
    right: [x + w + 5, y + d / 2],
    foot: [x + w / 2, y + d + 5],
    left: [x - 5, y + d / 2],
  }[side] as [number, number];
  const paint = judgements.paintOf(view.surface);
  return (
    <>
      <rect
        x={span.xMm * pxPerMm - 2}
        y={span.yMm * pxPerMm - 2}
        width={span.widthMm * pxPerMm + 4}
        height={span.heightMm * pxPerMm + 4}
        fill="none"
        stroke="#111"
        strokeWidth={2}
        className={paint !== null && inkOn(paint.lab) === 'white' ? 'strip-faced-dark' : undefined}
      />
      {/* The standpoint wedge: seen from inside, towards this wall. */}
      <path d="M0 0l-5 -7h10z" fill="#111" transform={`translate(${tipX} ${tipY}) rotate(${turn})`} />
    </>
  );
}

function People({ rooms, view, pxPerMm }: { rooms: readonly StripRoom[]; view: View; pxPerMm: number }) {
  const show = useShow();
  const others = useOthers();
  const everyone = [
    { id: show.me.person.id, name: show.me.person.name, ring: show.presence.ringOf(show.me.person.id), view },
    ...others.map(({ person, ring, presence }) => ({
      id: person.id,
      name: person.name,
      ring,
      view: viewFrom(presence.at ?? ''),
    })),
  ];
  return rooms.map((at) => {
    const here = everyone.filter((one) => one.view !== null && roomOfView(one.view) === at.roomId);
    const { x, y, w, d } = box(at, pxPerMm);
    const step = Math.min(22, w / (here.length + 1));
    return here.map((one, index) => (
      <g
        key={one.id}
        transform={`translate(${x + w / 2 + (index - (here.length - 1) / 2) * step} ${y + d - Math.max(18, d * 0.34)})`}
      >
        <RingShapes name={one.name} pattern={one.ring} radiusPx={7.5} />
      </g>
    ));
  });
}
