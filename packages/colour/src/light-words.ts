import { deltaE2000 } from './differences.ts';
import type { LabD65 } from './lab.ts';
import type { Light } from './lights.ts';
import { type Surface, seenUnder } from './seen.ts';
import { chromaOf } from './spaces.ts';
import { kelvinOf, whiteOf } from './tristimulus.ts';

/** How a surface changes from one light to another: both colours as seen (CIELAB D65), ΔE00 between them, and words. */
export interface LightShift {
  readonly from: LabD65;
  readonly to: LabD65;
  readonly deltaE: number;
  /** Follows the thing's name: "turns darker and redder". */
  readonly words: string;
}

// Under 1 nobody sees it, under 2.5 only side by side (practice: 0–1 unseen, 1–2 a trained eye, 2–3.5 anyone).
const UNSEEN = 1;
const SLIGHT = 2.5;
const STRONG = 6;

/** What another light does to a surface, for an eye settled to each. */
export function lightShiftOf(surface: Surface, before: Light, after: Light): LightShift {
  const from = seenUnder(surface, before);
  const to = seenUnder(surface, after);
  const deltaE = deltaE2000(from, to);
  return { from, to, deltaE, words: shiftWordsOf(from, to, deltaE) };
}

function shiftWordsOf(from: LabD65, to: LabD65, deltaE: number): string {
  if (deltaE < UNSEEN) return 'stays as it is';
  const how = turnsOf(from, to).join(' and ');
  if (deltaE < SLIGHT) return `turns a little ${how}`;
  return deltaE < STRONG ? `turns ${how}` : `turns clearly ${how}`;
}

/** The steps from one colour to another that an eye would name, the largest two: "lighter", "duller", "redder" … */
export function turnsOf(from: LabD65, to: LabD65): string[] {
  const lighter = to.L - from.L;
  const stronger = chromaOf(to) - chromaOf(from);
  const [a, b] = [to.a - from.a, to.b - from.b];
  const across = Math.sqrt(Math.max(0, a * a + b * b - stronger * stronger));
  // A grey has no strength or hue to change: whichever way it goes is a tint.
  const isGrey = chromaOf(from) < 6;
  const steps: [number, string][] = [
    [Math.abs(lighter), lighter > 0 ? 'lighter' : 'darker'],
    [isGrey ? 0 : Math.abs(stronger), stronger > 0 ? 'stronger in colour' : 'duller'],
    [isGrey ? Math.hypot(a, b) : across, MORE[tintOf(a, b)]],
  ];
  const seen = steps.sort((p, q) => q[0] - p[0]).filter(([size], i) => i === 0 || size > steps[0]![0] / 3);
  return seen.slice(0, 2).map(([, word]) => word);
}

/** The side of CIELAB that a*, b* point to, in quarters drawn so that they end where eyes change the word. */
export function tintOf(a: number, b: number): 'red' | 'yellow' | 'green' | 'blue' {
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  if (degrees > -35 && degrees <= 50) return 'red';
  if (degrees > 50 && degrees <= 125) return 'yellow';
  return degrees > 125 || degrees <= -145 ? 'green' : 'blue';
}

const MORE = { red: 'redder', yellow: 'yellower', green: 'greener', blue: 'bluer' } as const;

/** One lamp against another in a sentence, by the difference of their mireds (10⁶ / K), which eyes go by. */
export function lampsInWords(gallery: Light, studio: Light): string {
  const [here, there] = [gallery, studio].map((light) => 1e6 / kelvinOf(whiteOf(light, '2°'))) as [number, number];
  const warmer = here - there;
  const size = Math.abs(warmer);
  // About 5 mired is the least an eye tells side by side (common practice in lighting filters, no source).
  const step =
    size < 5
      ? 'as warm as'
      : `${size < 40 ? 'a little ' : size > 110 ? 'much ' : ''}${warmer > 0 ? 'warmer than' : 'cooler than'}`;
  return `The gallery’s ${gallery.name} is ${step} the studio’s ${studio.name}.`;
}
