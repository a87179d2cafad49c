/** Arranging asked for before anything is chosen: things are chosen one by one, then the form opens on their card. */
import type { PieceId } from '@enfilade/shared/schema';
import { choose, choosing, Store } from '../selection.ts';
import { closeCaption } from '../shell/media.ts';

/** The selection whose card opens with the form to arrange it. */
export const arrangeAsked = new Store<string | null>(null);

export function arrangeThese(pieceIds: readonly PieceId[]): void {
  // On a tablet it lies over the wall they are to go on.
  closeCaption();
  arrangeAsked.set(pieceIds.join());
  choosing.set(false);
  choose([...pieceIds]);
}
