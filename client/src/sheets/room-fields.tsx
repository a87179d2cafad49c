/** A room's own measures: typed once, corrected later; what cannot be is said beside the field. */
import type { Room } from '@enfilade/shared/schema';
import type { HeadFaces } from '@enfilade/space/room';
import { LengthField } from '../cards/length-field.tsx';
import { usePreferences } from '../preferences.ts';
import { type Corner, cornerNameOf, roomTrouble } from './room-acts.ts';
import { ChoiceField, TextField } from './sheet-fields.tsx';

/** A room while it is being typed in: lengths may be missing still. */
export type RoomDraft = Omit<Room, 'widthMm' | 'depthMm' | 'heightMm'> & {
  readonly widthMm: number | null;
  readonly depthMm: number | null;
  readonly heightMm: number | null;
};

interface RoomFieldsProps {
  readonly room: RoomDraft;
  /** Sets fields; answers what is wrong, or null. */
  readonly set: (fields: Partial<Room>) => string | null;
  readonly frozen: boolean;
}

const WINDS: readonly (readonly [HeadFaces, string])[] = [
  ['north', 'north'],
  ['east', 'east'],
  ['south', 'south'],
  ['west', 'west'],
];

export function RoomFields({ room, set, frozen }: RoomFieldsProps) {
  const { unit } = usePreferences();
  /** Checked as the whole room would then be; a draft is checked as far as it goes. */
  const attempt = (fields: Partial<Room>): string | null => {
    const next = { ...room, ...fields };
    const whole = {
      ...next,
      widthMm: next.widthMm ?? 1,
      depthMm: next.depthMm ?? 1,
      heightMm: next.heightMm ?? Number.MAX_SAFE_INTEGER,
    };
    return roomTrouble(whole, unit) ?? set(fields);
  };
  const length = (label: string, key: 'widthMm' | 'depthMm' | 'heightMm', hint?: string) => (
    <LengthField
      label={label}
      mm={room[key]}
      frozen={frozen}
      leastMm={1}
      take={(mm) => attempt({ [key]: mm })}
      {...(hint === undefined ? {} : { hint })}
    />
  );
  return (
    <div className="measure-fields">
      <TextField
        label="Name"
        text={room.name}
        frozen={frozen}
        take={(name) => (name === '' ? 'a room needs a name' : set({ name }))}
      />
      {length('Width, left wall to right wall', 'widthMm')}
      {length('Depth, entrance wall to head wall', 'depthMm')}
      {length('Height of the walls', 'heightMm')}
      <ChoiceField
        label="The head wall faces"
        value={room.headFaces}
        choices={WINDS}
        frozen={frozen}
        take={(value) => set({ headFaces: value as HeadFaces })}
      />
      <LengthField
        label="Laser line, above the level plane"
        mm={room.laserMm}
        frozen={frozen}
        take={(mm) => attempt({ laserMm: mm })}
      />
      <fieldset className="measure-corners">
        <legend>Floor level in the corners, from the {cornerNameOf(room, 0)}; below it with a minus</legend>
        {([1, 2, 3] as const).map((corner) => (
          <LengthField
            key={corner}
            label={cornerNameOf(room, corner)}
            mm={room.cornersMm[corner]}
            frozen={frozen}
            take={(mm) => attempt({ cornersMm: withCorner(room.cornersMm, corner, mm) })}
          />
        ))}
      </fieldset>
    </div>
  );
}

function withCorner(corners: Room['cornersMm'], corner: Corner, mm: number): Room['cornersMm'] {
  const next: [number, number, number, number] = [...corners];
  next[corner] = mm;
  return next;
}
