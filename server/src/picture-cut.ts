/** What of a picture is the thing: its studio ground left out and cut off round it, or as a person says. */
import { type CutOut, type CutOutChoice, cutOutOf } from '@enfilade/colour/cut-out';
import { fewerPixelsOf, stepTowards } from '@enfilade/colour/fewer-pixels';
import type { Pixels } from '@enfilade/colour/histogram';
import type { PictureCut } from '@enfilade/shared/picture-cuts';
import type { CutOutFact } from '@enfilade/shared/protocol';
import sharp, { type OutputInfo, type Sharp } from 'sharp';

/** Decoded: sRGB with alpha. */
export interface Raster {
  readonly data: Buffer;
  readonly info: Pick<OutputInfo, 'width' | 'height' | 'channels'>;
}

export interface Cut {
  /** The thing, cut off round it. */
  readonly raster: Raster;
  readonly cutOut: CutOutFact;
}

/** Whether there is a ground is seen at about the first size; its outline is drawn at about the second. */
const LOOK_PX = 256;
const OUTLINE_PX = 512;
// Own rule: a cut-out surer than this is shown; else the picture stays whole and says why.
const SURE_ENOUGH = 0.4;

export function from({ data, info }: Raster): Sharp {
  return sharp(data, { raw: { width: info.width, height: info.height, channels: info.channels } });
}

/** At most so many pixels on the longer side, never enlarged. */
export async function reduced(raster: Raster, px: number): Promise<Raster> {
  return from(raster)
    .resize(px, px, { fit: 'inside', withoutEnlargement: true })
    .raw()
    .toBuffer({ resolveWithObject: true });
}

export function pixelsOf({ data, info }: Raster): Pixels {
  return {
    data: new Uint8ClampedArray(data.buffer, data.byteOffset, data.length),
    width: info.width,
    height: info.height,
  };
}

/** The thing in a picture, in the bytes of `whole`, which is void from then on; `cut` is a person's word on it. */
export function cutFrom(whole: Raster, cut: PictureCut | null): Cut {
  if (cut === 'whole') return { raster: opaque(whole), cutOut: said('whole', cut) };
  const found = outlined(whole, cut === 'leave out' ? cut : undefined);
  const { made, confidence, doubts, shape } = found;
  if (cut === 'leave out') {
    if (shape === null) return { raster: whole, cutOut: said('whole', cut) };
    return { raster: within(whole, shape), cutOut: { how: 'left out', confidence, doubts, choice: cut } };
  }
  const kept = (how: CutOutFact['how'], sure: number, why: readonly string[]): Cut => {
    return { raster: whole, cutOut: cut === null ? { how, confidence: sure, doubts: why } : said(how, cut) };
  };
  if (made !== 'left out') return kept(made === 'came cut out' ? 'transparent' : 'whole', confidence, doubts);
  if (shape === null || confidence < SURE_ENOUGH) return kept('whole', 1 - confidence, doubts);
  if (cut === 'keep') return { raster: within(whole, { ...shape, mask: null }), cutOut: said('whole', cut) };
  return { raster: within(whole, shape), cutOut: { how: 'left out', confidence, doubts } };
}

function said(how: CutOutFact['how'], choice: PictureCut): CutOutFact {
  return { how, confidence: 1, doubts: [], choice };
}

/** The part of a picture that the thing fills; its mask has a pixel for `step` × `step`, null where all is kept. */
interface Shape {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly mask: Uint8Array | null;
  readonly step: number;
}

/** The thing's outline; `shape` is null when nothing is left, or the picture is kept. */
function outlined(whole: Raster, choice?: CutOutChoice): Omit<CutOut, 'mask'> & { readonly shape: Shape | null } {
  const { width, height } = whole.info;
  const step = stepTowards(Math.max(width, height), OUTLINE_PX);
  const pixels = fewerPixelsOf(pixelsOf(whole), step);
  const found = cutOutOf(pixels, choice, stepTowards(Math.max(pixels.width, pixels.height), LOOK_PX));
  return { ...found, shape: found.made === 'left out' ? shapeOf(found.mask, step, width, height) : null };
}

function shapeOf(mask: Uint8Array, step: number, width: number, height: number): Shape | null {
  const columns = Math.ceil(width / step);
  let [left, right, top, bottom] = [columns, -1, -1, -1];
  for (let i = 0, y = 0; i < mask.length; i += columns, y++) {
    const first = mask.subarray(i, i + columns).indexOf(255);
    if (first < 0) continue;
    left = Math.min(left, first);
    right = Math.max(right, mask.subarray(i, i + columns).lastIndexOf(255));
    if (top < 0) top = y;
    bottom = y;
  }
  if (right < 0) return null;
  const [x, y] = [left * step, top * step];
  const size = { width: Math.min(width, (right + 1) * step) - x, height: Math.min(height, (bottom + 1) * step) - y };
  return { left: x, top: y, ...size, mask, step };
}

/** In the same bytes: a row never lands behind where it was. */
function within({ data, info }: Raster, { left, top, width, height, mask, step }: Shape): Raster {
  const lower = mask === null ? null : softAlphaOf(mask, step, info.width, info.height);
  for (let y = 0; y < height; y++) {
    const start = (top + y) * info.width + left;
    data.copyWithin(y * width * 4, start * 4, (start + width) * 4);
    lower?.(top + y, left, data.subarray(y * width * 4, (y + 1) * width * 4));
  }
  return { data: data.subarray(0, width * height * 4), info: { ...info, width, height } };
}

/** Lowers the alpha of a row's pixels to the mask's, its edges soft: straight from the middle of one pixel to the next. */
function softAlphaOf(mask: Uint8Array, step: number, width: number, height: number) {
  const [columns, rows] = [Math.ceil(width / step), Math.ceil(height / step)];
  const upright = new Float32Array(columns);
  // The first pixel that lies right of a column's middle.
  const startOf = (column: number): number => Math.ceil((column + 0.5) * step - 0.5);
  return (y: number, left: number, row: Uint8Array): void => {
    const [low, high, down] = between(y, step, rows);
    for (let x = 0; x < columns; x++) {
      const upper = mask[low * columns + x] ?? 0;
      upright[x] = upper + ((mask[high * columns + x] ?? 0) - upper) * down;
    }
    const end = left + row.length / 4;
    for (let column = -1, x = left; x < end; column++) {
      const next = Math.min(end, startOf(column + 1));
      if (next <= x) continue;
      const from = upright[Math.max(0, column)] ?? 0;
      const to = upright[Math.min(columns - 1, column + 1)] ?? 0;
      if (from === 255 && to === 255) x = next;
      for (; x < next; x++) {
        const at = 4 * (x - left) + 3;
        const most = Math.round(from + (to - from) * ((x + 0.5) / step - 0.5 - column));
        if ((row[at] ?? 0) > most) row[at] = most;
      }
    }
  };
}

/** Between which two of `count` pixels a place lies, and how far from the first to the second. */
function between(place: number, step: number, count: number): [low: number, high: number, share: number] {
  const at = Math.max(0, (place + 0.5) / step - 0.5);
  const low = Math.min(count - 1, Math.floor(at));
  return [low, Math.min(count - 1, low + 1), at - low];
}

function opaque(raster: Raster): Raster {
  for (let at = 3; at < raster.data.length; at += 4) raster.data[at] = 255;
  return raster;
}
