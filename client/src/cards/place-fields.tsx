/** Where a piece is, in numbers that can be typed: on a wall, a floor, a ceiling or a carrier, or in an opening. */
import { carrierOf, LAYOUT_FLOOR, openingOf, type PieceId, type Place } from '@enfilade/shared/schema';
import { isWallSide, shortSurfaceName } from '@enfilade/shared/surface-names';
import { useShow } from '../sync/hooks.ts';
import { placeAnew } from './acting.ts';
import { CeilingPlace } from './ceiling-place.tsx';
import { LengthField } from './length-field.tsx';
import { MakingRoomToggle } from './making-room-toggle.tsx';
import { OpeningPlace } from './opening-place.tsx';
import { TurnField } from './turn-field.tsx';
import { TypedField } from './typed-field.tsx';
import { WallPlace } from './wall-place.tsx';

interface PlaceProps {
  readonly pieceId: PieceId;
  readonly at: Place;
  readonly frozen: boolean;
}

export function PlaceFields({ pieceId, at, frozen }: PlaceProps) {
  const side = at[0].slice(at[0].indexOf(':') + 1);
  if (carrierOf(at[0]) !== null) return <CarrierPlace pieceId={pieceId} at={at} frozen={frozen} />;
  if (isWallSide(side)) return <WallPlace pieceId={pieceId} at={at} frozen={frozen} />;
  if (openingOf(at[0]) !== null) return <OpeningPlace pieceId={pieceId} at={at} frozen={frozen} />;
  if (side === 'ceiling') return <CeilingPlace pieceId={pieceId} at={at} frozen={frozen} />;
  return <FloorPlace pieceId={pieceId} at={at} frozen={frozen} />;
}

function FloorPlace({ pieceId, at, frozen }: PlaceProps) {
  const show = useShow();
  const { judgements, documents } = show;
  const size = judgements.sizeOf(pieceId);
  const room = judgements.where.roomOf(at[0]);
  const roomId = at[0].slice(0, at[0].indexOf(':'));
  if (at[0] === LAYOUT_FLOOR || room === null) {
    return (
      <>
        <LengthField
          label="Across"
          stepper
          mm={at[1]}
          frozen={frozen}
          first
          take={(mm) => placeAnew(show, pieceId, at, { xMm: mm })}
        />
        <LengthField
          label="Up"
          stepper
          mm={at[2]}
          frozen={frozen}
          take={(mm) => placeAnew(show, pieceId, at, { yMm: mm })}
        />
        <TurnField pieceId={pieceId} at={at} frozen={frozen} />
        {frozen ? null : <MakingRoomToggle />}
      </>
    );
  }
  // Shown to the nearest edge of its footprint as it is turned; stored to its centre.
  const turn = (at[4] / 18000) * Math.PI;
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  const [w, d] = [size?.widthMm ?? 0, size?.depthMm ?? 0];
  const halfX = (w * c + d * s) / 2;
  const halfY = (w * s + d * c) / 2;
  const name = (wall: string) => `From ${shortSurfaceName(documents, `${roomId}:${wall}`)}`;
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
      <TurnField pieceId={pieceId} at={at} frozen={frozen} />
    </>
  );
}

function CarrierPlace({ pieceId, at, frozen }: PlaceProps) {
  const show = useShow();
  const { judgements } = show;
  const carrier = carrierOf(at[0]);
  const size = judgements.sizeOf(pieceId);
  const under = carrier === null ? null : judgements.sizeOf(carrier.pieceId);
  const levels = carrier === null ? 0 : judgements.where.levelsOf(carrier.pieceId).length;
  return (
    <>
      <LengthField
        label="From its left edge"
        stepper
        mm={at[1] - (size?.widthMm ?? 0) / 2}
        frozen={frozen}
        first
        {...(under === null ? {} : { mostMm: under.widthMm })}
        take={(mm) => placeAnew(show, pieceId, at, { xMm: mm + (size?.widthMm ?? 0) / 2 })}
      />
      <LengthField
        label="From its front edge"
        stepper
        mm={at[2] - (size?.depthMm ?? 0) / 2}
        frozen={frozen}
        {...(under === null ? {} : { mostMm: under.depthMm })}
        take={(mm) => placeAnew(show, pieceId, at, { yMm: mm + (size?.depthMm ?? 0) / 2 })}
      />
      {levels > 1 && carrier !== null ? (
        <TypedField
          label={`Level, 1 to ${levels}, from the top`}
          text={String(carrier.level + 1)}
          frozen={frozen}
          take={(typed) => {
            const level = Number(typed);
            if (!Number.isInteger(level) || level < 1 || level > levels) return `a level from 1 to ${levels}`;
            const on = `carrier:${carrier.pieceId}/${level - 1}`;
            return placeAnew(show, pieceId, [on, at[1], at[2], at[3], at[4]], {});
          }}
        />
      ) : null}
      <TurnField pieceId={pieceId} at={at} frozen={frozen} />
    </>
  );
}
