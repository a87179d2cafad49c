/** Pages of 64 px miniatures, always at hand: what is seen before the picture itself has come. */
import { ATLAS_CELL_PX, ATLAS_COLUMNS, type ImageFacts } from '@enfilade/shared/protocol';
import { bitmapFrom, type Drawable, type PictureSource } from './bitmap-source.ts';

interface AtlasPage {
  readonly url: string;
  image: ImageBitmap | null;
  /** For which version of the source its address was asked. */
  asked: number;
}

export class Atlas {
  private readonly source: PictureSource;
  private readonly arrived: () => void;
  private readonly pages = new Map<number, AtlasPage>();
  private sourceVersion = 1;
  private fetching = 0;
  private closed = false;

  /** `arrived` is told when a page has come. */
  constructor(source: PictureSource, arrived: () => void) {
    this.source = source;
    this.arrived = arrived;
  }

  get busy(): boolean {
    return this.fetching > 0;
  }

  /** The page a picture's miniature is on, fetched again once it holds more. */
  miniatureOf(facts: ImageFacts): Drawable | null {
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
    this.fetching += 1;
    const image = await bitmapFrom(url);
    this.fetching -= 1;
    const entry = this.pages.get(page);
    if (image === null || this.closed || entry?.url !== url) return image?.close();
    entry.image?.close();
    entry.image = image;
    this.arrived();
  }

  close(): void {
    this.closed = true;
    for (const { image } of this.pages.values()) image?.close();
    this.pages.clear();
  }
}
