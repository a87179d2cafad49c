/** How much light a thing has had and may have: lux, hours, lux hours (lx·h), by its class of sensitivity. */
import { above, within } from './bounds.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';

/** From what no light hurts to what any light hurts. Source: CIE 157:2004, clause 3.1.1 (four categories). */
export const LIGHT_CLASSES = ['R0', 'R1', 'R2', 'R3'] as const;
export type LightClass = (typeof LIGHT_CLASSES)[number];

/** Light of one strength, so many hours a day, so many days; cleaning, install and event hours are exposures too. */
export interface Exposure {
  readonly lux: number;
  readonly hoursPerDay: number;
  readonly days: number;
}

export interface LightLimits {
  readonly lux: number;
  readonly luxHoursAYear: number;
}

const MOST_LUX = 200_000;

/** Highest lux and yearly dose of a class, null for R0, which has none. Source: CIE 157:2004, limits from memory. */
export function lightLimitsOf(lightClass: LightClass, profile: PracticeProfile = DEFAULT_PROFILE): LightLimits | null {
  if (lightClass === 'R0') return null;
  return { lux: limitOf(profile, `lux${lightClass}`), luxHoursAYear: limitOf(profile, `luxHoursAYear${lightClass}`) };
}

/** Dose of all exposures, Σ lux × hours (lx·h). RangeError outside 0–200,000 lux, 0–24 hours, 0–36,600 days. Source: CIE 157. */
export function doseOf(exposures: readonly Exposure[]): number {
  return exposures.reduce((sum, { lux, hoursPerDay, days }) => {
    const hours = within('hoursPerDay', hoursPerDay, 0, 24) * within('days', days, 0, 36_600);
    return sum + within('lux', lux, 0, MOST_LUX) * hours;
  }, 0);
}

/** The most sensitive of several things seen in one light governs them all; null for none. Source: CIE 157:2004. */
export function governingClassOf(classes: readonly LightClass[]): LightClass | null {
  return classes.reduce<LightClass | null>((most, each) => (most === null || each > most ? each : most), null);
}

/**
 * A dose against a year's budget of its class: years of budget it takes, with what this year has spent already, and
 * whether it is over or ever too bright. RangeError as `doseOf`. Source: CIE 157:2004; lenders may ask less.
 */
export function lightBudgetOf(
  thing: {
    readonly lightClass: LightClass;
    readonly exposures: readonly Exposure[];
    /** lx·h it has had this year before. */
    readonly spentLuxHours?: number;
  },
  profile: PracticeProfile = DEFAULT_PROFILE,
): {
  readonly luxHours: number;
  readonly limits: LightLimits | null;
  readonly years: number;
  readonly leftLuxHours: number | null;
  readonly over: boolean;
  readonly tooBright: boolean;
} {
  const luxHours = doseOf(thing.exposures) + within('spentLuxHours', thing.spentLuxHours ?? 0, 0);
  const limits = lightLimitsOf(thing.lightClass, profile);
  if (limits === null) return { luxHours, limits, years: 0, leftLuxHours: null, over: false, tooBright: false };
  const lit = thing.exposures.filter(({ hoursPerDay, days }) => hoursPerDay * days > 0);
  return {
    luxHours,
    limits,
    years: luxHours / limits.luxHoursAYear,
    leftLuxHours: Math.max(0, limits.luxHoursAYear - luxHours),
    over: luxHours > limits.luxHoursAYear,
    tooBright: lit.some(({ lux }) => lux > limits.lux),
  };
}

/** Days a year a class may be shown at so many lux and hours a day; null where nothing limits it. RangeError on no light. */
export function daysOf(
  showing: { readonly lightClass: LightClass; readonly lux: number; readonly hoursPerDay: number },
  profile: PracticeProfile = DEFAULT_PROFILE,
): number | null {
  const daily = above('lux', showing.lux, 0, MOST_LUX) * above('hoursPerDay', showing.hoursPerDay, 0, 24);
  const limits = lightLimitsOf(showing.lightClass, profile);
  return limits === null ? null : limits.luxHoursAYear / daily;
}

/** Highest lux over so many days: what the yearly dose allows, and that capped by the class; null for R0. RangeError on no hours. */
export function highestLuxOf(
  showing: { readonly lightClass: LightClass; readonly days: number; readonly hoursPerDay: number },
  profile: PracticeProfile = DEFAULT_PROFILE,
): { readonly byDoseLux: number; readonly lux: number } | null {
  const hours = above('days', showing.days, 0, 36_600) * above('hoursPerDay', showing.hoursPerDay, 0, 24);
  const limits = lightLimitsOf(showing.lightClass, profile);
  if (limits === null) return null;
  const byDoseLux = limits.luxHoursAYear / hours;
  return { byDoseLux, lux: Math.min(byDoseLux, limits.lux) };
}
