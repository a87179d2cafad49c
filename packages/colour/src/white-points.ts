import { type Adaptation, adapted } from './adaptation.ts';
import { labFromXyz, type Xyz, xyzFromLab } from './cielab.ts';
import type { LabD65 } from './lab.ts';
import type { Observer } from './observers.ts';

/** Tristimulus values of CIE illuminants with Y = 100 (ASTM E308, 5 nm; typed from memory, held to our own sums to 0.03). */
const WHITE_POINTS = {
  A: { '2°': [109.85, 100, 35.585], '10°': [111.144, 100, 35.2] },
  C: { '2°': [98.074, 100, 118.232], '10°': [97.285, 100, 116.145] },
  D50: { '2°': [96.422, 100, 82.521], '10°': [96.72, 100, 81.427] },
  D55: { '2°': [95.682, 100, 92.149], '10°': [95.799, 100, 90.926] },
  D65: { '2°': [95.047, 100, 108.883], '10°': [94.811, 100, 107.304] },
  D75: { '2°': [94.972, 100, 122.638], '10°': [94.416, 100, 120.641] },
  F2: { '2°': [99.186, 100, 67.393], '10°': [103.279, 100, 69.027] },
  F7: { '2°': [95.041, 100, 108.747], '10°': [95.792, 100, 107.686] },
  F11: { '2°': [100.962, 100, 64.35], '10°': [103.863, 100, 65.607] },
} as const satisfies Readonly<Record<string, Readonly<Record<Observer, Xyz>>>>;

/** An illuminant that a reader may state its L*a*b* under. */
export type IlluminantName = keyof typeof WHITE_POINTS;

/** What L*a*b* is measured against; never left unsaid. */
export interface WhitePoint {
  readonly illuminant: IlluminantName;
  readonly observer: Observer;
}

/** L*a*b* as a reader states it, with its own white point. */
export interface MeasuredLab extends WhitePoint {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** Tristimulus values of a white point, Y = 100. */
export function whiteAt({ illuminant, observer }: WhitePoint): Xyz {
  return WHITE_POINTS[illuminant][observer];
}

/** 'D50/2°': a white point as it is written beside a measurement. */
export function whitePointName({ illuminant, observer }: WhitePoint): string {
  return `${illuminant}/${observer}`;
}

/** The white point of texts as files write them ("D50", "2_Degree", "10 degree"); null when either is not known here. */
export function whitePointFrom(illuminant: string, observer: string): WhitePoint | null {
  const name = illuminant
    .trim()
    .toUpperCase()
    .replace(/^FL?(?=\d)/, 'F');
  const said = observer.trim();
  // A year names the observer too: 1931 is the 2° one, 1964 the 10° one.
  const angle = /1931/.test(said) ? '2' : /1964/.test(said) ? '10' : /^\D{0,20}(2|10)(?:\s|_|°|deg|$)/i.exec(said)?.[1];
  if (!Object.hasOwn(WHITE_POINTS, name) || angle === undefined) return null;
  return { illuminant: name as IlluminantName, observer: angle === '2' ? '2°' : '10°' };
}

const D65_2 = WHITE_POINTS.D65['2°'];

/** CIELAB D65/2° of measured L*a*b*: as it stands, or adapted from its own white point by the transform named. */
export function labD65FromMeasured(lab: MeasuredLab, by: Adaptation): LabD65 {
  if (lab.illuminant === 'D65' && lab.observer === '2°') return { L: lab.L, a: lab.a, b: lab.b };
  const white = whiteAt(lab);
  const [L, a, b] = labFromXyz(adapted(xyzFromLab([lab.L, lab.a, lab.b], white), white, D65_2, by), D65_2);
  return { L, a, b };
}
