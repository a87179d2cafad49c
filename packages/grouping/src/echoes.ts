import type { Features } from './features.ts';
import { meanColour } from './features.ts';
import { leastDistance, moversDistance } from './movers-distance.ts';
import { RECTANGLE } from './outline-words.ts';
import type { ColourWords } from './reasons.ts';
import type { GroupingRecord, Silhouette, Swatch } from './records.ts';
import { outlineDistance } from './silhouette.ts';

/** The colour difference to judge by, ΔE2000 of two CIELAB D65 colours as a rule. */
export type Difference = (one: Swatch, other: Swatch) => number;

/** How to look for echoes: at most `count` of them, by colour, shape or either, things `apartYears` apart counting as far. */
export interface EchoOptions {
  readonly difference: Difference;
  readonly count?: number;
  readonly by?: 'colour' | 'shape' | 'either';
  readonly apartYears?: number;
  readonly colourWords?: ColourWords;
}

/** One colour both have: the swatches to show on each picture, how much of the palettes they match, how far they differ. */
export interface SharedSwatch {
  readonly own: Swatch;
  readonly its: Swatch;
  readonly share: number;
  readonly difference: number;
}

/** An unlike thing that answers: what sets it apart, and what is shared. */
export interface Echo {
  readonly id: string;
  readonly score: number;
  readonly apart: readonly string[];
  /** `whole`: the palettes are near as they are; else strong colours of them answer, and `distance` is theirs alone. */
  readonly colour?: { readonly whole: boolean; readonly distance: number; readonly shared: readonly SharedSwatch[] };
  readonly outline?: { readonly distance: number };
  readonly words: string;
}

// Common practice, no source: palettes farther apart than this no longer read as the same colours, nor outlines as the same.
const COLOUR_LIMIT = 14;
const OUTLINE_LIMIT = 0.12;
const SWATCH_LIMIT = 10;
// A strong colour is seen across a room, and one like it in another thing, whatever else the two are made of.
const STRONG_CHROMA = 25;
const STRONG_LIMIT = 8;
const STRONG_SHARE = 0.12;
const MOST_SWATCHES = 12;
const RELEVANCE = 0.7;

/**
 * Things of a pool far from the asked in period or type (where a type is not known, in origin) yet near in palette (earth mover's distance over the given
 * difference) or in outline, best first with diversity (maximal marginal relevance: J. Carbonell, J. Goldstein, SIGIR 1998).
 * RangeError when an asked id is not in the pool.
 */
export function echoesOf(asked: readonly string[], { ids, records }: Features, options: EchoOptions): Echo[] {
  const { difference, count = 8, by = 'either', apartYears = 50, colourWords } = options;
  const own = asked.map((id) => {
    const at = ids.indexOf(id);
    if (at < 0) throw new RangeError(`echoesOf: ${id} is not among the ${ids.length} things of the pool`);
    return records[at]!;
  });
  const palette = by === 'shape' ? [] : paletteOf(own, difference);
  const outline = by === 'colour' ? undefined : own.find(({ silhouette }) => silhouette)?.silhouette;
  const found: { echo: Echo; record: GroupingRecord }[] = [];
  for (const record of records) {
    if (asked.includes(record.id)) continue;
    const apart = apartFrom(own, record, apartYears);
    if (apart.length === 0) continue;
    const colour = palette.length > 0 && record.palette ? colourEcho(palette, record.palette, difference) : undefined;
    const shape = outline && record.silhouette ? shapeEcho(outline, record.silhouette) : undefined;
    if (!colour && !shape) continue;
    const near = Math.max(colour ? nearnessOf(colour) : 0, shape ? 1 - shape.distance / OUTLINE_LIMIT : 0);
    const both = colour && shape ? 1.15 : 1;
    found.push({
      record,
      echo: {
        id: record.id,
        score: both * near * (0.55 + 0.15 * apart.length),
        apart,
        ...(colour ? { colour } : {}),
        ...(shape ? { outline: shape } : {}),
        words: wordsOf(apart, colour, shape, colourWords),
      },
    });
  }
  return diverse(found, count);
}

