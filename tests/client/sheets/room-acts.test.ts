import {
  cornerNameOf,
  fixtureTrouble,
  openingTrouble,
  reorderRoom,
  roomTrouble,
  takeRoomAway,
} from '@enfilade/client/sheets/room-acts';
import * as commands from '@enfilade/shared/commands';
import type { Room } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { sampleShow } from '../../shared/sample-show.ts';

const ROOM = sampleShow().documents.get('rooms', 'dye') as Room;

const DOOR = {
  kind: 'doorway',
  name: 'to the Wheel Room',
  widthMm: 1200,
  heightMm: 2200,
  sillMm: 0,
  sides: [
    { surface: 'dye:left', xMm: 2000 },
    { surface: 'wheel:right', xMm: 2800 },
  ],
} as const;
const SOCKET = { kind: 'socket', surface: 'dye:head', xMm: 300, yMm: 300, widthMm: 80, heightMm: 80, clearMm: 50 };

function twoRooms() {
  const { documents, history } = sampleShow();
  history.perform(commands.addRoom({ ...ROOM, name: 'Wheel Room', order: 2 }, 'wheel'));
  history.perform(commands.addOpening(DOOR, 'door'));
  history.perform(commands.addFixture(SOCKET, 'socket'));
  history.perform(commands.place(documents, new Map([['hanging#1', ['dye:head', 3000, 1500, 0, 0]]])));
  return { documents, history };
}

describe('measuring rooms', () => {
  test('reference: corners are named by the walls that meet there, head east (the geometry conventions)', () => {
    expect(([0, 1, 2, 3] as const).map((corner) => cornerNameOf(ROOM, corner))).toEqual([
      'north-west corner',
      'south-west corner',
      'south-east corner',
      'north-east corner',
    ]);
  });

  test('law: a room taken away takes its own things along, keeps what is shared, and one undo brings all of it back', () => {
    const { documents, history } = twoRooms();
    history.perform(takeRoomAway(documents, 'dye'));
    expect(documents.get('rooms', 'dye')).toBeUndefined();
    expect(documents.get('fixtures', 'socket')).toBeUndefined();
    expect(documents.get('places', 'hanging#1')).toBeUndefined();
    expect(documents.get('openings', 'door')?.sides).toEqual([DOOR.sides[1]]);
    history.undo();
    expect(documents.get('rooms', 'dye')?.name).toBe('Dye House');
    expect(documents.get('fixtures', 'socket')).toEqual(SOCKET);
    expect(documents.get('places', 'hanging#1')?.[0]).toBe('dye:head');
    expect(documents.get('openings', 'door')).toEqual(DOOR);
  });

  test('story: a room moves along the row, also where two bear one number', () => {
    const { documents, history } = twoRooms();
    history.perform(commands.correctRoom('wheel', { order: 1 }));
    const later = reorderRoom(documents, ['dye', 'wheel'], 'dye', 1);
    if (later !== null) history.perform(later);
    expect([documents.get('rooms', 'wheel')?.order, documents.get('rooms', 'dye')?.order]).toEqual([1, 2]);
    expect(reorderRoom(documents, ['wheel', 'dye'], 'dye', 1)).toBeNull();
  });

  test('story: what cannot be is said with its figure in the person’s unit', () => {
    const { documents } = twoRooms();
    expect(roomTrouble(ROOM, 'cm')).toBeNull();
    expect(roomTrouble({ ...ROOM, laserMm: 4000 }, 'cm')).toBe('laser line must lie between floor and ceiling (400.0)');
    expect(openingTrouble(documents, 'door', DOOR, 'cm')).toBeNull();
    const past = { ...DOOR, sides: [{ surface: 'dye:left', xMm: 5000 }] };
    expect(openingTrouble(documents, 'door', past, 'cm')).toBe('runs past the end of the wall (620.0)');
    const other = { ...DOOR, name: 'second', sides: [{ surface: 'dye:left', xMm: 2500 }] };
    expect(openingTrouble(documents, 'new', other, 'cm')).toBe('overlaps to the Wheel Room');
    expect(fixtureTrouble(documents, SOCKET, 'in')).toBeNull();
    expect(fixtureTrouble(documents, { ...SOCKET, xMm: 5990 }, 'in')).toBe('runs past the end of the wall (236 1/4)');
  });
});
