/** Every limit the trade goes by, with its source, as plain data a museum can edit for its own jurisdiction. */
import type { Issue } from './issues.ts';

export interface Limit {
  readonly value: number;
  readonly source: string;
}

const ADA = (clause: string) => `2010 ADA Standards, ${clause}`;
const NO_SOURCE = 'common practice, no source';
const FROM_MEMORY = 'from memory, not confirmed';
const CIE = 'CIE 157:2004, limits from memory, to be confirmed by a conservator';

/** The defaults: units are in the names; inch limits keep their inches, so that 36 in typed is 36 in. */
export const DEFAULT_LIMITS = {
  caneMm: { value: 685.8, source: ADA('307.2') },
  headroomMm: { value: 2032, source: ADA('307.2 and 307.4') },
  /** The standard gives 80 in (2030 mm). */
  clearHeadMm: { value: 2030, source: ADA('307.4') },
  protrusionMm: { value: 101.6, source: ADA('307.2') },
  postOverhangMm: { value: 304.8, source: ADA('307.3') },
  pathMm: { value: 914.4, source: ADA('403.5.1') },
  pinchMm: { value: 812.8, source: ADA('403.5.1') },
  pinchLengthMm: { value: 609.6, source: ADA('403.5.1') },
  betweenPinchesMm: { value: 1219.2, source: ADA('403.5.1') },
  /** The standard gives 32 in (815 mm). */
  doorMm: { value: 815, source: ADA('404.2.3') },
  turningMm: { value: 1524, source: ADA('304.3') },
  passingMm: { value: 1524, source: ADA('403.5.3') },
  passingEveryMm: { value: 60960, source: ADA('403.5.3') },
  turnApproachMm: { value: 1066.8, source: `${ADA('403.5.2')}, ${FROM_MEMORY}` },
  turnAtMm: { value: 1219.2, source: `${ADA('403.5.2')}, ${FROM_MEMORY}` },
  turnRoundMm: { value: 1219.2, source: `${ADA('403.5.2')}, ${FROM_MEMORY}` },
  slopeShare: { value: 0.05, source: ADA('402.2') },
  luxR1: { value: 200, source: CIE },
  luxR2: { value: 50, source: CIE },
  luxR3: { value: 50, source: CIE },
  luxHoursAYearR1: { value: 600_000, source: CIE },
  luxHoursAYearR2: { value: 150_000, source: CIE },
  luxHoursAYearR3: { value: 15_000, source: CIE },
  ultravioletMicrowattsPerLumen: { value: 75, source: FROM_MEMORY },
  ratingFactor: { value: 4, source: `${NO_SOURCE}; lenders may ask more` },
  wireDegrees: { value: 30, source: NO_SOURCE },
  oneHookKg: { value: 11.3, source: NO_SOURCE },
  oneHookWidthMm: { value: 610, source: NO_SOURCE },
  steadyDegrees: { value: 15, source: NO_SOURCE },
  floorLoadKPa: { value: 4.788, source: `100 psf, ${FROM_MEMORY}; the building’s own figure counts` },
  paintM2PerLitre: { value: 8.6, source: 'paint makers’ coverage tables, as read' },
  primerM2PerLitre: { value: 6, source: 'paint makers’ coverage tables, as read' },
  texturedLossShare: { value: 0.2, source: 'paint makers’ coverage tables, as read' },
  paintOverShare: { value: 0.1, source: 'paint makers’ coverage tables, as read' },
  touchUpLitres: { value: 1, source: NO_SOURCE },
  wallCureDays: {
    value: 4,
    source: 'a national conservation scientist’s advice for an open, ventilated room, as read',
  },
  wallCurePreferredDays: { value: 7, source: 'painters’ advice, “about a week at 70 °F or more”, as read' },
  leakyCaseCureDays: { value: 14, source: 'a national conservation scientist’s advice, as read' },
  caseCureDays: { value: 28, source: 'case paint 4 weeks, as read' },
  airtightCaseCureDays: { value: 30, source: 'a national conservation scientist’s advice, as read' },
  labelCentreMm: { value: 1371.6, source: 'a summary of label guidelines (48–67 in, ideal 54 in), as read' },
  labelLowestMm: { value: 1100, source: 'a city museum service’s display guidelines, as read' },
  labelHighestMm: { value: 1675, source: 'a city museum service’s display guidelines, as read' },
  labelWords: { value: 100, source: 'US federal museum guidelines, as read' },
  labelLineCharacters: { value: 50, source: 'US federal museum guidelines, as read' },
  labelPoints: { value: 24, source: 'a national museum’s published standard, as read' },
  labelGapMm: { value: 60, source: NO_SOURCE },
  signContrastPercent: { value: 70, source: `older US signage advice, ${FROM_MEMORY}` },
  lrvPoints: { value: 30, source: 'BS 8300-2:2018, Annex B, as read' },
  smallMm: { value: 150, source: 'own rule, no source' },
} as const satisfies Readonly<Record<string, Limit>>;

export type LimitName = keyof typeof DEFAULT_LIMITS;

export interface PracticeProfile {
  readonly jurisdiction: string;
  readonly limits: Readonly<Record<LimitName, Limit>>;
}

/** The limits that hold unless a museum edits them: United States, where most of what could be read comes from. */
export const DEFAULT_PROFILE: PracticeProfile = { jurisdiction: 'United States', limits: DEFAULT_LIMITS };

/** United Kingdom: wider ways, from memory; everything else as by default, to be edited by whoever knows better. */
export const UK_PROFILE: PracticeProfile = {
  jurisdiction: 'United Kingdom',
  limits: {
    ...DEFAULT_LIMITS,
    pathMm: { value: 1200, source: `Approved Document M, volume 2, ${FROM_MEMORY}` },
  },
};

/** What a limit says under a profile, in the unit of its name. */
export function limitOf(profile: PracticeProfile, name: LimitName): number {
  return profile.limits[name].value;
}

/**
 * A museum's own profile from edited data: its good limits laid over the defaults, and an issue for each that is unknown,
 * no number above 0, or without a source. Never throws.
 */
export function profileFrom(edited: unknown): {
  readonly profile: PracticeProfile;
  readonly issues: readonly Issue[];
} {
  const issues: Issue[] = [];
  const limits: Record<LimitName, Limit> = { ...DEFAULT_LIMITS };
  const { jurisdiction, limits: given } = fieldsOf(edited);
  for (const [name, limit] of Object.entries(fieldsOf(given))) {
    const { value, source } = fieldsOf(limit);
    if (!Object.hasOwn(DEFAULT_LIMITS, name)) {
      issues.push({ where: name, what: 'is no limit that is known', value: name });
    } else if (typeof value !== 'number' || !(value > 0 && value < 1e9)) {
      issues.push({ where: name, what: 'must be a number above 0', value: typeof value === 'number' ? value : '' });
    } else if (typeof source !== 'string' || source.trim() === '') {
      issues.push({ where: name, what: 'has no source', value });
    } else limits[name as LimitName] = { value, source };
  }
  const named = typeof jurisdiction === 'string' && jurisdiction.trim() !== '';
  if (!named) issues.push({ where: 'jurisdiction', what: 'is not named', value: '' });
  return { profile: { jurisdiction: named ? jurisdiction : DEFAULT_PROFILE.jurisdiction, limits }, issues };
}

function fieldsOf(data: unknown): Readonly<Record<string, unknown>> {
  return typeof data === 'object' && data !== null ? (data as Record<string, unknown>) : {};
}
