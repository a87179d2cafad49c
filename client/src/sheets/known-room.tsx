/** One room's measures beside its drawing, and what can be done with the room as a whole. */
import type { Act } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import type { Room, RoomId } from '@enfilade/shared/schema';
import { WALL_SIDES, type WallSide, wallNameOf } from '@enfilade/space/room';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { useShow } from '../sync/hooks.ts';
import { go, toAddress } from '../view-address.ts';
import { FixturesPart } from './fixtures-part.tsx';
import { OpeningsPart } from './openings-part.tsx';
import { piecesIn, reorderRoom, takeRoomAway } from './room-acts.ts';
import { RoomFields } from './room-fields.tsx';
import { RoomPlan } from './room-plan.tsx';
import { WallDrawing } from './wall-drawing.tsx';

interface KnownRoomProps {
  readonly roomId: RoomId;
  readonly room: Room;
  readonly rooms: readonly RoomId[];
  readonly frozen: boolean;
}

export function KnownRoom({ roomId, room, rooms, frozen }: KnownRoomProps) {
  const show = useShow();
  const [faced, face] = useState<WallSide>('head');
  const set = (made: Act): string | null =>
    act(show, made, `${room.name} corrected`) ? null : 'cannot be set just now';
  const drawing = { judgements: show.judgements, roomId, room, faced };
  return (
    <>
      <div className="measure-typed">
        <section className="card">
          <h2>{room.name}</h2>
          <RoomFields room={room} frozen={frozen} set={(fields) => set(commands.correctRoom(roomId, fields))} />
          {frozen ? null : <RoomCommands roomId={roomId} room={room} rooms={rooms} />}
        </section>
        <OpeningsPart roomId={roomId} faced={faced} frozen={frozen} />
        <FixturesPart roomId={roomId} faced={faced} frozen={frozen} />
      </div>
      <div className="measure-drawn">
        <RoomPlan {...drawing} />
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
        <WallDrawing {...drawing} />
        <p className="measure-links">
          <a href={toAddress({ sheet: 'wall', surface: `${roomId}:${faced}` })}>face this wall</a>
          <a href={toAddress({ sheet: 'room', roomId })}>the room’s fold-out</a>
        </p>
      </div>
    </>
  );
}

function RoomCommands({ roomId, room, rooms }: Omit<KnownRoomProps, 'frozen'>) {
  const show = useShow();
  const [asking, ask] = useState(false);
  const hung = piecesIn(show.documents, roomId).length;
  const earlier = reorderRoom(show.documents, rooms, roomId, -1);
  const later = reorderRoom(show.documents, rooms, roomId, 1);
  const takeAway = (): void => {
    if (act(show, takeRoomAway(show.documents, roomId), `${room.name} taken away; undo brings it back`)) {
      go({ sheet: 'measure', roomId: null });
    }
  };
  return (
    <p className="measure-commands">
      <button type="button" disabled={earlier === null} onClick={() => earlier && act(show, earlier, 'one earlier')}>
        earlier in the row
      </button>
      <button type="button" disabled={later === null} onClick={() => later && act(show, later, 'one later')}>
        later in the row
      </button>
      {asking ? (
        <span className="measure-sure" role="alert">
          {hung} {hung === 1 ? 'piece goes' : 'pieces go'} back to the unplaced.{' '}
          <button type="button" onClick={takeAway}>
            take it away
          </button>{' '}
          <button type="button" onClick={() => ask(false)}>
            keep it
          </button>
        </span>
      ) : (
        <button type="button" onClick={() => (hung > 0 ? ask(true) : takeAway())}>
          take this room away
        </button>
      )}
    </p>
  );
}
