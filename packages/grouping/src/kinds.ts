import { typesOf } from './chance.ts';
import { type Features, typeColumn } from './features.ts';
import type { NearMiss } from './likeness.ts';
import { columnWeights, mixedDistance, type Weights } from './mixed-distance.ts';
import { type ColourWords, rulesOf, saidOf } from './reasons.ts';
import { talliesOf } from './tallies.ts';
import { type Told, told } from './telling.ts';

/** All of one type: no discovery, for somebody wrote it down, yet a set to work with; what its things share, and which do not. */
export interface Kind extends Told {
  readonly type: string;
  readonly unlike: readonly Pick<NearMiss, 'id' | 'words'>[];
}

/**
 * The types of a pool that at least `least` things have, the largest first, with what sets each apart from the rest other
 * than its type, by the looks that count.
 */
export function kindsOf(
  features: Features,
  options: { readonly least?: number; readonly weights?: Weights; readonly colourWords?: ColourWords } = {},
): Kind[] {
  const { ids, columns } = features;
  const type = typeColumn(features);
  if (!type) return [];
  const { least = 4, weights = {}, colourWords } = options;
  const perColumn = columnWeights(columns, weights);
  const counted = columns.filter((column, c) => perColumn[c]! > 0 && column !== type);
  if (counted.length === 0) return [];
  const distance = mixedDistance(columns, perColumn);
  const idOf = (row: number) => ids[row]!;
  const tallies = talliesOf(counted, ids.length);
  const telling = { tallies, n: ids.length, distance, idOf, colourWords };
  return typesOf(ids.length, type)
    .rows.slice(1)
    .flatMap((members, code): Kind[] => {
      if (members.length < least) return [];
      const set = told(telling, members);
      if (!set) return [];
      const rules = rulesOf(tallies, members, colourWords);
      const unlike = [...members].flatMap((row) => {
        const lacks = rules.filter((rule) => !rule.holds(row));
        return lacks.length === 0
          ? []
          : [{ id: idOf(row), words: lacks.map(({ column }) => saidOf(column, row)).join(', ') }];
      });
      return [{ type: type.words[code]!, ...set, unlike }];
    })
    .sort((a, b) => b.members.length - a.members.length || (a.type < b.type ? -1 : 1));
}
