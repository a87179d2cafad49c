/** What hangs over people's heads, and what is in a doorway or window: headroom, the clear width of a way, ways out. */
import type { Caution, CautionWords } from './caution.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';

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
export function overheadCautions(
  { clearMm, weightKg }: OverheadFacts,
  words: CautionWords,
  profile: PracticeProfile = DEFAULT_PROFILE,
): Caution[] {
  const weighs = weightKg === null ? '' : `, ${words.weight(weightKg)}`;
  const cautions: Caution[] = [
    {
      kind: 'hung overhead',
      what: `It hangs overhead${weighs}. What holds it, and what that is fixed to, is not judged here.`,
      ask: 'a licensed rigger and a structural engineer',
      source: 'common practice, no source',
    },
  ];
  const { value: headroomMm, source } = profile.limits.clearHeadMm;
  // A cane finds what is lower, and nobody walks beneath it.
  if (clearMm > limitOf(profile, 'caneMm') && clearMm < headroomMm) {
    const what = `${words.length(clearMm)} is clear under it; ${words.length(headroomMm)} is the usual least headroom.`;
    cautions.push({ kind: 'headroom', what, ask: 'the lead', source });
  }
  return cautions;
}

/** In a doorway or window: whether it is a way out, and what is left of a doorway's clear width. */
export function openingCautions(
  facts: OpeningFacts,
  words: CautionWords,
  profile: PracticeProfile = DEFAULT_PROFILE,
): Caution[] {
  const source = 'common practice, no source';
  if (facts.kind === 'window') {
    const what = 'It is in a window, which may be a way out, or let out smoke.';
    return [{ kind: 'way out', what, ask: 'the lead', source }];
  }
  const what = 'It is in a doorway, which may be a way out.';
  const cautions: Caution[] = [{ kind: 'way out', what, ask: 'the lead', source }];
  const clear = clearWidthOf(facts);
  const { value: leastMm, source: ground } = profile.limits.doorMm;
  if (clear < leastMm && clear < facts.widthMm) {
    const left = clear === 0 ? 'Nothing' : words.length(clear);
    const narrowed = `${left} of the doorway’s ${words.length(facts.widthMm)} is left clear; ${words.length(leastMm)} is the usual least.`;
    cautions.push({ kind: 'way narrowed', what: narrowed, ask: 'the lead', source: ground });
  }
  return cautions;
}
