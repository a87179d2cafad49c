import { deltaE2000 } from './differences.ts';
import type { LabD65 } from './lab.ts';
import { chromaOf, labD65FromLinear, linearLightOf } from './spaces.ts';
import { DEFICIENCIES, type Deficiency } from './vision-tables.ts';

/** An eye: which cones, and how far, from 0 (as most people's) to 1 (missing altogether). */
export interface Eye {
  readonly kind: Deficiency;
  readonly severity: number;
}

/**
 * What a CIELAB D65 colour looks like to such an eye, as the colour that looks so to most people's: Machado et al. 2009 on
 * linear light, between its tabled severities by straight lines. RangeError for a severity outside 0..1.
 */
export function seenByEye(lab: LabD65, { kind, severity }: Eye): LabD65 {
  if (!(severity >= 0 && severity <= 1)) throw new RangeError(`seenByEye: severity ${severity} is not within 0 to 1`);
  const tables = DEFICIENCIES[kind];
  const step = Math.min(tables.length - 2, Math.floor(severity * 10));
  const along = severity * 10 - step;
  const weight = (i: number): number => tables[step]![i]! * (1 - along) + tables[step + 1]![i]! * along;
  const [r, g, b] = linearLightOf(lab);
  const channel = (row: number): number => weight(row) * r + weight(row + 1) * g + weight(row + 2) * b;
  return labD65FromLinear(channel(0), channel(3), channel(6));
}

/** Two colours that most people tell apart by hue and some cannot. */
export interface HueAlone {
  /** ΔE00 for most eyes, and for each eye to which the two come too close. */
  readonly deltaE: number;
  readonly eyes: readonly { readonly kind: Deficiency; readonly deltaE: number }[];
  /** A sentence, without figures. */
  readonly words: string;
}

// The wall's own colour ends at ΔE00 10; under this step of L* and of C* nothing but hue is left to part two colours.
const APART = 10;
const LIKE_LIGHTNESS = 10;
const LIKE_CHROMA = 15;

const WITHOUT: Readonly<Record<Deficiency, string>> = {
  protan: 'without long-wave (red) cones',
  deutan: 'without middle-wave (green) cones',
  tritan: 'without short-wave (blue) cones',
};

/**
 * Whether a difference between two CIELAB D65 colours rests on hue alone: none where they are close or where lightness or
 * chroma part them too and no eye of severity 1 loses them. WCAG 2.2, 1.4.1: colour is never the only cue.
 */
export function hueAloneOf(one: LabD65, other: LabD65): HueAlone | null {
  const deltaE = deltaE2000(one, other);
  if (deltaE < APART) return null;
  const eyes = (['protan', 'deutan', 'tritan'] as const)
    .map((kind) => ({ kind, deltaE: deltaE2000(...seenBoth(one, other, kind)) }))
    .filter((eye) => eye.deltaE < APART);
  const like = Math.abs(one.L - other.L) < LIKE_LIGHTNESS && Math.abs(chromaOf(one) - chromaOf(other)) < LIKE_CHROMA;
  if (eyes.length === 0 && !like) return null;
  const lost = eyes.map(({ kind }) => WITHOUT[kind]).join(' or ');
  const words = like
    ? `Only hue parts them${lost && `; to an eye ${lost} they are all but the same`}.`
    : `An eye ${lost} hardly tells them apart.`;
  return { deltaE, eyes, words };
}

function seenBoth(one: LabD65, other: LabD65, kind: Deficiency): [LabD65, LabD65] {
  return [seenByEye(one, { kind, severity: 1 }), seenByEye(other, { kind, severity: 1 })];
}
