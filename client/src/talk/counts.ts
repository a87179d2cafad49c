/** What the head counts: remarks this person has not read, and all that waits. */
import { isUnread, threadsOf } from '@enfilade/shared/remarks';
import { waitingOf } from '@enfilade/shared/waiting';
import { useMemo } from 'react';
import { useHang, useRoots, useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';

/** The count is of the whole show: it may lag this far behind (ms). */
const REST_MS = 1500;

export function useUnread(): number {
  const { documents, me } = useShow();
  const version = useRoots('remarks', 'readMarks');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  return useMemo(
    () => threadsOf(documents).filter((thread) => isUnread(documents, thread, me.person.id)).length,
    [documents, version, me.person.id],
  );
}

export function useWaitingCount(): number {
  const { judgements } = useHang();
  const version = useRestingRoots(
    REST_MS,
    'vignettes',
    'memberOf',
    'places',
    'paints',
    'objects',
    'pieces',
    'signatures',
    'settings',
    'proposals',
    'proposed',
    'remarks',
    'deck',
    'rooms',
    'samples',
    'sampleWords',
    'loans',
    'lights',
    'limits',
    'openings',
    'fixtures',
    'acceptances',
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  return useMemo(() => waitingOf(judgements).length, [judgements, version]);
}
