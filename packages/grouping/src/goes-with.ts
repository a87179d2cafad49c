import { type Difference, type Echo, echoesOf, paletteOf } from './echoes.ts';
import type { Features } from './features.ts';
import type { Likeness } from './likeness.ts';
import { columnWeights, mixedDistance, type Weights } from './mixed-distance.ts';
import { moversDistance } from './movers-distance.ts';
import { type ColourWords, rulesOf, saidOf } from './reasons.ts';
import type { GroupingRecord } from './records.ts';
import { talliesOf } from './tallies.ts';

/** The difference of colours to judge by, by what to look for a set, and what may be a focal work (else all may). */
export interface GoesWithOptions {
  readonly difference: Difference;
  readonly weights?: Weights;
  readonly colourWords?: ColourWords;
  readonly mayBeFocal?: (id: string) => boolean;
}

/** What a chosen thing would go with; what there is none of is left out, and `words` say why. */
export interface GoesWith {
  readonly set?: { readonly at: number; readonly distance: number; readonly words: string };
  readonly focal?: { readonly id: string; readonly words: string };
  readonly companion?: { readonly echo: Echo; readonly words: string };
  readonly words: string;
}

// Common practice, no source: a focal work is at least three times as large on the wall as what it carries.
const CARRIES = 3;
const REACH = 1.5;
const PROBES = 12;

/**
 * For a chosen thing, the set it is in or would join (no farther from it than half again as its own members are), the focal
 * work that would carry it and the companion of its size that would answer it. RangeError when the id is not in the pool.
 */
export function goesWith(
  id: string,
  features: Features,
  sets: readonly Pick<Likeness, 'members'>[],
  options: GoesWithOptions,
): GoesWith {
  const row = features.ids.indexOf(id);
  if (row < 0) throw new RangeError(`goesWith: ${id} is not among the ${features.ids.length} things of the pool`);
  const set = joined(row, features, sets, options);
  const beside = set ? sets[set.at]!.members : [id];
  const focal = focalFor(row, beside, features, options);
  const own = features.records[row]!;
  const alike = new Set(beside);
  const echo = echoesOf([id], features, { ...options, count: 24 }).find((found) => {
    const other = features.records[features.ids.indexOf(found.id)]!;
    const ratio = areaOf(own) && areaOf(other) ? areaOf(other)! / areaOf(own)! : 1;
    return found.id !== focal?.id && !alike.has(found.id) && ratio >= 1 / CARRIES && ratio <= CARRIES;
  });
  const wanting = [
    ...(set ? [] : ['no set is close enough to join']),
    ...(focal
      ? []
      : [areaOf(own) ? 'nothing is large and near enough in colour to carry it' : 'its size is not known']),
    ...(echo ? [] : ['nothing of its size answers it']),
  ];
  return {
    ...(set ? { set } : {}),
    ...(focal ? { focal } : {}),
    ...(echo ? { companion: { echo, words: echo.words } } : {}),
    words: wanting.length === 0 ? 'a set, a focal work and a companion' : wanting.join('; '),
  };
}

function joined(
  row: number,
  { ids, columns }: Features,
  sets: readonly Pick<Likeness, 'members'>[],
  { weights = {}, colourWords }: GoesWithOptions,
): GoesWith['set'] {
  const at = new Map(ids.map((id, i) => [id, i]));
  const distance = mixedDistance(columns, columnWeights(columns, weights));
  const reached = sets.map(({ members }, s) => {
    const rows = Int32Array.from(members, (id) => at.get(id)!);
    const probes = rows.filter((_, q) => q % Math.max(1, Math.floor(rows.length / PROBES)) === 0);
    const toSet = (from: number) => {
      const others = probes.filter((probe) => probe !== from);
      return others.reduce((sum, probe) => sum + distance(from, probe), 0) / others.length;
    };
    const inner = probes.reduce((sum, probe) => sum + toSet(probe), 0) / probes.length;
    return { s, rows, inner, isOne: rows.includes(row), apart: toSet(row) };
  });
  const nearest =
    reached.find(({ isOne }) => isOne) ?? reached.sort((a, b) => a.apart / a.inner - b.apart / b.inner)[0];
  if (!nearest || (!nearest.isOne && nearest.apart > REACH * nearest.inner)) return undefined;
  const rules = rulesOf(talliesOf(columns, ids.length), nearest.rows, colourWords);
  const has = rules.filter((rule) => rule.holds(row)).map(({ words }) => words);
  // Nearest is not alike: what has none of a set's reasons would not be seen as one of it.
  if (!nearest.isOne && has.length === 0) return undefined;
  const lacks = rules
    .filter((rule) => !rule.holds(row))
    .map((rule) => `${saidOf(rule.column, row)}, not ${rule.words}`);
  const first = nearest.isOne ? 'is one of these' : 'would join these';
  const words = [
    first,
    ...(has.length > 0 ? [`as ${has.join(', ')}`] : []),
    ...(lacks.length > 0 ? [`but ${lacks.join(', ')}`] : []),
  ];
  return { at: nearest.s, distance: nearest.apart, words: words.join(', ') };
}

function focalFor(
  row: number,
  beside: readonly string[],
  { ids, records }: Features,
  { difference, mayBeFocal = () => true }: GoesWithOptions,
): GoesWith['focal'] {
  const inside = new Set(beside);
  const members = records.filter((record) => inside.has(record.id));
  const areas = [...members, records[row]!].flatMap((record) => areaOf(record) ?? []).sort((a, b) => a - b);
  const middle = areas[areas.length >> 1];
  const palette = paletteOf(members, difference);
  if (middle === undefined || palette.length === 0) return undefined;
  const tried = records.flatMap((record) => {
    const area = areaOf(record);
    if (
      inside.has(record.id) ||
      record.id === ids[row] ||
      !mayBeFocal(record.id) ||
      !record.palette ||
      !area ||
      area < CARRIES * middle
    )
      return [];
    const its = record.palette;
    const costs = palette.flatMap((own) => its.map((other) => difference(own, other)));
    const share = (list: readonly { share: number }[]) => {
      const all = list.reduce((sum, s) => sum + s.share, 0);
      return list.map((s) => s.share / all);
    };
    return [{ id: record.id, times: area / middle, apart: moversDistance(costs, share(palette), share(its)).distance }];
  });
  const best = tried.sort((a, b) => a.apart - b.apart || b.times - a.times)[0];
  // Beyond this its colours would not be taken for theirs (common practice, no source).
  if (!best || best.apart > 20) return undefined;
  const words = `${Math.round(best.times)} times as large as the middle one of these, and ${best.apart.toFixed(0)} ΔE from their colours`;
  return { id: best.id, words };
}

function areaOf({ heightMm, widthMm }: GroupingRecord): number | undefined {
  return heightMm && widthMm ? heightMm * widthMm : undefined;
}
