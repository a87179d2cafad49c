/** What of a picture is the thing: its studio ground left out and cut off round it, or as a person says. */
import { type CutOutChoice, cutOutOf } from '@enfilade/colour/cut-out';
import { OPAQUE_FROM_ALPHA, type Pixels } from '@enfilade/colour/histogram';
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

/** Whether there is a ground is seen at the first size; its outline is drawn at the second. */
const LOOK_PX = 256;
const OUTLINE_PX = 512;
// Own rule: a cut-out surer than this is shown; else the picture stays whole and says why.
const SURE_ENOUGH = 0.4;

const CHOICES: Readonly<Record<PictureCut, CutOutChoice>> = {
  'leave out': 'leave out',
  keep: 'keep',
  whole: 'whole picture',
};

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

/** The thing in a picture; `cut` is a person's word on it. */
export async function cutFrom(whole: Raster, cut: PictureCut | null): Promise<Cut> {
  if (cut === 'whole') return { raster: opaque(whole), cutOut: said('whole', cut) };
  if (cut === 'leave out') {
    const found = await outlined(whole, 'leave out');
    if (found === null) return { raster: whole, cutOut: said('whole', cut) };
    const { raster, confidence, doubts } = found;
    return { raster, cutOut: { how: 'left out', confidence, doubts, choice: cut } };
  }
  const look = cutOutOf(pixelsOf(await reduced(whole, LOOK_PX)));
  const kept = (how: CutOutFact['how']): Cut => {
    if (cut !== null) return { raster: whole, cutOut: said(how, cut) };
    return { raster: whole, cutOut: { how, confidence: look.confidence, doubts: look.doubts } };
  };
  if (look.made !== 'left out') return kept(look.made === 'came cut out' ? 'transparent' : 'whole');
  const found = await outlined(whole);
  if (found === null || found.confidence < SURE_ENOUGH) {
    if (cut !== null) return kept('whole');
    const doubts = found?.doubts ?? ['Nothing stands out from the ground.'];
    return { raster: whole, cutOut: { how: 'whole', confidence: 1 - (found?.confidence ?? 0), doubts } };
  }
  const { raster, bounds, confidence, doubts } = found;
  if (cut === 'keep') return { raster: await within(whole, bounds), cutOut: said('whole', cut) };
  return { raster, cutOut: { how: 'left out', confidence, doubts } };
}

function said(how: CutOutFact['how'], choice: PictureCut): CutOutFact {
  return { how, confidence: 1, doubts: [], choice };
}

interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

interface Outlined {
  readonly raster: Raster;
  readonly bounds: Bounds;
  readonly confidence: number;
  readonly doubts: readonly string[];
}

/** The thing by its mask, cut off round it; null when nothing is left. */
async function outlined(whole: Raster, choice?: PictureCut): Promise<Outlined | null> {
  const small = await reduced(whole, OUTLINE_PX);
  const { mask, confidence, doubts } = cutOutOf(
    pixelsOf(small),
    ...(choice === undefined ? [] : ([CHOICES[choice]] as const)),
  );
  const { width, height } = whole.info;
  const size = { width: small.info.width, height: small.info.height };
  const alpha =
    size.width === width && size.height === height
      ? mask
      : await sharp(mask, { raw: { ...size, channels: 1 } })
          .resize(width, height, { fit: 'fill', kernel: 'cubic' })
          .toColourspace('b-w')
          .raw()
          .toBuffer();
  const bounds = boundsOf(alpha, width, height);
  if (bounds === null) return null;
  const data = Buffer.from(whole.data);
  for (let i = 0, at = 3; i < width * height; i++, at += 4) data[at] = Math.min(data[at] ?? 0, alpha[i] ?? 0);
  return { raster: await within({ data, info: whole.info }, bounds), bounds, confidence, doubts };
}

function boundsOf(alpha: ArrayLike<number>, width: number, height: number): Bounds | null {
  let [left, right, top, bottom] = [width, -1, height, -1];
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if ((alpha[i] ?? 0) < OPAQUE_FROM_ALPHA) continue;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  return right < 0 ? null : { left, top, width: right - left + 1, height: bottom - top + 1 };
}

async function within(raster: Raster, bounds: Bounds): Promise<Raster> {
  if (bounds.width === raster.info.width && bounds.height === raster.info.height) return raster;
  return from(raster).extract(bounds).raw().toBuffer({ resolveWithObject: true });
}

function opaque({ data, info }: Raster): Raster {
  const all = Buffer.from(data);
  for (let at = 3; at < all.length; at += 4) all[at] = 255;
  return { data: all, info };
}
