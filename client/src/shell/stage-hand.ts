/** From the rail and the cards onto the stage, which is fetched with the page and not before it. */
import type { PieceId } from '@enfilade/shared/schema';
import type { View } from '../view-address.ts';
import { say } from './live-region.tsx';

const carrying = import('../stage/carry.ts');

/** The pointer carries these pieces; the stage takes over when it comes in. */
export function carryOntoStage(pieceIds: readonly PieceId[], event: PointerEvent): void {
  void carrying.then(({ beginCarry }) => beginCarry(pieceIds, event));
}

/** The keyboard's way: they are placed in the middle, or where beside it there is room. */
export async function placeOnStage(pieceIds: readonly PieceId[], view: View): Promise<void> {
  const { placeAtCentre } = await carrying;
  const done = placeAtCentre(pieceIds, view);
  if (done === null) return;
  const where = done === 'clear' ? 'clear of what is there' : 'over what is there: no room is free';
  say(`${pieceIds.length === 1 ? 'Placed' : `${pieceIds.length} pieces placed`}, ${where}`);
}
