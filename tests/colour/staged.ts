import type { Pixels } from '@enfilade/colour/histogram';
import type { LabD65 } from '@enfilade/colour/lab';
import { srgbFromLabD65 } from '@enfilade/colour/spaces';
import { recordNamed } from '@enfilade/server/demo/checklist';
import { pictureOf } from '@enfilade/server/demo/drawing/picture';
import sharp from 'sharp';
import { randomOf } from './samples.ts';

/** How a thing is photographed: the ground at a place (u, v over 0..1), the shadow's strength 0..1, the grain in L*. */
export interface Staging {
  readonly ground: (u: number, v: number) => LabD65;
  readonly shadow: number;
  readonly grain: number;
}

export const STAGINGS: Readonly<Record<string, Staging>> = {
  'white paper': { ground: () => ({ L: 96, a: 0, b: 1 }), shadow: 0, grain: 0.6 },
  'grey paper': { ground: () => ({ L: 66, a: 0, b: -1 }), shadow: 0, grain: 1 },
  'a sweep from light to dark': { ground: (_, v) => ({ L: 62 + 30 * v, a: 0, b: 2 }), shadow: 0.25, grain: 0.8 },
  'white with a soft shadow': { ground: (u) => ({ L: 93 - 5 * u * u, a: 0.5, b: 2 }), shadow: 0.5, grain: 0.8 },
};

const LONGEST = 300;
const MARGIN = 54;

/** A drawn record on a studio ground, as a camera's JPEG would have it, and the true mask of 255 and 0. */
export async function staged(
  id: string,
  { ground, shadow, grain }: Staging,
  seed = 1,
): Promise<Pixels & { truth: Uint8Array }> {
  const svg = Buffer.from(pictureOf(recordNamed(id), 0, LONGEST).svg);
  const thing = sharp(svg)
    .ensureAlpha()
    .extend({ top: MARGIN, bottom: MARGIN, left: MARGIN, right: MARGIN, background: { r: 0, g: 0, b: 0, alpha: 0 } });
  const { data, info } = await thing.raw().toBuffer({ resolveWithObject: true });
  const { width, height } = info;
  const area = width * height;
  const alpha = Buffer.from(Uint8Array.from({ length: area }, (_, i) => data[i * 4 + 3]!));
  const cast = await sharp(alpha, { raw: { width, height, channels: 1 } })
    .blur(12)
    .toColourspace('b-w')
    .raw()
    .toBuffer();
  const random = randomOf(seed);
  const flat = Buffer.alloc(area * 3);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const lab = ground(x / (width - 1), y / (height - 1));
      // The lamp stands to the upper left.
      const from = Math.max(0, y - 10) * width + Math.max(0, x - 8);
      const dark = (shadow * cast[from]!) / 255;
      const { r, g, b } = srgbFromLabD65({
        L: lab.L * (1 - 0.55 * dark) + (random() - 0.5) * 2 * grain,
        a: lab.a * (1 - dark),
        b: lab.b * (1 - dark),
      });
      const a = data[i * 4 + 3]! / 255;
      [r, g, b].forEach((under, c) => {
        flat[i * 3 + c] = Math.round(Math.min(255, Math.max(0, under)) * (1 - a) + data[i * 4 + c]! * a);
      });
    }
  }
  const jpeg = await sharp(flat, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 90 })
    .toBuffer();
  const taken = await sharp(jpeg).ensureAlpha().raw().toBuffer();
  return {
    data: new Uint8ClampedArray(taken),
    width,
    height,
    truth: Uint8Array.from(alpha, (v) => (v >= 128 ? 255 : 0)),
  };
}

/** Overlap of two masks: what both hold over what either holds. */
export function overlapOf(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < one.length; i++) {
    if (one[i] !== 0 && other[i] !== 0) both++;
    if (one[i] !== 0 || other[i] !== 0) either++;
  }
  return both / Math.max(1, either);
}
