/** Arranges halos away from the page, so that the wall stays live while it works. */
import type { HaloCandidate } from '@enfilade/arrangement/halo-task';
import type { HaloQuestion } from './halo-task.ts';
import { waysOf } from './halo-ways.ts';

export type HaloAnswer =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'candidates'; readonly candidates: readonly HaloCandidate[] }
  | { readonly kind: 'failed'; readonly what: string };

const post = (answer: HaloAnswer): void => self.postMessage(answer);

self.onmessage = ({ data }: MessageEvent<HaloQuestion>): void => {
  let told = 0;
  try {
    const candidates = waysOf(data, (share) => {
      if (share - told < 0.01) return;
      told = share;
      post({ kind: 'progress', share });
    });
    post({ kind: 'candidates', candidates });
  } catch (error) {
    post({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
  }
};
