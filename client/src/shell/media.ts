/** Where the page folds: asked of the window, so that what is folded away is not drawn at all. */
import { useSyncExternalStore } from 'react';
import { Store, useStore } from '../selection.ts';

function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (tell) => {
      const list = matchMedia(query);
      list.addEventListener('change', tell);
      return () => list.removeEventListener('change', tell);
    },
    () => matchMedia(query).matches,
  );
}

/** 'wide': caption, stage and card side by side. 'tablet': the caption folds under. 'narrow': one under the other. */
export type Fold = 'wide' | 'tablet' | 'narrow';

export function useFold(): Fold {
  const narrow = useMedia('(max-width: 899px), (max-height: 559px)');
  const tablet = useMedia('(max-width: 1179px)');
  return narrow ? 'narrow' : tablet ? 'tablet' : 'wide';
}

/** Whether the head has room for the plans at their full size beside all ways and people. */
export function useRoomyHead(): boolean {
  const roomy = useMedia('(min-width: 1380px)');
  return useFold() === 'wide' && roomy;
}

/** Whether the caption lies open over the stage, where there is no column for it. */
const captionOpen = new Store(false);

export function useCaptionOpen(): readonly [open: boolean, set: (open: boolean) => void] {
  return [useStore(captionOpen), captionOpen.set];
}

export function openCaption(): void {
  captionOpen.set(true);
}

export function closeCaption(): void {
  captionOpen.set(false);
}
