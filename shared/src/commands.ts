/**
 * Every write there is. A command reads the documents, changes nothing, and returns an Act (acts.ts performs it as one
 * transaction a document and one step of undo). Bare verbs; lengths in mm, turns in centidegrees.
 */
import { generateKeyBetween, generateNKeysBetween } from 'fractional-indexing';
import type { Act } from './acts.ts';
import type { EntityTypes, ShowDocuments } from './documents.ts';
import { newId } from './identity.ts';
import type { LabelWord } from './label-words.ts';
import type { PictureCut } from './picture-cuts.ts';
import type { Change } from './root-snapshot.ts';
import {
  carrierOf,
  type Fixture,
  type FixtureId,
  type Json,
  type MuseumObject,
  type ObjectId,
  type Opening,
  type OpeningId,
  objectOfPiece,
  type Paint,
  type PaintId,
  type PieceFacts,
  type PieceId,
  type Place,
  type PrivateFacts,
  type ROOTS,
  type Room,
  type RoomId,
  type RootName,
  type Settings,
  type SurfaceId,
  type Vignette,
  type VignetteId,
} from './schema.ts';

type TableRoot = { [R in RootName]: (typeof ROOTS)[R]['shape'] extends 'table' ? R : never }[RootName];

/** One change per field, so that two people correcting two fields of one record both keep their word. */
function edits<R extends TableRoot>(root: R, id: string, fields: Partial<EntityTypes[R]>): Change[] {
  return Object.entries(fields).map(([field, value]) => ({ root, key: `${id}/${field}`, value: value as Json }));
}

function set(root: RootName, key: string, value: unknown): Change {
  return { root, key, value: value as Json };
}

// Rooms

export function addRoom(room: Room, id: RoomId = newId()): Act & { readonly id: RoomId } {
  return { id, name: `measure ${room.name}`, changes: [set('rooms', id, room)] };
}

export function correctRoom(id: RoomId, fields: Partial<Room>): Act {
  return { name: 'correct the room', changes: edits('rooms', id, fields) };
}

export function addOpening(opening: Opening, id: OpeningId = newId()): Act & { readonly id: OpeningId } {
  return { id, name: `add a ${opening.kind}`, changes: [set('openings', id, opening)] };
}

export function correctOpening(id: OpeningId, fields: Partial<Opening>): Act {
  return { name: 'correct the opening', changes: edits('openings', id, fields) };
}

export function addFixture(fixture: Fixture, id: FixtureId = newId()): Act & { readonly id: FixtureId } {
  return { id, name: `add a ${fixture.kind}`, changes: [set('fixtures', id, fixture)] };
}

export function correctFixture(id: FixtureId, fields: Partial<Fixture>): Act {
  return { name: 'correct the fixture', changes: edits('fixtures', id, fields) };
}

/** Takes a room, opening, fixture, record, paint or vignette away; its facts stay and undo brings it back. */
export function remove(root: TableRoot, id: string, what: string): Act {
  return { name: `take away ${what}`, changes: [set(root, `${id}/removed`, true)] };
}

// The checklist

/** One record as it comes in: its facts, what is private of it, and its pictures (SHA-256). */
export interface RecordIn {
  /** The record it updates; absent for a new one. */
  readonly id?: ObjectId;
  readonly object: MuseumObject;
  readonly private?: PrivateFacts;
  /** Of the whole record, and of each piece that has none of its own. */
  readonly picture?: string;
  /** Of its pieces: the first is that of piece 1; null where a piece gets none. */
  readonly pictures?: readonly (string | null)[];
}

/**
 * Brings records in as one act. A record that is known is updated: its imported facts are replaced and what a person
 * changed since stays. Private facts go to the private document and nowhere else.
 */
export function addObjects(documents: ShowDocuments, records: readonly RecordIn[]): Act & { ids: ObjectId[] } {
  const changes: Change[] = [];
  const ids: ObjectId[] = [];
  for (const record of records) {
    const id = record.id ?? newId();
    ids.push(id);
    const known = record.id === undefined ? undefined : (documents.stored('objects', id) as MuseumObject | undefined);
    const pieces = record.pictures ?? [];
    const first = pieces.find((sha256) => sha256 !== null);
    const ofWhole = record.picture ?? pieces[0];
    const picture = ofWhole ?? record.object.picture ?? known?.picture ?? first ?? null;
    changes.push(set('objects', id, { ...record.object, picture }));
    for (const [index, sha256] of pieces.entries()) {
      if (sha256 !== null && record.object.count > 1) changes.push(set('pieces', `${id}#${index + 1}/picture`, sha256));
    }
    if (record.private !== undefined && Object.keys(record.private).length > 0) {
      changes.push(set('values', id, record.private));
    }
  }
  return { ids, name: `bring in ${records.length} ${records.length === 1 ? 'record' : 'records'}`, changes };
}

export function correctObject(id: ObjectId, fields: Partial<MuseumObject>): Act {
  return { name: 'correct the record', changes: edits('objects', id, fields) };
}

