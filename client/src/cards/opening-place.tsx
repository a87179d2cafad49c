/** A piece in a doorway or window: where in it, and the choice between being in it and on the wall over it. */
import * as commands from '@enfilade/shared/commands';
import { onFaceOf, placeIn } from '@enfilade/shared/in-openings';
import { type OpeningId, openingOf, type PieceId, type Place } from '@enfilade/shared/schema';
import { useShow } from '../sync/hooks.ts';
import { act, placeAnew } from './acting.ts';
import { LengthField } from './length-field.tsx';
import { TurnField } from './turn-field.tsx';
import './opening-place.css';

interface OpeningPlaceProps {
  readonly pieceId: PieceId;
  readonly at: Place;
  readonly frozen: boolean;
}

export function OpeningPlace({ pieceId, at, frozen }: OpeningPlaceProps) {
  const show = useShow();
  const { judgements, documents } = show;
  const size = judgements.sizeOf(pieceId);
  const opening = documents.get('openings', openingOf(at[0]) ?? '');
  if (size === null || opening === undefined) return null;
  const onWall = (): void => {
    const surface = opening.sides[0]?.surface ?? '';
    const face = onFaceOf(opening, surface, at);
    if (face === null) return;
    const to: Place = [surface, face.xMm, face.yMm, 0, at[4]];
    const name = `hang ${judgements.nameOf(pieceId)} on the wall`;
    act(show, () => commands.place(documents, new Map([[pieceId, to]]), name), 'On the wall, over the opening');
  };
  const centre = (): void => {
    const to: Place = [at[0], opening.widthMm / 2, opening.heightMm / 2, at[3], at[4]];
    act(
      show,
      () => commands.place(documents, new Map([[pieceId, to]]), `centre ${judgements.nameOf(pieceId)}`),
      'Centred',
    );
  };
  return (
    <>
      <LengthField
        label="From its left edge"
        stepper
        mm={at[1] - size.widthMm / 2}
        frozen={frozen}
        first
        take={(mm) => placeAnew(show, pieceId, at, { xMm: mm + size.widthMm / 2 })}
      />
      <LengthField
        label={opening.kind === 'doorway' ? 'Foot above threshold' : 'Foot above sill'}
        stepper
        mm={at[2] - size.heightMm / 2}
        frozen={frozen}
        take={(mm) => placeAnew(show, pieceId, at, { yMm: mm + size.heightMm / 2 })}
      />
      <TurnField pieceId={pieceId} at={at} frozen={frozen} />
      {frozen ? null : (
        <>
          <InOrOn kind={opening.kind} inside over={onWall} />
          <p className="object-commands">
            <button type="button" onClick={centre}>
              centre in it
            </button>
          </p>
        </>
      )}
    </>
  );
}

/** 'in the doorway' and 'on the wall': the one that is, and the one that could be. */
export function InOrOn(props: { readonly kind: string; readonly inside: boolean; readonly over: () => void }) {
  const { kind, inside, over } = props;
  return (
    <p className="object-commands in-or-on">
      <button type="button" aria-pressed={inside} onClick={inside ? undefined : over}>
        in the {kind}
      </button>
      <button type="button" aria-pressed={!inside} onClick={inside ? over : undefined}>
        on the wall
      </button>
    </p>
  );
}

/** The opening a piece on a wall hangs over, if it would fit into it, and its place there. */
export function useOpeningUnder(pieceId: PieceId, at: Place): { kind: string; id: OpeningId; place: Place } | null {
  const { judgements } = useShow();
  const size = judgements.sizeOf(pieceId);
  const box = judgements
    .openingsOn(at[0])
    .find(
      ({ xMm, yMm, widthMm, heightMm }) =>
        Math.abs(at[1] - xMm) < widthMm / 2 &&
        Math.abs(at[2] - yMm) < heightMm / 2 &&
        size !== null &&
        size.widthMm <= widthMm &&
        size.heightMm <= heightMm,
    );
  const place = box === undefined ? null : placeIn(box.id, box.opening, at[0], at[1], at[2], at[4]);
  return box === undefined || place === null ? null : { kind: box.opening.kind, id: box.id, place };
}
