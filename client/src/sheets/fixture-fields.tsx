/** One thing fixed to a wall that nothing may hang over: what, where, how large, and how far to keep off. */
import type { Fixture, RoomId } from '@enfilade/shared/schema';
import { WALL_SIDES, wallNameOf } from '@enfilade/space/room';
import { LengthField } from '../cards/length-field.tsx';
import { useShow } from '../sync/hooks.ts';
import { ChoiceField, TextField } from './sheet-fields.tsx';

/** A fixture while it is being typed in. */
export type FixtureDraft = { readonly [K in keyof Fixture]: Fixture[K] extends number ? number | null : Fixture[K] };

interface FixtureFieldsProps {
  readonly roomId: RoomId;
  readonly fixture: FixtureDraft;
  readonly set: (fields: Partial<Fixture>) => string | null;
  readonly frozen: boolean;
}

const KINDS = [
  'socket',
  'light switch',
  'thermostat',
  'fire call point',
  'exit sign',
  'smoke detector',
  'sensor',
  'camera',
  'vent',
  'radiator',
];

export function FixtureFields({ roomId, fixture, set, frozen }: FixtureFieldsProps) {
  const { documents } = useShow();
  const room = documents.get('rooms', roomId);
  if (room === undefined) return null;
  const length = (label: string, key: 'xMm' | 'yMm' | 'widthMm' | 'heightMm' | 'clearMm') => (
    <LengthField label={label} mm={fixture[key]} frozen={frozen} take={(mm) => set({ [key]: mm })} />
  );
  return (
    <div className="measure-fields">
      <TextField
        label="What"
        text={fixture.kind}
        offers={KINDS}
        frozen={frozen}
        take={(kind) => (kind === '' ? 'say what it is' : set({ kind }))}
      />
      <ChoiceField
        label="On"
        value={fixture.surface}
        choices={WALL_SIDES.map((side) => [`${roomId}:${side}`, wallNameOf(room, side)])}
        frozen={frozen}
        take={(surface) => set({ surface })}
      />
      {length('Centre, from the wall’s left corner', 'xMm')}
      {length('Centre, above the level plane', 'yMm')}
      {length('Width', 'widthMm')}
      {length('Height', 'heightMm')}
      {length('Keep clear round it', 'clearMm')}
    </div>
  );
}
