/** Asks the worker for ways to hang a halo; stopping ends the worker, whatever it is at. */
import type { HaloCandidate } from '@enfilade/arrangement/halo-task';
import { useEffect, useState } from 'react';
import type { HaloQuestion, HaloTask } from './halo-task.ts';
import type { HaloAnswer } from './halo-worker.ts';

export type HaloState =
  | { readonly kind: 'working'; readonly share: number }
  | { readonly kind: 'ready'; readonly candidates: readonly HaloCandidate[] }
  | { readonly kind: 'failed'; readonly what: string };

/** Ways for a task, live; another `round` brings others than those in `exclude`. Leaving stops the work. */
export function useHaloWays(task: HaloTask, round: number, exclude: HaloQuestion['exclude']): HaloState {
  const [state, setState] = useState<HaloState>({ kind: 'working', share: 0 });
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is excluded belongs to the round
  useEffect(() => {
    setState({ kind: 'working', share: 0 });
    const worker = new Worker(new URL('./halo-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<HaloAnswer>): void => {
      setState(data.kind === 'progress' ? { kind: 'working', share: data.share } : answered(data));
    };
    worker.onerror = () => setState({ kind: 'failed', what: 'the arranging stopped unexpectedly' });
    worker.postMessage({ engine: task.engine, seed: round, exclude } satisfies HaloQuestion);
    return () => worker.terminate();
  }, [task, round]);
  return state;
}

function answered(answer: Exclude<HaloAnswer, { kind: 'progress' }>): HaloState {
  return answer.kind === 'failed' ? answer : { kind: 'ready', candidates: answer.candidates };
}
