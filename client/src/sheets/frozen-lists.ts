/** Frozen vignette lists by digest: fetched once, for they never change. */
import { type FrozenList, frozenListFrom } from '@enfilade/shared/list-versions';
import { useEffect, useState } from 'react';
import { useShow } from '../sync/hooks.ts';

/** Null: it could not be fetched. */
const known = new Map<string, Promise<FrozenList | null>>();

export function frozenListAt(base: string, digest: string): Promise<FrozenList | null> {
  const before = known.get(digest);
  if (before !== undefined) return before;
  const fetched = fetch(`${base}/states/${digest}`)
    .then(async (answer) => (answer.ok ? frozenListFrom(await answer.text()) : null))
    .catch(() => null)
    .then((list) => {
      // Asked for again when it is next needed.
      if (list === null) known.delete(digest);
      return list;
    });
  known.set(digest, fetched);
  return fetched;
}

export type Fetched = FrozenList | 'fetching' | 'not to be had';

/** The lists under these digests, in their order; of no digest: undefined. */
export function useFrozenLists(...digests: readonly (string | undefined)[]): readonly (Fetched | undefined)[] {
  const { base } = useShow();
  const [lists, setLists] = useState<ReadonlyMap<string, FrozenList | null>>(new Map());
  const key = digests.filter((digest) => digest !== undefined).join();
  useEffect(() => {
    let here = true;
    for (const digest of key === '' ? [] : key.split(',')) {
      void frozenListAt(base, digest).then((list) => {
        if (here) setLists((before) => new Map(before).set(digest, list));
      });
    }
    return () => {
      here = false;
    };
  }, [base, key]);
  return digests.map((digest) => {
    if (digest === undefined) return undefined;
    const list = lists.get(digest);
    return list === undefined ? 'fetching' : (list ?? 'not to be had');
  });
}

export function isList(fetched: Fetched | undefined): fetched is FrozenList {
  return typeof fetched === 'object';
}
