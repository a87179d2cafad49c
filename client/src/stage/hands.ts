/** What is under anybody's hand right now: mine, and others' as presence tells it. Drawn hot; written nowhere. */
import type { PieceId, Place } from '@enfilade/shared/schema';

export class Hands {
  private mine: ReadonlyMap<PieceId, Place> = NONE;
  private others: ReadonlyMap<PieceId, Place> = NONE;
  /** Drags that ended and whose place has not come yet: shown on, so that nothing jumps back for an instant. */
  private readonly lingering = new Map<PieceId, { readonly place: Place; readonly until: number }>();

  /** How long an ended drag of another is shown on while its written place is awaited (ms). */
  static readonly LINGER_MS = 500;

  takeMine(places: ReadonlyMap<PieceId, Place>): void {
    this.mine = places;
  }

  get mineNow(): ReadonlyMap<PieceId, Place> {
    return this.mine;
  }

  takeOthers(places: ReadonlyMap<PieceId, Place>, nowMs: number): void {
    for (const [pieceId, place] of this.others) {
      if (!places.has(pieceId)) this.lingering.set(pieceId, { place, until: nowMs + Hands.LINGER_MS });
    }
    for (const pieceId of places.keys()) this.lingering.delete(pieceId);
    this.others = places;
  }

  /** The written place of these pieces has come. */
  settle(pieceIds: Iterable<PieceId>): void {
    for (const pieceId of pieceIds) this.lingering.delete(pieceId);
  }

  /** Lets go of what waited too long; true when there was any, or when some still wait. */
  expire(nowMs: number): boolean {
    for (const [pieceId, { until }] of this.lingering) if (until <= nowMs) this.lingering.delete(pieceId);
    return this.lingering.size > 0;
  }

  /** The place a piece is held at; mine before another's, for my hand is where I see it. */
  placeOf(pieceId: PieceId): Place | undefined {
    return this.mine.get(pieceId) ?? this.others.get(pieceId) ?? this.lingering.get(pieceId)?.place;
  }

  /** Every piece that is held. */
  held(): Set<PieceId> {
    return new Set([...this.mine.keys(), ...this.others.keys(), ...this.lingering.keys()]);
  }
}

const NONE: ReadonlyMap<PieceId, Place> = new Map();
