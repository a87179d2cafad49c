/** A small picture of a piece beside its name, fitted into a square. */
import type { PieceId } from '@enfilade/shared/schema';
import { Picture } from '../shell/picture.tsx';
import { usePictures, useShow } from '../sync/hooks.ts';

const SIDE_PX = 44;

export function StandInPicture({ pieceId }: { readonly pieceId: PieceId }) {
  const { judgements } = useShow();
  usePictures();
  const facts = judgements.pictureOf(pieceId);
  const scale = facts === undefined ? 1 : SIDE_PX / Math.max(facts.widthPx, facts.heightPx);
  return (
    <span className="stand-in-picture">
      <Picture
        sha256={judgements.pictureIdOf(pieceId)}
        widthPx={facts === undefined ? SIDE_PX : Math.round(facts.widthPx * scale)}
        heightPx={facts === undefined ? SIDE_PX : Math.round(facts.heightPx * scale)}
      />
    </span>
  );
}
