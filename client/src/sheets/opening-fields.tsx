/** One doorway or window: which wall it is in, how large, and the wall of another room it is shared with. */
import type { ShowDocuments } from '@enfilade/shared/documents';
import { type Opening, type RoomId, surfaceParts } from '@enfilade/shared/schema';
import { WALL_SIDES, type WallSide, wallLengthOf, wallNameOf } from '@enfilade/space/room';
import { LengthField } from '../cards/length-field.tsx';
import { roomsInOrder } from '../shell/current-view.ts';
import { useShow } from '../sync/hooks.ts';
import { wallTextOf } from './room-acts.ts';
import { ChoiceField, TextField } from './sheet-fields.tsx';

interface OpeningFieldsProps {
  readonly roomId: RoomId;
  readonly opening: Opening;
  readonly set: (fields: Partial<Opening>) => string | null;
  readonly frozen: boolean;
}

export function OpeningFields({ roomId, opening, set, frozen }: OpeningFieldsProps) {
  const { documents } = useShow();
  const room = documents.get('rooms', roomId);
  const here = opening.sides.find(({ surface }) => surfaceParts(surface)?.roomId === roomId);
  const there = opening.sides.find((side) => side !== here);
  if (room === undefined || here === undefined) return null;
  const sides = (change: Partial<typeof here>, other = there) =>
    set({ sides: [{ ...here, ...change }, ...(other === undefined ? [] : [other])] });
  const share = (surface: string) =>
    sides(
      {},
      surface === '' ? undefined : { surface, xMm: mirrored(documents, here.surface, here.xMm, opening, surface) },
    );
  return (
    <div className="measure-fields">
      <ChoiceField
        label="Kind"
        value={opening.kind}
        choices={[
          ['doorway', 'doorway'],
          ['window', 'window'],
        ]}
        frozen={frozen}
        take={(kind) => set({ kind: kind as Opening['kind'] })}
      />
      <TextField label="Name" text={opening.name} frozen={frozen} take={(name) => set({ name })} />
      <ChoiceField
        label="In"
        value={here.surface}
        choices={WALL_SIDES.map((side) => [`${roomId}:${side}`, wallNameOf(room, side)])}
        frozen={frozen}
        take={(surface) => sides({ surface })}
      />
      <LengthField
        label="Left edge, from the wall’s left corner"
        mm={here.xMm}
        frozen={frozen}
        take={(xMm) => sides({ xMm })}
      />
      <LengthField label="Width" mm={opening.widthMm} frozen={frozen} take={(widthMm) => set({ widthMm })} />
      <LengthField label="Height" mm={opening.heightMm} frozen={frozen} take={(heightMm) => set({ heightMm })} />
      <LengthField
        label="Sill, above the level plane"
        mm={opening.sillMm}
        frozen={frozen}
        take={(sillMm) => set({ sillMm })}
      />
      <ChoiceField
        label="Shared with"
        value={there?.surface ?? ''}
        choices={[['', 'no other room'], ...otherWalls(documents, roomId)]}
        frozen={frozen}
        take={share}
      />
      {there === undefined ? null : (
        <LengthField
          label={`Left edge there, faced in ${documents.get('rooms', surfaceParts(there.surface)?.roomId ?? '')?.name ?? 'the other room'}`}
          mm={there.xMm}
          frozen={frozen}
          take={(xMm) => sides({}, { ...there, xMm })}
        />
      )}
    </div>
  );
}

function otherWalls(documents: ShowDocuments, roomId: RoomId): (readonly [string, string])[] {
  return roomsInOrder(documents)
    .filter((id) => id !== roomId)
    .flatMap((id) => WALL_SIDES.map((side) => [`${id}:${side}`, wallTextOf(documents, `${id}:${side}`)] as const));
}

/** Seen from the other room left is right: a first answer where the two walls are back to back, corner to corner. */
function mirrored(documents: ShowDocuments, from: string, xMm: number, opening: Opening, to: string): number {
  const [one, other] = [from, to].map((surface) => {
    const parts = surfaceParts(surface);
    const room = documents.get('rooms', parts?.roomId ?? '');
    return room === undefined ? 0 : wallLengthOf(room, parts?.side as WallSide);
  });
  return Math.max(0, Math.min((other ?? 0) - opening.widthMm, (one ?? 0) - xMm - opening.widthMm));
}
