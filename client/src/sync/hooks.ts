/** React's view of the session: a component re-renders when what it asked for changes, and not otherwise. */
import type { EntityTypes } from '@enfilade/shared/documents';
import type { RootName } from '@enfilade/shared/schema';
import { createContext, useCallback, useContext, useSyncExternalStore } from 'react';
import type { Other } from './presence-room.ts';
import type { Saving, ShowSession, Told } from './show-session.ts';

export const ShowContext = createContext<ShowSession | null>(null);

export function useShow(): ShowSession {
  const show = useContext(ShowContext);
  if (show === null) throw new Error('useShow outside a show');
  return show;
}

/** The show itself, wherever a proposal or a kept state is laid over it. */
export const HangContext = createContext<ShowSession | null>(null);

/** The hang itself: the show that a layer lies over, or the show one is in. */
export function useHang(): ShowSession {
  const shown = useShow();
  return useContext(HangContext) ?? shown;
}

/** One entity, live. */
export function useEntity<R extends RootName>(root: R, id: string): EntityTypes[R] | undefined {
  const { documents } = useShow();
  const subscribe = useCallback((tell: () => void) => documents.subscribe(root, tell, id), [documents, root, id]);
  return useSyncExternalStore(subscribe, () => documents.get(root, id));
}

/** Re-renders whenever any of the roots changes; read them from `show.documents` or `show.judgements` after. */
export function useRoots(...roots: readonly RootName[]): number {
  const { documents } = useShow();
  const key = roots.join();
  const subscribe = useCallback(
    (tell: () => void) => {
      const ways = (key.split(',') as RootName[]).map((root) => documents.subscribe(root, tell));
      return () => {
        for (const leave of ways) leave();
      };
    },
    [documents, key],
  );
  return useSyncExternalStore(subscribe, () => roots.reduce((sum, root) => sum + documents.version(root), 0));
}

export function useOthers(): readonly Other[] {
  const { presence } = useShow();
  return useSyncExternalStore(
    useCallback((tell) => presence.subscribe(tell), [presence]),
    () => presence.everyoneElse(),
  );
}

export function usePictures(): number {
  const { pictures } = useShow();
  return useSyncExternalStore(
    useCallback((tell) => pictures.subscribe(tell), [pictures]),
    () => pictures.version,
  );
}

export function useSaving(): Saving {
  const show = useShow();
  return useSyncExternalStore(
    useCallback((tell) => show.subscribe(tell), [show]),
    () => show.savingState,
  );
}

export function useTold(): Told | null {
  const show = useShow();
  return useSyncExternalStore(
    useCallback((tell) => show.subscribe(tell), [show]),
    () => show.toldState,
  );
}

/** Names of the acts that undo and redo would reverse. */
export function useHistory(): { undoable: string | undefined; redoable: string | undefined } {
  const { history } = useShow();
  const subscribe = useCallback((tell: () => void) => history.subscribe(tell), [history]);
  const undoable = useSyncExternalStore(subscribe, () => history.undoable);
  const redoable = useSyncExternalStore(subscribe, () => history.redoable);
  return { undoable, redoable };
}
