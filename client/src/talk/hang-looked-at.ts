/** The hang as it is, for who stands in a proposal: to be looked at beside it, and not to be changed from there. */
import type { HangLayer } from '@enfilade/shared/hang-layer';
import { useEffect, useMemo } from 'react';
import { useHang } from '../sync/hooks.ts';
import { LaidShow } from '../sync/laid-show.ts';
import type { ShowSession } from '../sync/show-session.ts';

/** Nothing laid over, and nothing to be changed. */
const LOOKED_AT: HangLayer = {
  over: () => null,
  changesFor: () => {
    throw new RangeError('the hang is only looked at here; go back to it to change it');
  },
};

/** Null while it is not needed. */
export function useHangLookedAt(needed: boolean): ShowSession | null {
  const hang = useHang();
  const still = useMemo(
    () => (needed ? new LaidShow(hang, { id: '', layer: LOOKED_AT, writable: () => false }) : null),
    [hang, needed],
  );
  useEffect(() => () => still?.close(), [still]);
  return still;
}
