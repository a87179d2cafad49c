/** Where on the layout floor a thing is laid that was brought in from elsewhere: beside what lies there. */
import { nearestFree } from '@enfilade/arrangement/nearest-free';
import type { Judgements } from '@enfilade/shared/judgements';
import { LAYOUT_FLOOR, type Place } from '@enfilade/shared/schema';
import { STAND_IN_MM } from '@enfilade/shared/true-size';

/** Between things laid out (mm, own rule), as on the stage. */
const GAP_MM = 120;
/** How far out there is room, from the middle (mm). */
const FAR_MM = 60_000;

/** The nearest free spot to the middle of what lies there. */
export function spotOnLayout(judgements: Judgements, size: { heightMm: number; widthMm: number } | null): Place {
  const boxes = [...judgements.documents.all('places')].flatMap(([pieceId, [on, xMm, yMm]]) => {
    if (on !== LAYOUT_FLOOR) return [];
    const { widthMm = STAND_IN_MM, heightMm = STAND_IN_MM } = judgements.sizeOf(pieceId) ?? {};
    return [{ xMm, yMm, widthMm, heightMm }];
  });
  const middle = (of: 'xMm' | 'yMm'): number =>
    boxes.length === 0 ? 0 : boxes.reduce((sum, box) => sum + box[of], 0) / boxes.length;
  const { widthMm, heightMm } = size ?? { widthMm: STAND_IN_MM, heightMm: STAND_IN_MM };
  const wanted = { xMm: middle('xMm'), yMm: middle('yMm'), widthMm, heightMm };
  const surface = { leftMm: -FAR_MM, rightMm: FAR_MM, bottomMm: -FAR_MM, topMm: FAR_MM };
  const spot =
    nearestFree(
      wanted,
      boxes.map((box) => ({ ...box, gapMm: GAP_MM })),
      surface,
    ) ?? wanted;
  return [LAYOUT_FLOOR, Math.round(spot.xMm), Math.round(spot.yMm), 0, 0];
}
