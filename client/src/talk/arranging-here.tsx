/** Who looks at ways to arrange something, and lets others look too. */
import { KIND_WORDS } from '@enfilade/shared/arrangement-words';
import { surfaceName } from '@enfilade/shared/surface-names';
import { openTogether, useFoot } from '../shell/foot.ts';
import { Ring } from '../shell/ring.tsx';
import { useOthers, useShow } from '../sync/hooks.ts';
import './arranging-here.css';

export function ArrangingHere() {
  const { documents, layerId } = useShow();
  const others = useOthers();
  const foot = useFoot();
  const open = foot.kind === 'candidates' ? JSON.stringify(foot.asked.wish) : null;
  return others.map(({ clientId, person, ring, presence }) => {
    const { arranging } = presence;
    if (!arranging || (presence.layer ?? null) !== layerId || JSON.stringify(arranging.wish) === open) return null;
    const { wish, round, shown } = arranging;
    return (
      <div key={clientId} className="arranging-here t1">
        <Ring name={person.name} pattern={ring} radiusPx={8} />
        <span>
          {person.name} looks at ways to arrange {wish.pieceIds.length}: {KIND_WORDS[wish.kind]},{' '}
          {surfaceName(documents, wish.surface)}.{' '}
          <button type="button" onClick={() => openTogether({ wish, round, shown, together: true })}>
            look too
          </button>
        </span>
      </div>
    );
  });
}
