/** What a record alone warns of: old paints and poisons, pests, flames, wires, glass, light. */
import type { Caution } from './caution.ts';
import { type Exposure, lightBudgetOf } from './light-dose.ts';
import { lightClassOf } from './light-materials.ts';
import { DEFAULT_PROFILE, limitOf, type PracticeProfile } from './practice-profile.ts';

export interface RecordFacts {
  /** Materials, type, title and notes as written. */
  readonly materials: string;
  readonly about: string;
  /** Of making; null: not known, and then the worse is taken. */
  readonly earliestYear: number | null;
  readonly latestYear: number | null;
  readonly held: 'held' | 'lent' | 'bought';
  readonly glazed: boolean;
  /** In a case, or not within reach. */
  readonly cased: boolean;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly sizeKnown: boolean;
  readonly placed: boolean;
  /** The light planned where it is; absent: none planned yet. */
  readonly exposures?: readonly Exposure[];
}

type Row = readonly [
  kind: Caution['kind'],
  pattern: RegExp,
  what: string,
  ask: string,
  source: string,
  years?: readonly [number, number],
];

const NO_SOURCE = 'common practice, no source';
const MEMORY = 'from memory, not confirmed';
const READ = 'museum hazard guidance, as read';

/** Years outside which a danger is not looked for; a thing whose years are not known is taken to be of them. */
const HAZARDS: readonly Row[] = [
  [
    'lead paint',
    /\bpainted\b|\bpaint\b|\bsalvage\w*/,
    'Old paint may hold lead. Do not sand it; contain flakes.',
    'the conservator',
    READ,
    [-9999, 1978],
  ],
  [
    'arsenic',
    /\b(?:emerald|scheele\S*|arsenic\w*|paris) green\b|\barsenic\w*|\bgreen (?:wall)?paper|\bsilk flowers?|\bbook ?cloth|\bwallpapers?\b/,
    'Greens and papers of its time may hold arsenic. Gloves; no public touch; test it.',
    'the conservator',
    MEMORY,
    [1775, 1920],
  ],
  [
    'mercury',
    /\btin[- ]amalgam\b|\bmirrors?\b|\bmercury\b|\bfelt(?:ed)? hats?\b|\blooking[- ]glass/,
    'Tin-amalgam glass and felted goods may hold mercury. Test it before handling.',
    'the conservator',
    READ,
    [-9999, 1945],
  ],
  [
    'pesticide',
    /\btaxiderm\w+|\bfurs?\b|\bfeathers?\b|\bstuffed\b|\bmounted (?:bird|fish|animal)s?|\bwool(?:len)?\b|\bhides?\b/,
    'It may carry pesticide residues (arsenic, mercury, DDT). Gloves; no public touch; test it.',
    'the conservator',
    READ,
    [1770, 1979],
  ],
  [
    'asbestos',
    /\basbestos\b|\bfire[- ]?(?:surrounds?|places?)\b|\bstoves?\b/,
    'It may hold asbestos. Leave it whole until it is tested.',
    'a licensed asbestos surveyor',
    READ,
    [1850, 2000],
  ],
  [
    'pests',
    /\bupholster\w+|\bwool(?:len)?\b|\bfurs?\b|\bfeathers?\b|\btaxiderm\w+|\bwillow\b|\bbaskets?\b|\bstraw\b|\bcarpets?\b|\bhangings?\b|\btextiles?\b/,
    'It may bring pests. Quarantine or freeze it before it enters.',
    'the conservator',
    NO_SOURCE,
  ],
  [
    'open flame',
    /\bcandles?\b|\boil lamps?\b|\bgas lamps?\b|\bopen flame\b|\btorch(?:es)?\b/,
    'No flame without the authority’s approval.',
    'the lead and the fire authority',
    MEMORY,
  ],
  [
    'electrified',
    /\belectri\w+|\bchandeliers?\b|\blamps?\b|\bneon\b|\bplug(?:ged)?\b/,
    'Unrewired it stays unplugged.',
    'a licensed electrician',
    NO_SOURCE,
  ],
];

/** All that a record and its planned light warn of; empty where nothing is known to be amiss. Never throws on text. */
export function recordCautionsOf(facts: RecordFacts, profile: PracticeProfile = DEFAULT_PROFILE): readonly Caution[] {
  const words = `${facts.materials} ${facts.about}`.toLowerCase();
  const [from, to] = [facts.earliestYear ?? -Infinity, facts.latestYear ?? Infinity];
  const cautions: Caution[] = HAZARDS.filter(
    ([kind, pattern, , , , years]) =>
      pattern.test(words) &&
      (years === undefined || (from <= years[1] && to >= years[0])) &&
      // What the museum has held has been through this.
      (kind !== 'pests' || facts.held !== 'held'),
  ).map(([kind, , what, ask, source]) => ({ kind, what, ask, source }));
  if (facts.glazed && /\bpastels?\b|\bcharcoal\b|\bchalks?\b/.test(words)) {
    const what = 'Acrylic is static and lifts friable pigment. Find out what glazes it.';
    cautions.push({ kind: 'glazing', what, ask: 'the conservator', source: NO_SOURCE });
  }
  const small = facts.sizeKnown && Math.max(facts.widthMm, facts.heightMm) <= limitOf(profile, 'smallMm');
  if (facts.placed && small && !facts.cased) {
    const what = 'It is small and within reach. Tether or case it; count it daily; ask the insurer.';
    cautions.push({ kind: 'small and open', what, ask: 'the registrar', source: profile.limits.smallMm.source });
  }
  return [...cautions, ...(facts.placed ? lightCautions(facts, profile) : [])];
}

function lightCautions(facts: RecordFacts, profile: PracticeProfile): Caution[] {
  if (facts.materials.trim() === '') return [unknown('Its materials are not recorded, so its light can’t be judged.')];
  const read = lightClassOf(facts.materials);
  if (read.lightClass === null) return [unknown('Its materials say no light class that is known here.')];
  const cautions: Caution[] = [];
  if (read.askConservator) {
    const because =
      read.unread.length > 0
        ? `“${read.unread.slice(0, 4).join(', ')}” is not known here`
        : `${read.because[0]} is to be tested`;
    cautions.push(unknown(`Taken as ${read.lightClass}, but ${because}.`));
  }
  if (facts.exposures === undefined) return cautions;
  const { limits, over, tooBright, years } = lightBudgetOf(
    { lightClass: read.lightClass, exposures: facts.exposures },
    profile,
  );
  if (limits === null || !(over || tooBright)) return cautions;
  const bright = tooBright ? [`it is lit above ${limits.lux} lux`] : [];
  const dose = over ? [`its light takes ${years.toFixed(1)} years’ budget of one year`] : [];
  const what = `As ${read.lightClass} (${read.because[0]}), ${[...bright, ...dose].join(' and ')}.`;
  cautions.push({
    kind: 'too much light',
    what,
    ask: 'the conservator',
    source: profile.limits[`lux${read.lightClass as 'R1'}`].source,
  });
  return cautions;
}

function unknown(what: string): Caution {
  return { kind: 'light class not known', what, ask: 'the conservator', source: 'CIE 157:2004' };
}
