/** Limits by name and unit, as a person reads them. Pure. */
import type { LimitName } from '@enfilade/practice/practice-profile';

const UNITS: readonly (readonly [ending: RegExp, unit: string])[] = [
  [/MicrowattsPerLumen$/, 'µW/lm'],
  [/M2PerLitre$/, 'm² a litre'],
  [/KPa$/, 'kPa'],
  [/Kg$/, 'kg'],
  [/Mm$/, 'mm'],
  [/Degrees$/, '°'],
  [/Days$/, 'days'],
  [/Litres$/, 'litres'],
  [/Points$/, 'points'],
  [/Percent$/, '%'],
  [/Words$/, 'words'],
  [/Characters$/, 'characters'],
];

const LABELS: Readonly<Partial<Record<LimitName, string>>> = {
  caneMm: 'A cane finds what is not above',
  headroomMm: 'One walks beneath what is above',
  clearHeadMm: 'Clear under what hangs overhead',
  protrusionMm: 'May stand out from a wall',
  postOverhangMm: 'May overhang a post',
  pathMm: 'Width of a way',
  pinchMm: 'Width of a way at a pinch',
  pinchLengthMm: 'Length of a pinch',
  betweenPinchesMm: 'Between two pinches',
  doorMm: 'Clear width of a doorway',
  turningMm: 'A wheelchair turns in',
  passingMm: 'Two wheelchairs pass in',
  passingEveryMm: 'A place to pass each',
  turnApproachMm: 'Before a turn round something',
  turnAtMm: 'At a turn round something',
  turnRoundMm: 'Something narrow to turn round',
  slopeShare: 'Slope of a way',
  ultravioletMicrowattsPerLumen: 'Ultraviolet',
  ratingFactor: 'Hardware is rated for its load times',
  wireDegrees: 'A wire stands at least at',
  oneHookKg: 'One hook holds up to',
  oneHookWidthMm: 'One hook holds a width up to',
  steadyDegrees: 'Restrained below a tipping angle of',
  floorLoadKPa: 'An engineer is asked from a floor load of',
  paintM2PerLitre: 'Paint covers',
  primerM2PerLitre: 'Primer covers',
  texturedLossShare: 'A textured wall takes more by a share of',
  paintOverShare: 'Paint is bought over by a share of',
  touchUpLitres: 'Paint kept for touching up',
  wallCureDays: 'A wall is hung after its last coat, at the earliest',
  wallCurePreferredDays: 'A wall is hung after its last coat, better',
  leakyCaseCureDays: 'A leaky case after its last coat',
  caseCureDays: 'A case after its last coat',
  airtightCaseCureDays: 'An airtight case after its last coat',
  labelCentreMm: 'Centre of a label',
  labelLowestMm: 'Foot of a label',
  labelHighestMm: 'Top of a label',
  labelWords: 'Words on a label',
  labelLineCharacters: 'Letters in a label’s line',
  labelPoints: 'Size of a label’s letters',
  labelGapMm: 'Between a work and its label',
  signContrastPercent: 'Contrast of a sign',
  lrvPoints: 'Difference in LRV',
  smallMm: 'Small enough to be carried off',
};

/** 'Width of a way' in 'mm'; the light classes by their own letters. */
export function limitWords(name: LimitName): { readonly label: string; readonly unit: string } {
  const [, of, lightClass] = /^(lux|luxHoursAYear)(R[123])$/.exec(name) ?? [];
  if (lightClass !== undefined) {
    return of === 'lux'
      ? { label: `Light on ${lightClass}`, unit: 'lux' }
      : { label: `Light on ${lightClass} in a year`, unit: 'lux hours' };
  }
  return { label: LABELS[name] ?? name, unit: UNITS.find(([ending]) => ending.test(name))?.[1] ?? '' };
}
