/** Pins pieces where they are: they stay when others are arranged or make room, until somebody unpins them. */
import * as commands from '@enfilade/shared/commands';
import type { PieceId } from '@enfilade/shared/schema';
import { useRoots, useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';

export function PinCommand({ pieceIds }: { readonly pieceIds: readonly PieceId[] }) {
  const show = useShow();
  const { judgements } = show;
  useRoots('pinned', 'places');
  const placed = pieceIds.filter((pieceId) => judgements.where.placeOf(pieceId) !== null);
  if (!show.may('hang') || placed.length === 0) return null;
  const pinned = placed.filter((pieceId) => judgements.isPinned(pieceId));
  const free = placed.filter((pieceId) => !judgements.isPinned(pieceId));
  const what = (ids: readonly PieceId[]) => (ids.length === 1 ? judgements.nameOf(ids[0] as string) : `${ids.length}`);
  return (
    <>
      {free.length === 0 ? null : (
        <button
          type="button"
          title="It stays when others are arranged or make room."
          onClick={() => act(show, commands.pin(free, true), `${what(free)} pinned: stays when others move`)}
        >
          pin here
        </button>
      )}
      {pinned.length === 0 ? null : (
        <button type="button" onClick={() => act(show, commands.pin(pinned, false), `${what(pinned)} unpinned`)}>
          unpin{pinned.length === placed.length ? '' : ` ${pinned.length}`}
        </button>
      )}
    </>
  );
}
