/** What goes with one thing and what echoes it, asked of the worker when it is looked at, kept while nothing changes. */
import type { Echo } from '@enfilade/grouping/echoes';
import { likenessRecordsOf } from '@enfilade/shared/likeness-records';
import type { ObjectId } from '@enfilade/shared/schema';
import { useEffect, useState } from 'react';
import { usePictures, useRoots, useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { askForLikenesses } from '../workers/likeness-client.ts';
import type { Beside, SetsByLooks } from '../workers/likeness-task.ts';

export type Asked<T> =
  | { readonly kind: 'working'; readonly share: number; readonly stop: () => void }
  | { readonly kind: 'stopped'; readonly again: () => void }
  | { readonly kind: 'failed'; readonly what: string }
  | { readonly kind: 'ready'; readonly is: T };

/** The last answer of each kind, and the sets of the checklist as it is: the next card need not look for them again. */
const known: {
  beside: { readonly key: string; readonly is: Beside } | null;
  echoes: { readonly key: string; readonly is: readonly Echo[] } | null;
  sets: { readonly key: string; readonly is: readonly SetsByLooks[] } | null;
} = { beside: null, echoes: null, sets: null };
let pool: { readonly key: string; readonly records: ReturnType<typeof likenessRecordsOf> } | null = null;

/** The whole checklist as it is; read anew only when a fact of it is another. */
function recordsOf({ documents, judgements }: ShowSession, key: string) {
  if (pool?.key !== key) pool = { key, records: likenessRecordsOf(judgements, documents.all('objects').keys()) };
  return pool.records;
}

function usePoolKey(): string {
  const { documents } = useShow();
  useRoots('objects', 'pieces', 'pictureCuts');
  const pictures = usePictures();
  const facts = (['objects', 'pieces', 'pictureCuts'] as const).map((root) => documents.version(root)).join('.');
  return `${facts} ${pictures}`;
}

/** The first time the sets are looked for, which takes a while and can be stopped. */
export function useBeside(id: ObjectId, asked: boolean): Asked<Beside> {
  const show = useShow();
  const poolKey = usePoolKey();
  const key = `${poolKey} ${id}`;
  const [round, setRound] = useState(0);
  const [state, setState] = useState<{ readonly key: string; readonly is: Asked<Beside> } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for what is read
  useEffect(() => {
    if (!asked || known.beside?.key === key) return;
    // A focal work is looked for among what hangs: others stand on a carrier, or before a wall.
    const notFocal = [...show.documents.all('objects')].flatMap(([other, object]) =>
      object.levelsMm?.length || show.judgements.hardwareOf(object)?.hooks === 0 ? [other] : [],
    );
    const records = recordsOf(show, poolKey);
    const sets = known.sets?.key === poolKey ? known.sets.is : null;
    const { stop } = askForLikenesses({ kind: 'beside', records, id, notFocal, sets }, (answer) => {
      if (answer.kind === 'beside') {
        known.beside = { key, is: answer.beside };
        known.sets = { key: poolKey, is: answer.beside.sets };
        setState({ key, is: { kind: 'ready', is: answer.beside } });
      } else if (answer.kind === 'progress')
        setState({ key, is: { kind: 'working', share: answer.share, stop: ended } });
      else if (answer.kind === 'failed') setState({ key, is: answer });
    });
    const ended = (): void => {
      stop();
      setState({ key, is: { kind: 'stopped', again: () => setRound((now) => now + 1) } });
    };
    setState({ key, is: { kind: 'working', share: 0, stop: ended } });
    return stop;
  }, [show, key, asked, round]);
  if (known.beside?.key === key) return { kind: 'ready', is: known.beside.is };
  return state?.key === key ? state.is : { kind: 'working', share: 0, stop: () => {} };
}

export function useEchoes(id: ObjectId, asked: boolean): Asked<readonly Echo[]> {
  const show = useShow();
  const poolKey = usePoolKey();
  const key = `${poolKey} ${id}`;
  const [state, setState] = useState<{ readonly key: string; readonly is: Asked<readonly Echo[]> } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for what is read
  useEffect(() => {
    if (!asked || known.echoes?.key === key) return;
    const { stop } = askForLikenesses({ kind: 'echoes', records: recordsOf(show, poolKey), id }, (answer) => {
      if (answer.kind === 'echoes') {
        known.echoes = { key, is: answer.echoes };
        setState({ key, is: { kind: 'ready', is: answer.echoes } });
      } else if (answer.kind === 'failed') setState({ key, is: answer });
    });
    return stop;
  }, [show, key, asked]);
  if (known.echoes?.key === key) return { kind: 'ready', is: known.echoes.is };
  return state?.key === key ? state.is : { kind: 'working', share: 0, stop: () => {} };
}
