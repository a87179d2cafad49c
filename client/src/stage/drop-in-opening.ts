/** Let go over a doorway or window. */
import { placeIn } from '@enfilade/shared/in-openings';
import { type Dropped, type Dropping, settle } from './dropping.ts';
import type { Lookup } from './standing.ts';

/** In the doorway or window it is held over, where it fits; what stands on the floor goes on standing before it. */
export function inOpening(lookup: Lookup, dropping: Dropping): Dropped | null {
  const { panel, size, from, reachMm } = dropping;
  if (from?.at.kind === 'floor' && !from.at.overhead) return null;
  const over = panel.openings.find(
    (box) =>
      Math.abs(dropping.xMm - box.xMm) <= box.widthMm / 2 &&
      Math.abs(dropping.yMm - box.yMm) <= box.heightMm / 2 &&
      size.widthMm <= box.widthMm &&
      size.heightMm <= box.heightMm,
  );
  const opening = over === undefined ? null : lookup.openingOf(over.id);
  if (over === undefined || opening === null) return null;
  const within = (mm: number, at: number, half: number, long: number) =>
    Math.min(at + long / 2 - half, Math.max(at - long / 2 + half, settle(mm, reachMm)));
  const xMm = within(dropping.xMm, over.xMm, size.widthMm / 2, over.widthMm);
  const yMm = within(dropping.yMm, over.yMm, size.heightMm / 2, over.heightMm);
  const turn = from === null || from.at.kind === 'floor' ? 0 : from.place[4];
  const place = placeIn(over.id, opening, panel.surface, xMm, yMm, turn);
  return place && { place, xMm, yMm, carrier: null, onCentreLine: false };
}
