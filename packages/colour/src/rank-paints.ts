import { deltaE2000 } from './differences.ts';
import type { LabD65 } from './lab.ts';
import { diverseOf } from './rank-diverse.ts';
import { differenceTable, packedWorksOf } from './rank-table.ts';
import { metBy, standingOf, type WishedWork } from './rank-wishes.ts';
import { type Reading, readingOn, wordOf } from './reading.ts';
import { DEFAULT_THRESHOLDS, type ReadingThresholds } from './reading-thresholds.ts';

/** A wall that is seen together with the one to be painted, and how far from it the paint may be, ΔE00. */
export interface NextWall {
  readonly lab: LabD65;
  readonly least?: number;
  readonly most?: number;
}

export interface RankOptions {
  /** L* the paint may have, both ends included. */
  readonly lightness?: { readonly from: number; readonly to: number };
  readonly beside?: readonly NextWall[];
  readonly thresholds?: ReadingThresholds;
  /** Paints in the top list; 12 unless given. */
  readonly most?: number;
  /** 0 lists the best scores however alike, towards 1 the most unlike; 0.3 unless given. */
  readonly diversity?: number;
}

export interface RankedPaint<P> {
  readonly paint: P;
  /** How far the wishes are met, 0..1. */
  readonly score: number;
}

export interface TopPaint<P> extends RankedPaint<P> {
  /** Each work on this paint, in the order given, with its word and reason. */
  readonly works: readonly { readonly name: string; readonly reading: Reading; readonly met: boolean }[];
  /** A sentence: what does as asked, and what does not. */
  readonly reason: string;
}

export interface PaintRanking<P> {
  /** Every paint that passed the filter, best first; the deck's order where scores are equal. */
  readonly order: readonly RankedPaint<P>[];
  /** The best of them that are also unlike each other. */
  readonly top: readonly TopPaint<P>[];
  /** Paints the filter left out, each counted once. */
  readonly leftOut: { readonly lightness: number; readonly beside: number };
}

// What the words say decides; how far within a word, between two paints of the same words.
const WORD_PART = 0.5;

/**
 * Which paints of a deck (CIELAB D65) let these works carry and keep those quiet, within a range of lightness, beside
 * the next wall. RangeError for a work without colours or a weight that is not over 0.
 */
export function rankPaints<P extends { readonly lab: LabD65 }>(
  deck: readonly P[],
  works: readonly WishedWork[],
  options: RankOptions = {},
): PaintRanking<P> {
  const { thresholds = DEFAULT_THRESHOLDS, most = 12, diversity = 0.3 } = options;
  for (const { name, weight = 1 } of works) {
    if (!(weight > 0)) throw new RangeError(`rankPaints: weight ${weight} of “${name}” is not over 0`);
  }
  const light = deck.filter(({ lab }) => {
    return !options.lightness || (lab.L >= options.lightness.from && lab.L <= options.lightness.to);
  });
  const paints = light.filter(({ lab }) => (options.beside ?? []).every((next) => goesBeside(lab, next)));
  const scores = scoresOf(paints, works, thresholds);
  const order = Array.from(scores, (score, i) => ({ paint: paints[i]!, score, i })).sort(
    (p, q) => q.score - p.score || p.i - q.i,
  );
  const labs = order.map(({ paint }) => paint.lab);
  const chosen = diverseOf(
    labs,
    order.map(({ score }) => score),
    most,
    diversity,
  );
  return {
    order: order.map(({ paint, score }) => ({ paint, score })),
    top: chosen.map((i) => topOf(order[i]!, works, thresholds)),
    leftOut: { lightness: deck.length - light.length, beside: light.length - paints.length },
  };
}

function goesBeside(lab: LabD65, { lab: next, least = 0, most = Number.POSITIVE_INFINITY }: NextWall): boolean {
  const apart = deltaE2000(lab, next);
  return apart >= least && apart <= most;
}

function scoresOf(
  paints: readonly { readonly lab: LabD65 }[],
  works: readonly WishedWork[],
  thresholds: ReadingThresholds,
): Float64Array {
  const scores = new Float64Array(paints.length);
  const labs = paints.map(({ lab }) => lab);
  const weights = works.map(({ weight = 1 }) => weight);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const parts = { within10: true };
  const bodies = differenceTable(labs, packedWorksOf(works.map(({ body }) => body)), parts);
  const edges = differenceTable(
    labs,
    packedWorksOf(works.map(({ body, edge }) => (edge.length === 0 ? body : edge))),
    parts,
  );
  for (let p = 0, at = 0; p < paints.length; p++) {
    let score = 0;
    for (let work = 0; work < works.length; work++, at++) {
      const body = bodies.mean[at]!;
      const edge = edges.mean[at]!;
      const share = bodies.within10[at]!;
      const { wish } = works[work]!;
      const met = metBy(wish, wordOf(body, edge, share, edges.within10[at]!, thresholds));
      const standing = standingOf(body, edge, share, thresholds);
      const within = wish === 'let carry' ? standing : 1 - standing;
      score += weights[work]! * (WORD_PART * met + (1 - WORD_PART) * within);
    }
    scores[p] = works.length === 0 ? 0 : score / total;
  }
  return scores;
}

function topOf<P extends { readonly lab: LabD65 }>(
  { paint, score }: RankedPaint<P>,
  works: readonly WishedWork[],
  thresholds: ReadingThresholds,
): TopPaint<P> {
  const read = works.map((work) => {
    const reading = readingOn(work, paint.lab, thresholds);
    return { name: work.name, reading, met: metBy(work.wish, reading.word) > 0.5 };
  });
  return { paint, score, works: read, reason: reasonOf(read) };
}

function reasonOf(works: TopPaint<unknown>['works']): string {
  const amiss = works.filter(({ met }) => !met);
  if (works.length === 0) return 'Nothing was asked of it.';
  if (amiss.length === 0) return works.length === 1 ? 'It does as asked.' : 'All do as asked.';
  const first = amiss.slice(0, 3).map(({ name, reading }) => `${name} ${toldOf(reading.word)}`);
  const more = amiss.length - first.length;
  const list = more > 0 ? `${first.join(', ')}, and ${more} more` : first.join(', ');
  return amiss.length === works.length ? `Not as asked: ${list}.` : `All as asked but ${list}.`;
}

function toldOf(word: Reading['word']): string {
  return word === 'lost' || word === 'weak' ? `is ${word}` : word;
}
