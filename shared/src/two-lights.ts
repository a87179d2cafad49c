/** The gallery's lamp beside the artist's studio light: what paints do between them, and which works turn. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { Light } from '@enfilade/colour/lights';
import { partingPairsOf } from '@enfilade/colour/parting-pairs';
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import { type DeskWork, deskCellOf } from './colour-desk.ts';
import type { ShowDocuments } from './documents.ts';
import type { Judgements } from './judgements.ts';
import { paintSurfaceOf } from './paints-under.ts';
import type { PaintId } from './schema.ts';

/** Two paints of the deck that are one colour under one of two lights and two under the other. */
export interface PartingPaints {
  readonly one: PaintId;
  readonly other: PaintId;
  /** Under which they part: the first of the two lights, or the second. */
  readonly apartUnder: 'first' | 'second';
  /** ΔE00 where they match, and where they part. */
  readonly alike: number;
  readonly apart: number;
}

/** The pairs of the deck, the widest step first, and of how many paints nothing can be said for want of a reflectance. */
export function partingPaintsOf(
  documents: ShowDocuments,
  first: Light,
  second: Light,
): { readonly pairs: PartingPaints[]; readonly unjudged: number } {
  const deck = [...documents.all('deck')].map(([id, paint]) => ({ id, surface: paintSurfaceOf(paint) }));
  const { pairs, unjudged } = partingPairsOf(deck, first, second);
  return {
    pairs: pairs.map(({ one, other, deltaEFirst, deltaESecond }) => ({
      one,
      other,
      apartUnder: deltaEFirst > deltaESecond ? 'first' : 'second',
      alike: Math.min(deltaEFirst, deltaESecond),
      apart: Math.max(deltaEFirst, deltaESecond),
    })),
    unjudged: unjudged.length,
  };
}

/** A work that reads otherwise under the second of two lights. */
export interface TurnedWork {
  readonly work: DeskWork;
  readonly from: ReadingWord;
  readonly to: ReadingWord;
}

/** One of two lights: the show as it is seen under it, and the wall's paint, or the one on trial. */
export interface LightOnWall {
  readonly judgements: Judgements;
  readonly wall: LabD65;
}

/** Which works change their word from one light to the other. */
export function worksTurned(works: readonly DeskWork[], first: LightOnWall, second: LightOnWall): TurnedWork[] {
  return works.flatMap((work) => {
    const from = deskCellOf(first.judgements, work, first.wall)?.reading.word;
    const to = deskCellOf(second.judgements, work, second.wall)?.reading.word;
    return from === undefined || to === undefined || from === to ? [] : [{ work, from, to }];
  });
}
