import type { Column } from './columns.ts';
import type { Likeness, NearMiss } from './likeness.ts';
import type { Distance } from './mixed-distance.ts';
import { type ColourWords, type Rule, rulesOf, saidOf, shareOf } from './reasons.ts';

/** What is said of a set, however it was come by. */
export type Told = Pick<Likeness, 'members' | 'middle' | 'reasons' | 'together' | 'nearMisses'>;

/** What a set is told by: columns to say reasons in, their distance, and the ids of rows. */
export interface Telling {
  readonly columns: readonly Column[];
  readonly n: number;
  readonly distance: Distance;
  readonly idOf: (row: number) => string;
  readonly colourWords?: ColourWords | undefined;
}

const MISSES = 6;
const PROBES = 12;

/** A set's middle, reasons, figures and near misses; undefined where nothing can be said of it that few others share. */
export function told({ columns, n, distance, idOf, colourWords }: Telling, members: Int32Array): Told | undefined {
  const own = new Uint8Array(n);
  for (const row of members) own[row] = 1;
  const rest = Int32Array.from({ length: n }, (_, row) => row).filter((row) => !own[row]);
  const rules = rulesOf(columns, members, rest, colourWords);
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
