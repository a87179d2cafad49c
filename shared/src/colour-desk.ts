/** The colour desk's table: walls down, works across, and how each work reads on each paint. Pure; nothing is stored. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { Reading } from '@enfilade/colour/reading';
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import { WALL_SIDES } from '@enfilade/space/room';
import { membersOf } from './commands.ts';
import type { HangLayer } from './hang-layer.ts';
import type { Judgements } from './judgements.ts';
import type { ObjectId, Paint, PaintId, PieceId, RoomId, SurfaceId, VignetteId } from './schema.ts';
import { objectOfPiece, pieceNumberOf } from './schema.ts';
import { shortSurfaceName } from './surface-names.ts';

/** From what is worst to what is best. */
export const WORST_FIRST: readonly ReadingWord[] = ['lost', 'weak', 'holds', 'carries'];

export interface DeskWall {
  readonly surface: SurfaceId;
  readonly roomId: RoomId;
  readonly roomName: string;
  readonly wallName: string;
  readonly paint: Paint & { readonly id: PaintId };
}

/** A record, or so much of it as hangs on one wall: one column. */
export interface DeskWork {
  readonly id: string;
  readonly objectId: ObjectId;
  /** In their number's order. */
  readonly pieces: readonly PieceId[];
  /** The wall it hangs on; null where it hangs on none. */
  readonly surface: SurfaceId | null;
  readonly title: string;
  readonly number: string;
}

/** How a work reads on a paint; of several pieces the one that reads worst, and how many read how. */
export interface DeskCell {
  readonly reading: Reading;
  readonly pieceId: PieceId;
  readonly counts: Readonly<Record<ReadingWord, number>>;
}

/** Which works stand across: what hangs on walls, what does not, all there is, or the members of a vignette. */
export type DeskPool = 'hung' | 'not hung' | 'all' | { readonly vignetteId: VignetteId };
export type WorkOrder = 'wall' | 'number' | 'worst';
export type WallOrder = 'room' | 'worst';

/** Works side by side that belong together: those of one wall, or those that read alike. */
export interface DeskGroup {
  readonly id: string;
  readonly surface: SurfaceId | null;
  readonly word: ReadingWord | null;
  readonly works: readonly DeskWork[];
}

/** Every wall of every room as one goes through the building: rooms in their order, walls clockwise from the head. */
export function everyWall({ documents }: Judgements): SurfaceId[] {
  return [...documents.all('rooms')]
    .sort(([idA, a], [idB, b]) => a.order - b.order || (idA < idB ? -1 : 1))
    .flatMap(([id]) => WALL_SIDES.map((side) => `${id}:${side}`));
}

/** The painted walls as one goes through the building, and those that have no paint yet. */
export function deskWallsOf(judgements: Judgements): { readonly walls: DeskWall[]; readonly bare: SurfaceId[] } {
  const walls: DeskWall[] = [];
  const bare: SurfaceId[] = [];
  for (const surface of everyWall(judgements)) {
    const paint = judgements.paintOf(surface);
    const roomId = surface.slice(0, surface.lastIndexOf(':'));
    if (paint === null) bare.push(surface);
    else {
      const roomName = judgements.documents.get('rooms', roomId)?.name ?? '';
      walls.push({ surface, roomId, roomName, wallName: shortSurfaceName(judgements.documents, surface), paint });
    }
  }
  return { walls, bare };
}

/** The works of a pool that have a picture, by wall and along it, then those on no wall by number. */
export function deskWorksOf(judgements: Judgements, pool: DeskPool): DeskWork[] {
  const { documents, where } = judgements;
  const surfaces = everyWall(judgements);
  const wanted = typeof pool === 'string' ? null : new Set(membersOf(documents, pool.vignetteId));
  const found = new Map<string, { pieces: PieceId[]; surface: SurfaceId | null }>();
  const take = (pieceId: PieceId, surface: SurfaceId | null): void => {
    if (wanted?.has(pieceId) === false || !hasColours(judgements, pieceId)) return;
    const id = `${objectOfPiece(pieceId)}@${surface ?? ''}`;
    const known = found.get(id);
    if (known === undefined) found.set(id, { pieces: [pieceId], surface });
    else known.pieces.push(pieceId);
  };
  const hung = new Set<PieceId>();
  for (const surface of surfaces) {
    const along = [...where.directlyOn(surface)].map((pieceId) => ({ pieceId, at: where.placeOf(pieceId) }));
    along.sort((p, q) => (p.at?.[1] ?? 0) - (q.at?.[1] ?? 0) || (p.pieceId < q.pieceId ? -1 : 1));
    for (const { pieceId, at } of along) {
      if (at === null) continue;
      hung.add(pieceId);
      if (pool !== 'not hung') take(pieceId, surface);
    }
  }
  if (pool !== 'hung') {
    for (const objectId of documents.all('objects').keys()) {
      for (const pieceId of judgements.piecesOf(objectId)) if (!hung.has(pieceId)) take(pieceId, null);
    }
  }
  const works = [...found].map(([id, { pieces, surface }]): DeskWork => {
    const objectId = objectOfPiece(pieces[0] as PieceId);
    const object = documents.get('objects', objectId);
    pieces.sort((a, b) => pieceNumberOf(a) - pieceNumberOf(b));
    const number = object?.number ?? '';
    return { id, objectId, pieces, surface, title: object?.title || number, number };
  });
  return [
    ...works.filter(({ surface }) => surface !== null),
    ...works.filter(({ surface }) => surface === null).sort(byNumber),
  ];
}

