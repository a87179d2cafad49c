import type { Likeness, NearMiss } from './likeness.ts';
import type { Distance } from './mixed-distance.ts';
import type { Neighbours } from './neighbours.ts';
import { type ColourWords, type Rule, restOf, rulesOf, saidOf, shareOf } from './reasons.ts';
import type { Tally } from './tallies.ts';

/** What is said of a set, however it was come by. */
export type Told = Pick<Likeness, 'members' | 'middle' | 'reasons' | 'together' | 'nearMisses'>;

/** What a set is told by: tallies of the columns to say reasons in, their distance, the ids of rows, and in a large pool neighbours. */
export interface Telling {
  readonly tallies: readonly Tally[];
  readonly n: number;
  readonly distance: Distance;
  readonly idOf: (row: number) => string;
  readonly colourWords?: ColourWords | undefined;
  /** Where it is given, near misses are sought among the neighbours of members alone. */
  readonly near?: Neighbours | undefined;
}

const MISSES = 6;
const PROBES = 12;

/** A set's middle, reasons, figures and near misses; undefined where nothing can be said of it that few others share. */
export function told(
  { tallies, n, distance, idOf, colourWords, near }: Telling,
  members: Int32Array,
): Told | undefined {
  const rules = rulesOf(tallies, members, colourWords);
  if (rules.length === 0) return undefined;
  const own = new Uint8Array(n);
  for (const row of members) own[row] = 1;
  const probes = Array.from(
    { length: Math.min(PROBES, members.length) },
    (_, q, count = Math.min(PROBES, members.length)) => members[Math.floor((q * members.length) / count)]!,
  );
  const toSet = (row: number) => probes.reduce((sum, probe) => sum + distance(row, probe), 0) / probes.length;
  const together = members.reduce((sum, row) => sum + Number(rules.every(({ holds }) => holds(row))), 0);
  const ofThese = together / members.length;
  const others = n - members.length;
  const ofRest = others > 0 ? (allIn(rules, n) - together) / others : 0;
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const said = `${together} of ${members.length} are ${rules.map(({ words }) => words).join(', ')}`;
  return {
    members: [...members].map(idOf),
    middle: idOf(nearestOf(members, toSet)),
    reasons: rules.map((rule) => ({
      look: rule.column.look,
      trait: rule.column.name,
      words: rule.words,
      ...(rule.from === undefined || rule.to === undefined ? {} : { from: rule.from, to: rule.to }),
      ofThese: shareOf(members, rule.holds),
      ofRest: restOf(rule, members, others),
    })),
    together: {
      words: `${said}: ${percent(ofThese)} of these, ${percent(ofRest)} of the rest`,
      count: together,
      ofThese,
      ofRest,
    },
    nearMisses: missesOf(rules, near ? besides(members, own, near) : rowsWithout(own), toSet, idOf),
  };
}

/** How many of the whole pool have every reason; the rarest is asked first. */
function allIn(rules: readonly Rule[], n: number): number {
  const [rarest, ...others] = [...rules].sort((a, b) => a.inPool() - b.inPool());
  const rows = rowsOf(rarest!, n);
  let count = rows.length;
  for (const other of others) count = keptBy(other, rows, count);
  return count;
}

/** The rows of a pool of n that a rule holds for. */
function rowsOf({ column, bounds, holds, inPool }: Rule, n: number): Int32Array {
  const rows = new Int32Array(inPool());
  let count = 0;
  if (column.kind === 'number' && bounds) {
    const { values } = column;
    const [least, most] = bounds;
    for (let row = 0; row < n; row++) if (values[row]! >= least && values[row]! <= most) rows[count++] = row;
  } else for (let row = 0; row < n; row++) if (holds(row)) rows[count++] = row;
  return rows;
}

/** Moves the rows a rule holds for before the others, and says how many they are. */
function keptBy({ holds }: Rule, rows: Int32Array, among: number): number {
  let count = 0;
  for (let q = 0; q < among; q++) if (holds(rows[q]!)) rows[count++] = rows[q]!;
  return count;
}

function nearestOf(members: Int32Array, toSet: (row: number) => number): number {
  let [nearest, least] = [members[0]!, Number.POSITIVE_INFINITY];
  for (const row of members) {
    const apart = toSet(row);
    if (apart < least) [nearest, least] = [row, apart];
  }
  return nearest;
}

function rowsWithout(own: Uint8Array): Int32Array {
  return Int32Array.from(own.keys()).filter((row) => !own[row]);
}

function besides(members: Int32Array, own: Uint8Array, { k, near }: Neighbours): Int32Array {
  const found = new Set<number>();
  for (const row of members)
    for (let q = row * k; q < (row + 1) * k; q++) if (near[q]! >= 0 && !own[near[q]!]) found.add(near[q]!);
  return Int32Array.from(found).sort();
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
