/** What the strip says over its rooms: names, vignettes and what is agreed, the faced wall, and who stands where. */
import { inkOn } from '@enfilade/colour/spaces';
import { surfaceParts } from '@enfilade/shared/schema';
import { isWallSide } from '@enfilade/shared/surface-names';
import { agreementIn, vignettesOf } from '../cards/vignettes-on.ts';
import { useOthers, useShow } from '../sync/hooks.ts';
import { type View, viewFrom } from '../view-address.ts';
import { roomOfView } from './current-view.ts';
import { StateShapes } from './marks.tsx';
import { RingShapes } from './ring.tsx';
import { boxOf, STRIP_SIDES, type StripRoom, wallSpanOf } from './strip-plan.ts';
import type { StripRoomProps } from './strip-rooms.tsx';

export function StripRoomMarks({ at, pxPerMm, thick: t }: StripRoomProps) {
  const { judgements } = useShow();
  const { x, y, w, d } = boxOf(at, pxPerMm);
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

export function StripFaced(props: { rooms: readonly StripRoom[]; view: View; pxPerMm: number; thick: number }) {
  const { rooms, view, pxPerMm, thick } = props;
  const { judgements } = useShow();
  const at = rooms.find(({ roomId }) => roomId === roomOfView(view));
  if (at === undefined) return null;
  const { x, y, w, d } = boxOf(at, pxPerMm);
  const side = view.sheet === 'wall' ? (surfaceParts(view.surface)?.side ?? '') : '';
  // A ceiling is as wide as its room.
  if (view.sheet !== 'wall' || !isWallSide(side)) {
    return <rect x={x - 2.5} y={y - 2.5} width={w + 5} height={d + 5} fill="none" stroke="#111" strokeWidth={2} />;
  }
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

export function StripPeople({ rooms, view, pxPerMm }: { rooms: readonly StripRoom[]; view: View; pxPerMm: number }) {
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
    const { x, y, w, d } = boxOf(at, pxPerMm);
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
