/** The paint the desk speaks of on a wall: the one on trial once one has stayed with it, else the wall's own. */

import type { Surface } from '@enfilade/colour/seen';
import type { DeskWall } from '@enfilade/shared/colour-desk';
import { colourSurfaceOf, paintSurfaceOf } from '@enfilade/shared/paints-under';
import type { Paint } from '@enfilade/shared/schema';
import { useMemo } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';
import { paintFrom, type TrialPaint, useTrialOn } from './desk-trial.ts';
import { useRested } from './rested.ts';

export interface PaintShown extends TrialPaint {
  readonly onTrial: boolean;
  /** As recorded, or of no more than its colour where it is typed. */
  readonly record: Paint;
  readonly surface: Surface;
}

export function usePaintShown(wall: DeskWall): PaintShown | null {
  const { documents } = useShow();
  const deck = useRoots('deck');
  const tried = useRested(useTrialOn(wall.surface));
  const own = wall.paint.id;
  const [id, name] = [tried?.id ?? null, tried?.name ?? ''];
  const typed = tried !== null && id === null ? tried.lab : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the number stands for the deck
  return useMemo(() => {
    if (typed !== null) {
      const record: Paint = { name, lab: typed, order: '' };
      return {
        id: null,
        name: name || 'the typed paint',
        lab: typed,
        onTrial: true,
        record,
        surface: colourSurfaceOf(typed),
      };
    }
    const shown = paintFrom(documents, id ?? own);
    const record = documents.get('deck', id ?? own);
    if (shown === null || record === undefined) return null;
    return { ...shown, onTrial: id !== null && id !== own, record, surface: paintSurfaceOf(record) };
  }, [documents, deck, id, own, name, typed]);
}
