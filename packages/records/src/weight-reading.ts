/** Weights in a dimension text: `80 lb. (36.3 kg)`. */
import type { DimensionIssue, Weight } from './dimension-reading.ts';
import type { ChainFigure } from './measure-chains.ts';
import { KG_PER, tidy, type WeightUnit } from './measure-units.ts';

/** Two weights of one thing agree within 50 g and a fiftieth. Own rule. */
const ROUNDING = { kg: 0.05, share: 0.02 };

/** The weight that `figures` state beside one stated before; it, or what is doubtful about it. */
export function weightFrom(
  figures: readonly ChainFigure[],
  unit: WeightUnit,
  written: string,
  before: Weight | null,
): { readonly weight: Weight | null; readonly issue?: DimensionIssue } {
  const [item] = figures;
  const doubt = (kind: DimensionIssue['kind'], what: string, value: string) => ({
    weight: before,
    issue: { kind, where: 'weight', what, value },
  });
  if (item === undefined || figures.length > 1 || item.upTo !== null) {
    return doubt('not understood', `“${written}” is not one weight; it is kept as written.`, written);
  }
  const { figure } = item;
  if (figure.thousands !== undefined && figure.written.includes(',')) {
    const what = `${figure.written} may be thousands or a decimal; neither is taken.`;
    return doubt('not understood', what, figure.written);
  }
  const kg = tidy(figure.value * KG_PER[unit]);
  if (before === null) return { weight: { value: figure.value, unit, kg } };
  if (Math.abs(before.kg - kg) <= ROUNDING.kg + ROUNDING.share * kg) return { weight: before };
  return doubt('systems disagree', `Two weights are stated: ${before.kg} kg and ${kg} kg.`, figure.written);
}
