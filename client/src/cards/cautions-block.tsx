/** Cautions on a piece: what, whom to ask, and who accepted it as it stands. */
import { DEFERRAL } from '@enfilade/practice/cautions';
import { standingCautionsOf } from '@enfilade/shared/accepted';
import type { PieceId } from '@enfilade/shared/schema';
import { usePreferences } from '../preferences.ts';
import { CautionMark } from '../shell/marks.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { AcceptCaution } from './accept-caution.tsx';
import { cautionWordsIn } from './caution-words.ts';
import './cautions-block.css';

export function CautionsBlock({ pieceId }: { readonly pieceId: PieceId }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  useRoots('loans', 'lights', 'limits', 'acceptances', 'labelSides');
  const cautions = standingCautionsOf(judgements, pieceId, cautionWordsIn(unit));
  if (cautions.length === 0) return null;
  return (
    <section className="cautions" aria-label="Cautions">
      <hr className="rule" />
      {cautions.map((standing) => (
        <div className="caution-line" key={standing.digest}>
          <CautionMark />
          <div>
            <p>
              {standing.caution.what} Ask {standing.caution.ask}.{' '}
              <span className="t1 q">({standing.caution.source})</span>
            </p>
            <AcceptCaution standing={standing} name={judgements.nameOf(pieceId)} />
          </div>
        </div>
      ))}
      <p className="cautions-deferral">
        {DEFERRAL} <a href={toAddress({ sheet: 'cautions' })}>all cautions</a>
      </p>
    </section>
  );
}
