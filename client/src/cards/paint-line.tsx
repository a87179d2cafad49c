/** What a surface is painted, and the way to its deck. */
import { hexFromLabD65, lrvOf } from '@enfilade/colour/spaces';
import type { SurfaceId } from '@enfilade/shared/schema';
import { openDeck, useFoot } from '../shell/foot.ts';
import { useShow } from '../sync/hooks.ts';

/** The paint of a wall as a word that opens the deck; for who may not paint, only the word. */
export function PaintLine({ surface }: { readonly surface: SurfaceId }) {
  const show = useShow();
  const foot = useFoot();
  const paint = show.judgements.paintOf(surface);
  const words = paint === null ? 'none yet' : `${paint.name}, LRV ${Math.round(lrvOf(paint.lab))}`;
  const open = foot.kind === 'deck' && foot.surface === surface;
  return (
    <p className="paint-line t1">
      {paint === null ? null : <i style={{ background: hexFromLabD65(paint.lab) }} aria-hidden="true" />}
      {show.may('hang') ? (
        <button type="button" aria-expanded={open} onClick={() => openDeck(surface)}>
          Paint: {words}
        </button>
      ) : (
        <span>Paint: {words}</span>
      )}
    </p>
  );
}
