import { shuffledColumns, type Types, tightness, typesOf } from './chance.ts';
import { type Column, columnOf } from './columns.ts';
import { type Distance, mixedDistance } from './mixed-distance.ts';
import { seeded, shuffledUpTo } from './seeded.ts';
import { denseGroups, type Sight, secondGroups, sightOf, sightOfRows, WHOLE } from './sight.ts';
import { bestOverlap, membersOf } from './stability.ts';

/** A group that was tried: whom it holds and how it stood. */
export interface Tried {
  readonly members: Int32Array;
  readonly found: 'by density' | 'by shared neighbours';
  readonly stability: number;
  readonly tightness: number;
  readonly chance: number;
}

/** A pool as trials need it: columns and their weights, types, the distance and the sight of it. */
export interface Pool {
  readonly n: number;
  readonly columns: readonly Column[];
  readonly perColumn: Float64Array;
  readonly types: Types;
  readonly sight: Sight;
  readonly least: number;
  readonly seed: number;
  /** The groups that chance makes in the pool, once for each time it was dealt out again. */
  readonly byChance: () => readonly ByChance[];
  /** Called after each round of a trial. */
  readonly tick: () => void;
}

/** The size and tightness of what each method found in one shuffled pool. */
export type ByChance = Readonly<
  Record<Tried['found'], readonly { readonly size: number; readonly tightness: number }[]>
>;

type Method = (sight: Sight, least: number) => Int32Array[];
const METHODS: Readonly<Record<Tried['found'], Method>> = {
  'by density': denseGroups,
  'by shared neighbours': (sight, least) => [secondGroups(sight, least)],
};
const PART = 0.8;
// A large pool is dealt out again in part only: neighbours come little closer in thirty columns as a pool grows.
const DEALT = 6000;

/** The groups a method finds, each with its stability under subsampling and the tightness chance reaches. */
export function tried(pool: Pool, found: Tried['found']): Tried[] {
  const method = METHODS[found];
  const groups = groupsOf(method, pool.sight, pool.least);
  if (groups.length === 0) return [];
  const stability = stabilities(pool, groups, method);
  const by = apartFromType(pool.columns, pool.perColumn);
  const bounds = chanceBounds(pool.byChance().map((shuffle) => shuffle[found]));
  // A second look is a second throw of the dice: it has to show more.
  const more = found === 'by shared neighbours' ? 0.05 : 0;
  return groups.map((members, g) => ({
    members,
    found,
    stability: stability[g]!,
    tightness: tightness(members, pool.types, by),
    chance: bounds(members.length) + more,
  }));
}

/** What a method finds, without groups that are another over again: what lasts is often innermost too. */
function groupsOf(method: Method, sight: Sight, least: number): Int32Array[] {
  const byFirst = new Map<number, Int32Array[]>();
  return method(sight, least)
    .flatMap(membersOf)
    .filter((group) => {
      const met = byFirst.get(group[0]!) ?? [];
      const same = (other: Int32Array) => other.length === group.length && other.every((row, q) => row === group[q]);
      if (met.some(same)) return false;
      byFirst.set(group[0]!, [...met, group]);
      return true;
    });
}

/** The distance without the type: what is of one type is alike in it by choice, not by discovery. */
function apartFromType(columns: readonly Column[], perColumn: Float64Array): Distance {
  const weights = perColumn.map((weight, c) => (columns[c]!.name === 'type' ? 0 : weight));
  return weights.some((weight) => weight > 0) ? mixedDistance(columns, weights) : () => 1;
}

function stabilities({ sight, n, least, seed, tick }: Pool, groups: readonly Int32Array[], method: Method): number[] {
  const rounds = n <= 1000 ? 10 : n <= WHOLE ? 5 : 4;
  const sums = new Float64Array(groups.length);
  for (let round = 0; round < rounds; round++) {
    const rows = shuffledUpTo(n, seeded(seed + 101 * round + 1))
      .slice(0, Math.ceil(PART * n))
      .sort();
    const labels = method(sightOfRows(sight, rows), Math.max(2, Math.round(PART * least)));
    for (const [g, best] of bestOverlap(groups, rows, labels, n).entries()) sums[g]! += best / rounds;
    tick();
  }
  return [...sums];
}

/** What chance makes of a pool by every method: found when it is first asked for, and of each shuffled pool no more kept. */
export function chanceOnce(pool: Omit<Pool, 'byChance'>): () => readonly ByChance[] {
  let found: readonly ByChance[] | undefined;
  return () => {
    found ??= chanceGroups(pool);
    return found;
  };
}

function chanceGroups(pool: Omit<Pool, 'byChance'>): ByChance[] {
  const { least, seed, perColumn, tick } = pool;
  const part =
    pool.n > WHOLE
      ? shuffledUpTo(pool.n, seeded(seed + 7))
          .slice(0, DEALT)
          .sort()
      : null;
  const columns = part ? pool.columns.map((column) => columnOf(column, part)) : pool.columns;
  const n = part ? part.length : pool.n;
  const type = columns.find(({ name }) => name === 'type');
  const types = part ? typesOf(n, type) : pool.types;
  return Array.from({ length: n <= 1000 ? 20 : n <= WHOLE ? 5 : 2 }, (_, round) => {
    const dealt = shuffledColumns(columns, types, n, seed + 977 * round + 13);
    const by = apartFromType(dealt, perColumn);
    const sight = sightOf(n, mixedDistance(dealt, perColumn));
    tick();
    const found = (method: Method) =>
      groupsOf(method, sight, least).map((members) => ({
        size: members.length,
        tightness: tightness(members, types, by),
      }));
    return {
      'by density': found(METHODS['by density']),
      'by shared neighbours': found(METHODS['by shared neighbours']),
    };
  });
}

/** What tightness chance reaches for a size: beyond the tightest of each shuffled pool, by how much those vary. */
function chanceBounds(shuffles: readonly ByChance[Tried['found']][]): (size: number) => number {
  return (size) => {
    const tops = shuffles.map((groups) =>
      groups.reduce((most, group) => (2 * group.size >= size ? Math.max(most, group.tightness) : most), 0),
    );
    // Where chance makes no group of the size there is no tightness to vary.
    const reached = tops.filter((top) => top > 0);
    const mean = reached.reduce((sum, top) => sum + top, 0) / reached.length;
    const spread = Math.sqrt(reached.reduce((sum, top) => sum + (top - mean) ** 2, 0) / reached.length);
    const margin = shuffles.length < 5 ? 0.05 : 0.02;
    return reached.length === 0 ? 0.1 : Math.max(0.1, Math.max(...reached) + 2 * spread + margin);
  };
}
