/** Asks the worker that looks for likenesses; stopping ends the worker, whatever it is at. */
import type { LikenessAnswer, LikenessQuestion } from './likeness-task.ts';

/** One question, one worker. `stop` ends it; after that nothing is answered. */
export function askForLikenesses(
  question: LikenessQuestion,
  answered: (answer: LikenessAnswer) => void,
): { readonly stop: () => void } {
  const worker = new Worker(new URL('./likeness-worker.ts', import.meta.url), { type: 'module' });
  const stop = (): void => worker.terminate();
  worker.onmessage = ({ data }: MessageEvent<LikenessAnswer>): void => {
    answered(data);
    if (data.kind !== 'progress') stop();
  };
  worker.onerror = () => {
    answered({ kind: 'failed', what: 'the looking stopped unexpectedly' });
    stop();
  };
  worker.postMessage(question);
  return { stop };
}
