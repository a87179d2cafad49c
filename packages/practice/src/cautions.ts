/**
 * Notices that a thing can hurt someone or something, or be hurt, with whom to ask. Never a verdict: each defers to
 * people. Limits named 'common practice, no source' are house rules and can be argued with.
 */
import type { Caution, CautionWords } from './caution.ts';
import type { Hardware } from './hardware.ts';
import { floorLoadOf, tipOf } from './loads.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';
import { protrusionOf } from './protrusion.ts';
import { type OpeningFacts, openingCautions, overheadCautions } from './ways.ts';

export type { Caution, CautionKind, CautionWords } from './caution.ts';

/** The end of every caution. */
export const DEFERRAL = "Defer to local code, the lender's terms, a conservator and a licensed professional.";

const NO_SOURCE = 'common practice, no source';
/** 84 in, the highest centre of a work that is looked at. Common practice, no source. */
export const REACH_MM = 2134;
/** A standing thing of this bulk is taken to be heavy until it is weighed. Our own rule, no source. */
export const BULKY_M3 = 0.25;

export interface CautionFacts {
  readonly onWall: boolean;
  readonly placed: boolean;
  readonly widthMm: number;
  readonly heightMm: number;
  /** 0: flat, or not recorded. */
  readonly depthMm: number;
  readonly centreXmm: number;
  /** Above the level plane. */
  readonly centreMm: number;
  readonly turnDegrees: number;
  /** The floor's level under it. */
  readonly floorMm: number;
  /** Off the wall. */
  readonly liftMm?: number;
  /** It hangs from a ceiling: what is clear between the floor and its foot. */
  readonly overheadClearMm?: number;
  /** It is in a doorway or window. */
  readonly opening?: OpeningFacts;
  readonly sizeKnown: boolean;
  readonly sizeCertain: boolean;
  readonly weightKg: number | null;
  /** With all that stands on it; null while one of them is not weighed. Absent: nothing stands on it. */
  readonly borneKg?: number | null;
  readonly hardware: Hardware | null;
  /** Fixtures of its wall: centre, size and the margin to keep clear. */
  readonly fixtures: readonly {
    readonly kind: string;
    readonly xMm: number;
    readonly yMm: number;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly clearMm: number;
  }[];
}

/** Centimetres and kilograms. */
export const METRIC_WORDS: CautionWords = {
  length: (mm) => `${(Math.round(mm) / 10).toFixed(1)} cm`,
  weight: (kg) => `${(Math.round(kg * 10) / 10).toFixed(1)} kg`,
};

/** All that is to be minded about one piece where it is now, under a profile; empty where nothing is known to be amiss. */
export function cautionsOf(
  facts: CautionFacts,
  words: CautionWords = METRIC_WORDS,
  profile: PracticeProfile = DEFAULT_PROFILE,
): readonly Caution[] {
  const cautions: Caution[] = [...sizeCautions(facts), ...weightCautions(facts, words, profile)];
  if (facts.placed && facts.overheadClearMm !== undefined) {
    cautions.push(...overheadCautions({ clearMm: facts.overheadClearMm, weightKg: facts.weightKg }, words, profile));
  } else if (facts.placed && facts.opening !== undefined)
    cautions.push(...openingCautions(facts.opening, words, profile));
  else if (facts.onWall && facts.placed) cautions.push(...wallCautions(facts, words, profile));
  else if (facts.placed) cautions.push(...standingCautions(facts, profile));
  return cautions;
}

/** A caution as one text, ending in whom to ask and to whom to defer. */
export function cautionText(caution: Caution): string {
  return `${caution.what} Ask ${caution.ask}. ${DEFERRAL}`;
}

function sizeCautions(facts: CautionFacts): Caution[] {
  const source = 'the record';
  if (!facts.sizeKnown) {
    return [{ kind: 'size not known', what: 'Its size is not known. Measure it.', ask: 'the registrar', source }];
  }
  if (facts.sizeCertain) return [];
  const what = 'Its size is estimated or not its outer size. Measure it before it is hung.';
  return [{ kind: 'size estimated', what, ask: 'the registrar', source }];
}

function weightCautions(facts: CautionFacts, words: CautionWords, profile: PracticeProfile): Caution[] {
  const hung = facts.onWall && facts.placed;
  if (facts.weightKg === null) {
    if (hung || (facts.placed && facts.overheadClearMm !== undefined)) {
      const what = 'No weight recorded. What is to hold it can’t be judged.';
      return [{ kind: 'weight not known', what, ask: 'the registrar', source: NO_SOURCE }];
    }
    const bulkM3 = facts.sizeKnown ? (facts.widthMm * facts.heightMm * facts.depthMm) / 1e9 : 0;
    if (bulkM3 < BULKY_M3) return [];
    const what = 'No weight recorded for a thing of this bulk. Floor load can’t be judged.';
    return [{ kind: 'weight not known', what, ask: 'the registrar', source: 'own rule, no source' }];
  }
  if (!hung || facts.hardware?.hooks !== 1) return [];
  const reasons = [
    ...(facts.weightKg > limitOf(profile, 'oneHookKg') ? [`it weighs ${words.weight(facts.weightKg)}`] : []),
    ...(facts.sizeKnown && facts.widthMm > limitOf(profile, 'oneHookWidthMm')
      ? [`it is ${words.length(facts.widthMm)} wide`]
      : []),
  ];
  if (reasons.length === 0) return [];
  const what = `It hangs on one hook and ${reasons.join(' and ')}. Two hooks keep it level and share the load.`;
  return [{ kind: 'one hook', what, ask: 'the preparator', source: profile.limits.oneHookKg.source }];
}

