import { typesOf } from './chance.ts';
import { type Column, columnOf, knownIn } from './columns.ts';
import type { Features } from './features.ts';
import type { Fallen, Likeness, Likenesses, WhyLeftOut } from './likeness.ts';
import { columnWeights, mixedDistance, type Weights } from './mixed-distance.ts';
import type { ColourWords } from './reasons.ts';
import { sightOf } from './sight.ts';
import { talliesOf } from './tallies.ts';
import { told } from './telling.ts';
import { chanceOnce, type Pool, type Tried, tried } from './trial.ts';

/** By what to look, the least size of a set (else by the size of the pool: 4, 8 or 25), a seed, and words for colours. */
export interface ClusterOptions {
  readonly weights?: Weights;
  readonly least?: number;
  readonly seed?: number;
  readonly colourWords?: ColourWords;
  /** Told how far it is, 0 to 1. */
  readonly progress?: (share: number) => void;
}

const STABLE = 0.6;
const FIRM = 0.75;
// So many rounds a trial takes at the most, in a small pool; a second method doubles them.
const ROUNDS = 60;

/**
 * The sets of like things in a pool: dense groups, and where these hold little, groups by shared neighbours (in small pools
 * by average linkage), of which those stay that survive subsampling, are closer than chance makes them within their types,
 * and can be given a reason. The same pool gives the same sets in whatever order it comes. RangeError on a weight under 0
 * or a least size under 2.
 */
export function clustersOf(features: Features, options: ClusterOptions = {}): Likenesses {
  const all = columnWeights(features.columns, options.weights ?? {});
  const total = all.reduce((sum, weight) => sum + weight, 0);
  const enough = features.ids.map((_, row) => 2 * knownWeight(features.columns, all, row) >= total && total > 0);
  const rows = Int32Array.from(features.ids.keys()).filter((row) => enough[row]);
  const n = rows.length;
  const least = options.least ?? (n < 200 ? 4 : n < 10_000 ? 8 : 25);
  if (!(least >= 2)) throw new RangeError(`clustersOf: the least size is ${least}, needs 2 or more`);
  const why = new Map<number, WhyLeftOut>();
  for (const [row, known] of enough.entries()) if (!known) why.set(row, 'too little is known of it');
  const fallen: Fallen[] = [];
  const sets = n > 2 * least ? setsOf(features, rows, all, { ...options, least }, why, fallen) : [];
  options.progress?.(1);
  const inSet = new Set(sets.flatMap(({ members }) => members));
  const leftOut = features.ids.flatMap((id, row) =>
    inSet.has(id) ? [] : [{ id, why: why.get(row) ?? 'like no others closely enough' }],
  );
  return { sets, fallen, leftOut, words: summed(sets, features.ids.length) };
}

function knownWeight(columns: readonly Column[], perColumn: Float64Array, row: number): number {
  return columns.reduce((sum, column, c) => (knownIn(column, row) ? sum + perColumn[c]! : sum), 0);
}

function setsOf(
  { ids, columns: given }: Features,
  rows: Int32Array,
  all: Float64Array,
  { least, seed = 1, colourWords, progress }: ClusterOptions & { readonly least: number },
  why: Map<number, WhyLeftOut>,
  fallen: Fallen[],
): Likeness[] {
  const counted = given.flatMap((column, c) =>
    all[c]! > 0 ? [{ column: columnOf(column, rows), weight: all[c]! }] : [],
  );
  const columns = counted.map(({ column }) => column);
  const perColumn = Float64Array.from(counted, ({ weight }) => weight);
  const n = rows.length;
  const distance = mixedDistance(columns, perColumn);
  const types = typesOf(
    n,
    columns.find(({ name }) => name === 'type'),
  );
  let rounds = 0;
  const tick = () => progress?.(Math.min(0.99, ++rounds / ROUNDS));
  const sight = sightOf(n, distance);
  const seen = { n, columns, perColumn, types, sight, least, seed, tick };
  const pool: Pool = { ...seen, byChance: chanceOnce(seen) };
  const idOf = (row: number) => ids[rows[row]!]!;
  const near = sight.whole ? undefined : sight.near;
  const telling = { tallies: talliesOf(columns, n), n, distance, idOf, colourWords, near };
  const taken = new Uint8Array(n);
  const sets: Likeness[] = [];
  const take = (group: Tried): void => {
    const members = group.members.filter((row) => !taken[row]);
    // What overlaps a set that stands is that set again, seen otherwise.
    if (members.length < least || members.length < 0.9 * group.members.length) return;
    const { found, stability, tightness, chance } = group;
    const leave = (reason: WhyLeftOut) => {
      fallen.push({ members: [...members].map(idOf), why: reason, found, stability, tightness, chance });
      for (const row of members) if (!why.has(rows[row]!)) why.set(rows[row]!, reason);
    };
    if (stability < STABLE) leave('its set fell apart when others were left away');
    else if (tightness <= chance) leave('its set is no closer than chance would make it');
    else {
      const set = told(telling, members);
      if (!set) leave('nothing can be said of its set that few others share');
      else {
        for (const row of members) taken[row] = 1;
        const strength = stability < FIRM ? 'loose' : 'firm';
        sets.push({ ...set, found, strength, stability, tightness, chance });
      }
    }
  };
  for (const group of tried(pool, 'by density')) take(group);
  if (taken.reduce((sum, t) => sum + t, 0) < n / 10)
    for (const group of tried(pool, 'by shared neighbours')) take(group);
  return sets.sort((a, b) => b.tightness * b.stability - a.tightness * a.stability);
}

function summed(sets: readonly Likeness[], n: number): string {
  const held = sets.reduce((sum, { members }) => sum + members.length, 0);
  if (sets.length === 0) return `Nothing in these ${n} hangs together more than chance would have it.`;
  return `${sets.length} ${sets.length === 1 ? 'set' : 'sets'} among ${n}, holding ${held}; the rest are told why not.`;
}
