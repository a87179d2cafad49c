/** Among which things likeness is sought, and which pieces of what was found are free to be gathered. Pure. */
import type { Judgements } from './judgements.ts';
import { originOf } from './likeness-records.ts';
import { LAYOUT_FLOOR, type ObjectId, type PieceId } from './schema.ts';
import { onName } from './surface-names.ts';

/** The records something of which is in no place yet, or lies on the layout floor. */
export function unplacedObjects(judgements: Judgements): ObjectId[] {
  return [...judgements.documents.all('objects').keys()].filter((id) =>
    judgements.piecesOf(id).some((pieceId) => isLoose(judgements, pieceId)),
  );
}

/** Where the things of the checklist come from, and how many, the most first. */
export function originsOf(judgements: Judgements): { readonly from: string; readonly count: number }[] {
  const counts = new Map<string, number>();
  for (const object of judgements.documents.all('objects').values())
    counts.set(originOf(object), (counts.get(originOf(object)) ?? 0) + 1);
  return [...counts]
    .map(([from, count]) => ({ from, count }))
    .sort((a, b) => b.count - a.count || (a.from < b.from ? -1 : 1));
}

/** A record as one of a set: its pieces that are free, and why the rest are left out. */
export interface FoundThing {
  readonly id: ObjectId;
  readonly free: readonly PieceId[];
  readonly all: readonly PieceId[];
  /** Why it, or the rest of it, is left out unless a person says otherwise; empty where all of it is free. */
  readonly why: string;
}

/** What of a record can be gathered without taking it from anywhere: loose, of known size, in no vignette. */
export function foundThing(judgements: Judgements, id: ObjectId): FoundThing {
  const all = judgements.piecesOf(id);
  const whys = new Set<string>();
  const free = all.filter((pieceId) => {
    const why = whyLeftOut(judgements, pieceId);
    if (why !== null) whys.add(why);
    return why === null;
  });
  return { id, free, all, why: [...whys].join('; ') };
}

function whyLeftOut(judgements: Judgements, pieceId: PieceId): string | null {
  const { documents } = judgements;
  const vignetteId = documents.get('memberOf', pieceId);
  const vignette = vignetteId === undefined ? undefined : documents.get('vignettes', vignetteId);
  if (vignette !== undefined) return `in ${vignette.name}`;
  const at = judgements.where.placeOf(pieceId);
  if (at !== null && at[0] !== LAYOUT_FLOOR) return `placed: ${onName(judgements, at[0])}`;
  return judgements.sizeOf(pieceId)?.known ? null : 'size not known';
}

function isLoose(judgements: Judgements, pieceId: PieceId): boolean {
  const at = judgements.where.placeOf(pieceId);
  return at === null || at[0] === LAYOUT_FLOOR;
}
