/** Arranges halos away from the page, so that the wall stays live while it works. */
import { haloCandidates } from '@enfilade/arrangement/halo-candidates';
import type { HaloCandidate } from '@enfilade/arrangement/halo-task';
import type { HaloTask } from './halo-task.ts';

export type HaloAnswer =
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'candidates'; readonly candidates: readonly HaloCandidate[] }
  | { readonly kind: 'failed'; readonly what: string };

const post = (answer: HaloAnswer): void => self.postMessage(answer);

self.onmessage = ({ data }: MessageEvent<HaloTask['engine']>): void => {
  try {
    const candidates = haloCandidates({
      ...data,
      progress: (done, of) => {
        post({ kind: 'progress', done, of });
        return true;
      },
    });
    post({ kind: 'candidates', candidates });
  } catch (error) {
    post({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
  }
};
