/** How a thing stands on its floor, in figures with their ground: when it would tip, how it loads the floor. */
import { footingOf } from '@enfilade/shared/footing';
import { isInShow } from '@enfilade/shared/piece-cautions';
import { practiceProfileOf } from '@enfilade/shared/practice-limits';
import type { PieceId } from '@enfilade/shared/schema';
import { useShow } from '../sync/hooks.ts';
import { CardGroup } from './card-group.tsx';

export function FootingBlock({ pieceId }: { readonly pieceId: PieceId }) {
  const { judgements, documents } = useShow();
  const at = judgements.where.placeOf(pieceId);
  if (!isInShow(at) || at?.[0].endsWith(':floor') !== true) return null;
  const footing = footingOf(judgements, pieceId);
  if (footing === null) return null;
  const { tipDegrees, pushKg, kPa, borneKg } = footing;
  const { steadyDegrees, floorLoadKPa } = practiceProfileOf(documents).limits;
  const tips = `tips at ${Math.floor(tipDegrees)}°`;
  return (
    <CardGroup name="Standing" brief={kPa === null ? tips : `${tips}, ${kPa.toFixed(1)} kPa`}>
      <p>
        Tips at {Math.floor(tipDegrees)}° if its centre of gravity is half-way up
        {pushKg === null ? '' : `, by a push of ${Number(pushKg.toFixed(1))} kg at its top`}. Restrained below{' '}
        {steadyDegrees.value}°: {steadyDegrees.source}.
      </p>
      <p>
        {kPa === null || borneKg === null
          ? 'Its floor load can’t be told: it, or something on it, is not weighed.'
          : `Loads the floor with ${kPa.toFixed(1)} kPa: ${Number(borneKg.toFixed(1))} kg on its whole footprint. An engineer is asked from ${floorLoadKPa.value.toFixed(1)} kPa: ${floorLoadKPa.source}.`}
      </p>
      <p className="t1 q">Local code, the building’s engineer and a licensed professional decide.</p>
    </CardGroup>
  );
}
