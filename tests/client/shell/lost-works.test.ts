import { ActHistory } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import type { ImageFacts } from '@enfilade/shared/protocol';
import type { MuseumObject, PieceId, Room } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { lostText, lostWorksOf, nextLost } from '../../../client/src/shell/lost-works.ts';

const GREEN = { L: 34, a: -26, b: 2 };
const SAFFRON = { L: 73, a: 18, b: 62 };

function room(name: string, order: number): Room {
  return {
    name,
    order,
    widthMm: 6000,
    depthMm: 5000,
    heightMm: 3600,
    headFaces: 'east',
    cornersMm: [0, 0, 0, 0],
    laserMm: 1000,
  };
}

function picture(lab: typeof GREEN): ImageFacts {
  const swatches = [{ lab, share: 1 }];
  return {
    sha256: '',
    widthPx: 9,
    heightPx: 9,
    body: swatches,
    edge: swatches,
    opaqueShare: 1,
    engine: '',
    cell: { page: 0, index: 0 },
  };
}

function show() {
  const documents = new ShowDocuments();
  const history = new ActHistory(documents, 'me');
  const pictures = new Map([
    ['green', picture(GREEN)],
    ['saffron', picture(SAFFRON)],
  ]);
  const judgements = new Judgements(documents, { get: (sha256) => pictures.get(sha256) });
  // The later room is measured first: the order is that of the walk, not of the writing.
  history.perform(commands.addRoom(room('Dye House', 2), 'dye'));
  history.perform(commands.addRoom(room('Wheel Room', 1), 'wheel'));
  for (const [id, lab] of [
    ['green', GREEN],
    ['saffron', SAFFRON],
  ] as const) {
    history.perform(commands.addPaint(documents, { name: id, lab }, id));
  }
  history.perform(
    commands.addObjects(
      documents,
      ['green', 'saffron'].map((id) => ({
        id,
        object: {
          number: id,
          title: `A ${id} view`,
          count: 3,
          lender: '',
          source: 'collection',
          picture: id,
        } satisfies MuseumObject,
      })),
    ),
  );
  const hang = (places: Readonly<Record<PieceId, readonly [on: string, xMm: number]>>): void =>
    history.perform(
      commands.place(documents, new Map(Object.entries(places).map(([id, [on, xMm]]) => [id, [on, xMm, 1500, 0, 0]]))),
    );
  const repaint = (surface: string, paint: string): void => history.perform(commands.repaint(surface, paint));
  return { judgements, hang, repaint };
}

describe('what a show opens on', () => {
  test('story: a green view on a green wall is lost, and no longer once the wall is saffron', () => {
    const { judgements, hang, repaint } = show();
    repaint('dye:head', 'green');
    hang({ 'green#1': ['dye:head', 4700], 'saffron#1': ['dye:head', 2000] });
    expect(lostWorksOf(judgements)).toEqual([{ pieceId: 'green#1', surface: 'dye:head' }]);
    repaint('dye:head', 'saffron');
    expect(lostWorksOf(judgements)).toEqual([{ pieceId: 'saffron#1', surface: 'dye:head' }]);
  });

  test('story: several are come to as one walks: room by room, wall by wall, left to right, and round again', () => {
    const { judgements, hang, repaint } = show();
    repaint('dye:head', 'green');
    repaint('wheel:right', 'green');
    hang({ 'green#1': ['dye:head', 4700], 'green#2': ['dye:head', 900], 'green#3': ['wheel:right', 3000] });
    const lost = lostWorksOf(judgements);
    expect(lost.map(({ pieceId }) => pieceId)).toEqual(['green#3', 'green#2', 'green#1']);
    expect(nextLost(lost, [])?.pieceId).toBe('green#3');
    expect(nextLost(lost, ['green#3'])?.pieceId).toBe('green#2');
    expect(nextLost(lost, ['green#1'])?.pieceId).toBe('green#3');
    expect(nextLost([], [])).toBeUndefined();
  });

  test('story: the way there is told by name and wall', () => {
    const { judgements } = show();
    const one = { pieceId: 'green#1', surface: 'dye:head' };
    expect(lostText(judgements, 1, one)).toBe('1 lost on its wall: A green view, piece 1, Dye House, east wall');
    expect(lostText(judgements, 3, one)).toBe(
      '3 lost on their walls, next: A green view, piece 1, Dye House, east wall',
    );
  });
});
