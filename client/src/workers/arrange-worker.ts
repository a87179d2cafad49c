/** Arranges away from the page, so that the wall stays live while it works; each way is told as it is found. */
import type { Arrangement, ArrangeTask } from '@enfilade/shared/arrange-task';
import { arrangementsOf } from '@enfilade/shared/arrange-ways';

export interface ArrangeQuestion {
  readonly task: ArrangeTask;
  readonly round: number;
  /** Digests of ways that are not to be offered. */
  readonly away: readonly string[];
}

export type ArrangeAnswer =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'found'; readonly arrangement: Arrangement }
  | { readonly kind: 'done' }
  | { readonly kind: 'failed'; readonly what: string };

const post = (answer: ArrangeAnswer): void => self.postMessage(answer);

self.onmessage = ({ data }: MessageEvent<ArrangeQuestion>): void => {
  let told = 0;
  try {
    arrangementsOf(data.task, {
      round: data.round,
      away: new Set(data.away),
      found: (arrangement) => post({ kind: 'found', arrangement }),
      progress: (share) => {
        if (share - told < 0.01) return;
        told = share;
        post({ kind: 'progress', share });
      },
    });
    post({ kind: 'done' });
  } catch (error) {
    post({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
  }
};