/** The swatches of one thing, or the most of a group's: each shares its part, near ones (half the limit) are joined. */
export function paletteOf(records: readonly GroupingRecord[], difference: Difference): Swatch[] {
  const [only] = records;
  if (records.length === 1) return [...(only!.palette ?? [])];
  const made: Swatch[] = [];
  for (const swatch of records.flatMap(({ palette }) => palette ?? []).sort((a, b) => b.share - a.share)) {
    const at = made.findIndex((kept) => difference(kept, swatch) < SWATCH_LIMIT / 2);
    if (at < 0) made.push(swatch);
    else {
      const [L, a, b] = meanColour([made[at]!, swatch])!;
      made[at] = { L, a, b, share: made[at]!.share + swatch.share };
    }
  }
  return made.sort((a, b) => b.share - a.share).slice(0, MOST_SWATCHES);
}

/** How far two palettes are apart and what moves, or which strong colours of them answer; undefined where neither is near. */
function colourEcho(own: readonly Swatch[], its: readonly Swatch[], difference: Difference): Echo['colour'] {
  const costs = new Float64Array(own.length * its.length);
  for (let i = 0, at = 0; i < own.length; i++)
    for (let j = 0; j < its.length; j++) costs[at++] = difference(own[i]!, its[j]!);
  const [from, to] = [sharesOf(own), sharesOf(its)];
  if (leastDistance(costs, from, to) > COLOUR_LIMIT) return strongEcho(own, its, costs);
  const { distance, moves } = moversDistance(costs, from, to);
  if (distance > COLOUR_LIMIT) return strongEcho(own, its, costs);
  const shared = moves
    .map((move) => ({ ...move, difference: costs[move.from * its.length + move.to]! }))
    .filter((move) => move.share >= 0.05 && move.difference <= SWATCH_LIMIT)
    .sort((a, b) => b.share - a.share)
    .map((move) => ({ own: own[move.from]!, its: its[move.to]!, share: move.share, difference: move.difference }));
  return { whole: true, distance, shared };
}

/** Strong colours of two palettes that answer each other, each once, the nearest first; undefined where they are little of both. */
function strongEcho(own: readonly Swatch[], its: readonly Swatch[], costs: ArrayLike<number>): Echo['colour'] {
  const strong = ({ a, b }: Swatch) => Math.hypot(a, b) >= STRONG_CHROMA;
  const pairs = own
    .flatMap((one, i) => its.map((other, j) => ({ own: one, its: other, difference: costs[i * its.length + j]! })))
    .filter((pair) => pair.difference <= STRONG_LIMIT && strong(pair.own) && strong(pair.its))
    .sort((a, b) => a.difference - b.difference);
  const shared: SharedSwatch[] = [];
  for (const pair of pairs) {
    if (shared.some((kept) => kept.own === pair.own || kept.its === pair.its)) continue;
    shared.push({ ...pair, share: Math.min(pair.own.share, pair.its.share) });
  }
  const share = shared.reduce((sum, one) => sum + one.share, 0);
  if (share < STRONG_SHARE) return undefined;
  const distance = shared.reduce((sum, one) => sum + one.share * one.difference, 0) / share;
  return { whole: false, distance, shared: shared.sort((a, b) => b.share - a.share) };
}

function nearnessOf({ whole, distance, shared }: NonNullable<Echo['colour']>): number {
  const share = shared.reduce((sum, one) => sum + one.share, 0);
  if (whole) {
    // Wood answers every other wood, and grey every grey: what is shared counts less the nearer to grey it is.
    const chroma = shared.reduce((sum, one) => sum + one.share * Math.hypot(one.its.a, one.its.b), 0) / (share || 1);
    return (1 - distance / COLOUR_LIMIT) * (0.4 + 0.6 * Math.min(1, chroma / STRONG_CHROMA) ** 2);
  }
  return Math.min(1, 2 * share) * (1 - distance / SWATCH_LIMIT);
}

