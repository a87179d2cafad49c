/** Pictures as the stage draws them: atlas miniatures always there, 256 and 1024 px ones fetched as they are wanted. */
import { alphaOf, opaqueIn } from './alpha-mask.ts';
import { Atlas } from './atlas.ts';
import { BitmapShelf } from './bitmap-shelf.ts';
import { bitmapFrom, type Drawable, type Level, type PictureSource } from './bitmap-source.ts';

const MOST_AT_ONCE = 6;
const MEBI = 2 ** 20;

export class Bitmaps {
  private readonly source: PictureSource;
  private readonly shelves = {
    256: new BitmapShelf<ImageBitmap>(128 * MEBI),
    1024: new BitmapShelf<ImageBitmap>(192 * MEBI),
  };
  private readonly atlas: Atlas;
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
    this.atlas = new Atlas(source, () => this.arrived(null));
  }

  /** A new draw begins: what it uses stays, what earlier ones wanted and this one does not is not fetched. */
  begin(): void {
    this.draw += 1;
  }

  get busy(): boolean {
    return this.fetching.size > 0 || this.wanted.size > 0 || this.atlas.busy;
  }

  /** The best that is here for a picture drawn so many device pixels long; asks for better where it is worth it. */
  drawableOf(key: string, longPx: number): Drawable | null {
    const facts = this.source.get(key);
    if (facts === undefined) return null;
    // Until a person's cut of a picture has come, these are the facts, and the picture, it had.
    const { sha256 } = facts;
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
    return this.atlas.miniatureOf(facts);
  }

  /** Whether the picture is opaque at a point of it (0..1 from its left upper corner), from its miniature. */
  opaqueAt(key: string, u: number, v: number): boolean {
    const facts = this.source.get(key);
    const sha256 = facts?.sha256 ?? key;
    const mini = facts === undefined ? null : this.atlas.miniatureOf(facts);
    if (mini === null) return true;
    let mask = this.masks.get(sha256);
    if (mask === undefined) {
      mask = alphaOf(mini);
      if (this.masks.size > 4000) this.masks.clear();
      this.masks.set(sha256, mask);
    }
    return mask === null || opaqueIn(mask, Math.round(mini.sw), Math.round(mini.sh), u, v);
  }

  /** The source holds more pictures than before. */
  sourceChanged(): void {
    this.atlas.sourceChanged();
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
    this.atlas.close();
  }
}

/** Which size serves a picture drawn so many device pixels long. A little enlargement is not seen. */
export function levelFor(longPx: number): Level {
  return longPx <= 76 ? 64 : longPx <= 300 ? 256 : 1024;
}

function whole(image: ImageBitmap, level: Level): Drawable {
  return { image, sx: 0, sy: 0, sw: image.width, sh: image.height, level };
}
