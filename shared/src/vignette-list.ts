/** The vignette list: one row a vignette, drawn from the open documents alone, so that nothing private can be in it. */
import { focalOf, membersOf } from './commands.ts';
import type { Judgements, VignetteStanding } from './judgements.ts';
import { compareNumbers, type VignetteMembers } from './like-members.ts';
import {
  type MuseumObject,
  type ObjectId,
  objectOfPiece,
  type PieceId,
  pieceNumberOf,
  type Source,
  type SurfaceId,
  surfaceParts,
  type VignetteId,
} from './schema.ts';
import { shortSurfaceName } from './surface-names.ts';

export interface VignetteWhere {
  readonly surface: SurfaceId;
  /** Null on the layout floor. */
  readonly room: string | null;
  /** 'east wall', 'floor', 'layout floor'. */
  readonly on: string;
  readonly paint: { readonly name: string; readonly lab: { readonly L: number; a: number; b: number } } | null;
}

export interface VignetteListRow {
  readonly id: VignetteId;
  /** Place in the list, from 1. */
  readonly number: number;
  readonly name: string;
  readonly intent: string;
  readonly focal: { readonly pieceId: PieceId; readonly name: string; readonly objectNumber: string } | null;
  /** Surfaces it stands on, the one of its focal work first, then by pieces; empty while nothing of it is placed. */
  readonly where: readonly VignetteWhere[];
  readonly members: readonly VignetteMembers[];
  readonly standing: VignetteStanding;
}

export function vignetteListOf(judgements: Judgements): VignetteListRow[] {
  const { documents } = judgements;
  const rows: VignetteListRow[] = [];
  const inOrder = [...documents.all('vignettes')].sort(
    ([idA, a], [idB, b]) => compare(a.order, b.order) || compare(idA, idB),
  );
  for (const [id, vignette] of inOrder) {
    const standing = judgements.standingOf(id);
    if (standing === null) continue;
    const pieces = membersOf(documents, id);
    const focalId = focalOf(documents, id);
    const focal = focalId === null ? undefined : judgements.objectOf(focalId);
    rows.push({
      id,
      number: rows.length + 1,
      name: vignette.name,
      intent: vignette.intent,
      focal:
        focal === undefined || focalId === null
          ? null
          : { pieceId: focalId, name: judgements.nameOf(focalId), objectNumber: focal.number },
      where: surfacesOf(judgements, focalId, pieces).map((surface) => surfaceRow(judgements, surface)),
      members: membersByRecord(judgements, pieces),
      standing,
    });
  }
  return rows;
}

/**
 * The surfaces pieces stand on: that of the focal work first, then by how many stand there. The first is where the
 * vignette is; empty while nothing of it is placed.
 */
export function surfacesOf(judgements: Judgements, focal: PieceId | null, pieces: readonly PieceId[]): SurfaceId[] {
  const counts = new Map<SurfaceId, number>();
  for (const pieceId of pieces) {
    const surface = judgements.where.surfaceOf(pieceId);
    if (surface !== null) counts.set(surface, (counts.get(surface) ?? 0) + 1);
  }
  const focalOn = focal === null ? null : judgements.where.surfaceOf(focal);
  if (focalOn !== null) counts.set(focalOn, Number.POSITIVE_INFINITY);
  return [...counts].sort((a, b) => b[1] - a[1] || compare(a[0], b[0])).map(([surface]) => surface);
}

function surfaceRow(judgements: Judgements, surface: SurfaceId): VignetteWhere {
  const parts = surfaceParts(surface);
  const room = parts === null ? undefined : judgements.documents.get('rooms', parts.roomId);
  const paint = judgements.paintOf(surface);
  return {
    surface,
    room: room?.name ?? null,
    on: shortSurfaceName(judgements.documents, surface),
    paint: paint === null ? null : { name: paint.name, lab: paint.lab },
  };
}

function membersByRecord(judgements: Judgements, pieces: readonly PieceId[]): VignetteMembers[] {
  const byObject = new Map<ObjectId, { object: MuseumObject; numbers: number[]; placed: number }>();
  for (const pieceId of pieces) {
    const object = judgements.objectOf(pieceId);
    if (object === undefined) continue;
    const id = objectOfPiece(pieceId);
    const known = byObject.get(id) ?? { object, numbers: [], placed: 0 };
    known.numbers.push(pieceNumberOf(pieceId));
    if (judgements.where.placeOf(pieceId) !== null) known.placed += 1;
    byObject.set(id, known);
  }
  return [...byObject]
    .map(([objectId, { object, numbers, placed }]) => ({
      objectId,
      objectNumber: object.number,
      title: object.title || object.number,
      source: object.source,
      lender: object.lender,
      pieces: numbers.length,
      placed,
      of: object.count,
      pieceNumbers: numbers.sort((a, b) => a - b),
    }))
    .sort((a, b) => b.pieces - a.pieces || compareNumbers(a.objectNumber, b.objectNumber));
}

/** 'collection', 'loan, Parish of Saint Osk', 'artist, Isolde Fennimarsh', each once, in that order. */
export function sourceTexts(members: readonly VignetteMembers[]): string[] {
  const order: readonly Source[] = ['collection', 'loan', 'artist', 'bought'];
  const texts = new Set<string>();
  for (const source of order) {
    const lenders = new Set(members.filter((member) => member.source === source).map(({ lender }) => lender));
    for (const lender of [...lenders].sort()) {
      texts.add(lender === '' || source === 'collection' ? source : `${source}, ${lender}`);
    }
  }
  return [...texts];
}

/** 'Dye House, east wall; layout floor', or 'not placed yet'. */
export function whereText(where: readonly VignetteWhere[]): string {
  if (where.length === 0) return 'not placed yet';
  return where.map(({ room, on }) => (room === null ? on : `${room}, ${on}`)).join('; ');
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
