/** The deck's paints with all that its page says of them, derived anew when something of it changes. */
import type { Lrv } from '@enfilade/colour/paints';
import { paintRecordLrvOf } from '@enfilade/shared/paint-records';
import { samplesByPaint, surfacesByPaint } from '@enfilade/shared/samples';
import type { Paint } from '@enfilade/shared/schema';
import { useMemo } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';
import type { DeckEntry } from './deck-row.tsx';

/** A paint's record is another object once it is corrected. */
const LRVS = new WeakMap<Paint, Lrv>();

function lrvOf(paint: Paint): Lrv {
  const known = LRVS.get(paint) ?? paintRecordLrvOf(paint);
  LRVS.set(paint, known);
  return known;
}

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
      lrv: lrvOf(paint),
      surfaces: surfaces.get(id) ?? [],
      samples: samples.get(id) ?? [],
    }));
  }, [documents, version]);
}
