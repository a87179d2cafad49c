/** Asks the worker for ways to arrange; stopping ends the worker, whatever it is at, and keeps what it has found. */
import type { Arrangement, ArrangeTask } from '@enfilade/shared/arrange-task';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ArrangeAnswer, ArrangeQuestion } from './arrange-worker.ts';

export interface Arranging {
  readonly state: 'working' | 'done' | 'stopped' | 'failed';
  /** 0 … 1. */
  readonly share: number;
  /** In the order they were found. */
  readonly found: readonly Arrangement[];
  /** What went wrong. */
  readonly what: string | null;
}

const NONE: Arranging = { state: 'working', share: 0, found: [], what: null };

/** Ways for a task, as they are found; another `round` brings others than those that stay `away`. Leaving stops the work. */
export function useArrangements(
  task: ArrangeTask | null,
  round: number,
  away: readonly string[],
): { readonly arranging: Arranging; readonly stop: () => void } {
  const [arranging, setArranging] = useState<Arranging>(NONE);
  const worker = useRef<Worker | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what stays away belongs to the round
  useEffect(() => {
    setArranging(NONE);
    if (task === null) return;
    const made = new Worker(new URL('./arrange-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<ArrangeAnswer>): void => setArranging((now) => after(now, data));
    made.onerror = () =>
      setArranging((now) => ({ ...now, state: 'failed', what: 'the arranging stopped unexpectedly' }));
    made.postMessage({ task, round, away } satisfies ArrangeQuestion);
    return () => made.terminate();
  }, [task, round]);
  const stop = useCallback(() => {
    worker.current?.terminate();
    setArranging((now) => (now.state === 'working' ? { ...now, state: 'stopped' } : now));
  }, []);
  return { arranging, stop };
}

function after(now: Arranging, answer: ArrangeAnswer): Arranging {
  switch (answer.kind) {
    case 'progress':
      return { ...now, share: answer.share };
    case 'found':
      return { ...now, found: [...now.found, answer.arrangement] };
    case 'done':
      return { ...now, state: 'done', share: 1 };
    case 'failed':
      return { ...now, state: 'failed', what: answer.what };
  }
}
