import { deltaE2000 } from './differences.ts';
import type { LabD65 } from './lab.ts';
import { chromaOf } from './spaces.ts';
import { seenByEye } from './vision.ts';
import type { Deficiency } from './vision-tables.ts';

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

/** How much of a work only hue parts from its wall, or some eyes do not part at all. */
export interface HueAloneShare {
  /** Share of the work's area, 0..1. */
  readonly share: number;
  /** A sentence to stand beside a reading; null where the share is not worth one. */
  readonly note: string | null;
}

// A quarter in the wall's own colour opens a hole (the reading's own threshold); so does a quarter that some eyes lose.
const WORTH_A_NOTE = 0.25;

/** The share of a work's swatches (CIELAB D65, shares in any unit) that rests on hue alone against its wall, with a note. */
export function hueAloneShareOf(
  swatches: readonly { readonly lab: LabD65; readonly share: number }[],
  wall: LabD65,
): HueAloneShare {
  const total = swatches.reduce((sum, swatch) => sum + swatch.share, 0);
  const found = swatches.flatMap(({ lab, share }) => {
    const alone = hueAloneOf(lab, wall);
    return alone ? [{ share, lost: alone.eyes.length > 0 }] : [];
  });
  const share = total > 0 ? found.reduce((sum, part) => sum + part.share, 0) / total : 0;
  if (share < WORTH_A_NOTE) return { share, note: null };
  const part = share >= 0.75 ? 'Most of it' : share >= 0.45 ? 'About half of it' : 'A good part of it';
  const eyes = found.some(({ lost }) => lost) ? ', and some eyes do not see the step' : '';
  return { share, note: `${part} is parted from the wall by hue alone${eyes}.` };
}
