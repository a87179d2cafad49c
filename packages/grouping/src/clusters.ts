import { typesOf } from './chance.ts';
import { type Column, columnOf, knownIn } from './columns.ts';
import type { Features } from './features.ts';
import type { Likeness, Likenesses, NearMiss, WhyLeftOut } from './likeness.ts';
import { columnWeights, type Distance, mixedDistance, type Weights } from './mixed-distance.ts';
import { type Rule, rulesOf, saidOf, shareOf } from './reasons.ts';
import { sightOf } from './sight.ts';
import { type Pool, type Tried, tried } from './trial.ts';

/** By what to look, the least size of a set (else by the size of the pool: 4, 8 or 25), and a seed. */
export interface ClusterOptions {
  readonly weights?: Weights;
  readonly least?: number;
  readonly seed?: number;
}

const STABLE = 0.6;
const FIRM = 0.75;
const MISSES = 6;
const PROBES = 12;

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
  const sets = n > 2 * least ? setsOf(features, rows, all, least, options.seed ?? 1, why) : [];
  const inSet = new Set(sets.flatMap(({ members }) => members));
  const leftOut = features.ids.flatMap((id, row) =>
    inSet.has(id) ? [] : [{ id, why: why.get(row) ?? 'like no others closely enough' }],
  );
  return { sets, leftOut, words: summed(sets, features.ids.length) };
}

function knownWeight(columns: readonly Column[], perColumn: Float64Array, row: number): number {
  return columns.reduce((sum, column, c) => (knownIn(column, row) ? sum + perColumn[c]! : sum), 0);
}

function setsOf(
  { ids, columns: given }: Features,
  rows: Int32Array,
  all: Float64Array,
  least: number,
  seed: number,
  why: Map<number, WhyLeftOut>,
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
  const pool: Pool = { n, columns, perColumn, types, sight: sightOf(n, distance), least, seed };
  const taken = new Uint8Array(n);
  const sets: Likeness[] = [];
  const take = (group: Tried): void => {
    const members = group.members.filter((row) => !taken[row]);
    // What overlaps a set that stands is that set again, seen otherwise.
    if (members.length < least || members.length < 0.9 * group.members.length) return;
    const leave = (reason: WhyLeftOut) => {
      for (const row of members) if (!why.has(rows[row]!)) why.set(rows[row]!, reason);
    };
    if (group.stability < STABLE) leave('its set fell apart when others were left away');
    else if (group.tightness <= group.chance) leave('its set is no closer than chance would make it');
    else {
      const set = told(pool, distance, { ...group, members }, (row) => ids[rows[row]!]!);
      if (!set) leave('nothing can be said of its set that few others share');
      else {
        for (const row of members) taken[row] = 1;
        sets.push(set);
      }
    }
  };
  for (const group of tried(pool, 'by density')) take(group);
  if (taken.reduce((sum, t) => sum + t, 0) < n / 10)
    for (const group of tried(pool, 'by shared neighbours')) take(group);
  return sets.sort((a, b) => b.tightness * b.stability - a.tightness * a.stability);
}

function told(pool: Pool, distance: Distance, group: Tried, idOf: (row: number) => string): Likeness | undefined {
  const { members, found, stability, tightness, chance } = group;
  const own = new Uint8Array(pool.n);
  for (const row of members) own[row] = 1;
  const rest = Int32Array.from({ length: pool.n }, (_, row) => row).filter((row) => !own[row]);
  const rules = rulesOf(pool.columns, members, rest);
  if (rules.length === 0) return undefined;
  const probes = Array.from(
    { length: Math.min(PROBES, members.length) },
    (_, q, count = Math.min(PROBES, members.length)) => members[Math.floor((q * members.length) / count)]!,
  );
  const toSet = (row: number) => probes.reduce((sum, probe) => sum + distance(row, probe), 0) / probes.length;
  const holdsAll = (row: number) => rules.every((rule) => rule.holds(row));
  const ofThese = shareOf(members, holdsAll);
  const ofRest = shareOf(rest, holdsAll);
  const count = Math.round(ofThese * members.length);
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const said = `${count} of ${members.length} are ${rules.map(({ words }) => words).join(', ')}`;
  return {
    members: [...members].map(idOf),
    middle: idOf(members.reduce((best, row) => (toSet(row) < toSet(best) ? row : best))),
    found,
    strength: stability < FIRM ? 'loose' : 'firm',
    stability,
    tightness,
    chance,
    reasons: rules.map((rule) => ({
      look: rule.column.look,
      trait: rule.column.name,
      words: rule.words,
      ...(rule.from === undefined || rule.to === undefined ? {} : { from: rule.from, to: rule.to }),
      ofThese: shareOf(members, rule.holds),
      ofRest: shareOf(rest, rule.holds),
    })),
    together: {
      words: `${said}: ${percent(ofThese)} of these, ${percent(ofRest)} of the rest`,
      count,
      ofThese,
      ofRest,
    },
    nearMisses: missesOf(rules, rest, toSet, idOf),
  };
}

/** The nearest of those outside that lack one reason at most. */
function missesOf(
  rules: readonly Rule[],
  rest: Int32Array,
  toSet: (row: number) => number,
  idOf: (row: number) => string,
): NearMiss[] {
  return [...rest]
    .map((row) => ({ row, lacks: rules.filter((rule) => !rule.holds(row)) }))
    .filter(({ lacks }) => lacks.length === 0 || (lacks.length === 1 && rules.length > 1))
    .map(({ row, lacks }) => ({ row, lacks, distance: toSet(row) }))
    .sort((a, b) => a.distance - b.distance || a.row - b.row)
    .slice(0, MISSES)
    .map(({ row, lacks: [rule], distance }) => ({
      id: idOf(row),
      distance,
      words: rule
        ? `${saidOf(rule.column, row)}, where the set is ${rule.words}`
        : 'has every reason of the set, and differs in the rest',
    }));
}

function summed(sets: readonly Likeness[], n: number): string {
  const held = sets.reduce((sum, { members }) => sum + members.length, 0);
  if (sets.length === 0) return `Nothing in these ${n} hangs together more than chance would have it.`;
  return `${sets.length} ${sets.length === 1 ? 'set' : 'sets'} among ${n}, holding ${held}; the rest are told why not.`;
}
