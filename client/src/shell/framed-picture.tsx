/** A small true picture of a piece, in the frame that was chosen for it. */
import type { PieceId } from '@enfilade/shared/schema';
import { mouldingOf, mouldingTonesOf, sightOf } from '../stage/moulding.ts';
import { useShow } from '../sync/hooks.ts';
import { Picture } from './picture.tsx';

interface FramedPictureProps {
  readonly pieceId: PieceId;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The miniature is enough: no larger picture is fetched. */
  readonly small?: boolean;
}

/** Decorative: what it shows is named beside it. */
export function FramedPicture({ pieceId, widthPx, heightPx, small = false }: FramedPictureProps) {
  const { judgements } = useShow();
  const sha256 = judgements.pictureIdOf(pieceId);
  const frame = judgements.drawnFrameOf(pieceId);
  const size = judgements.sizeOf(pieceId);
  const whole = { x: 0, y: 0, w: widthPx, h: heightPx };
  const sight = frame === null || size === null ? whole : sightOf(mouldingOf(frame, size), whole);
  const picture = <Picture sha256={sha256} widthPx={sight.w} heightPx={sight.h} small={small} />;
  if (frame === null || sight.x === 0) return picture;
  return (
    <span
      className="picture picture-framed"
      style={{ borderWidth: `${sight.y}px ${sight.x}px`, borderColor: mouldingTonesOf(frame.kind).sides.join(' ') }}
    >
      {picture}
    </span>
  );
}
