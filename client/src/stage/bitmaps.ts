/** Pictures as the stage draws them: atlas miniatures always there, 256 and 1024 px ones fetched as they are wanted. */
import { ATLAS_CELL_PX, ATLAS_COLUMNS, type ImageFacts } from '@enfilade/shared/protocol';
import { BitmapShelf } from './bitmap-shelf.ts';

/** Where pictures come from; the session's PictureStore is one. */
export interface PictureSource {
  get(sha256: string): ImageFacts | undefined;
  atlasUrl(page: number): string;
  urlOf(sha256: string, sizePx: 256 | 1024): string;
}

export interface Drawable {
  readonly image: ImageBitmap;
  /** Part of the image that is the picture. */
  readonly sx: number;
  readonly sy: number;
  readonly sw: number;
  readonly sh: number;
  readonly level: Level;
}

export type Level = 64 | 256 | 1024;

interface AtlasPage {
  readonly url: string;
  image: ImageBitmap | null;
  /** For which version of the source its address was asked. */
  asked: number;
}

const MOST_AT_ONCE = 6;
const MEBI = 2 ** 20;

export class Bitmaps {
  private readonly source: PictureSource;
  private readonly shelves = {
    256: new BitmapShelf<ImageBitmap>(128 * MEBI),
    1024: new BitmapShelf<ImageBitmap>(192 * MEBI),
  };
  private readonly pages = new Map<number, AtlasPage>();
  private sourceVersion = 1;
  private readonly masks = new Map<string, Uint8ClampedArray | null>();
  private readonly wanted = new Map<string, { sha256: string; size: 256 | 1024; draw: number }>();
  private readonly failed = new Set<string>();
  private readonly fetching = new Set<string>();
  private readonly arrived: (sha256: string | null) => void;
  private draw = 1;
  private closed = false;

  /** `arrived` is told which picture can be drawn better now; null: a whole page of miniatures. */
  constructor(source: PictureSource, arrived: (sha256: string | null) => void) {
    this.source = source;
    this.arrived = arrived;
  }

  /** A new draw begins: what it uses stays, what earlier ones wanted and this one does not is not fetched. */
  begin(): void {
    this.draw += 1;
  }

  get busy(): boolean {
    return this.fetching.size > 0 || this.wanted.size > 0;
  }

  /** The best that is here for a picture drawn so many device pixels long; asks for better where it is worth it. */
  drawableOf(sha256: string, longPx: number): Drawable | null {
    const facts = this.source.get(sha256);
    if (facts === undefined) return null;
    const level = levelFor(longPx);
    if (level === 1024) {
      const large = this.shelves[1024].use(sha256, this.draw);
      if (large !== undefined) return whole(large, 1024);
      this.want(sha256, 1024);
    }
    if (level !== 64) {
      const middle = this.shelves[256].use(sha256, this.draw);
      if (middle !== undefined) return whole(middle, 256);
      if (level === 256 || this.shelves[1024].has(sha256) === false) this.want(sha256, 256);
    }
    return this.miniatureOf(facts);
  }

  /** Whether the picture is opaque at a point of it (0..1 from its left upper corner), from its miniature. */
  opaqueAt(sha256: string, u: number, v: number): boolean {
    const facts = this.source.get(sha256);
    const mini = facts === undefined ? null : this.miniatureOf(facts);
    if (mini === null) return true;
    let mask = this.masks.get(sha256);
    if (mask === undefined) {
      mask = alphaOf(mini);
      if (this.masks.size > 4000) this.masks.clear();
      this.masks.set(sha256, mask);
    }
    return mask === null || opaqueIn(mask, Math.round(mini.sw), Math.round(mini.sh), u, v);
  }

  /** The page a picture's miniature is on, fetched again once it holds more. */
  private miniatureOf(facts: ImageFacts): Drawable | null {
    const { page, index } = facts.cell;
    const known = this.pages.get(page);
    if (known === undefined || known.asked !== this.sourceVersion) this.askForPage(page, known);
    const image = known?.image ?? null;
    if (image === null) return null;
    const k = ATLAS_CELL_PX / Math.max(facts.widthPx, facts.heightPx);
    const sw = Math.max(1, Math.round(facts.widthPx * k));
    const sh = Math.max(1, Math.round(facts.heightPx * k));
    const sx = (index % ATLAS_COLUMNS) * ATLAS_CELL_PX + Math.floor((ATLAS_CELL_PX - sw) / 2);
    const sy = Math.floor(index / ATLAS_COLUMNS) * ATLAS_CELL_PX + Math.floor((ATLAS_CELL_PX - sh) / 2);
    return sy + sh > image.height ? null : { image, sx, sy, sw, sh, level: 64 };
  }

