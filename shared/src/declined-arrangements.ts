/** Ways to arrange a pool that were declined: they stay away, for everybody, as long as the pool and the surface stand. */
import type { Act } from './acts.ts';
import type { Arrangement } from './arrange-task.ts';
import type { ShowDocuments } from './documents.ts';
import type { DeclinedWord, Word } from './talk.ts';

export function declineArrangement(ground: string, way: Pick<Arrangement, 'digest' | 'name'>, word: Word): Act {
  const value: DeclinedWord = { way: way.name, ...word };
  return {
    name: `decline ${way.name}`,
    changes: [{ root: 'declined', key: `${ground}/${way.digest}`, value: value as never }],
  };
}

/** Offers again whatever was declined of this pool on this surface. */
export function offerAgain(documents: ShowDocuments, ground: string): Act {
  return {
    name: 'offer declined ways again',
    changes: [...declinedOn(documents, ground)].map((digest) => ({
      root: 'declined',
      key: `${ground}/${digest}`,
      value: undefined,
    })),
  };
}

/** Digests of what was declined of this pool on this surface. */
export function declinedOn(documents: ShowDocuments, ground: string): ReadonlySet<string> {
  const away = new Set<string>();
  for (const key of documents.all('declined').keys()) {
    if (key.startsWith(`${ground}/`)) away.add(key.slice(ground.length + 1));
  }
  return away;
}