function wallCautions(facts: CautionFacts, words: CautionWords, profile: PracticeProfile): Caution[] {
  const cautions: Caution[] = [];
  const { acrossMm, upMm } = outerOf(facts);
  const centreAboveFloor = facts.centreMm - facts.floorMm;
  if (centreAboveFloor > REACH_MM) {
    const what = `Its centre is ${words.length(centreAboveFloor)} above the floor, above reach.`;
    cautions.push({ kind: 'above reach', what, ask: 'the preparator', source: NO_SOURCE });
  }
  for (const fixture of facts.fixtures) {
    const across = Math.abs(facts.centreXmm - fixture.xMm) - (acrossMm + fixture.widthMm) / 2;
    const up = Math.abs(facts.centreMm - fixture.yMm) - (upMm + fixture.heightMm) / 2;
    // The larger of both, as the margin is kept squarely around the fixture.
    const gap = Math.max(across, up);
    if (gap >= fixture.clearMm && gap >= 0) continue;
    const name = fixture.kind.charAt(0).toUpperCase() + fixture.kind.slice(1);
    const how = gap < 0 ? 'behind it' : `${words.length(gap)} from it`;
    const what = `${name} ${how}; ${words.length(fixture.clearMm)} is to be kept clear.`;
    cautions.push({ kind: 'fixture not kept clear', what, ask: 'the preparator', source: "the room's survey" });
  }
  const depthMm = facts.depthMm + (facts.liftMm ?? 0);
  const { source } = profile.limits.protrusionMm;
  const over = protrusionOf(
    { edgeMm: centreAboveFloor - upMm / 2, depthMm },
    {
      caneMm: limitOf(profile, 'caneMm'),
      headroomMm: limitOf(profile, 'headroomMm'),
      deepestMm: limitOf(profile, 'protrusionMm'),
      source,
    },
  );
  if (over > 0) {
    const what = `It stands out ${words.length(depthMm)} from the wall, ${words.length(over)} more than may beside a way.`;
    cautions.push({ kind: 'stands out', what, ask: 'the lead', source });
  }
  return cautions;
}

function standingCautions(facts: CautionFacts, profile: PracticeProfile): Caution[] {
  const { widthMm, heightMm, depthMm, weightKg } = facts;
  if (!facts.sizeKnown || !(widthMm > 0 && heightMm > 0 && depthMm > 0)) return [];
  const cautions: Caution[] = [];
  // Its centre of gravity is not recorded; half its height is assumed, and said.
  const halfBaseMm = Math.min(widthMm, depthMm) / 2;
  const tip = tipOf({ halfBaseMm, centreOfGravityMm: heightMm / 2, weightKg: weightKg ?? 0, pushAtMm: heightMm });
  if (tip.angleDegrees < limitOf(profile, 'steadyDegrees')) {
    const what = `It tips at ${Math.floor(tip.angleDegrees)}° if its centre of gravity is half-way up. Restrain it.`;
    cautions.push({ kind: 'can tip', what, ask: 'the preparator', source: profile.limits.steadyDegrees.source });
  }
  const borneKg = facts.borneKg ?? weightKg;
  if (borneKg !== null) {
    const { kPa } = floorLoadOf({ weightKg: borneKg, widthMm, depthMm });
    const { value, source } = profile.limits.floorLoadKPa;
    if (kPa >= value) {
      const withLoad = weightKg !== null && borneKg > weightKg ? ', with what stands on it,' : '';
      const what = `It${withLoad} loads the floor with ${kPa.toFixed(1)} kPa; ${value.toFixed(1)} is what an assembly room’s floor is often made for.`;
      cautions.push({ kind: 'floor load', what, ask: 'a licensed engineer', source });
    }
  }
  return cautions;
}

function outerOf(facts: CautionFacts): { readonly acrossMm: number; readonly upMm: number } {
  const turn = (facts.turnDegrees * Math.PI) / 180;
  const c = Math.abs(Math.cos(turn));
  const s = Math.abs(Math.sin(turn));
  return { acrossMm: facts.widthMm * c + facts.heightMm * s, upMm: facts.widthMm * s + facts.heightMm * c };
}
