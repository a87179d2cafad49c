/** The building, to go about by: plans of the rooms in a row, in their paints, with what is agreed on each wall. */
import { useRoots, useShow } from '../sync/hooks.ts';
import type { View } from '../view-address.ts';
import { StripButtons } from './strip-buttons.tsx';
import { StripFaced, StripPeople, StripRoomMarks } from './strip-marks.tsx';
import { northDegreesOf, type StripRoom, stripPlanOf } from './strip-plan.ts';
import { StripDoorways, StripRoomPlan } from './strip-rooms.tsx';
import { StripWaiting } from './strip-waiting.tsx';
import './strip.css';

const PAD = { left: 44, top: 15, right: 12, bottom: 10 };

export function Strip({ view, heightPx = 87, widestPx = 330 }: { view: View; heightPx?: number; widestPx?: number }) {
  const show = useShow();
  // biome-ignore format: one list
  useRoots('rooms', 'openings', 'paints', 'deck', 'vignettes', 'memberOf', 'places', 'signatures', 'settings', 'proposals', 'proposed');
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
            <StripRoomPlan key={at.roomId} at={at} pxPerMm={pxPerMm} thick={thick} />
          ))}
          <StripDoorways rooms={plan.rooms} pxPerMm={pxPerMm} thick={thick} />
          {plan.rooms.map((at) => (
            <StripRoomMarks key={at.roomId} at={at} pxPerMm={pxPerMm} thick={thick} />
          ))}
          <StripFaced rooms={plan.rooms} view={view} pxPerMm={pxPerMm} thick={thick} />
          <StripPeople rooms={plan.rooms} view={view} pxPerMm={pxPerMm} />
          {view.sheet === 'waiting' ? <StripWaiting rooms={plan.rooms} pxPerMm={pxPerMm} /> : null}
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
