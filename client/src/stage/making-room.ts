/** Whether neighbours make room for what is moved by hand, and the gap they leave; each person's own, for this visit. */
import { type RoomMaker, roomMakerOn } from '@enfilade/shared/making-room';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { Store } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import type { ShowSession } from '../sync/show-session.ts';

interface MakingRoom {
  readonly on: boolean;
  readonly gapMm: number;
}

/** 6 cm: within what a salon leaves between frames, 1.5 to 3 in. Common practice, no source. */
export const makingRoom = new Store<MakingRoom>({ on: false, gapMm: 60 });

export function toggleMakingRoom(): void {
  const { on, gapMm } = makingRoom.get();
  makingRoom.set({ on: !on, gapMm });
  say(on ? 'Neighbours stay where they are' : 'Neighbours make room for what you move; pinned ones stay');
}

/** For one piece under one hand: reads each surface once, again where the gap or what hangs there has changed. */
export class RoomForOne {
  private readonly show: ShowSession;
  private readonly pieceId: PieceId;
  private known: { key: string; maker: RoomMaker | null } | null = null;

  constructor(show: ShowSession, pieceId: PieceId) {
    this.show = show;
    this.pieceId = pieceId;
  }

  /** Where it and its neighbours come to be; null where nobody makes room, whether asked not to or unable to. */
  placesAt(wanted: Place): ReadonlyMap<PieceId, Place> | null {
    const { on, gapMm } = makingRoom.get();
    if (!on) return null;
    const { documents, judgements } = this.show;
    const key = [wanted[0], gapMm, ...(['places', 'pinned'] as const).map((root) => documents.version(root))].join();
    if (this.known?.key !== key) this.known = { key, maker: roomMakerOn(judgements, wanted[0], this.pieceId, gapMm) };
    return this.known.maker?.(wanted) ?? null;
  }
}
