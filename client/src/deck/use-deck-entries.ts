/** The deck's paints with all that its page says of them, derived anew when something of it changes. */
import { paintRecordLrvOf } from '@enfilade/shared/paint-records';
import { samplesByPaint, surfacesByPaint } from '@enfilade/shared/samples';
import { useMemo } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { DeckEntry } from './deck-row.tsx';

export function useDeckEntries(): readonly DeckEntry[] {
  const { documents } = useShow();
  const version = useRoots('deck', 'samples', 'sampleWords', 'paints', 'rooms');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  return useMemo(() => {
    const samples = samplesByPaint(documents);
    const surfaces = surfacesByPaint(documents);
    return [...documents.all('deck')].map(([id, paint]) => ({
      id,
      paint,
      lrv: paintRecordLrvOf(paint),
      surfaces: surfaces.get(id) ?? [],
      samples: samples.get(id) ?? [],
    }));
  }, [documents, version]);
}