export function correctPiece(id: PieceId, fields: Partial<PieceFacts>): Act {
  return { name: 'correct the piece', changes: edits('pieces', id, fields) };
}

export function correctPrivate(id: ObjectId, fields: Partial<PrivateFacts>): Act {
  return { name: 'correct the private record', changes: edits('values', id, fields) };
}

const CUTTING: Readonly<Record<PictureCut, string>> = {
  'leave out': 'leave the ground out',
  keep: 'keep the ground',
  whole: 'take the whole picture',
};

/** A person's word on the ground of a photograph (SHA-256), for every record that shows it; null takes it back. */
export function cutPicture(sha256: string, cut: PictureCut | null): Act {
  const name = cut === null ? 'leave the ground of a picture as it was found' : CUTTING[cut];
  return { name, changes: [set('pictureCuts', sha256, cut ?? undefined)] };
}

export function addPaint(
  documents: ShowDocuments,
  paint: Omit<Paint, 'order'>,
  id: PaintId = newId(),
): Act & { readonly id: PaintId } {
  const last = lastOrder([...documents.all('deck').values()]);
  return {
    id,
    name: `add ${paint.name}`,
    changes: [set('deck', id, { ...paint, order: generateKeyBetween(last, null) })],
  };
}

/** A paint as it comes in: of one that is known (`id`), its facts take the place of those there. */
export interface PaintIn {
  readonly id?: PaintId;
  readonly paint: Omit<Paint, 'order'>;
}

/** Brings paints into the deck as one act; new ones follow the last in the order given. */
export function addPaints(documents: ShowDocuments, paints: readonly PaintIn[]): Act & { readonly ids: PaintId[] } {
  const fresh = paints.filter(({ id }) => id === undefined).length;
  const orders = generateNKeysBetween(lastOrder([...documents.all('deck').values()]), null, fresh);
  const changes: Change[] = [];
  const ids: PaintId[] = [];
  let next = 0;
  for (const { id, paint } of paints) {
    const known = id ?? newId();
    ids.push(known);
    if (id === undefined) changes.push(set('deck', known, { ...paint, order: orders[next++] as string }));
    else changes.push(...edits('deck', known, paint));
  }
  return { ids, name: `bring in ${paints.length} ${paints.length === 1 ? 'paint' : 'paints'}`, changes };
}

/** Colour facts go together, as `paintFrom` (paint-records.ts) has them: a corrected L*a*b* leaves no old reflectance. */
export function correctPaint(id: PaintId, fields: Partial<Omit<Paint, 'order'>>): Act {
  return { name: 'correct the paint', changes: edits('deck', id, fields) };
}

// The hang

/** Places whole mm and centidegrees. @throws RangeError on a number that is not finite. */
function placeValue([on, x, y, lift, turn]: Place): Place {
  for (const [name, number] of Object.entries({ x, y, lift, turn })) {
    if (!Number.isFinite(number)) throw new RangeError(`place ${name} must be finite, got ${number}`);
  }
  return [on, Math.round(x), Math.round(y), Math.round(lift), ((Math.round(turn) % 36000) + 36000) % 36000];
}

/**
 * Sets where pieces are, in one act.
 * @throws RangeError when a carrier would come to stand on what it carries.
 */
export function place(documents: ShowDocuments, places: ReadonlyMap<PieceId, Place>, name = 'place'): Act {
  for (const [pieceId, [on]] of places) {
    // What stays on what it is on makes no ring; one that two people made at once can still be moved in.
    if (documents.get('places', pieceId)?.[0] === on) continue;
    for (let at = carrierOf(on), seen = 0; at !== null && seen < 64; seen++) {
      if (at.pieceId === pieceId) throw new RangeError(`'${pieceId}' cannot stand on what it carries`);
      at = carrierOf((places.get(at.pieceId) ?? documents.get('places', at.pieceId))?.[0] ?? '');
    }
  }
  return { name, changes: [...places].map(([pieceId, value]) => set('places', pieceId, placeValue(value))) };
}

/** Moves placed pieces by one step in the frame of what each is on; a load whose carrier moves too stays on it. */
export function move(
  documents: ShowDocuments,
  pieceIds: readonly PieceId[],
  by: { readonly dxMm: number; readonly dyMm: number; readonly turnCentidegrees?: number },
): Act {
  const moving = new Set(pieceIds);
  const places = new Map<PieceId, Place>();
  for (const pieceId of pieceIds) {
    const at = documents.get('places', pieceId);
    if (at === undefined || moving.has(carrierOf(at[0])?.pieceId ?? '')) continue;
    places.set(pieceId, [at[0], at[1] + by.dxMm, at[2] + by.dyMm, at[3], at[4] + (by.turnCentidegrees ?? 0)]);
  }
  return place(documents, places, by.turnCentidegrees ? 'turn' : 'move');
}

