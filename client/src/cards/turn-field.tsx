/** How a piece is turned, in degrees clockwise as faced. */
import type { PieceId, Place } from '@enfilade/shared/schema';
import { useShow } from '../sync/hooks.ts';
import { placeAnew } from './acting.ts';
import { TypedField } from './typed-field.tsx';

export function TurnField(props: { readonly pieceId: PieceId; readonly at: Place; readonly frozen: boolean }) {
  const { pieceId, at, frozen } = props;
  const show = useShow();
  const degrees = at[4] / 100;
  const set = (to: number): string | null => placeAnew(show, pieceId, at, { turnDegrees: ((to % 360) + 360) % 360 });
  return (
    <TypedField
      label="Turn"
      text={`${Number(degrees.toFixed(2))}°`}
      unit="degrees clockwise"
      frozen={frozen}
      step={(by) => set(degrees + by)}
      take={(typed) => {
        const number = Number(typed.replace('°', '').replace(',', '.').trim());
        return Number.isFinite(number) && typed.trim() !== '' ? set(number) : `'${typed}' is no number of degrees`;
      }}
    />
  );
}
