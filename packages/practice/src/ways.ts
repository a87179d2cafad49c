/** What hangs over people's heads, and what is in a doorway or window: headroom, the clear width of a way, ways out. */
import type { Caution, CautionWords } from './caution.ts';

/** 80 in. Source: 2010 ADA Standards, 307.4, which gives 2030 mm beside it; as read. */
export const HEADROOM_MM = 2030;
/** 32 in. Source: 2010 ADA Standards, 404.2.3, which gives 815 mm beside it; as read. */
export const CLEAR_WIDTH_MM = 815;
/** 27 in: a cane finds what is lower, and nobody walks beneath it. Source: 2010 ADA Standards, 307.2, as read. */
const CANE_MM = 685.8;

/** What hangs from a ceiling. */
export interface OverheadFacts {
  /** From the floor beneath it to its foot. */
  readonly clearMm: number;
  readonly weightKg: number | null;
}

/** What is in a doorway or window. */
export interface OpeningFacts {
  readonly kind: 'doorway' | 'window';
  readonly widthMm: number;
  /** From its left edge, all that is in it and lower than headroom: this thing and others. */
  readonly taken: readonly { readonly fromMm: number; readonly toMm: number }[];
}

/** The widest stretch of an opening that nothing takes (mm); 0 where there is none. */
export function clearWidthOf({ widthMm, taken }: Pick<OpeningFacts, 'widthMm' | 'taken'>): number {
  let [widest, from] = [0, 0];
  for (const { fromMm, toMm } of [...taken].sort((a, b) => a.fromMm - b.fromMm)) {
    widest = Math.max(widest, Math.min(fromMm, widthMm) - from);
    from = Math.max(from, toMm);
  }
  return Math.max(widest, widthMm - from, 0);
}

/** Hung overhead: who must say what holds it, and whether one walks upright beneath it. */
export function overheadCautions({ clearMm, weightKg }: OverheadFacts, words: CautionWords): Caution[] {
  const weighs = weightKg === null ? '' : `, ${words.weight(weightKg)}`;
  const cautions: Caution[] = [
    {
      kind: 'hung overhead',
      what: `It hangs overhead${weighs}. What holds it, and what that is fixed to, is not judged here.`,
      ask: 'a licensed rigger and a structural engineer',
      source: 'common practice, no source',
    },
  ];
  if (clearMm > CANE_MM && clearMm < HEADROOM_MM) {
    const what = `${words.length(clearMm)} is clear under it; ${words.length(HEADROOM_MM)} is the usual least headroom.`;
    cautions.push({ kind: 'headroom', what, ask: 'the lead', source: '2010 ADA Standards, 307.4' });
  }
  return cautions;
}

/** In a doorway or window: whether it is a way out, and what is left of a doorway's clear width. */
export function openingCautions(facts: OpeningFacts, words: CautionWords): Caution[] {
  const source = 'common practice, no source';
  if (facts.kind === 'window') {
    const what = 'It is in a window, which may be a way out, or let out smoke.';
    return [{ kind: 'way out', what, ask: 'the lead', source }];
  }
  const what = 'It is in a doorway, which may be a way out.';
  const cautions: Caution[] = [{ kind: 'way out', what, ask: 'the lead', source }];
  const clear = clearWidthOf(facts);
  if (clear < CLEAR_WIDTH_MM && clear < facts.widthMm) {
    const left = clear === 0 ? 'Nothing' : words.length(clear);
    const narrowed = `${left} of the doorway’s ${words.length(facts.widthMm)} is left clear; ${words.length(CLEAR_WIDTH_MM)} is the usual least.`;
    cautions.push({ kind: 'way narrowed', what: narrowed, ask: 'the lead', source: '2010 ADA Standards, 404.2.3' });
  }
  return cautions;
}
