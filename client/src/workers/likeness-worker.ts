/** Looks for likenesses away from the page. */
import { findBeside, findEchoes, findSets } from './find-likenesses.ts';
import type { LikenessAnswer, LikenessQuestion } from './likeness-task.ts';

const post = (answer: LikenessAnswer): void => self.postMessage(answer);

self.onmessage = ({ data }: MessageEvent<LikenessQuestion>): void => {
  try {
    const progress = (share: number): void => post({ kind: 'progress', share });
    if (data.kind === 'beside') post({ kind: 'beside', beside: findBeside(data, progress) });
    else if (data.kind === 'echoes') post({ kind: 'echoes', echoes: findEchoes(data) });
    else post({ kind: 'sets', found: findSets(data, progress) });
  } catch (error) {
    post({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
  }
};
