/** A small true picture of a wall with pieces, or a paint, tried on it. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { outerBoxOf } from '@enfilade/shared/aligning';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';
import { FramedPicture } from '../shell/framed-picture.tsx';
import { useShow } from '../sync/hooks.ts';
import './wall-thumb.css';

export function WallThumb(props: {
  readonly surface: SurfaceId;
  readonly places: ReadonlyMap<PieceId, Place>;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Whatever is tried on it instead of its own paint, as CSS. */
  readonly ground?: string;
  /** What is done to the colours of all that hangs there, as CSS. */
  readonly filter?: string | undefined;
}) {
  const { surface, places } = props;
  const { judgements } = useShow();
  const wall = judgements.where.wallOf(surface);
  if (wall === null) return null;
  const scale = Math.min(props.widthPx / wall.lengthMm, props.heightPx / wall.heightMm);
  const lab = judgements.paintOf(surface)?.lab;
  const standing = judgements
    .elevationOf(surface)
    .filter(({ pieceId }) => !places.has(pieceId))
    .map((seen) => ({ ...seen, turn: seen.turnDegrees }));
  const tried = [...places].flatMap(([pieceId, at]) => {
    const size = judgements.sizeOf(pieceId);
    if (size === null || at[0] !== surface) return [];
    const { widthMm, heightMm } = size;
    return [{ pieceId, xMm: at[1], yMm: at[2], widthMm, heightMm, turn: at[4] / 100 }];
  });
  return (
    <div
      className="wall-thumb"
      aria-hidden="true"
      style={{
        width: wall.lengthMm * scale,
        height: wall.heightMm * scale,
        filter: props.filter,
        background: props.ground ?? (lab === undefined ? 'var(--L92)' : hexFromLabD65(lab)),
      }}
    >
      {judgements.openingsOn(surface).map((box) => (
        <i key={box.id} className="wall-thumb-opening" style={spot(box, scale)} />
      ))}
      {judgements.fixturesOn(surface).map((box) => (
        <i key={box.id} className="wall-thumb-fixture" style={spot(box, scale)} />
      ))}
      {[...standing, ...tried].map((one) => {
        const box = outerBoxOf(one, 0);
        const sha256 = judgements.pictureIdOf(one.pieceId);
        return (
          <span
            key={one.pieceId}
            className={sha256 === null ? 'wall-thumb-grey' : undefined}
            style={{ ...spot(box, scale), rotate: `${one.turn}deg` }}
          >
            {sha256 === null ? null : (
              <FramedPicture
                pieceId={one.pieceId}
                widthPx={one.widthMm * scale}
                heightPx={one.heightMm * scale}
                small={one.widthMm * scale < 56 && one.heightMm * scale < 56}
              />
            )}
          </span>
        );
      })}
    </div>
  );
}

function spot(box: { xMm: number; yMm: number; widthMm: number; heightMm: number }, scale: number) {
  return {
    left: (box.xMm - box.widthMm / 2) * scale,
    bottom: (box.yMm - box.heightMm / 2) * scale,
    width: box.widthMm * scale,
    height: box.heightMm * scale,
  };
}
