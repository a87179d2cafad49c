/** One picture's bytes to what is kept of it: upright, in sRGB, its ground left out, in three sizes, its colours. */
import { open } from 'node:fs/promises';
import type { Pixels } from '@enfilade/colour/histogram';
import { photographConfidenceOf } from '@enfilade/colour/photograph-confidence';
import { ENGINE_VERSION, pictureColoursOf } from '@enfilade/colour/picture-colours';
import { silhouetteOf } from '@enfilade/grouping/silhouette';
import type { PictureCut } from '@enfilade/shared/picture-cuts';
import { ATLAS_CELL_PX, type ImageFacts } from '@enfilade/shared/protocol';
import sharp from 'sharp';
import { cutFrom, from, pixelsOf, type Raster, reduced } from './picture-cut.ts';

/** A picture that cannot be taken; the message is a sentence for the person, naming the file. */
export class PictureRefused extends Error {}

/** What made a picture's facts and thumbnails; raised whenever the same bytes would give others. */
export const PICTURES_MADE_BY = `${ENGINE_VERSION} cut-out/3 outline/1`;

export type Palette = Omit<ImageFacts, 'sha256' | 'cell'>;

export interface Ingested {
  readonly palette: Palette;
  /** WebP, at most 1024 and 256 px on the longer side, never enlarged. */
  readonly large: Uint8Array;
  readonly small: Uint8Array;
  /** RGBA, ATLAS_CELL_PX square: the picture fitted and centred. */
  readonly cell: Uint8Array;
}

const SMALL_PX = 256;
const LARGE_PX = 1024;
const WEBP = { quality: 84, alphaQuality: 90, effort: 3 } as const;

/** Two at once by the queue above; each in one thread. */
sharp.concurrency(1);
sharp.cache(false);

/** What the first bytes say, whatever the name says; null for what is not taken. */
export function kindOf(head: Uint8Array): 'jpeg' | 'png' | 'webp' | 'tiff' | null {
  const starts = (at: number, ...bytes: number[]): boolean => bytes.every((byte, i) => head[at + i] === byte);
  if (starts(0, 0xff, 0xd8, 0xff)) return 'jpeg';
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50)) return 'webp';
  // Either order of bytes; 42 is TIFF 6.0, 43 its larger sister.
  if (starts(0, 0x49, 0x49, 0x2a, 0) || starts(0, 0x49, 0x49, 0x2b, 0)) return 'tiff';
  if (starts(0, 0x4d, 0x4d, 0, 0x2a) || starts(0, 0x4d, 0x4d, 0, 0x2b)) return 'tiff';
  return null;
}

/** @throws PictureRefused, from the first bytes and the header alone: nothing is decoded yet. */
export async function assertTakeable(path: string, name: string, pixelsAtMost: number): Promise<void> {
  const file = await open(path);
  const head = new Uint8Array(16);
  const { bytesRead } = await file.read(head, 0, 16, 0);
  await file.close();
  if (bytesRead === 0) throw new PictureRefused(`“${name}” is empty: 0 bytes.`);
  if (kindOf(head) === null) throw new PictureRefused(`“${name}” is not a JPEG, PNG, WebP or TIFF picture.`);
  const { width, height } = await sharp(path, { limitInputPixels: false })
    .metadata()
    .catch(() => {
      throw new PictureRefused(`“${name}” cannot be read: it is damaged or incomplete.`);
    });
  const pixels = width * height;
  if (pixels > pixelsAtMost) {
    throw new PictureRefused(
      `“${name}” has ${megapixels(pixels)} megapixels (${width} × ${height}); at most ${megapixels(pixelsAtMost)} are taken. Save it smaller and bring it in again.`,
    );
  }
}

function megapixels(pixels: number): string {
  return (pixels / 1e6).toFixed(pixels < 10e6 ? 1 : 0);
}

async function decoded(path: string, name: string, pixelsAtMost: number): Promise<Raster> {
  try {
    return await sharp(path, { limitInputPixels: pixelsAtMost, failOn: 'error' })
      .autoOrient()
      .resize(LARGE_PX, LARGE_PX, { fit: 'inside', withoutEnlargement: true })
      .toColourspace('srgb')
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
  } catch {
    throw new PictureRefused(`“${name}” cannot be read to its end: it is damaged or incomplete.`);
  }
}

/** The outline of what is opaque, in figures; nothing where next to nothing is. */
function outlineFrom({ data, width, height }: Pixels): Pick<Palette, 'silhouette'> {
  const alpha = new Uint8Array(width * height);
  for (let i = 0; i < alpha.length; i++) alpha[i] = data[4 * i + 3] ?? 0;
  const found = silhouetteOf(alpha, width);
  if (found === undefined) return {};
  const { aspect, fill, outline } = found;
  return { silhouette: { aspect: rounded(aspect), fill: rounded(fill), outline: outline.map(rounded) } };
}

/** Four places: finer than a mask of 256 px can tell. */
function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}

/** @throws PictureRefused when the picture cannot be decoded whole. */
export async function ingest(
  path: string,
  name: string,
  pixelsAtMost: number,
  cut: PictureCut | null = null,
): Promise<Ingested> {
  const whole = await decoded(path, name, pixelsAtMost);
  const { raster, cutOut } = cutFrom(whole, cut);
  const small = await reduced(raster, SMALL_PX);
  const cell = from(small).resize(ATLAS_CELL_PX, ATLAS_CELL_PX, {
    fit: 'contain',
    background: { r: 0, g: 0, b: 0, alpha: 0 },
    withoutEnlargement: false,
  });
  const { width, height, autoOrient, icc, pages = 1 } = await sharp(path, { limitInputPixels: false }).metadata();
  const file = { widthPx: autoOrient?.width ?? width, heightPx: autoOrient?.height ?? height };
  const pixels = pixelsOf(small);
  return {
    palette: {
      widthPx: Math.max(1, Math.round((file.widthPx * raster.info.width) / whole.info.width)),
      heightPx: Math.max(1, Math.round((file.heightPx * raster.info.height) / whole.info.height)),
      ...pictureColoursOf(pixels),
      engine: PICTURES_MADE_BY,
      ...(pages > 1 ? { pages } : {}),
      cutOut,
      ...outlineFrom(pixels),
      photograph: photographConfidenceOf(pixels, { ...file, profile: icc === undefined ? null : 'embedded' }),
    },
    large: await from(raster).webp(WEBP).toBuffer(),
    small: await from(small).webp(WEBP).toBuffer(),
    cell: await cell.raw().toBuffer(),
  };
}
