/** Cautions that say the same but for their figures, together: forty blocks without a weight are one line. Pure. */
import type { StandingCaution } from '@enfilade/shared/accepted';
import { rangedText } from '@enfilade/shared/caution-marks';

export interface Alike {
  readonly key: string;
  /** The sentence, each figure from its least to its most. */
  readonly what: string;
  readonly ask: string;
  readonly source: string;
  readonly of: readonly StandingCaution[];
}

const FIGURE = /\d+(?:\.\d+)?/g;

/** In the order their first is met. */
export function alikeOf(cautions: readonly StandingCaution[]): Alike[] {
  const groups = new Map<string, StandingCaution[]>();
  for (const one of cautions) {
    const { kind, what, ask, source } = one.caution;
    const key = [kind, what.replace(FIGURE, '#'), ask, source].join('|');
    const own = groups.get(key);
    if (own === undefined) groups.set(key, [one]);
    else own.push(one);
  }
  return [...groups].map(([key, of]) => {
    const { ask, source } = (of[0] as StandingCaution).caution;
    return { key, what: rangedText(of.map(({ caution }) => caution.what)), ask, source, of };
  });
}
