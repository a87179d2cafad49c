/** A thing and what echoes it, side by side, with what they share shown on both: the colours, or the outline. */
import { hexFromLabD65 } from '@enfilade/colour/spaces';
import type { Echo } from '@enfilade/grouping/echoes';
import type { Swatch } from '@enfilade/grouping/records';
import type { ObjectId } from '@enfilade/shared/schema';
import { Picture } from '../shell/picture.tsx';
import { useShow } from '../sync/hooks.ts';
import { SharedColour } from './shared-colour.tsx';
import { shownPiece } from './thing-picture.tsx';

const BOX_PX = 92;

export function EchoPair({ own, echo }: { readonly own: ObjectId; readonly echo: Echo }) {
  const shared = echo.colour?.shared ?? [];
  return (
    <div className="echo-pair">
      <Side id={own} swatches={shared.map((one) => one.own)} outlined={echo.outline !== undefined} />
      <Side id={echo.id} swatches={shared.map(({ its }) => its)} outlined={echo.outline !== undefined} />
    </div>
  );
}

function Side(props: { readonly id: ObjectId; readonly swatches: readonly Swatch[]; readonly outlined: boolean }) {
  const { id, swatches, outlined } = props;
  const show = useShow();
  const pieceId = shownPiece(show, id);
  const key = show.judgements.pictureIdOf(pieceId);
  const facts = show.judgements.pictureOf(pieceId);
  const across = facts === undefined ? 1 : facts.widthPx / facts.heightPx;
  const widthPx = Math.round(across > 1 ? BOX_PX : BOX_PX * across);
  const heightPx = Math.round(across > 1 ? BOX_PX / across : BOX_PX);
  return (
    <div className="echo-side">
      <span aria-hidden="true" className={outlined ? 'echo-picture echo-outlined' : 'echo-picture'}>
        {key === null || swatches.length === 0 ? (
          <Picture sha256={key} widthPx={widthPx} heightPx={heightPx} />
        ) : (
          <SharedColour sha256={key} swatches={swatches} widthPx={widthPx} heightPx={heightPx} />
        )}
      </span>
      {swatches.length === 0 ? null : (
        <span className="echo-swatches" aria-hidden="true">
          {swatches.map((swatch) => (
            <i
              key={`${swatch.L} ${swatch.a} ${swatch.b} ${swatch.share}`}
              style={{ background: hexFromLabD65(swatch) }}
            />
          ))}
        </span>
      )}
    </div>
  );
}
