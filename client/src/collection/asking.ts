/** Questions to the collection: the answer, the trouble, and asking again; the last answer stays while the next comes. */
import type { CollectionRecord } from '@enfilade/shared/collection';
import { COLLECTION_PAGE } from '@enfilade/shared/collection';
import type { Refusal } from '@enfilade/shared/protocol';
import { useEffect, useState } from 'react';
import { useShow } from '../sync/hooks.ts';

export interface Told<T> {
  readonly answer: T | null;
  /** What was asked when it was answered so. */
  readonly to: string | null;
  /** Why there is no answer, in a sentence. */
  readonly trouble: string | null;
  readonly asking: boolean;
  readonly again: () => void;
}

const UNREACHED = 'The collection could not be reached. Nothing was lost; ask again when the connection is back.';
/** A breath after the last letter typed, ms. */
const REST_MS = 150;

/** `path`: after `/seat/<id>/collection`; null asks nothing. `when`: whatever changes when the answer may be another. */
export function useAsked<T>(path: string | null, when = 0): Told<T> {
  const { base } = useShow();
  const [told, setTold] = useState<Pick<Told<T>, 'answer' | 'to' | 'trouble'>>({
    answer: null,
    to: null,
    trouble: null,
  });
  const [asking, setAsking] = useState(false);
  const [turn, setTurn] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a turn, and whatever the answer hangs on, are occasions
  useEffect(() => {
    if (path === null) return;
    const control = new AbortController();
    setAsking(true);
    const timer = setTimeout(() => {
      asked<T>(base, path, control.signal)
        .then((next) => {
          if (!control.signal.aborted)
            setTold((last) => ({ ...last, ...next, ...('answer' in next ? { to: path } : {}) }));
        })
        .finally(() => {
          if (!control.signal.aborted) setAsking(false);
        });
    }, REST_MS);
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [base, path, when, turn]);
  return { ...told, asking, again: () => setTurn((n) => n + 1) };
}

async function asked<T>(
  base: string,
  path: string,
  signal: AbortSignal,
): Promise<{ answer?: T; trouble: string | null }> {
  try {
    const answer = await fetch(`${base}/collection${path}`, { signal });
    const body: unknown = await answer.json();
    return answer.ok ? { answer: body as T, trouble: null } : { trouble: (body as Refusal).what };
  } catch {
    return { trouble: UNREACHED };
  }
}

/** Records by their numbers, so many at a time as are answered at once; asked anew when the numbers change. */
export function useRecords(numbers: readonly string[]): Told<readonly CollectionRecord[]> {
  const { base } = useShow();
  const key = numbers.join('\n');
  const [told, setTold] = useState<{ answer: readonly CollectionRecord[] | null; trouble: string | null }>({
    answer: null,
    trouble: null,
  });
  const [asking, setAsking] = useState(false);
  const [turn, setTurn] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a turn is an occasion to ask again
  useEffect(() => {
    const control = new AbortController();
    const all = key === '' ? [] : key.split('\n');
    const fetchAll = async (): Promise<void> => {
      const found: CollectionRecord[] = [];
      for (let at = 0; at < all.length; at += COLLECTION_PAGE) {
        const query = all.slice(at, at + COLLECTION_PAGE).map((number) => `number=${encodeURIComponent(number)}`);
        const part = await asked<CollectionRecord[]>(base, `/records?${query.join('&')}`, control.signal);
        if (control.signal.aborted) return;
        if (part.answer === undefined) {
          setTold((last) => ({ ...last, trouble: part.trouble }));
          return;
        }
        found.push(...part.answer);
      }
      setTold({ answer: found, trouble: null });
    };
    setAsking(true);
    void fetchAll().finally(() => {
      if (!control.signal.aborted) setAsking(false);
    });
    return () => control.abort();
  }, [base, key, turn]);
  return { ...told, to: key, asking, again: () => setTurn((n) => n + 1) };
}
