/** Pieces of one wall, or of the layout floor, brought to one height or upright, or given equal gaps: one act each. */
import { type AlignedBy, align } from '@enfilade/arrangement/align';
import type { Box, Extent } from '@enfilade/arrangement/boxes';
import { type Distribution, distribute } from '@enfilade/arrangement/distribute';
import type { Issue } from '@enfilade/arrangement/issues';
import type { Act } from './acts.ts';
import * as commands from './commands.ts';
import type { Judgements } from './judgements.ts';
import { outerBoxOf } from './outer-box.ts';
import type { PieceId, Place, SurfaceId } from './schema.ts';

export { outerBoxOf };

/** The act, what it comes to, and what is to be said of it; no changes where it cannot be. */
export interface Aligning extends Act {
  /** The height or upright they stand at now, or the gap between them (mm). */
  readonly mm: number;
  readonly issues: readonly Issue[];
}

/** The upright box of a piece on a wall or the layout floor, as faced; null where its place is not on it. */
export function boxOn(judgements: Judgements, pieceId: PieceId, surface: SurfaceId): Box | null {
  const at = judgements.where.placeOf(pieceId);
  const size = judgements.sizeOf(pieceId);
  if (at === null || size === null || at[0] !== surface) return null;
  return outerBoxOf({ xMm: at[1], yMm: at[2], widthMm: size.widthMm, heightMm: size.heightMm }, at[4] / 100);
}

/** Tops to the highest top, feet to the lowest foot, centres to the middle, and so across; what is elsewhere stays. */
export function lineUp(
  judgements: Judgements,
  surface: SurfaceId,
  pieceIds: readonly PieceId[],
  by: AlignedBy,
): Aligning {
  const here = piecesOn(judgements, surface, pieceIds);
  const extent = extentOf(judgements, surface);
  const { places, atMm, issues } = align(
    here.map(({ box }) => box),
    by,
    extent === undefined ? {} : { surface: extent },
  );
  return { ...actOf(judgements, here, places, `line up ${by}`), mm: atMm, issues };
}

/** Equal gaps in the order they stand in, across or up: between the outermost, which stay, or each of so many mm. */
export function spaceOut(
  judgements: Judgements,
  surface: SurfaceId,
  pieceIds: readonly PieceId[],
  axis: 'across' | 'up',
  how: Exclude<Distribution, { kind: 'fill' }> = { kind: 'fixed ends' },
): Aligning {
  const here = piecesOn(judgements, surface, pieceIds);
  const { places, gapMm, issues } = distribute(
    here.map(({ box }) => box),
    axis,
    how,
    extentOf(judgements, surface),
  );
  return { ...actOf(judgements, here, places, `equal gaps ${axis}`), mm: gapMm, issues };
}

interface Here {
  readonly pieceId: PieceId;
  readonly at: Place;
  readonly box: Box;
}

function piecesOn(judgements: Judgements, surface: SurfaceId, pieceIds: readonly PieceId[]): Here[] {
  return pieceIds.flatMap((pieceId) => {
    const at = judgements.where.placeOf(pieceId);
    const box = boxOn(judgements, pieceId, surface);
    return at === null || box === null ? [] : [{ pieceId, at, box }];
  });
}

/** A wall from its lowest floor to its top; the layout floor has no edges. */
function extentOf(judgements: Judgements, surface: SurfaceId): Extent | undefined {
  const wall = judgements.where.wallOf(surface);
  if (wall === null) return undefined;
  const bottomMm = Math.min(wall.floorAt(0), wall.floorAt(wall.lengthMm));
  return { leftMm: 0, rightMm: wall.lengthMm, bottomMm, topMm: wall.heightMm };
}

function actOf(
  judgements: Judgements,
  here: readonly Here[],
  places: readonly { readonly xMm: number; readonly yMm: number }[],
  name: string,
): Act {
  const moved = new Map<PieceId, Place>();
  for (const [index, { pieceId, at }] of here.entries()) {
    const to = places[index];
    if (to !== undefined) moved.set(pieceId, [at[0], to.xMm, to.yMm, at[3], at[4]]);
  }
  return commands.place(judgements.documents, moved, name);
}
