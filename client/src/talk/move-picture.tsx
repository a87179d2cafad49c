/** What a move is about, small: the thing itself, or the paint that goes and the paint that comes. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { ProposedMove } from '@enfilade/shared/proposal-moves';
import type { Json } from '@enfilade/shared/schema';
import { FramedPicture } from '../shell/framed-picture.tsx';
import { useShow } from '../sync/hooks.ts';

const HIGH_PX = 48;
const WIDE_PX = 66;

export function MovePicture({ move, scale = 1 }: { readonly move: ProposedMove; readonly scale?: number }) {
  const { judgements, documents } = useShow();
  if (move.about.kind === 'wall') {
    const [fact] = move.facts;
    const patch = (paintId: Json | undefined) => {
      const paint = typeof paintId === 'string' ? documents.get('deck', paintId) : undefined;
      return { background: paint === undefined ? 'var(--L92)' : hexFromLabD65(paint.lab) };
    };
    return (
      <span className="move-patch" aria-hidden="true" style={{ width: WIDE_PX * scale, height: HIGH_PX * scale }}>
        <i style={patch(fact?.from)} />
        <i style={patch(fact?.to)} />
      </span>
    );
  }
  if (move.about.kind === 'vignette') return null;
  const { pieceId } = move.about;
  const size = judgements.sizeOf(pieceId);
  const aspect = size === null ? 1 : size.widthMm / Math.max(1, size.heightMm);
  const high = Math.min(HIGH_PX, WIDE_PX / aspect) * scale;
  return (
    <FramedPicture pieceId={pieceId} widthPx={high * aspect} heightPx={high} small={high * Math.max(1, aspect) < 40} />
  );
}
