/** The deck, darkest first, as it is seen under the desk's lamp. */
import type { LabD65 } from '@enfilade/colour/lab';
import { paintRecordLrvOf } from '@enfilade/shared/paint-records';
import type { PaintId } from '@enfilade/shared/schema';
import { useMemo } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';
import { useDeskLight } from './desk-light.tsx';
import type { TrialPaint } from './desk-trial.ts';

export interface DeckChip extends TrialPaint {
  readonly id: PaintId;
  readonly lrv: number;
  /** Under the desk's lamp; `lab` is as recorded. */
  readonly seen: LabD65;
}

export function useDeck(): readonly DeckChip[] {
  const { documents } = useShow();
  const { look } = useDeskLight();
  const version = useRoots('deck');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for the deck
  return useMemo(
    () =>
      [...documents.all('deck')]
        .map(([id, paint]) => {
          const { name, lab, order } = paint;
          return { id, name, lab, order, lrv: paintRecordLrvOf(paint).lrv, seen: look({ id, lab }) };
        })
        .sort((a, b) => a.lrv - b.lrv || (a.order < b.order ? -1 : 1)),
    [documents, version, look],
  );
}
