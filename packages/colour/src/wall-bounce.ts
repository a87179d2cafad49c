import { adapted } from './adaptation.ts';
import { type Box, boxFormFactors, FACES, type Face, faceAreas } from './box-form-factors.ts';
import { labFromXyz, type Xyz } from './cielab.ts';
import { deltaE2000 } from './differences.ts';
import type { LabD65 } from './lab.ts';
import { tintOf } from './light-words.ts';
import { type Light, lightOf } from './lights.ts';
import { likelyReflectanceOf } from './likely-reflectance.ts';
import { lightOnFaces } from './radiosity.ts';
import type { Surface } from './seen.ts';
import { lrvOf } from './spaces.ts';
import { whiteOf, xyzOf } from './tristimulus.ts';

/** One face of a room: its paint, and parts of it that are something else; an opening without a surface returns nothing. */
export interface BounceFace {
  readonly surface: Surface;
  readonly parts?: readonly { readonly areaMm2: number; readonly surface?: Surface }[];
  /** Light from the lamps themselves, against 1 on an evenly lit wall. */
  readonly direct: number;
}

export type BounceRoom = Box & Readonly<Record<Face, BounceFace>>;

/** What coloured faces throw on a white mount on one face. */
export interface Bounce {
  readonly face: Face;
  /** The mount as an eye settled to the lamp sees it (CIELAB D65), and its ΔE00 from the same mount in the lamp's light alone. */
  readonly mount: LabD65;
  readonly deltaE: number;
  /** Share of the light on this face that comes off other faces, 0..1. */
  readonly share: number;
  /** The faces that give most of the tint, about alike; none where there is no tint to speak of. */
  readonly from: readonly Face[];
  /** Follows "a white mount here": "takes some red, most of it from the left wall". */
  readonly words: string;
}

/** What the figures take for granted, as sentences to stand beside them. */
export const BOUNCE_ASSUMPTIONS: readonly string[] = [
  'Every face is matt and evenly lit, and what stands in the room is left out.',
  'The figure is the mean of the whole wall: in a corner beside a coloured wall it is more.',
  'The eye is settled to the lamps; one that settles to the room sees less of it.',
];

/** Light on walls, floor and ceiling from lamps aimed at the walls: common practice, no source. */
export const DIRECT_BY_SPOTS: Readonly<Record<Face, number>> = {
  foot: 1,
  right: 1,
  head: 1,
  left: 1,
  floor: 0.5,
  ceiling: 0.05,
};

const MOUNT_SHARE = 0.9;
const D65_WHITE = whiteOf(lightOf('D65'), '2°');

/** Reflectance on the grid; for a colour no surface can have, of the nearest duller one that some can. */
function reflectanceOf({ lab, reflectance }: Surface): Float64Array {
  if (reflectance) return reflectance;
  for (let chroma = 0.95; chroma > 0; chroma -= 0.05) {
    const found = likelyReflectanceOf({ L: lab.L, a: lab.a * chroma, b: lab.b * chroma });
    if (found) return found;
  }
  return new Float64Array(81).fill(Math.min(1, lrvOf(lab) / 100));
}

/** Area mean of a face's reflectances. RangeError when its parts are larger than the face. */
function meanReflectanceOf({ surface, parts = [] }: BounceFace, areaMm2: number): Float64Array {
  const taken = parts.reduce((sum, part) => sum + part.areaMm2, 0);
  if (taken > areaMm2 * (1 + 1e-9))
    throw new RangeError(`wallBounceOf: parts of ${taken} mm² on a face of ${areaMm2} mm²`);
  const mean = reflectanceOf(surface).map((share) => share * Math.max(0, 1 - taken / areaMm2));
  for (const part of parts) {
    if (!part.surface) continue;
    const reflectance = reflectanceOf(part.surface);
    for (let i = 0; i < mean.length; i++) mean[i]! += (reflectance[i]! * part.areaMm2) / areaMm2;
  }
  return mean;
}

/**
 * What each wall's white mounts take from the colours of the others, under a lamp; faces in the order of `FACES`.
 * `nameOf`: what a face is called in the words.
 */
export function wallBounceOf(
  room: BounceRoom,
  light: Light,
  nameOf: (face: Face) => string = (face) => (face === 'floor' || face === 'ceiling' ? face : `${face} wall`),
): Bounce[] {
  const areas = faceAreas(room);
  const factors = boxFormFactors(room);
  const reflectances = FACES.map((face, i) => meanReflectanceOf(room[face], areas[i]!));
  const direct = FACES.map((face) => room[face].direct);
  const on = lightOnFaces(factors, reflectances, direct);
  const white = whiteOf(light, '2°');
  const mountUnder = (arriving: Float64Array): LabD65 => mountOf(xyzOf(arriving, light, '2°'), white);
  const clean = mountOf(white, white);
  // With one face at a time made grey at its own lightness, what of the tint is gone was that face's.
  const greyed = FACES.map((_, j) => {
    const grey = new Float64Array(81).fill(xyzOf(reflectances[j]!, light, '2°')[1] / 100);
    return lightOnFaces(
      factors,
      reflectances.map((each, k) => (k === j ? grey : each)),
      direct,
    );
  });
  return FACES.map((face, i) => {
    const mount = mountUnder(on[i]!);
    const deltaE = deltaE2000(mount, clean);
    const left = FACES.map((_, j) => deltaE2000(mountUnder(greyed[j]![i]!), clean));
    const gains = left.map((without) => deltaE - without);
    const most = Math.max(...gains);
    const from = deltaE < UNSEEN || most <= 0 ? [] : FACES.filter((_, j) => gains[j]! >= ALIKE * most);
    const all = xyzOf(on[i]!, light, '2°')[1] / 100;
    return {
      face,
      mount,
      deltaE,
      share: all > 0 ? 1 - direct[i]! / all : 0,
      from,
      words: bounceWordsOf(mount, deltaE, from.map(nameOf)),
    };
  });
}

/** The mount in light of this colour, at its own lightness: brightness is the lamps' affair, tint is the walls'. */
function mountOf(xyz: Xyz, white: Xyz): LabD65 {
  const scale = xyz[1] > 0 ? (100 * MOUNT_SHARE) / xyz[1] : 0;
  const [L, a, b] = labFromXyz(
    adapted([xyz[0] * scale, xyz[1] * scale, xyz[2] * scale], white, D65_WHITE, 'CAT16'),
    D65_WHITE,
  );
  return { L, a, b };
}

// As for paint (practice, section 6): under 1 unseen, to 2 for a trained eye, to 3.5 for anyone, beyond 5 another colour.
const UNSEEN = 1;
// A face that gives this much of what the first one gives is named beside it.
const ALIKE = 0.7;

function bounceWordsOf(mount: LabD65, deltaE: number, from: readonly string[]): string {
  if (deltaE < UNSEEN) return 'stays white';
  const size = deltaE < 2 ? 'takes a breath of' : deltaE < 5 ? 'takes some' : 'turns clearly towards';
  return `${size} ${tintOf(mount.a, mount.b)}${sourcesOf(from)}`;
}

function sourcesOf(from: readonly string[]): string {
  if (from.length > 2) return ', from all round';
  return from.length === 0 ? '' : `, most of it from ${from.map((name) => `the ${name}`).join(' and ')}`;
}
