/** How much paint a room takes, in how many coats, over which primer, and from when on one may hang. */
import { above, wholeWithin, within } from './bounds.ts';
import type { Issue } from './issues.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';

/**
 * Area (m²) of a room's four walls less its openings, never below 0. RangeError on a side that is not above 0. Source:
 * geometry.
 */
export function wallAreaOf(room: {
  readonly widthMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
  readonly openings: readonly { readonly widthMm: number; readonly heightMm: number }[];
}): number {
  const round = 2 * (above('widthMm', room.widthMm, 0, 1e6) + above('depthMm', room.depthMm, 0, 1e6));
  const open = room.openings.reduce(
    (sum, { widthMm, heightMm }) => sum + within('widthMm', widthMm, 0, 1e6) * within('heightMm', heightMm, 0, 1e6),
    0,
  );
  return Math.max(0, round * above('heightMm', room.heightMm, 0, 1e6) - open) / 1e6;
}

/**
 * Litres for an area: area × coats / coverage, and the share to buy beyond it. RangeError outside 0–1e6 m², 0–20 coats,
 * coverage above 0, share 0–1. Source: paint makers' coverage tables, as read.
 */
export function litresOf(paint: {
  readonly areaM2: number;
  readonly coats: number;
  readonly m2PerLitre: number;
  readonly overShare: number;
}): number {
  const { areaM2, coats, m2PerLitre, overShare } = paint;
  const coated = within('areaM2', areaM2, 0, 1e6) * wholeWithin('coats', coats, 0, 20);
  return (coated / above('m2PerLitre', m2PerLitre, 0, 1000)) * (1 + within('overShare', overShare, 0, 1));
}

export interface CoatPlan {
  readonly coats: number;
  readonly primerCoats: number;
  readonly primer: 'none' | 'grey or tinted' | 'stain-blocking';
  readonly why: string;
}

/** Strong: chroma from which reds to yellows hide poorly. Own rule, no source. */
const STRONG_CHROMA = 45;

/**
 * Coats and primer for a paint (CIELAB D65/2°) over what is on the wall now: strong reds, oranges and yellows hide
 * poorly; back to pale over strong or dark needs a stain-blocking primer. RangeError on L outside 0–100. Source: paint
 * makers' advice, as read; the thresholds are our own rule, no source, and a sample board settles it.
 */
export function coatsOf(
  paint: { readonly L: number; readonly a: number; readonly b: number },
  over: { readonly L: number; readonly a: number; readonly b: number } | null,
): CoatPlan {
  const { L, chroma, hue } = polarOf(paint);
  if (chroma >= STRONG_CHROMA && (hue <= 110 || hue >= 345)) {
    const red = hue <= 45 || hue >= 345;
    const why = `A strong ${red ? 'red' : hue <= 75 ? 'orange' : 'yellow'} hides poorly.`;
    return { coats: 3, primerCoats: red ? 2 : 1, primer: 'grey or tinted', why };
  }
  const under = over === null ? null : polarOf(over);
  if (L >= 85 && under !== null && (under.chroma >= STRONG_CHROMA || under.L < 50)) {
    return { coats: 2, primerCoats: 1, primer: 'stain-blocking', why: 'Back to pale over a strong or dark paint.' };
  }
  return { coats: 2, primerCoats: 0, primer: 'none', why: 'Two coats on a sealed wall.' };
}

/**
 * Litres to buy of paint and primer for an area under a plan of coats, with what is kept for touching up; one batch. Area
 * m². RangeError as `litresOf`. Source: the profile's coverage.
 */
export function paintToBuyOf(
  wall: { readonly areaM2: number; readonly plan: CoatPlan; readonly textured?: boolean },
  profile: PracticeProfile = DEFAULT_PROFILE,
): { readonly paintLitres: number; readonly primerLitres: number; readonly touchUpLitres: number } {
  const holds = wall.textured === true ? 1 - limitOf(profile, 'texturedLossShare') : 1;
  const overShare = limitOf(profile, 'paintOverShare');
  const litres = (coats: number, name: 'paintM2PerLitre' | 'primerM2PerLitre') =>
    litresOf({ areaM2: wall.areaM2, coats, m2PerLitre: limitOf(profile, name) * holds, overShare });
  return {
    paintLitres: litres(wall.plan.coats, 'paintM2PerLitre'),
    primerLitres: litres(wall.plan.primerCoats, 'primerM2PerLitre'),
    touchUpLitres: limitOf(profile, 'touchUpLitres'),
  };
}

export type PaintedThing = 'wall' | 'leaky case' | 'case' | 'airtight case';

/**
 * First day (ISO date) on which to hang on fresh paint, and the day preferred; an issue where the day painted is no date.
 * A conservator's word goes before. Source: a national conservation scientist's advice, as read, in the profile.
 */
export function hangNotBeforeOf(
  painted: { readonly lastCoat: string; readonly thing: PaintedThing },
  profile: PracticeProfile = DEFAULT_PROFILE,
): { readonly earliest: string; readonly preferred: string } | Issue {
  const start = /^\d{4}-\d\d-\d\d$/.test(painted.lastCoat) ? Date.parse(`${painted.lastCoat}T00:00:00Z`) : Number.NaN;
  // 31 February is read as 3 March by some readers of dates, so it is written out again and compared.
  if (Number.isNaN(start) || isoOf(start) !== painted.lastCoat) {
    return { where: 'last coat', what: 'is no date like 2026-03-01', value: painted.lastCoat };
  }
  const [least, liked] = CURES[painted.thing];
  const after = (days: number) => isoOf(start + Math.ceil(days) * 86_400_000);
  return { earliest: after(limitOf(profile, least)), preferred: after(limitOf(profile, liked)) };
}

const CURES = {
  wall: ['wallCureDays', 'wallCurePreferredDays'],
  'leaky case': ['leakyCaseCureDays', 'caseCureDays'],
  case: ['caseCureDays', 'airtightCaseCureDays'],
  'airtight case': ['airtightCaseCureDays', 'airtightCaseCureDays'],
} as const;

function isoOf(time: number): string {
  const date = new Date(time);
  return Number.isNaN(date.getTime()) ? '' : date.toISOString().slice(0, 10);
}

function polarOf({ L, a, b }: { readonly L: number; readonly a: number; readonly b: number }) {
  within('L', L, 0, 100);
  const chroma = Math.hypot(within('a', a, -200, 200), within('b', b, -200, 200));
  return { L, chroma, hue: ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360 };
}