function hasColours(judgements: Judgements, pieceId: PieceId): boolean {
  return (judgements.pictureOf(pieceId)?.body.length ?? 0) > 0;
}

/** How a work reads on a colour; null where none of its pictures is known. */
export function deskCellOf(judgements: Judgements, work: DeskWork, wall: LabD65): DeskCell | null {
  const counts = { lost: 0, weak: 0, holds: 0, carries: 0 };
  let worst: { reading: Reading; pieceId: PieceId } | null = null;
  for (const pieceId of work.pieces) {
    const reading = judgements.readingOf(pieceId, wall);
    if (reading === null) continue;
    counts[reading.word] += 1;
    if (worst === null || compareReadings(reading, worst.reading) < 0) worst = { reading, pieceId };
  }
  return worst === null ? null : { ...worst, counts };
}

/** Negative where the first reads worse: by its word, then by how near its body is to the wall. */
export function compareReadings(a: Reading, b: Reading): number {
  return WORST_FIRST.indexOf(a.word) - WORST_FIRST.indexOf(b.word) || a.body.deltaE - b.body.deltaE;
}

const collator = new Intl.Collator('en', { numeric: true });

function byNumber(a: DeskWork, b: DeskWork): number {
  return collator.compare(a.number, b.number) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/**
 * Works (from `deskWorksOf`) in the order asked for, in groups: by wall, or by how they read on their own wall; by number
 * they are one. `elsewhere`: the colour that what hangs nowhere is read on, for 'worst'.
 */
export function groupsOf(
  judgements: Judgements,
  works: readonly DeskWork[],
  order: WorkOrder,
  elsewhere: LabD65 | null,
): DeskGroup[] {
  if (order === 'number') {
    return works.length === 0 ? [] : [{ id: 'all', surface: null, word: null, works: [...works].sort(byNumber) }];
  }
  const groups = new Map<string, { surface: SurfaceId | null; word: ReadingWord | null; works: DeskWork[] }>();
  const put = (id: string, surface: SurfaceId | null, word: ReadingWord | null, work: DeskWork): void => {
    const group = groups.get(id) ?? { surface, word, works: [] };
    group.works.push(work);
    groups.set(id, group);
  };
  if (order === 'wall') {
    for (const work of works) put(work.surface ?? 'none', work.surface, null, work);
  } else {
    const read = works.flatMap((work) => {
      const own = work.surface === null ? elsewhere : (judgements.paintOf(work.surface)?.lab ?? elsewhere);
      const cell = own === null ? null : deskCellOf(judgements, work, own);
      return cell === null ? [] : [{ work, reading: cell.reading }];
    });
    read.sort((a, b) => compareReadings(a.reading, b.reading) || byNumber(a.work, b.work));
    for (const { work, reading } of read) put(reading.word, null, reading.word, work);
  }
  return [...groups].map(([id, group]) => ({ id, ...group }));
}

/** Walls (from `deskWallsOf`) in the order asked for; 'worst': most lost of what hangs there first, then most weak. */
export function wallsInOrder(
  judgements: Judgements,
  walls: readonly DeskWall[],
  works: readonly DeskWork[],
  order: WallOrder,
): DeskWall[] {
  if (order === 'room') return [...walls];
  const counted = walls.map((wall) => {
    const there = works.filter(({ surface }) => surface === wall.surface);
    return { wall, counts: countsOf(judgements, there, wall.paint.lab) };
  });
  counted.sort((a, b) => b.counts.lost - a.counts.lost || b.counts.weak - a.counts.weak);
  return counted.map(({ wall }) => wall);
}

/** How many pieces of these works read how on a colour. */
export function countsOf(
  judgements: Judgements,
  works: readonly DeskWork[],
  wall: LabD65,
): Record<ReadingWord, number> {
  const counts = { lost: 0, weak: 0, holds: 0, carries: 0 };
  for (const work of works) {
    const cell = deskCellOf(judgements, work, wall);
    if (cell !== null) for (const word of WORST_FIRST) counts[word] += cell.counts[word];
  }
  return counts;
}

/** The show with one wall painted anew, to be read and not written. */
export function layerOfPaint(surface: SurfaceId, paintId: PaintId): HangLayer {
  return {
    over(root, under) {
      if (root !== 'paints') return null;
      return {
        get: (key) => (key === surface ? paintId : under.get(key)),
        *entries() {
          for (const [key, value] of under.entries()) if (key !== surface) yield [key, value];
          yield [surface, paintId];
        },
        observe: (tell) => under.observe(tell),
      };
    },
    changesFor() {
      throw new RangeError('a paint on trial is not written; repaint the wall, or propose it');
    },
  };
}
