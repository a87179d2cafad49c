/** The vignette list: one row a vignette, drawn from the open documents alone, so that nothing private can be in it. */
import { csvFrom } from '@enfilade/records/checklist-csv';
import { WALL_SIDES, type WallSide, wallNameOf } from '@enfilade/space/room';
import { membersOf } from './commands.ts';
import type { Judgements, VignetteStanding } from './judgements.ts';
import {
  LAYOUT_FLOOR,
  type MuseumObject,
  type ObjectId,
  objectOfPiece,
  type PieceId,
  type Source,
  type SurfaceId,
  surfaceParts,
  type VignetteId,
} from './schema.ts';

export interface VignetteMembers {
  readonly objectId: ObjectId;
  readonly objectNumber: string;
  readonly title: string;
  readonly source: Source;
  readonly lender: string;
  /** Pieces of this record in the vignette, how many of them have a place, and how many the record counts. */
  readonly pieces: number;
  readonly placed: number;
  readonly of: number;
}

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
    const focal = vignette.focal === null ? undefined : judgements.objectOf(vignette.focal);
    rows.push({
      id,
      number: rows.length + 1,
      name: vignette.name,
      intent: vignette.intent,
      focal:
        focal === undefined || vignette.focal === null
          ? null
          : { pieceId: vignette.focal, name: judgements.nameOf(vignette.focal), objectNumber: focal.number },
      where: surfacesOf(judgements, vignette.focal, pieces).map((surface) => surfaceRow(judgements, surface)),
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
  const side = WALL_SIDES.find((name): name is WallSide => name === parts?.side);
  const on =
    surface === LAYOUT_FLOOR
      ? 'layout floor'
      : room === undefined
        ? 'a surface that is gone'
        : side === undefined
          ? (parts?.side ?? surface)
          : wallNameOf(room, side);
  return {
    surface,
    room: room?.name ?? null,
    on,
    paint: paint === null ? null : { name: paint.name, lab: paint.lab },
  };
}

function membersByRecord(judgements: Judgements, pieces: readonly PieceId[]): VignetteMembers[] {
  const byObject = new Map<ObjectId, { object: MuseumObject; pieces: number; placed: number }>();
  for (const pieceId of pieces) {
    const object = judgements.objectOf(pieceId);
    if (object === undefined) continue;
    const id = objectOfPiece(pieceId);
    const known = byObject.get(id) ?? { object, pieces: 0, placed: 0 };
    known.pieces += 1;
    if (judgements.where.placeOf(pieceId) !== null) known.placed += 1;
    byObject.set(id, known);
  }
  return [...byObject]
    .map(([objectId, { object, pieces: count, placed }]) => ({
      objectId,
      objectNumber: object.number,
      title: object.title || object.number,
      source: object.source,
      lender: object.lender,
      pieces: count,
      placed,
      of: object.count,
    }))
    .sort((a, b) => b.pieces - a.pieces || compare(a.objectNumber, b.objectNumber));
}

/** 'Weir, rising', '41 of 60 Printing blocks', '12 Copper moulds': a record's share in words. */
export function memberText({ title, pieces, of }: VignetteMembers): string {
  if (of <= 1) return title;
  return pieces === of ? `${title}, all ${of}` : `${title}, ${pieces} of ${of}`;
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

/** Words for a row that need a person's unit or language: the state told whole. */
export type StateText = (row: VignetteListRow) => string;

const HEADINGS = [
  'No.',
  'Vignette',
  'Room and wall',
  'Wall colour',
  'Focal work',
  'Members',
  'Pieces',
  'Where from',
  'Intent',
  'State',
];

/** The list as CSV (RFC 4180, with a byte order mark so that a spreadsheet reads accents), safe to open in one. */
export function toVignetteCsv(
  rows: readonly VignetteListRow[],
  stateText: StateText = (row) => row.standing.state,
): string {
  const lines = rows.map((row) => [
    String(row.number),
    row.name,
    whereText(row.where),
    row.where.map(({ paint, on }) => (row.where.length > 1 ? `${on}: ` : '') + (paint?.name ?? 'none')).join('; '),
    row.focal === null ? '' : `${row.focal.name} (${row.focal.objectNumber})`,
    row.members.map((member) => `${memberText(member)} (${member.objectNumber})`).join('; '),
    String(row.members.reduce((sum, { pieces }) => sum + pieces, 0)),
    sourceTexts(row.members).join('; '),
    row.intent,
    stateText(row),
  ]);
  return `\uFEFF${csvFrom([HEADINGS, ...lines])}`;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
