/** Paints on trial at the colour desk: held ones are seen by others who are at the desk; the hang stays as it is. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { ShowDocuments } from '@enfilade/shared/documents';
import type { PaintId, SurfaceId } from '@enfilade/shared/schema';
import { useMemo } from 'react';
import { Store, useStore } from '../selection.ts';
import { useOthers, useShow } from '../sync/hooks.ts';
import type { Other } from '../sync/presence-room.ts';

/** `id` is null for one that is typed and not in the deck yet. */
export interface TrialPaint {
  readonly id: PaintId | null;
  readonly name: string;
  /** As recorded, in daylight. */
  readonly lab: LabD65;
}

/** The wall one tries paints on. */
export const deskWall = new Store<SurfaceId | null>(null);

/** Under the pointer or the focus in the deck: my own eyes only. */
export const moving = new Store<TrialPaint | null>(null);

/** Held by a press, by wall. */
export const held = new Store<ReadonlyMap<SurfaceId, PaintId>>(new Map());

export function hold(surface: SurfaceId, paintId: PaintId): void {
  held.set(new Map(held.get()).set(surface, paintId));
}

export function letGo(surface: SurfaceId): void {
  const rest = new Map(held.get());
  rest.delete(surface);
  held.set(rest);
}

export function paintFrom(documents: ShowDocuments, id: PaintId | undefined): TrialPaint | null {
  const paint = id === undefined ? undefined : documents.get('deck', id);
  return paint === undefined || id === undefined ? null : { id, name: paint.name, lab: paint.lab };
}

/** Others whose trials are meant here: on the hang, or in the same proposal. */
export function useOthersHere(): readonly Other[] {
  const { layerId } = useShow();
  const others = useOthers();
  return useMemo(() => others.filter(({ presence }) => (presence.layer ?? null) === layerId), [others, layerId]);
}

/** What is tried on a wall now: what moves under the hand, else what is held. */
export function useTrialOn(surface: SurfaceId | null): TrialPaint | null {
  const { documents } = useShow();
  const under = useStore(moving);
  const holding = useStore(held);
  const chosen = useStore(deskWall);
  if (surface === null) return null;
  return (surface === chosen ? under : null) ?? paintFrom(documents, holding.get(surface));
}
