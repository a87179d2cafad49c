/** One search for likenesses: begun by the address that asks for it, stopped by leaving, kept while nothing changes. */
import { originsOf, unplacedObjects } from '@enfilade/shared/likeness-pools';
import { likenessRecordsOf, originOf } from '@enfilade/shared/likeness-records';
import type { ObjectId } from '@enfilade/shared/schema';
import { useEffect, useMemo, useState } from 'react';
import { usePictures, useRoots, useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { askForLikenesses } from '../workers/likeness-client.ts';
import type { FoundSets } from '../workers/likeness-task.ts';
import { type Among, type LikenessWish, weightsOf, wishText } from './wish.ts';

export type Search =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly share: number }
  | { readonly kind: 'ready'; readonly found: FoundSets; readonly key: string }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly what: string };

export function objectsAmong({ judgements, documents }: ShowSession, among: Among): ObjectId[] {
  if (among === 'unplaced') return unplacedObjects(judgements);
  const all = [...documents.all('objects')];
  if (among === 'checklist') return all.map(([id]) => id);
  return all.filter(([, object]) => originOf(object) === among.from).map(([id]) => id);
}

/** Sources the pool can be narrowed to; one that everything is of narrows nothing. */
export function useOrigins() {
  const { judgements } = useShow();
  useRoots('objects');
  const origins = originsOf(judgements);
  return origins.length > 1 ? origins : [];
}

/** The last search that came to its end, so that a way to a wall and back costs nothing. */
let last: { readonly key: string; readonly found: FoundSets } | null = null;

/** The pool of a wish as it is now, and what it is known by: another key, and what was found is of what was. */
export function usePool(wish: LikenessWish): { readonly ids: readonly ObjectId[]; readonly key: string } {
  const show = useShow();
  const roots = useRoots('objects', 'pieces', 'places', 'pictureCuts');
  const pictures = usePictures();
  const asked = wishText(wish);
  // biome-ignore lint/correctness/useExhaustiveDependencies: versions stand for what is read
  return useMemo(() => {
    const ids = objectsAmong(show, wish.among);
    const facts = ['objects', 'pieces', 'pictureCuts'] as const;
    const versions = facts.map((root) => show.documents.version(root)).join('.');
    return { ids, key: `${asked} ${show.layerId} ${versions} ${pictures} ${ids.join()}` };
  }, [show, asked, roots, pictures]);
}

export interface Looking {
  readonly search: Search;
  readonly pool: ReturnType<typeof usePool>;
  readonly again: () => void;
  readonly stop: () => void;
}

/** Looks as soon as it is asked, and anew at `again`; `dealt`: with the traits dealt out again. */
export function useLikenesses(wish: LikenessWish, asked: boolean, dealt = false): Looking {
  const show = useShow();
  const pool = usePool(wish);
  const [round, setRound] = useState(0);
  const [search, setSearch] = useState<Search>({ kind: 'idle' });
  const text = wishText(wish);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the pool as it is when it is asked; later it is told as changed
  useEffect(() => {
    if (!asked) {
      setSearch({ kind: 'idle' });
      return;
    }
    const { ids, key } = pool;
    if (!dealt && last?.key === key) {
      setSearch({ kind: 'ready', found: last.found, key });
      return;
    }
    setSearch({ kind: 'working', share: 0 });
    const records = likenessRecordsOf(show.judgements, ids);
    const { stop } = askForLikenesses({ kind: 'sets', records, weights: weightsOf(wish.looks), dealt }, (answer) => {
      if (answer.kind === 'progress') setSearch({ kind: 'working', share: answer.share });
      else if (answer.kind === 'failed') setSearch(answer);
      else if (answer.kind === 'sets') {
        if (!dealt) last = { key, found: answer.found };
        setSearch({ kind: 'ready', found: answer.found, key });
      }
    });
    setStopping(() => stop);
    return stop;
  }, [show, text, asked, dealt, round]);
  const [stopping, setStopping] = useState<() => void>(() => () => {});
  return {
    search,
    pool,
    again: () => setRound((now) => now + 1),
    stop: () => {
      stopping();
      setSearch({ kind: 'stopped' });
    },
  };
}
