/** Asks the worker for candidates; stopping ends the worker, whatever it is at. */

import type { HaloCandidate } from '@enfilade/arrangement/halo-task';
import { useEffect, useState } from 'react';
import type { HaloTask } from './halo-task.ts';
import type { HaloAnswer } from './halo-worker.ts';

export type HaloState =
  | { readonly kind: 'working'; readonly done: number; readonly of: number }
  | { readonly kind: 'ready'; readonly candidates: readonly HaloCandidate[] }
  | { readonly kind: 'failed'; readonly what: string };

/** Candidates for a task, live; leaving the page or the task stops the work. */
export function useHaloCandidates(task: HaloTask, seed: number): HaloState {
  const [state, setState] = useState<HaloState>({ kind: 'working', done: 0, of: 1 });
  useEffect(() => {
    setState({ kind: 'working', done: 0, of: 1 });
    const worker = new Worker(new URL('./halo-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<HaloAnswer>): void => {
      if (data.kind === 'progress') setState({ kind: 'working', done: data.done, of: data.of });
      else if (data.kind === 'candidates') setState({ kind: 'ready', candidates: data.candidates });
      else setState({ kind: 'failed', what: data.what });
    };
    worker.onerror = () => setState({ kind: 'failed', what: 'it stopped unexpectedly' });
    worker.postMessage({ ...task.engine, seed });
    return () => worker.terminate();
  }, [task, seed]);
  return state;
}