  /** The source holds more pictures than before: pages are asked for again as they are drawn. */
  sourceChanged(): void {
    this.sourceVersion += 1;
  }

  private askForPage(page: number, known: AtlasPage | undefined): void {
    const url = this.source.atlasUrl(page);
    if (known?.url === url) {
      known.asked = this.sourceVersion;
      return;
    }
    this.pages.set(page, { url, image: known?.image ?? null, asked: this.sourceVersion });
    void this.fetchPage(page, url);
  }

  private async fetchPage(page: number, url: string): Promise<void> {
    const key = `page ${page}`;
    this.fetching.add(key);
    const image = await bitmapFrom(url);
    this.fetching.delete(key);
    const entry = this.pages.get(page);
    if (image === null || this.closed || entry?.url !== url) return image?.close();
    entry.image?.close();
    entry.image = image;
    this.arrived(null);
  }

  private want(sha256: string, size: 256 | 1024): void {
    const key = `${sha256} ${size}`;
    if (this.fetching.has(key) || this.failed.has(key) || this.shelves[size].has(sha256)) return;
    this.wanted.set(key, { sha256, size, draw: this.draw });
    queueMicrotask(() => this.fetchNext());
  }

  private fetchNext(): void {
    while (this.fetching.size < MOST_AT_ONCE && !this.closed) {
      // The latest draw's wishes first; those of draws gone by are let go.
      let best: { key: string; sha256: string; size: 256 | 1024; draw: number } | null = null;
      for (const [key, wish] of this.wanted) {
        if (wish.draw < this.draw - 2) this.wanted.delete(key);
        else if (best === null || wish.draw > best.draw || (wish.draw === best.draw && wish.size < best.size)) {
          best = { key, ...wish };
        }
      }
      if (best === null) return;
      this.wanted.delete(best.key);
      if (this.shelves[best.size].hasRoomFor(best.size ** 2 * 4, this.draw)) void this.fetchOne(best);
    }
  }

  private async fetchOne({ key, sha256, size }: { key: string; sha256: string; size: 256 | 1024 }): Promise<void> {
    this.fetching.add(key);
    const image = await bitmapFrom(this.source.urlOf(sha256, size));
    this.fetching.delete(key);
    if (this.closed) return image?.close();
    if (image === null) this.failed.add(key);
    else {
      this.shelves[size].put(sha256, image, image.width * image.height * 4, this.draw);
      this.arrived(sha256);
    }
    this.fetchNext();
  }

  close(): void {
    this.closed = true;
    this.wanted.clear();
    this.shelves[256].clear();
    this.shelves[1024].clear();
    for (const { image } of this.pages.values()) image?.close();
    this.pages.clear();
  }
}

/** Which size serves a picture drawn so many device pixels long. A little enlargement is not seen. */
export function levelFor(longPx: number): Level {
  return longPx <= 76 ? 64 : longPx <= 300 ? 256 : 1024;
}

/** Whether a mask of w × h alpha values is opaque at (u, v) in 0..1; a pixel to each side counts, for small things. */
export function opaqueIn(mask: ArrayLike<number>, w: number, h: number, u: number, v: number): boolean {
  const cx = Math.min(w - 1, Math.max(0, Math.floor(u * w)));
  const cy = Math.min(h - 1, Math.max(0, Math.floor(v * h)));
  for (let y = Math.max(0, cy - 1); y <= Math.min(h - 1, cy + 1); y++) {
    for (let x = Math.max(0, cx - 1); x <= Math.min(w - 1, cx + 1); x++) {
      if ((mask[y * w + x] ?? 0) > 40) return true;
    }
  }
  return false;
}

function whole(image: ImageBitmap, level: Level): Drawable {
  return { image, sx: 0, sy: 0, sw: image.width, sh: image.height, level };
}

function alphaOf({ image, sx, sy, sw, sh }: Drawable): Uint8ClampedArray | null {
  const canvas = new OffscreenCanvas(sw, sh);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) return null;
  context.drawImage(image, sx, sy, sw, sh, 0, 0, sw, sh);
  const { data } = context.getImageData(0, 0, sw, sh);
  return data.filter((_, index) => index % 4 === 3);
}

async function bitmapFrom(url: string): Promise<ImageBitmap | null> {
  try {
    const answer = await fetch(url);
    return answer.ok ? await createImageBitmap(await answer.blob()) : null;
  } catch {
    return null;
  }
}
