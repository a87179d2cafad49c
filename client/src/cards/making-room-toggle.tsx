/** Neighbours make room for what one moves, or stay: found on the card of what is moved. */
import { useStore } from '../selection.ts';
import { makingRoom, toggleMakingRoom } from '../stage/making-room.ts';
import { LengthField } from './length-field.tsx';
import './making-room-toggle.css';

export function MakingRoomToggle() {
  const { on, gapMm } = useStore(makingRoom);
  return (
    <div className="making-room">
      <label className="t1">
        <input type="checkbox" checked={on} onChange={toggleMakingRoom} /> neighbours make room{' '}
        <span className="q">(N)</span>
      </label>
      {on ? (
        <LengthField
          label="Gap they leave"
          mm={gapMm}
          leastMm={0}
          mostMm={2000}
          take={(mm) => {
            makingRoom.set({ on, gapMm: mm });
            return null;
          }}
        />
      ) : null}
    </div>
  );
}
