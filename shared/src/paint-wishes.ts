/** What is asked of a paint for works on the colour desk, as the ranking takes it, and its answer by work. Pure. */
import type { TopPaint } from '@enfilade/colour/rank-paints';
import type { Wish, WishedWork } from '@enfilade/colour/rank-wishes';
import type { Reading } from '@enfilade/colour/reading';
import { WALL_SIDES } from '@enfilade/space/room';
import { compareReadings, type DeskWork } from './colour-desk.ts';
import type { Judgements } from './judgements.ts';
import type { SurfaceId } from './schema.ts';

export interface WorkWish {
  readonly work: DeskWork;
  readonly wish: Wish;
}

export interface WishedWorks {
  readonly wished: readonly WishedWork[];
  /** Of each of `wished`, which of the wishes it comes of. */
  readonly owners: readonly number[];
}

/**
 * Each picture of each work once: a work of many pieces counts as one work in all. What has no picture is left out, since
 * nothing can be said of it.
 */
export function wishedWorksOf(judgements: Judgements, wishes: readonly WorkWish[]): WishedWorks {
  const wished: WishedWork[] = [];
  const owners: number[] = [];
  wishes.forEach(({ work, wish }, owner) => {
    const pieces = new Map(
      work.pieces.flatMap((pieceId) => {
        const colours = judgements.coloursOf(pieceId);
        const key = judgements.pictureOf(pieceId)?.sha256;
        return colours === null || key === undefined ? [] : [[key, { pieceId, colours }]];
      }),
    );
    for (const { pieceId, colours } of pieces.values()) {
      wished.push({ name: judgements.nameOf(pieceId), ...colours, wish, weight: 1 / pieces.size });
      owners.push(owner);
    }
  });
  return { wished, owners };
}

export interface WishAnswer extends WorkWish {
  /** Of the picture that reads worst. */
  readonly reading: Reading;
  /** Whether every picture of it reads as asked. */
  readonly met: boolean;
}

/** A ranked paint's answer to each wish, those not met first. */
export function answersOf(
  top: TopPaint<unknown>,
  wishes: readonly WorkWish[],
  owners: readonly number[],
): readonly WishAnswer[] {
  const answers = new Map<number, WishAnswer>();
  top.works.forEach(({ reading, met }, index) => {
    const owner = owners[index] ?? -1;
    const wish = wishes[owner];
    if (wish === undefined) return;
    const known = answers.get(owner);
    const worst = known === undefined || compareReadings(reading, known.reading) < 0 ? reading : known.reading;
    answers.set(owner, { ...wish, reading: worst, met: met && (known?.met ?? true) });
  });
  return [...answers.entries()].sort(([i, a], [j, b]) => Number(a.met) - Number(b.met) || i - j).map(([, a]) => a);
}

/** The two walls that meet this one in its corners. */
export function wallsBeside(surface: SurfaceId): readonly SurfaceId[] {
  const cut = surface.lastIndexOf(':');
  const at = WALL_SIDES.findIndex((side) => side === surface.slice(cut + 1));
  if (at < 0) return [];
  const count = WALL_SIDES.length;
  return [WALL_SIDES[(at + count - 1) % count], WALL_SIDES[(at + 1) % count]].map(
    (side) => `${surface.slice(0, cut)}:${side}`,
  );
}
