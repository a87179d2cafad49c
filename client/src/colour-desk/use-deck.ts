/** The deck, darkest first. */
import { lrvOf } from '@enfilade/colour/spaces';
import type { PaintId } from '@enfilade/shared/schema';
import { useMemo } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { TrialPaint } from './desk-trial.ts';

export interface DeckChip extends TrialPaint {
  readonly id: PaintId;
  readonly lrv: number;
}

export function useDeck(): readonly DeckChip[] {
  const { documents } = useShow();
  const version = useRoots('deck');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the deck
  return useMemo(
    () =>
      [...documents.all('deck')]
        .map(([id, { name, lab, order }]) => ({ id, name, lab, order, lrv: lrvOf(lab) }))
        .sort((a, b) => a.lrv - b.lrv || (a.order < b.order ? -1 : 1)),
    [documents, version],
  );
}
