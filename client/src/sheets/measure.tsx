/** Rooms, measured once: typed in, drawn as they are typed, corrected later. */
import type { Act } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import type { Room, RoomId } from '@enfilade/shared/schema';
import type { WallSide } from '@enfilade/space/room';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { roomsInOrder } from '../shell/current-view.ts';
import { useRoots, useShow } from '../sync/hooks.ts';
import { go, toAddress } from '../view-address.ts';
import { FixturesPart } from './fixtures-part.tsx';
import { OpeningsPart } from './openings-part.tsx';
import { piecesIn, reorderRoom, roomTrouble, takeRoomAway } from './room-acts.ts';
import { RoomPlan, WallChoice, WallDrawing } from './room-drawing.tsx';
import { type RoomDraft, RoomFields } from './room-fields.tsx';
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

interface KnownRoomProps {
  readonly roomId: RoomId;
  readonly room: Room;
  readonly rooms: readonly RoomId[];
  readonly frozen: boolean;
}

function KnownRoom({ roomId, room, rooms, frozen }: KnownRoomProps) {
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
        <WallChoice room={room} faced={faced} face={face} />
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

const EMPTY: Omit<RoomDraft, 'order'> = {
  name: '',
  widthMm: null,
  depthMm: null,
  heightMm: null,
  headFaces: 'north',
  cornersMm: [0, 0, 0, 0],
  laserMm: 1000,
};

function NewRoom({ last, first }: { readonly last: number; readonly first: boolean }) {
  const show = useShow();
  const { unit } = usePreferences();
  const [draft, setDraft] = useState(EMPTY);
  const [wrong, setWrong] = useState<string | null>(null);
  const { widthMm, depthMm, heightMm } = draft;
  const whole =
    widthMm === null || depthMm === null || heightMm === null
      ? null
      : { ...draft, widthMm, depthMm, heightMm, order: last + 1 };
  const add = (): void => {
    const trouble =
      draft.name === ''
        ? 'It needs a name.'
        : whole === null
          ? 'Width, depth and height are needed.'
          : roomTrouble(whole, unit);
    setWrong(trouble);
    if (trouble !== null || whole === null) return;
    const made = commands.addRoom(whole);
    if (act(show, made, `${whole.name} added`)) go({ sheet: 'measure', roomId: made.id });
  };
  return (
    <>
      <div className="measure-typed">
        <section className="card">
          <h2>{first ? 'Measure the first room' : 'A room more'}</h2>
          <p className="cap measure-lead">
            Stand at the entrance: that wall is the foot, the one before you the head. Openings and fixtures come after.
          </p>
          <RoomFields
            room={{ ...draft, order: last + 1 }}
            frozen={false}
            set={(fields) => {
              setDraft((now) => ({ ...now, ...fields }));
              setWrong(null);
              return null;
            }}
          />
          {wrong === null ? null : (
            <p className="b t1" role="alert">
              {wrong}
            </p>
          )}
          <p className="measure-commands">
            <button type="button" className="act main" onClick={add}>
              Add the room
            </button>
          </p>
        </section>
      </div>
      <div className="measure-drawn">
        {whole === null ? (
          <p className="cap">It is drawn here as soon as width, depth and height are typed.</p>
        ) : (
          <>
            <RoomPlan judgements={show.judgements} roomId={null} room={whole} faced="head" />
            <WallDrawing judgements={show.judgements} roomId={null} room={whole} faced="head" />
          </>
        )}
      </div>
    </>
  );
}

export default Measure;
