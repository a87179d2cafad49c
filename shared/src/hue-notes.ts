/** Whether how a piece reads on a colour rests on hue alone, for eyes that see hue less. */
import { hueAloneShareOf } from '@enfilade/colour/hue-alone';
import type { LabD65 } from '@enfilade/colour/lab';
import type { Judgements } from './judgements.ts';
import type { PieceId } from './schema.ts';

/** A sentence to stand beside a reading; null where lightness parts the work from its wall too, or nothing is known of it. */
export function hueNoteOf(judgements: Judgements, pieceId: PieceId, wall: LabD65): string | null {
  const colours = judgements.coloursOf(pieceId);
  return colours === null ? null : hueAloneShareOf(colours.body, wall).note;
}
