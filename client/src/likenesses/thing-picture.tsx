/** Pictures of things beside each other at one scale, so that a set is seen as it would be in a room. */
import type { ObjectId } from '@enfilade/shared/schema';
import { pieceIdOf } from '@enfilade/shared/schema';
import { Picture } from '../shell/picture.tsx';
import { useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';

/** Nothing is drawn smaller, or it could not be seen or pressed. */
const LEAST_PX = 22;

/** The piece a record is shown by: the first that has a picture. */
export function shownPiece({ judgements }: ShowSession, id: ObjectId): string {
  const pieces = judgements.piecesOf(id);
  return pieces.find((pieceId) => judgements.pictureIdOf(pieceId) !== null) ?? pieceIdOf(id, 1);
}

/** Pixels a millimetre, so that the largest of them is so high and so wide at most. */
export function scaleFor(show: ShowSession, ids: readonly ObjectId[], highPx: number, widePx: number): number {
  let scale = 1;
  for (const id of ids) {
    const size = show.judgements.sizeOf(shownPiece(show, id));
    if (size?.known) scale = Math.min(scale, highPx / size.heightMm, widePx / size.widthMm);
  }
  return scale;
}

interface ThingProps {
  readonly id: ObjectId;
  /** At this scale; without it, as large as fits `boxPx`. */
  readonly scale?: number;
  readonly boxPx: number;
}

export function ThingPicture({ id, scale, boxPx }: ThingProps) {
  const show = useShow();
  const pieceId = shownPiece(show, id);
  const size = show.judgements.sizeOf(pieceId);
  const { heightMm, widthMm } = size ?? { heightMm: 1, widthMm: 1 };
  const fit = boxPx / Math.max(heightMm, widthMm);
  const drawn = scale === undefined || !size?.known ? fit : Math.min(fit, scale);
  const grow = Math.max(1, LEAST_PX / (drawn * Math.max(heightMm, widthMm)));
  return (
    <span className={size?.known ? undefined : 'unk'}>
      <Picture
        sha256={show.judgements.pictureIdOf(pieceId)}
        widthPx={Math.max(3, Math.round(widthMm * drawn * grow))}
        heightPx={Math.max(3, Math.round(heightMm * drawn * grow))}
      />
    </span>
  );
}

/** A record’s title, else its number. */
export function thingName({ documents }: ShowSession, id: ObjectId): string {
  const object = documents.get('objects', id);
  return object === undefined ? 'a record that is gone' : object.title || object.number;
}
