/** What this person holds: pieces, in the order they were taken, and what the stage is being asked to try. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { PieceId, Place, SurfaceId } from '@enfilade/shared/schema';
import { useSyncExternalStore } from 'react';

/** A small store a component can subscribe to. */
export class Store<T> {
  private value: T;
  private readonly listeners = new Set<() => void>();

  constructor(value: T) {
    this.value = value;
  }

  readonly get = (): T => this.value;

  readonly set = (value: T): void => {
    if (value === this.value) return;
    this.value = value;
    for (const listener of this.listeners) listener();
  };

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
}

export const selection = new Store<readonly PieceId[]>([]);

/** Each press takes one more piece or leaves it out again, as with the key held: a person chooses several, one by one. */
export const choosing = new Store(false);

/** Places being tried on the wall: shown to me, written nowhere, until taken or put back. */
export interface Trial {
  readonly name: string;
  readonly places: ReadonlyMap<PieceId, Place>;
  /** Taken down for as long as it is tried. */
  readonly away?: ReadonlySet<PieceId>;
}

export const trial = new Store<Trial | null>(null);

/** A paint being tried on a surface: shown to me, written nowhere. */
export interface PaintTrial {
  readonly surface: SurfaceId;
  readonly name: string;
  readonly lab: LabD65;
}

export const paintTrial = new Store<PaintTrial | null>(null);

export function useStore<T>(store: { get(): T; subscribe(tell: () => void): () => void }): T {
  return useSyncExternalStore(store.subscribe, store.get);
}

export function choose(pieceIds: readonly PieceId[]): void {
  selection.set(pieceIds);
}

/** Adds a piece to the selection, or takes it out. */
export function chooseToo(pieceId: PieceId): void {
  const now = selection.get();
  selection.set(now.includes(pieceId) ? now.filter((id) => id !== pieceId) : [...now, pieceId]);
}
