/** Says what a person's act came to when nobody else has: a drag, a nudge, a key on the stage. */
import { useEffect } from 'react';
import { listLine, seenOn } from '../cards/wall-list.tsx';
import { usePreferences } from '../preferences.ts';
import { selection } from '../selection.ts';
import { useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { say, sentencesSaid } from './live-region.tsx';

/** 'move: centre 150.0 high, 47.5 from the left corner', or the act's name where several or none are selected. */
function wordsOf(show: ShowSession, name: string, unit: 'cm' | 'in'): string {
  const [only, ...more] = selection.get();
  const surface = only === undefined || more.length > 0 ? null : show.judgements.where.surfaceOf(only);
  if (surface === null) return name;
  const seen = seenOn(show.judgements, surface).find(({ pieceId }) => pieceId === only);
  return seen === undefined ? name : `${name}: ${listLine(show.judgements, seen, surface, unit)}`;
}

export function useActWords(): void {
  const show = useShow();
  const { unit } = usePreferences();
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = show.history.subscribe(() => {
      const before = sentencesSaid();
      clearTimeout(timer);
      // Whoever performed it speaks first; keys held down are told once, when they rest.
      timer = setTimeout(() => {
        const name = show.history.undoable;
        if (name !== undefined && sentencesSaid() === before) say(wordsOf(show, name, unit));
      }, 150);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [show, unit]);
}
