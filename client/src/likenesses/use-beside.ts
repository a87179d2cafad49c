/** What goes with one thing and what echoes it, asked of the worker when it is looked at, kept while nothing changes. */
import { likenessRecordsOf } from '@enfilade/shared/likeness-records';
import type { ObjectId } from '@enfilade/shared/schema';
import { useEffect, useState } from 'react';
import { usePictures, useRoots, useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { askForLikenesses } from '../workers/likeness-client.ts';
import type { Beside } from '../workers/likeness-task.ts';

/** Null while it is being looked for; a sentence where it could not be. */
export type BesideState = Beside | string | null;

let known: { readonly key: string; readonly beside: Beside } | null = null;
let pool: { readonly key: string; readonly records: ReturnType<typeof likenessRecordsOf> } | null = null;

/** The whole checklist as it is; read anew only when a fact of it is another. */
function recordsOf({ documents, judgements }: ShowSession, key: string) {
  if (pool?.key !== key) pool = { key, records: likenessRecordsOf(judgements, documents.all('objects').keys()) };
  return pool.records;
}

export function useBeside(id: ObjectId, asked: boolean): BesideState {
  const show = useShow();
  useRoots('objects', 'pieces', 'pictureCuts');
  const pictures = usePictures();
  const facts = (['objects', 'pieces', 'pictureCuts'] as const).map((root) => show.documents.version(root)).join('.');
  const poolKey = `${facts} ${pictures}`;
  const key = `${poolKey} ${id}`;
  const [state, setState] = useState<{ readonly key: string; readonly is: Beside | string } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for what is read
  useEffect(() => {
    if (!asked || known?.key === key) return;
    // A focal work is looked for among what hangs: others stand on a carrier, or before a wall.
    const notFocal = [...show.documents.all('objects')].flatMap(([other, object]) =>
      object.levelsMm?.length || show.judgements.hardwareOf(object)?.hooks === 0 ? [other] : [],
    );
    const records = recordsOf(show, poolKey);
    const { stop } = askForLikenesses({ kind: 'beside', records, id, notFocal }, (answer) => {
      if (answer.kind === 'beside') {
        known = { key, beside: answer.beside };
        setState({ key, is: answer.beside });
      } else if (answer.kind === 'failed') setState({ key, is: answer.what });
    });
    return stop;
  }, [show, key, asked]);
  if (known?.key === key) return known.beside;
  return state?.key === key ? state.is : null;
}
