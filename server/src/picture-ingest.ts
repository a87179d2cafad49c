/** One picture's bytes to what is kept of it: turned upright, in sRGB, in three sizes without metadata, its colours. */
import { open } from 'node:fs/promises';
import { pictureColoursOf } from '@enfilade/colour/picture-colours';
import { ATLAS_CELL_PX, type ImageFacts } from '@enfilade/shared/protocol';
import sharp, { type OutputInfo, type Sharp } from 'sharp';

/** A picture that cannot be taken; the message is a sentence for the person, naming the file. */
export class PictureRefused extends Error {}

export type Palette = Pick<ImageFacts, 'widthPx' | 'heightPx' | 'body' | 'edge' | 'opaqueShare' | 'engine'>;

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
export function kindOf(head: Uint8Array): 'jpeg' | 'png' | 'webp' | null {
  const starts = (at: number, ...bytes: number[]): boolean => bytes.every((byte, i) => head[at + i] === byte);
  if (starts(0, 0xff, 0xd8, 0xff)) return 'jpeg';
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50)) return 'webp';
  return null;
}

/** @throws PictureRefused, from the first bytes and the header alone: nothing is decoded yet. */
export async function assertTakeable(path: string, name: string, pixelsAtMost: number): Promise<void> {
  const file = await open(path);
  const head = new Uint8Array(16);
  const { bytesRead } = await file.read(head, 0, 16, 0);
  await file.close();
  if (bytesRead === 0) throw new PictureRefused(`“${name}” is empty: 0 bytes.`);
  if (kindOf(head) === null) throw new PictureRefused(`“${name}” is not a JPEG, PNG or WebP picture.`);
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

interface Raster {
  readonly data: Buffer;
  readonly info: OutputInfo;
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

function from({ data, info }: Raster): Sharp {
  return sharp(data, { raw: { width: info.width, height: info.height, channels: info.channels } });
}

async function paletteFrom(path: string, small: Raster): Promise<Palette> {
  const { width = 0, height = 0, autoOrient } = await sharp(path, { limitInputPixels: false }).metadata();
  const data = new Uint8ClampedArray(small.data.buffer, small.data.byteOffset, small.data.length);
  const colours = pictureColoursOf({ data, width: small.info.width, height: small.info.height });
  return { widthPx: autoOrient?.width ?? width, heightPx: autoOrient?.height ?? height, ...colours };
}

async function reduced(large: Raster, px: number): Promise<Raster> {
  return from(large)
    .resize(px, px, { fit: 'inside', withoutEnlargement: true })
    .raw()
    .toBuffer({ resolveWithObject: true });
}

/** @throws PictureRefused when the picture cannot be decoded whole. */
export async function ingest(path: string, name: string, pixelsAtMost: number): Promise<Ingested> {
  const large = await decoded(path, name, pixelsAtMost);
  const small = await reduced(large, SMALL_PX);
  const cell = from(small).resize(ATLAS_CELL_PX, ATLAS_CELL_PX, {
    fit: 'contain',
    background: { r: 0, g: 0, b: 0, alpha: 0 },
    withoutEnlargement: false,
  });
  return {
    palette: await paletteFrom(path, small),
    large: await from(large).webp(WEBP).toBuffer(),
    small: await from(small).webp(WEBP).toBuffer(),
    cell: await cell.raw().toBuffer(),
  };
}

/** The colours once more, by the engine as it is now. */
export async function paletteAgain(path: string, pixelsAtMost: number): Promise<Palette> {
  return paletteFrom(path, await reduced(await decoded(path, 'kept', pixelsAtMost), SMALL_PX));
}