/** Takes pieces off whatever they are on; what stands on them falls back to the unplaced with them. */
export function unplace(documents: ShowDocuments, pieceIds: readonly PieceId[]): Act {
  const going = new Set(pieceIds);
  for (let grown = true; grown; ) {
    grown = false;
    for (const [pieceId, at] of documents.all('places')) {
      if (!going.has(pieceId) && going.has(carrierOf(at[0])?.pieceId ?? '')) {
        going.add(pieceId);
        grown = true;
      }
    }
  }
  return { name: 'put back', changes: [...going].map((pieceId) => set('places', pieceId, undefined)) };
}

/** They stay where they are when others are arranged or make room, or no longer have to. */
export function pin(pieceIds: readonly PieceId[], stay: boolean): Act {
  const what = pieceIds.length === 1 ? 'a piece' : `${pieceIds.length} pieces`;
  return {
    name: stay ? `pin ${what}` : `unpin ${what}`,
    changes: pieceIds.map((pieceId) => set('pinned', pieceId, stay ? true : undefined)),
  };
}

/** On which side of its work a label stands, or that it has none; null: where it has room. */
export function labelOn(pieceIds: readonly PieceId[], side: LabelWord | null): Act {
  const name = side === null ? 'let labels find room' : side === 'none' ? 'leave labels out' : `put labels ${side}`;
  return { name, changes: pieceIds.map((pieceId) => set('labelSides', pieceId, side ?? undefined)) };
}

export function repaint(surface: SurfaceId, paintId: PaintId | null): Act {
  return { name: 'repaint', changes: [set('paints', surface, paintId ?? undefined)] };
}

// Vignettes

export function gather(
  documents: ShowDocuments,
  vignette: { readonly name: string; readonly intent: string; readonly focal: PieceId | null },
  members: readonly PieceId[],
  id: VignetteId = newId(),
): Act & { readonly id: VignetteId } {
  const order = generateKeyBetween(lastOrder([...documents.all('vignettes').values()]), null);
  return {
    id,
    name: `gather ${vignette.name}`,
    changes: [set('vignettes', id, { ...vignette, order }), ...members.map((pieceId) => set('memberOf', pieceId, id))],
  };
}

export function describe(id: VignetteId, fields: Partial<Vignette>): Act {
  return { name: 'describe the vignette', changes: edits('vignettes', id, fields) };
}

/** Puts pieces into a vignette, out of the one they were in; a piece is in at most one. */
export function join(id: VignetteId, pieceIds: readonly PieceId[]): Act {
  return { name: 'add to the vignette', changes: pieceIds.map((pieceId) => set('memberOf', pieceId, id)) };
}

/** Takes pieces out of their vignettes; a focal work that leaves is no longer focal. */
export function leave(documents: ShowDocuments, pieceIds: readonly PieceId[]): Act {
  const changes: Change[] = [];
  for (const pieceId of pieceIds) {
    const id = documents.get('memberOf', pieceId);
    if (id === undefined) continue;
    changes.push(set('memberOf', pieceId, undefined));
    if (documents.get('vignettes', id)?.focal === pieceId) changes.push(set('vignettes', `${id}/focal`, null));
  }
  return { name: 'take out of the vignette', changes };
}

/** Ungroups: the vignette goes, its pieces stay where they are. */
export function ungroup(documents: ShowDocuments, id: VignetteId): Act {
  return {
    name: `ungroup ${documents.get('vignettes', id)?.name ?? ''}`.trim(),
    changes: [
      set('vignettes', `${id}/removed`, true),
      ...membersOf(documents, id).map((p) => set('memberOf', p, undefined)),
    ],
  };
}

/** Pieces of a vignette whose records are still there, by record number and piece. */
export function membersOf(documents: ShowDocuments, id: VignetteId): PieceId[] {
  const members: PieceId[] = [];
  for (const [pieceId, vignetteId] of documents.all('memberOf')) {
    if (vignetteId === id && documents.get('objects', objectOfPiece(pieceId)) !== undefined) members.push(pieceId);
  }
  return members.sort();
}

/** The vignette a piece is shown in: one that was ungrouped meanwhile is none, though the membership may still be written. */
export function vignetteOf(documents: ShowDocuments, pieceId: PieceId): VignetteId | null {
  const id = documents.get('memberOf', pieceId);
  return id === undefined || documents.get('vignettes', id) === undefined ? null : id;
}

/** The focal work as shown: a member, or none. One may be made focal here while it is taken out there. */
export function focalOf(documents: ShowDocuments, id: VignetteId): PieceId | null {
  const focal = documents.get('vignettes', id)?.focal ?? null;
  if (focal === null || vignetteOf(documents, focal) !== id) return null;
  return documents.get('objects', objectOfPiece(focal)) === undefined ? null : focal;
}

export function setSetting<K extends keyof Settings>(key: K, value: Settings[K]): Act {
  return { name: 'change a setting', changes: [set('settings', key, value)] };
}

function lastOrder(items: readonly { readonly order: string }[]): string | null {
  return items.reduce<string | null>((last, { order }) => (last === null || order > last ? order : last), null);
}
