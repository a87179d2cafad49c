/** Suggestions that were declined: they stay away from everybody until the pool they came of is another. */
import type { Act } from './acts.ts';
import type { ShowDocuments } from './documents.ts';
import type { ObjectId } from './schema.ts';
import { digestOf } from './sign-off.ts';
import type { DeclinedSuggestion, Word } from './talk.ts';

/** What a suggestion is known by: a set by its members in any order, one thing beside another by the two. */
export function suggestionKey(kind: 'set' | 'echo' | 'focal', ids: readonly ObjectId[]): string {
  return `${kind}|${kind === 'set' ? digestOf([...ids].sort().join('\n')) : ids.join('|')}`;
}

/** What the pool is known by: the checklist's records, whatever is written in them. */
export function poolKeyOf(documents: ShowDocuments): string {
  return digestOf([...documents.all('objects').keys()].sort().join('\n'));
}

export function declineSuggestion(documents: ShowDocuments, key: string, word: Word): Act {
  const value: DeclinedSuggestion = { ...word, pool: poolKeyOf(documents) };
  return { name: 'decline a suggestion', changes: [{ root: 'declinedSuggestions', key, value: value as never }] };
}

/** Offers again whatever was declined. */
export function offerSuggestions(keys: readonly string[]): Act {
  return {
    name: 'offer again what was declined',
    changes: keys.map((key) => ({ root: 'declinedSuggestions', key, value: undefined })),
  };
}

/** The declined suggestions that stay away from the pool as it is now. */
export function declinedSuggestions(documents: ShowDocuments): ReadonlyMap<string, DeclinedSuggestion> {
  const pool = poolKeyOf(documents);
  return new Map([...documents.all('declinedSuggestions')].filter(([, declined]) => declined.pool === pool));
}
