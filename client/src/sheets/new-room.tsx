/** A room more, typed in: drawn as soon as it has its three lengths. */
import * as commands from '@enfilade/shared/commands';
import { useState } from 'react';
import { act } from '../cards/acting.ts';
import { usePreferences } from '../preferences.ts';
import { useShow } from '../sync/hooks.ts';
import { go } from '../view-address.ts';
import { roomTrouble } from './room-acts.ts';
import { type RoomDraft, RoomFields } from './room-fields.tsx';
import { RoomPlan } from './room-plan.tsx';
import { TypedDraft } from './typed-draft.tsx';
import { WallDrawing } from './wall-drawing.tsx';

const EMPTY: Omit<RoomDraft, 'order'> = {
  name: '',
  widthMm: null,
  depthMm: null,
  heightMm: null,
  headFaces: 'north',
  cornersMm: [0, 0, 0, 0],
  laserMm: 1000,
};

export function NewRoom({ last, first }: { readonly last: number; readonly first: boolean }) {
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
          <TypedDraft wrong={wrong} addWords="Add the room" add={add}>
            <RoomFields
              room={{ ...draft, order: last + 1 }}
              frozen={false}
              set={(fields) => {
                setDraft((now) => ({ ...now, ...fields }));
                setWrong(null);
                return null;
              }}
            />
          </TypedDraft>
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
