/** What measuring writes beyond one field, and what is wrong with what was typed, in words. Pure. */
import type { Act } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import type { ShowDocuments } from '@enfilade/shared/documents';
import type { Change } from '@enfilade/shared/root-snapshot';
import { type Fixture, type Opening, type Room, type RoomId, surfaceParts } from '@enfilade/shared/schema';
import type { Issue } from '@enfilade/space/issues';
import { type LengthUnit, lengthText } from '@enfilade/space/lengths';
import { openingIssuesOf } from '@enfilade/space/openings';
import { roomIssuesOf, WALL_SIDES, type WallSide, wallLengthOf, wallNameOf } from '@enfilade/space/room';

export type Corner = 0 | 1 | 2 | 3;

/** 'north-west corner' of a room, by the walls that meet there; corners go foot left, foot right, head right, head left. */
export function cornerNameOf(room: Pick<Room, 'headFaces'>, corner: Corner): string {
  const ends: readonly WallSide[] = corner < 2 ? ['foot'] : ['head'];
  const sides: readonly WallSide[] = corner === 0 || corner === 3 ? ['left'] : ['right'];
  const winds = [...ends, ...sides].map((side) => wallNameOf(room, side).replace(' wall', ''));
  winds.sort((a) => (a === 'north' || a === 'south' ? -1 : 1));
  return `${winds.join('-')} corner`;
}

/** 'Dye House, east wall'; the surface's own word where the room is gone. */
export function wallTextOf(documents: ShowDocuments, surface: string): string {
  const parts = surfaceParts(surface);
  const room = parts === null ? undefined : documents.get('rooms', parts.roomId);
  const side = WALL_SIDES.find((name) => name === parts?.side);
  return room === undefined || side === undefined ? surface : `${room.name}, ${wallNameOf(room, side)}`;
}

/** Everything with a place on a room's walls, floor and ceiling, or in an opening that goes with it. */
export function piecesIn(documents: ShowDocuments, roomId: RoomId): string[] {
  const openings = openingsOnlyIn(documents, roomId);
  return [...documents.all('places')]
    .filter(([, [on]]) => on.startsWith(`${roomId}:`) || openings.has(on.replace(/^opening:/, '')))
    .map(([pieceId]) => pieceId);
}

function openingsOnlyIn(documents: ShowDocuments, roomId: RoomId): Set<string> {
  const found = new Set<string>();
  for (const [id, { sides }] of documents.all('openings')) {
    if (sides.every(({ surface }) => surfaceParts(surface)?.roomId === roomId)) found.add(id);
  }
  return found;
}

/** A room goes with its own openings and fixtures; shared openings stay in the other room; what hung goes back. */
export function takeRoomAway(documents: ShowDocuments, roomId: RoomId): Act {
  const name = documents.get('rooms', roomId)?.name ?? 'a room';
  const own = openingsOnlyIn(documents, roomId);
  const changes: Change[] = [...commands.unplace(documents, piecesIn(documents, roomId)).changes];
  for (const [id, opening] of documents.all('openings')) {
    const left = opening.sides.filter(({ surface }) => surfaceParts(surface)?.roomId !== roomId);
    if (own.has(id)) changes.push(...commands.remove('openings', id, '').changes);
    else if (left.length < opening.sides.length) changes.push(...commands.correctOpening(id, { sides: left }).changes);
  }
  for (const [id, { surface }] of documents.all('fixtures')) {
    if (surfaceParts(surface)?.roomId === roomId) changes.push(...commands.remove('fixtures', id, '').changes);
  }
  return { name: `take away ${name}`, changes: [...changes, ...commands.remove('rooms', roomId, '').changes] };
}

/** Moves a room one place earlier (-1) or later (1) in the order of going; null at either end. */
export function reorderRoom(
  documents: ShowDocuments,
  order: readonly RoomId[],
  roomId: RoomId,
  by: -1 | 1,
): Act | null {
  const at = order.indexOf(roomId);
  const other = order[at + by];
  if (at < 0 || other === undefined) return null;
  const wanted = order.map((id) => (id === roomId ? other : id === other ? roomId : id));
  // All are numbered anew: two rooms measured at once may bear one number.
  const changes = wanted.flatMap((id, index) =>
    documents.get('rooms', id)?.order === index + 1 ? [] : commands.correctRoom(id, { order: index + 1 }).changes,
  );
  return { name: 'order the rooms', changes };
}

function issueText({ what, value }: Issue, unit: LengthUnit): string {
  return typeof value === 'number' && Number.isFinite(value) && value !== 0
    ? `${what} (${lengthText(value, unit)})`
    : what;
}

/** What cannot be true of a room with these fields, said beside the field; null when it can be drawn. */
export function roomTrouble(room: Room, unit: LengthUnit): string | null {
  const issue = roomIssuesOf(room)[0];
  return issue === undefined ? null : `${issue.where} ${issueText(issue, unit)}`;
}

/** What cannot be true of an opening among the others; null when nothing is wrong with it. */
export function openingTrouble(
  documents: ShowDocuments,
  id: string,
  opening: Opening,
  unit: LengthUnit,
): string | null {
  const others = [...documents.all('openings')].filter(([other]) => other !== id);
  const all = [{ id, ...opening }, ...others.map(([other, facts]) => ({ id: other, ...facts }))];
  const issue = openingIssuesOf(all, (roomId) => documents.get('rooms', roomId)).find(({ where }) => where === id);
  if (issue === undefined) return null;
  const met = documents.get('openings', String(issue.value));
  return met === undefined ? issueText(issue, unit) : `overlaps ${met.name || `a ${met.kind}`}`;
}

/** What cannot be true of a fixture; null when it lies in its wall. */
export function fixtureTrouble(documents: ShowDocuments, fixture: Fixture, unit: LengthUnit): string | null {
  const parts = surfaceParts(fixture.surface);
  const room = parts === null ? undefined : documents.get('rooms', parts.roomId);
  const side = WALL_SIDES.find((name) => name === parts?.side);
  if (room === undefined || side === undefined) return 'is in a wall that is not known';
  const length = wallLengthOf(room, side);
  if (!(fixture.widthMm > 0)) return 'has no width';
  if (!(fixture.heightMm > 0)) return 'has no height';
  if (fixture.clearMm < 0) return 'cannot be kept clear by less than nothing';
  if (fixture.xMm - fixture.widthMm / 2 < 0) return 'starts before the wall';
  if (fixture.xMm + fixture.widthMm / 2 > length) {
    return `runs past the end of the wall (${lengthText(length, unit)})`;
  }
  if (fixture.yMm + fixture.heightMm / 2 > room.heightMm) {
    return `is higher than the wall (${lengthText(room.heightMm, unit)})`;
  }
  const floor = Math.min(0, ...room.cornersMm);
  if (fixture.yMm - fixture.heightMm / 2 < floor) return 'lies below the floor';
  return null;
}
