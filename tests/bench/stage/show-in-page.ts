/** A show of one very large wall with all the things on it, and as much of a session as the stage asks for. */
import { ActHistory } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import { ATLAS_CELLS, type ImageFacts } from '@enfilade/shared/protocol';
import type { ShowSession } from '../../../client/src/sync/show-session.ts';
import { type BenchObject, PICTURES, pictureSizeOf, WALL } from './objects.ts';

export function commandsFor(objects: readonly BenchObject[]): {
  readonly show: ShowSession;
  readonly documents: ShowDocuments;
} {
  const documents = new ShowDocuments();
  const history = new ActHistory(documents, 'me');
  const cornersMm = [0, 0, 0, 0] as const;
  const room = { name: 'Hall', order: 1, ...WALL, depthMm: 9000, headFaces: 'east', cornersMm, laserMm: 1000 } as const;
  history.perform(commands.addRoom(room, 'hall'));
  history.perform(
    commands.addObjects(
      documents,
      objects.map(({ id, picture, widthMm, heightMm }) => ({
        id,
        object: {
          number: id,
          title: id,
          count: 1,
          lender: '',
          source: 'collection' as const,
          picture: `p${picture}`,
          measured: { widthMm, heightMm, depthMm: 20, estimated: false },
        },
      })),
    ),
  );
  history.perform(
    commands.place(
      documents,
      new Map(objects.map(({ id, xMm, yMm }) => [`${id}#1`, ['hall:head', xMm, yMm, 0, 0] as const])),
    ),
  );
  const facts = new Map<string, ImageFacts>();
  for (let i = 0; i < PICTURES; i++) {
    const { width, height } = pictureSizeOf(i);
    const cell = { page: Math.floor(i / ATLAS_CELLS), index: i % ATLAS_CELLS };
    const colours = { body: [], edge: [], opaqueShare: 1, engine: 'bench' };
    facts.set(`p${i}`, { sha256: `p${i}`, widthPx: width, heightPx: height, cell, ...colours });
  }
  const silent = () => () => {};
  const pictures = {
    get: (sha256: string) => facts.get(sha256),
    atlasUrl: (page: number) => `/atlas/${page}.webp`,
    urlOf: (sha256: string) => `/picture/${sha256.slice(1)}.webp`,
    subscribe: silent,
  };
  const show = {
    documents,
    history,
    pictures,
    judgements: new Judgements(documents, pictures),
    presence: { say: () => {}, everyoneElse: () => NOBODY, everyoneIn: () => NOBODY, subscribe: silent },
    layerId: null,
    may: () => true,
    perform(act: Parameters<ActHistory['perform']>[0]) {
      history.perform(act);
      return true;
    },
  };
  return { show: show as unknown as ShowSession, documents };
}

/** One array for good: what is asked again and again must not look new each time. */
const NOBODY: never[] = [];
