/** Re-rendering after a burst of changes instead of at each: for what need not keep up with a moving hand. */
import type { RootName } from '@enfilade/shared/schema';
import { useCallback, useSyncExternalStore } from 'react';
import { useShow } from './hooks.ts';

/** As `useRoots`, at most once in so many ms; the last change is never missed. */
export function useRestingRoots(restMs: number, ...roots: readonly RootName[]): number {
  const { documents } = useShow();
  const key = roots.join();
  const subscribe = useCallback(
    (tell: () => void) => {
      let timer: number | undefined;
      const later = () => {
        timer ??= window.setTimeout(() => {
          timer = undefined;
          tell();
        }, restMs);
      };
      const ways = (key.split(',') as RootName[]).map((root) => documents.subscribe(root, later));
      return () => {
        clearTimeout(timer);
        for (const leave of ways) leave();
      };
    },
    [documents, key, restMs],
  );
  return useSyncExternalStore(subscribe, () => roots.reduce((sum, root) => sum + documents.version(root), 0));
}
