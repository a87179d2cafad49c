/** Which kinds of arrangement are possible for some pieces where a person is, and in a sentence why another is not. */
import { partsAround, standsByShape } from './arrange-carrier.ts';
import { plinthsAmong } from './arrange-plinths.ts';
import type { ArrangeKind } from './arrange-task.ts';
import type { Judgements } from './judgements.ts';
import { carrierOf, type PieceId, type SurfaceId, surfaceParts } from './schema.ts';

export interface KindOffered {
  readonly kind: ArrangeKind;
  /** What it is about, of the selection. */
  readonly pieceIds: readonly PieceId[];
  /** Of a carrier's kinds: which ones there are to choose from, the likeliest first. */
  readonly carriers: readonly PieceId[];
}

export interface KindNotOffered {
  readonly kind: ArrangeKind;
  readonly why: string;
}

export interface Kinds {
  readonly possible: readonly KindOffered[];
  readonly not: readonly KindNotOffered[];
}

/** Of a selection, with the wall that is faced or shared (null where there is none), and the room one is in. */
export function kindsFor(
  judgements: Judgements,
  asked: { readonly pieceIds: readonly PieceId[]; readonly wall: SurfaceId | null; readonly roomId: string | null },
): Kinds {
  const possible: KindOffered[] = [];
  const not: KindNotOffered[] = [];
  const { pieceIds, wall, roomId } = asked;
  const carriers = pieceIds.filter((id) => judgements.where.levelsOf(id).length > 0);
  const load = new Set(carriers.flatMap((id) => judgements.where.loadOf(id)));
  const hangable = pieceIds.filter((id) => !carriers.includes(id) && !load.has(id) && !isCarried(judgements, id, wall));
  const things = pieceIds.filter((id) => !carriers.includes(id));
  const hang = (kind: ArrangeKind, least: number, why: string): void => {
    if (wall === null) not.push({ kind, why: 'Face a wall to hang them on.' });
    else if (hangable.length < least) not.push({ kind, why });
    else possible.push({ kind, pieceIds: hangable, carriers: [] });
  };
  hang('salon', 3, 'It takes three or more that hang.');
  hang('halo', 2, 'It takes a focal work and one more that hangs.');
  hang('line', 2, 'It takes two or more that hang.');
  hang('double', 4, 'Two lines take four or more that hang.');
  if (wall !== null && hangable.length > 7)
    not.push({
      kind: 'pendants',
      why: 'Pendants answer each other in pairs: seven at most, one of them in the middle.',
    });
  else if (wall !== null && hangable.length > 1 && !makePairs(judgements, hangable))
    not.push({ kind: 'pendants', why: 'Pendants answer each other in pairs of like size; these differ too much.' });
  else hang('pendants', 2, 'It takes two that hang.');
  const near = carriersNear(judgements, pieceIds, asked);
  if (things.length === 0 || (things.length < 2 && carriers.length === 0))
    not.push({ kind: 'massed', why: 'It takes two or more things beside what they stand on.' });
  else if (near.length === 0)
    not.push({ kind: 'massed', why: 'Select a table or shelf with them, or face the wall it stands before.' });
  else possible.push({ kind: 'massed', pieceIds: things, carriers: near });
  const furniture = near.filter((id) => !plinthsAmong(judgements, [id]).length || carriers.includes(id));
  if (wall === null) not.push({ kind: 'carrier', why: 'Face the wall it is to stand before.' });
  else if (furniture.length === 0)
    not.push({ kind: 'carrier', why: 'Select a piece of furniture with them, or face the wall it stands before.' });
  else if (things.length === 0)
    not.push({ kind: 'carrier', why: 'It takes something to stand on it or hang above it.' });
  else possible.push({ kind: 'carrier', pieceIds: things, carriers: furniture });
  const plinths = plinthsAmong(judgements, pieceIds);
  const standing = things.filter((id) => standsByShape(judgements, id) && !load.has(id));
  if (roomId === null) not.push({ kind: 'plinths', why: 'Go to the room they are to stand in.' });
  else if (plinths.length < 2)
    not.push({ kind: 'plinths', why: 'It takes two or more plinths, with or without what stands on them.' });
  else possible.push({ kind: 'plinths', pieceIds: [...plinths, ...standing], carriers: [] });
  return { possible, not };
}

/** Two of which one is more than so many times as large make no pair (own rule). */
const UNLIKE = 3;

/** Whether they make pairs of like size; the largest of an odd number stands between. */
function makePairs(judgements: Judgements, pieceIds: readonly PieceId[]): boolean {
  const areas = pieceIds.map((id) => {
    const size = judgements.sizeOf(id);
    return size === null ? 0 : size.widthMm * size.heightMm;
  });
  const paired = areas.sort((a, b) => b - a).slice(areas.length % 2);
  return paired.every((area, k) => k % 2 === 1 || area <= UNLIKE * (paired[k + 1] ?? 0));
}

/** What stands on a carrier that is not selected stays there when others are hung. */
function isCarried(judgements: Judgements, pieceId: PieceId, wall: SurfaceId | null): boolean {
  const on = judgements.where.placeOf(pieceId)?.[0];
  return on !== undefined && on !== wall && carrierOf(on) !== null;
}

/** Carriers to choose from: those selected, what the things stand on now, then those seen on the wall or in the room. */
function carriersNear(
  judgements: Judgements,
  pieceIds: readonly PieceId[],
  { wall, roomId }: { readonly wall: SurfaceId | null; readonly roomId: string | null },
): PieceId[] {
  const isCarrier = (id: PieceId) => judgements.where.levelsOf(id).length > 0;
  const under = pieceIds.flatMap((id) => carrierOf(judgements.where.placeOf(id)?.[0] ?? '')?.pieceId ?? []);
  const floor = wall === null ? roomId : (surfaceParts(wall)?.roomId ?? null);
  const here = [
    ...(wall === null ? [] : judgements.elevationOf(wall).map(({ pieceId }) => pieceId)),
    ...(floor === null ? [] : judgements.where.directlyOn(`${floor}:floor`)),
  ];
  const size = (id: PieceId) => judgements.sizeOf(id)?.widthMm ?? 0;
  const others = [...new Set(here)].filter(isCarrier).sort((a, b) => size(b) - size(a) || (a < b ? -1 : 1));
  return [...new Set([...pieceIds.filter(isCarrier), ...under, ...others])];
}

/** What stands on a lower level of it stays there. */
function staysBelow(judgements: Judgements, carrier: PieceId, pieceId: PieceId): boolean {
  const on = carrierOf(judgements.where.placeOf(pieceId)?.[0] ?? '');
  return on?.pieceId === carrier && on.level !== 0;
}

/** What each would be in a composition round a carrier, in numbers. */
export function partCounts(judgements: Judgements, carrier: PieceId, pieceIds: readonly PieceId[]) {
  const { on, around, above } = partsAround(
    judgements,
    carrier,
    pieceIds.filter((id) => !staysBelow(judgements, carrier, id)),
  );
  return { on: on.length, around: around.length, above: above.length };
}
