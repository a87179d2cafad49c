/** Works that are lost on the paint of their wall, and the way to them: what a show opens on when nothing else is asked. */
import type { Judgements } from '@enfilade/shared/judgements';
import type { PieceId, RootName, SurfaceId } from '@enfilade/shared/schema';
import { surfaceName } from '@enfilade/shared/surface-names';
import { WALL_SIDES } from '@enfilade/space/room';
import { useEffect } from 'react';
import { choose, selection } from '../selection.ts';
import { usePictures, useRoots, useShow } from '../sync/hooks.ts';
import { toAddress, type View } from '../view-address.ts';
import { roomsInOrder } from './current-view.ts';

export interface LostWork {
  readonly pieceId: PieceId;
  readonly surface: SurfaceId;
}

const ROOTS_READ = ['rooms', 'places', 'paints', 'deck', 'objects', 'pieces'] as const satisfies readonly RootName[];

/** All of them as one goes through the building: rooms in their order, walls clockwise from the head, left to right. */
export function lostWorksOf(judgements: Judgements): LostWork[] {
  const { documents, where } = judgements;
  const surfaces = roomsInOrder(documents).flatMap((roomId) => WALL_SIDES.map((side) => `${roomId}:${side}`));
  return surfaces.flatMap((surface) =>
    [...where.directlyOn(surface)]
      .filter((pieceId) => judgements.readingOf(pieceId)?.word === 'lost')
      .sort((a, b) => xOf(judgements, a) - xOf(judgements, b) || (a < b ? -1 : 1))
      .map((pieceId) => ({ pieceId, surface })),
  );
}

function xOf(judgements: Judgements, pieceId: PieceId): number {
  return judgements.where.placeOf(pieceId)?.[1] ?? 0;
}

const known = new WeakMap<Judgements, { key: string; lost: readonly LostWork[] }>();

export function useLostWorks(): readonly LostWork[] {
  const { judgements, documents } = useShow();
  useRoots(...ROOTS_READ);
  const pictures = usePictures();
  const key = [pictures, ...ROOTS_READ.map((root) => documents.version(root))].join();
  const before = known.get(judgements);
  if (before?.key === key) return before.lost;
  const lost = lostWorksOf(judgements);
  known.set(judgements, { key, lost });
  return lost;
}

/** The one after what is selected, round to the first again. */
export function nextLost(lost: readonly LostWork[], chosen: readonly PieceId[]): LostWork | undefined {
  const at = lost.findIndex(({ pieceId }) => chosen.includes(pieceId));
  return lost[(at + 1) % lost.length];
}

/** '1 lost on its wall', '3 lost on their walls'. */
function lostCountText(count: number): string {
  return `${count} lost on ${count === 1 ? 'its wall' : 'their walls'}`;
}

/** '1 lost on its wall: The valley from Tallow Hill, Dye House, east wall'; of several, the one gone to next. */
export function lostText(judgements: Judgements, count: number, next: LostWork): string {
  const where = `${judgements.nameOf(next.pieceId)}, ${surfaceName(judgements.documents, next.surface)}`;
  return `${lostCountText(count)}${count === 1 ? '' : ', next'}: ${where}`;
}

/**
 * A show opened at no particular page opens on the first lost work, its card saying why. Decided once, when the show has
 * come whole (not this device's copy of it alone) and what is known of its pictures, and only for a person who has gone
 * nowhere meanwhile.
 */
export function useOpeningOnLost(): void {
  const show = useShow();
  useEffect(() => {
    const { pictures, judgements } = show;
    let ways: (() => void)[] = [];
    const decide = (): void => {
      if (pictures.version === 0 || show.savingState.kind === 'opening') return;
      for (const leave of ways) leave();
      ways = [];
      const [first] = location.hash === '' && selection.get().length === 0 ? lostWorksOf(judgements) : [];
      if (first === undefined) return;
      const view: View = { sheet: 'wall', surface: first.surface };
      const shown = [first.pieceId];
      location.replace(toAddress(view));
      choose(shown);
      letGoOnLeaving(toAddress(view), shown);
    };
    ways = [pictures.subscribe(decide), show.subscribe(decide)];
    decide();
    return () => {
      for (const leave of ways) leave();
    };
  }, [show]);
}

/** What nobody took hold of themselves does not go along with them to another wall. */
function letGoOnLeaving(address: string, shown: readonly PieceId[]): void {
  const leave = (): void => {
    if (location.hash === address) return;
    removeEventListener('hashchange', leave);
    if (selection.get() === shown) choose([]);
  };
  addEventListener('hashchange', leave);
}
