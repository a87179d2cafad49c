/** A small show for tests: one room, a few records, two paints. */
import { ActHistory } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import type { MuseumObject, Room } from '@enfilade/shared/schema';

const ROOM: Room = {
  name: 'Dye House',
  order: 1,
  widthMm: 6000,
  depthMm: 6000,
  heightMm: 3600,
  headFaces: 'east',
  cornersMm: [0, -30, -30, 0],
  laserMm: 1000,
};

export function work(number: string, fields: Partial<MuseumObject> = {}): MuseumObject {
  return { number, title: `Work ${number}`, count: 1, lender: '', source: 'collection', ...fields };
}

export function sampleShow(): { documents: ShowDocuments; history: ActHistory } {
  const documents = new ShowDocuments();
  const history = new ActHistory(documents, 'me');
  const setUp = new ActHistory(documents, 'setting up');
  setUp.perform(commands.addRoom(ROOM, 'dye'));
  setUp.perform(
    commands.addObjects(documents, [
      { id: 'hanging', object: work('F.1', { dimensionsText: '146 × 310 cm' }) },
      { id: 'oil', object: work('1931.14.3', { dimensionsText: '66 × 86 cm', framedText: '76 x 96 x 6 cm' }) },
      { id: 'blocks', object: work('1902.7', { count: 60, dimensionsText: '20 × 20 × 5 cm' }) },
      {
        id: 'bench',
        object: work('B.1', { dimensionsText: 'H 45 x W 140 x D 40 cm', levelsMm: [450], source: 'bought' }),
      },
      { id: 'trap', object: work('T.1', { dimensionsText: 'H 78 x W 34 x D 34 cm' }) },
    ]),
  );
  setUp.perform(commands.addPaint(documents, { name: 'Verdigris, deep', lab: { L: 33, a: -25, b: -4 } }, 'verdigris'));
  setUp.perform(commands.addPaint(documents, { name: 'Weld', lab: { L: 80, a: -2, b: 60 } }, 'weld'));
  setUp.perform(commands.repaint('dye:head', 'verdigris'));
  return { documents, history };
}
