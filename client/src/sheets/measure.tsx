/** Rooms, measured once: typed in, drawn as they are typed, corrected later. */
import { roomsInOrder } from '../shell/current-view.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { KnownRoom } from './known-room.tsx';
import { NewRoom } from './new-room.tsx';
import './measure.css';

export function Measure({ roomId }: { readonly roomId: string | null }) {
  const show = useShow();
  const { documents } = show;
  useRoots('rooms', 'openings', 'fixtures', 'places');
  const rooms = roomsInOrder(documents);
  const frozen = !show.may('rooms');
  const room = roomId === null ? undefined : documents.get('rooms', roomId);
  return (
    <div className="measure">
      <nav className="measure-list" aria-label="Rooms">
        <h1>Measure</h1>
        <ol>
          {rooms.map((id) => (
            <li key={id}>
              <a href={toAddress({ sheet: 'measure', roomId: id })} aria-current={id === roomId ? 'page' : undefined}>
                {documents.get('rooms', id)?.name}
              </a>
            </li>
          ))}
        </ol>
        {frozen ? (
          <p className="t1">Rooms are measured by the lead, the curator and the preparator; here they can be read.</p>
        ) : roomId === null ? null : (
          <a className="cmd" href={toAddress({ sheet: 'measure', roomId: null })}>
            add a room
          </a>
        )}
      </nav>
      {roomId !== null && room !== undefined ? (
        <KnownRoom key={roomId} roomId={roomId} room={room} rooms={rooms} frozen={frozen} />
      ) : frozen ? (
        <p className="cap">Choose a room to read its measures.</p>
      ) : (
        <NewRoom
          last={Math.max(0, ...rooms.map((id) => documents.get('rooms', id)?.order ?? 0))}
          first={rooms.length === 0}
        />
      )}
    </div>
  );
}

export default Measure;
