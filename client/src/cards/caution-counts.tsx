/** How many works on a wall have a caution nobody has accepted; a press selects them, a second way leads to the list. */
import { standingCautionsOf } from '@enfilade/shared/accepted';
import type { SurfaceId } from '@enfilade/shared/schema';
import { useMemo } from 'react';
import { choose } from '../selection.ts';
import { CautionMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { toAddress } from '../view-address.ts';
import './reading-counts.css';

/** Every caution on the wall is read: it keeps up within this while a hand moves things, ms. */
const REST_MS = 250;

export function CautionCounts({ surface }: { readonly surface: SurfaceId }) {
  const { judgements } = useShow();
  // biome-ignore format: one list
  const version = useRestingRoots(REST_MS, 'objects', 'pieces', 'places', 'rooms', 'openings', 'fixtures', 'loans', 'lights', 'limits', 'settings', 'acceptances', 'labelSides');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  const pieces = useMemo(
    () =>
      [...judgements.where.directlyOn(surface)].filter((pieceId) =>
        standingCautionsOf(judgements, pieceId).some(({ accepted }) => accepted === null),
      ),
    [judgements, surface, version],
  );
  if (pieces.length === 0) return null;
  const words = `${pieces.length} with ${pieces.length === 1 ? 'a caution' : 'cautions'}`;
  return (
    <p className="reading-counts caution-counts">
      <CautionMark />
      <button
        type="button"
        aria-label={`${words}: select ${pieces.length === 1 ? 'it' : 'them'}`}
        onClick={() => choose(pieces)}
      >
        {words}
      </button>
      <a href={toAddress({ sheet: 'cautions' })}>list</a>
    </p>
  );
}