/** Shares made to sum to 1: palettes say what a picture is made of, not how large it is. */
function sharesOf(palette: readonly Swatch[]): Float64Array {
  const all = palette.reduce((sum, { share }) => sum + share, 0);
  return Float64Array.from(palette, ({ share }) => share / all);
}

/** Every rectangle is like every other: the outline of one says nothing of it. */
function shapeEcho(own: Silhouette, its: Silhouette): Echo['outline'] {
  if (own.fill >= RECTANGLE || its.fill >= RECTANGLE) return undefined;
  const distance = outlineDistance(own, its);
  return distance <= OUTLINE_LIMIT ? { distance } : undefined;
}

function apartFrom(own: readonly GroupingRecord[], record: GroupingRecord, apartYears: number): string[] {
  const apart: string[] = [];
  const years = Math.min(...own.map((one) => yearsBetween(one, record) ?? 0));
  if (years >= apartYears) apart.push(`${Math.round(years)} years apart`);
  const differs = (of: (r: GroupingRecord) => string | undefined) =>
    of(record) !== undefined && own.every((one) => of(one) !== undefined && of(one) !== of(record));
  if (differs(({ type }) => type)) apart.push(`${record.type}, not ${own[0]!.type}`);
  // Two of a kind do not echo each other for having two lenders.
  else if (apart.length === 0 && record.type !== undefined && own.every(({ type }) => type !== undefined)) return [];
  if (differs(({ from }) => from)) apart.push(`from ${record.from}`);
  else if (differs(({ maker }) => maker)) apart.push(`by ${record.maker}`);
  return apart;
}

/** The years between two spans, 0 where they overlap, undefined where one is not known. */
function yearsBetween(one: GroupingRecord, other: GroupingRecord): number | undefined {
  const span = ({ earliestYear: e, latestYear: l }: GroupingRecord) => [e ?? l, l ?? e] as const;
  const [[a, b], [c, d]] = [span(one), span(other)];
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  return Math.max(0, c - b, a - d);
}

function wordsOf(
  apart: readonly string[],
  colour: Echo['colour'],
  shape: Echo['outline'],
  colourWords?: ColourWords,
): string {
  const near = [
    ...(colour ? [colourSaid(colour, colourWords)] : []),
    ...(shape ? ['its outline is much the same'] : []),
  ];
  return `${apart.join(', ')}; yet ${near.join(' and ')}`;
}

function colourSaid({ whole, distance, shared }: NonNullable<Echo['colour']>, colourWords?: ColourWords): string {
  const percent = Math.round(100 * shared.reduce((sum, { share }) => sum + share, 0));
  if (whole) return `${percent} % of its colours answer within ${SWATCH_LIMIT} ΔE`;
  const names = colourWords ? [...new Set(shared.slice(0, 2).map(({ its }) => colourWords(its)))].join(' and ') : '';
  return `${percent} % of both is ${names || 'one strong colour'}, ${distance.toFixed(0)} ΔE apart`;
}

function diverse(found: readonly { echo: Echo; record: GroupingRecord }[], count: number): Echo[] {
  const left = [...found].sort((a, b) => b.echo.score - a.echo.score).slice(0, 20 * count);
  const most = left[0]?.echo.score ?? 1;
  const taken: typeof left = [];
  while (taken.length < count && left.length > 0) {
    let best = 0;
    let worth = Number.NEGATIVE_INFINITY;
    for (const [at, { echo, record }] of left.entries()) {
      const like = Math.max(0, ...taken.map((other) => sameness(other.record, record)));
      const value = (RELEVANCE * echo.score) / most - (1 - RELEVANCE) * like;
      if (value > worth) [best, worth] = [at, value];
    }
    taken.push(...left.splice(best, 1));
  }
  return taken.map(({ echo }) => echo);
}

function sameness(one: GroupingRecord, other: GroupingRecord): number {
  const same = (a: unknown, b: unknown) => (a !== undefined && a === b ? 1 : 0);
  const close = (yearsBetween(one, other) ?? 100) < 25 ? 1 : 0;
  return (2 * same(one.type, other.type) + same(one.from, other.from) + close) / 4;
}
