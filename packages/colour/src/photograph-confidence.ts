import { assertPixels, type Mask, OPAQUE_FROM_ALPHA, type Pixels } from './histogram.ts';

/** What is known of how a picture was taken; what is left out is not known. */
export interface PhotographFacts {
  /** Pixels as the file holds them, before it was made smaller. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Name of the embedded colour profile; null when the file has none. */
  readonly profile?: string | null;
  /** Whether a colour target was in the picture and its colours were set by it. */
  readonly target?: boolean;
}

/** How far a photograph's colours are to be believed: 0..1, and why not, in sentences. */
export interface PhotographConfidence {
  readonly confidence: number;
  readonly doubts: readonly string[];
}

// Common practice, no source: each doubt takes its part, for they have nothing to do with one another.
const TINY_PX = 200;
const CLIPPED_FROM = 0.02;
const WITHOUT_PROFILE = 0.8;
const WITHOUT_TARGET = 0.8;
const CLIPPED = 0.7;
const TINY = 0.6;

/** How far the colours of a photograph can be believed; `part` is the thing in it, all of it unless given. */
export function photographConfidenceOf(pixels: Pixels, facts: PhotographFacts, part?: Mask): PhotographConfidence {
  assertPixels(pixels, part);
  const doubts: string[] = [];
  let confidence = 1;
  const doubt = (factor: number, sentence: string): void => {
    confidence *= factor;
    doubts.push(sentence);
  };
  if (!facts.profile) doubt(WITHOUT_PROFILE, 'The file names no colour profile: it is read as sRGB.');
  if (!facts.target)
    doubt(WITHOUT_TARGET, 'No colour target was in the picture: its white and its lamp are taken on trust.');
  const { blown, blocked } = clippedOf(pixels, part);
  if (blown >= CLIPPED_FROM) doubt(CLIPPED, `Its lights are burnt out over ${percentOf(blown)} of it.`);
  if (blocked >= CLIPPED_FROM) doubt(CLIPPED, `Its darks are blocked up over ${percentOf(blocked)} of it.`);
  if (Math.min(facts.widthPx, facts.heightPx) < TINY_PX) {
    doubt(TINY, `It is small, ${facts.widthPx} × ${facts.heightPx} px: a fine edge is not in it.`);
  }
  return { confidence, doubts };
}

function percentOf(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** Shares, 0..1, of the opaque pixels that the camera could not hold: some channel at 255, or all at 0. */
function clippedOf({ data }: Pixels, part?: Mask): { blown: number; blocked: number } {
  let n = 0;
  let blown = 0;
  let blocked = 0;
  for (let at = 0, pixel = 0; at < data.length; at += 4, pixel++) {
    if (data[at + 3]! < OPAQUE_FROM_ALPHA || (part && part[pixel] === 0)) continue;
    n++;
    const [r, g, b] = [data[at]!, data[at + 1]!, data[at + 2]!];
    if (r === 255 || g === 255 || b === 255) blown++;
    if (r === 0 && g === 0 && b === 0) blocked++;
  }
  return n === 0 ? { blown: 0, blocked: 0 } : { blown: blown / n, blocked: blocked / n };
}
