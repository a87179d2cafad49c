/** Whether neighbours make room for what is moved by hand, and the gap they leave; each person's own, for this visit. */
import { type RoomMaker, roomMakerOn } from '@enfilade/shared/making-room';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';
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

/** For what one hand moves: reads each surface once, again where the gap or what hangs there has changed. */
export class RoomForHand {
  private readonly show: ShowSession;
  private known: { key: string; maker: RoomMaker | null } | null = null;

  constructor(show: ShowSession) {
    this.show = show;
  }

  /**
   * Where they and their neighbours come to be, several on one surface pushing as one; what else they move with goes as it
   * is wanted. Null where nobody makes room, whether asked not to or unable to.
   */
  placesAt(surface: SurfaceId, wanted: ReadonlyMap<PieceId, Place>): ReadonlyMap<PieceId, Place> | null {
    const { on, gapMm } = makingRoom.get();
    const here = new Map([...wanted].filter(([, place]) => place[0] === surface));
    if (!on || here.size === 0) return null;
    const { documents, judgements } = this.show;
    const versions = (['places', 'pinned'] as const).map((root) => documents.version(root));
    const key = [surface, gapMm, ...versions, ...here.keys()].join();
    if (this.known?.key !== key) {
      this.known = { key, maker: roomMakerOn(judgements, surface, [...here.keys()], gapMm) };
    }
    const made = this.known.maker?.(here);
    return made ? new Map([...wanted, ...made]) : null;
  }
}
