/** A room with things on its walls, its floor and its furniture, for the stage's tests. */
import { ActHistory } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import type { MuseumObject, Opening, PieceId, Place, Room } from '@enfilade/shared/schema';
import type { SceneLookup } from '../../../client/src/stage/scene-items.ts';

export const ROOM: Room = {
  name: 'Dye House',
  order: 1,
  widthMm: 6000,
  depthMm: 5000,
  heightMm: 3600,
  headFaces: 'east',
  cornersMm: [0, -30, -30, 0],
  laserMm: 1000,
};

/** In the foot wall, between 4000 and 5200 from its left end, and in a wall of the next room. */
const DOORWAY: Opening = {
  kind: 'doorway',
  name: 'doorway',
  widthMm: 1200,
  heightMm: 2200,
  sillMm: 0,
  sides: [
    { surface: 'dye:foot', xMm: 4000 },
    { surface: 'wheel:right', xMm: 1000 },
  ],
};

export const SIZES = {
  oil: { widthMm: 860, heightMm: 660, depthMm: 40 },
  block: { widthMm: 200, heightMm: 200, depthMm: 50 },
  bench: { widthMm: 1400, heightMm: 450, depthMm: 400 },
  shelf: { widthMm: 900, heightMm: 40, depthMm: 250 },
  trap: { widthMm: 340, heightMm: 780, depthMm: 340 },
} as const;

export function stageShow(): {
  documents: ShowDocuments;
  judgements: Judgements;
  lookup: SceneLookup;
  put(places: Readonly<Record<PieceId, Place>>): void;
} {
  const documents = new ShowDocuments();
  const history = new ActHistory(documents, 'me');
  const judgements = new Judgements(documents, { get: () => undefined });
  const levels: Partial<Record<string, readonly number[]>> = { bench: [450], shelf: [40] };
  history.perform(commands.addRoom(ROOM, 'dye'));
  history.perform(
    commands.addObjects(
      documents,
      Object.entries(SIZES).map(([id, size]) => ({
        id,
        object: {
          number: id,
          title: id,
          count: id === 'block' ? 60 : 1,
          lender: '',
          source: 'collection',
          measured: { ...size, estimated: false },
          levelsMm: levels[id] ?? null,
          picture: `picture of ${id}`,
        } satisfies MuseumObject,
      })),
    ),
  );
  history.perform(commands.addRoom({ ...ROOM, name: 'Wheel Room', order: 2, headFaces: 'north' }, 'wheel'));
  history.perform(commands.addOpening(DOORWAY, 'door'));
  const { where } = judgements;
  const lookup: SceneLookup = {
    placeOf: (id) => where.placeOf(id),
    sizeOf: (id) => where.sizeOf(id),
    levelsOf: (id) => where.levelsOf(id),
    roomOf: (surface) => where.roomOf(surface),
    openingOf: (id) => judgements.documents.get('openings', id) ?? null,
    pictureOf: (id) => judgements.pictureIdOf(id),
    nameOf: (id) => judgements.nameOf(id),
    frameOf: (id) => judgements.drawnFrameOf(id),
  };
  const put = (places: Readonly<Record<PieceId, Place>>) =>
    history.perform(commands.place(documents, new Map(Object.entries(places))));
  return { documents, judgements, lookup, put };
}
