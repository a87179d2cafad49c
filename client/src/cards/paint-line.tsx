/** What a surface is painted, and the way to its deck. */

import { hexFromLabD65 } from '@enfilade/colour/spaces';
import { dryingOf } from '@enfilade/shared/drying';
import { lrvText } from '@enfilade/shared/paint-records';
import { type SurfaceId, surfaceParts } from '@enfilade/shared/schema';
import { isWallSide } from '@enfilade/shared/surface-names';
import { deskWall, paintFrom } from '../colour-desk/desk-trial.ts';
import { openDeck, useFoot } from '../shell/foot.ts';
import { CautionMark } from '../shell/marks.tsx';
import { Ring } from '../shell/ring.tsx';
import { useOthers, useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { dayText } from './day-text.ts';

/** The paint of a wall as a word that opens the deck; for who may not paint, only the word. */
export function PaintLine({ surface }: { readonly surface: SurfaceId }) {
  const show = useShow();
  const foot = useFoot();
  const paint = show.judgements.paintOf(surface);
  const words = paint === null ? 'none yet' : `${paint.name}, LRV ${lrvText(paint)}`;
  const open = foot.kind === 'deck' && foot.surface === surface;
  const isWall = isWallSide(surfaceParts(surface)?.side ?? '');
  return (
    <>
      <p className="paint-line t1">
        {paint === null ? null : <i style={{ background: hexFromLabD65(paint.lab) }} aria-hidden="true" />}
        {show.may('hang') ? (
          <button type="button" aria-expanded={open} onClick={() => openDeck(surface)}>
            Paint: {words}
          </button>
        ) : (
          <span>Paint: {words}</span>
        )}
      </p>
      {paint === null || !isWall ? null : (
        <p className="t1">
          <a href={toAddress({ sheet: 'colour' })} onClick={() => deskWall.set(surface)}>
            at the colour desk
          </a>
        </p>
      )}
      <DryingLine surface={surface} />
      <TheirTrials surface={surface} />
    </>
  );
}

/** From when one may hang on it, once its last coat is written down. */
function DryingLine({ surface }: { readonly surface: SurfaceId }) {
  const { judgements } = useShow();
  useRoots('finishes', 'limits');
  const drying = dryingOf(judgements, surface);
  if (drying === null) return null;
  return (
    <p className="paint-line t1">
      {drying.tooSoon ? <CautionMark /> : null}
      <span>
        Hang not before {dayText(drying.earliest)}, better {dayText(drying.preferred)}.
        {drying.tooSoon ? ' The hang begins before: ask the conservator.' : ''}
      </span>
    </p>
  );
}

/** Whoever holds a paint on trial on this wall at the colour desk, by their ring. */
function TheirTrials({ surface }: { readonly surface: SurfaceId }) {
  const { documents } = useShow();
  const trials = useOthers().flatMap(({ clientId, person, ring, presence }) => {
    const paintId = presence.trialPaints?.find(([on]) => on === surface)?.[1];
    const paint = paintFrom(documents, paintId);
    return paint === null ? [] : [{ clientId, person, ring, paint }];
  });
  return trials.map(({ clientId, person, ring, paint }) => (
    <p key={clientId} className="paint-line t1">
      <Ring name={person.name} pattern={ring} radiusPx={8} />
      <i style={{ background: hexFromLabD65(paint.lab) }} aria-hidden="true" />
      <span>
        {person.name} tries {paint.name} here
      </span>
    </p>
  ));
}
