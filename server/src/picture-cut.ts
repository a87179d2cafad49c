/** What of a picture is the thing: its studio ground left out and cut off round it, or as a person says. */
import { type CutOut, type CutOutChoice, cutOutOf } from '@enfilade/colour/cut-out';
import { stepTowards } from '@enfilade/colour/fewer-pixels';
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
  const times = stepTowards(Math.ceil(Math.max(width, height) / step), LOOK_PX);
  const found = cutOutOf(pixelsOf(whole), choice, times, step);
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
  const soft = mask === null ? null : softMaskOf(mask, step, info.width, info.height);
  for (let y = 0; y < height; y++) {
    const start = (top + y) * info.width + left;
    data.copyWithin(y * width * 4, start * 4, (start + width) * 4);
    if (soft !== null) lowerAlpha(data, y * width, width, soft, left, top + y);
  }
  return { data: data.subarray(0, width * height * 4), info: { ...info, width, height } };
}

/** A mask as it is read with soft edges: straight from the middle of one of its pixels to the next. */
interface SoftMask {
  readonly mask: Uint8Array;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
  /** Of each column and of one past the last: the picture's first pixel right of its middle. */
  readonly starts: Int32Array;
  /** Room for one row of the picture: the mask's value at each column. */
  readonly values: Float32Array;
}

function softMaskOf(mask: Uint8Array, step: number, width: number, height: number): SoftMask {
  const [columns, rows] = [Math.ceil(width / step), Math.ceil(height / step)];
  const starts = Int32Array.from({ length: columns + 1 }, (_, column) =>
    column === columns ? width : Math.ceil((column + 0.5) * step - 0.5),
  );
  return { mask, step, columns, rows, starts, values: new Float32Array(columns) };
}

/** Lowers the alpha of `width` pixels from the `first` on to the mask's at row y, column x and on; what is clear is left no colour. */
function lowerAlpha(data: Buffer, first: number, width: number, soft: SoftMask, x: number, y: number): void {
  const { step, columns, starts, values } = soft;
  rowInto(values, soft, y);
  const end = x + width;
  const shift = first - x;
  for (let column = -1, at = x; at < end; column++) {
    const from = values[Math.max(0, column)]!;
    if (from === 255 || from === 0) {
      // As far as all of it is the thing, or nothing, the pixels are told together.
      let last = column;
      while (last < columns && values[Math.min(columns - 1, last + 1)] === from) last++;
      if (last > column) {
        const next = Math.min(end, starts[Math.min(columns, last)]!);
        if (from === 0 && next > at) data.fill(0, 4 * (at + shift), 4 * (next + shift));
        at = Math.max(at, next);
        column = last - 1;
        continue;
      }
    }
    const to = values[Math.min(columns - 1, column + 1)]!;
    for (const next = Math.min(end, starts[column + 1]!); at < next; at++) {
      const most = Math.round(from + (to - from) * ((at + 0.5) / step - 0.5 - column));
      const alpha = 4 * (at + shift) + 3;
      if (data[alpha]! > most) data[alpha] = most;
    }
  }
}

/** The mask's values along a row of the picture, between the two of its own rows about it. */
function rowInto(values: Float32Array, { mask, step, columns, rows }: SoftMask, y: number): void {
  const at = Math.max(0, (y + 0.5) / step - 0.5);
  const low = Math.min(rows - 1, Math.floor(at));
  const share = at - low;
  const [upper, lower] = [low * columns, Math.min(rows - 1, low + 1) * columns];
  for (let x = 0; x < columns; x++) {
    const value = mask[upper + x]!;
    values[x] = value + (mask[lower + x]! - value) * share;
  }
}

function opaque(raster: Raster): Raster {
  for (let at = 3; at < raster.data.length; at += 4) raster.data[at] = 255;
  return raster;
}
