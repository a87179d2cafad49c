/** Cautions on a piece: what, and whom to ask. */
import { DEFERRAL } from '@enfilade/practice/cautions';
import type { PieceId } from '@enfilade/shared/schema';
import { lengthText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { CautionMark } from '../shell/marks.tsx';
import { useShow } from '../sync/hooks.ts';
import './cautions-block.css';

export function CautionsBlock({ pieceId }: { readonly pieceId: PieceId }) {
  const { judgements } = useShow();
  const { unit } = usePreferences();
  const cautions = judgements.cautionsOf(pieceId, {
    length: (mm) => `${lengthText(mm, unit)} ${unit}`,
    weight: (kg) => `${Number(kg.toFixed(1))} kg`,
  });
  if (cautions.length === 0) return null;
  return (
    <section className="cautions" aria-label="Cautions">
      <hr className="rule" />
      {cautions.map(({ kind, what, ask }) => (
        <p key={kind + what}>
          <CautionMark />
          <span>
            {what} Ask {ask}.
          </span>
        </p>
      ))}
      <p className="cautions-deferral">{DEFERRAL}</p>
    </section>
  );
}
