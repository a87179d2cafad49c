/** A piece that hangs from a ceiling: where in plan, how far down, and how high its foot is above the floor. */
import { dropFor } from '@enfilade/shared/overhead';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { shortSurfaceName } from '@enfilade/shared/surface-names';
import { floorLevelAt } from '@enfilade/space/room';
import { useShow } from '../sync/hooks.ts';
import { placeAnew } from './acting.ts';
import { LengthField } from './length-field.tsx';
import { TurnField } from './turn-field.tsx';

export function CeilingPlace(props: { readonly pieceId: PieceId; readonly at: Place; readonly frozen: boolean }) {
  const { pieceId, at, frozen } = props;
  const show = useShow();
  const { judgements, documents } = show;
  const size = judgements.sizeOf(pieceId);
  const room = judgements.where.roomOf(at[0]);
  if (size === null || room === null) return null;
  const roomId = at[0].slice(0, at[0].indexOf(':'));
  // Shown to the nearest edge of its outline as it is turned; stored to its centre.
  const turn = (at[4] / 18000) * Math.PI;
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  const halfX = (size.widthMm * c + size.depthMm * s) / 2;
  const halfY = (size.widthMm * s + size.depthMm * c) / 2;
  const name = (wall: string) => `From ${shortSurfaceName(documents, `${roomId}:${wall}`)}`;
  const floor = floorLevelAt(room, at[1], at[2]);
  const headroom = dropFor(room, at[3], size.heightMm) - floor;
  return (
    <>
      <LengthField
        label={name('left')}
        stepper
        mm={at[1] - halfX}
        frozen={frozen}
        first
        leastMm={0}
        mostMm={Math.max(0, room.widthMm - 2 * halfX)}
        take={(mm) => placeAnew(show, pieceId, at, { xMm: mm + halfX })}
      />
      <LengthField
        label={name('foot')}
        stepper
        mm={at[2] - halfY}
        frozen={frozen}
        leastMm={0}
        mostMm={Math.max(0, room.depthMm - 2 * halfY)}
        take={(mm) => placeAnew(show, pieceId, at, { yMm: mm + halfY })}
      />
      <LengthField
        label="Drop from ceiling"
        stepper
        mm={at[3]}
        frozen={frozen}
        leastMm={0}
        mostMm={Math.max(0, room.heightMm - floor - size.heightMm)}
        take={(mm) => placeAnew(show, pieceId, at, { liftMm: mm })}
      />
      <LengthField
        label="Foot above the floor"
        mm={headroom}
        frozen={frozen}
        leastMm={0}
        mostMm={Math.max(0, room.heightMm - floor - size.heightMm)}
        take={(mm) => placeAnew(show, pieceId, at, { liftMm: dropFor(room, mm + floor, size.heightMm) })}
      />
      <TurnField pieceId={pieceId} at={at} frozen={frozen} />
    </>
  );
}
