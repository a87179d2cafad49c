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

/** What a label lies over differs from piece to piece: each says it in its own line. */
const OVER = /^Its label, .* lies over /;
const FIGURE = /\d+(?:\.\d+)?/g;

const LABELS = 'Its label has no room where it stands. Move it or what it lies over, or choose another side.';

/** In the order their first is met. */
export function alikeOf(cautions: readonly StandingCaution[]): Alike[] {
  const groups = new Map<string, StandingCaution[]>();
  for (const one of cautions) {
    const { kind, what, ask, source } = one.caution;
    const key = [kind, OVER.test(what) ? OVER.source : what.replace(FIGURE, '#'), ask, source].join('|');
    const own = groups.get(key);
    if (own === undefined) groups.set(key, [one]);
    else own.push(one);
  }
  return [...groups].map(([key, of]) => {
    const { ask, source } = (of[0] as StandingCaution).caution;
    const texts = of.map(({ caution }) => caution.what);
    const over = of.length > 1 && OVER.test(texts[0] ?? '');
    return { key, what: over ? LABELS : rangedText(texts), ask, source, of };
  });
}
