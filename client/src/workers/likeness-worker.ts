/** Looks for likenesses away from the page. */
import { findBeside, findSets } from './find-likenesses.ts';
import type { LikenessAnswer, LikenessQuestion } from './likeness-task.ts';

const post = (answer: LikenessAnswer): void => self.postMessage(answer);

self.onmessage = ({ data }: MessageEvent<LikenessQuestion>): void => {
  try {
    if (data.kind === 'beside') {
      post({ kind: 'beside', beside: findBeside(data) });
      return;
    }
    post({ kind: 'sets', found: findSets(data, (share) => post({ kind: 'progress', share })) });
  } catch (error) {
    post({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
  }
};
