/** Pages of 16 × 16 miniatures, composed as pictures come in; a page with n cells never changes. */
import { readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { ATLAS_CELL_PX, ATLAS_CELLS, ATLAS_COLUMNS, type ImageFacts } from '@enfilade/shared/protocol';
import sharp from 'sharp';

const PAGE_PX = ATLAS_CELL_PX * ATLAS_COLUMNS;
const ROW_BYTES = ATLAS_CELL_PX * 4;

/** Where the nth miniature sits. */
export function cellOf(n: number): ImageFacts['cell'] {
  return { page: Math.floor(n / ATLAS_CELLS), index: n % ATLAS_CELLS };
}

/** Writes one RGBA miniature into a page's pixels. RangeError for an index outside the page. */
export function drawCell(page: Uint8Array, index: number, cell: Uint8Array): void {
  if (index < 0 || index >= ATLAS_CELLS) throw new RangeError(`cell ${index} is outside 0..${ATLAS_CELLS - 1}`);
  const left = (index % ATLAS_COLUMNS) * ROW_BYTES;
  const top = Math.floor(index / ATLAS_COLUMNS) * ATLAS_CELL_PX;
  for (let y = 0; y < ATLAS_CELL_PX; y++) {
    page.set(cell.subarray(y * ROW_BYTES, (y + 1) * ROW_BYTES), (top + y) * PAGE_PX * 4 + left);
  }
}

export class Atlas {
  private readonly directory: string;
  private readonly cellAt: (n: number) => string | undefined;
  private readonly making = new Map<string, Promise<Uint8Array>>();

  /** `cellAt(n)`: path of the nth miniature's RGBA bytes, or undefined when there is none. */
  constructor(directory: string, cellAt: (n: number) => string | undefined) {
    this.directory = directory;
    this.cellAt = cellAt;
  }

  /** The page with its first `cells` miniatures as WebP; undefined when there are not that many. */
  async page(page: number, cells: number): Promise<Uint8Array | undefined> {
    if (cells < 1 || cells > ATLAS_CELLS || this.cellAt(page * ATLAS_CELLS + cells - 1) === undefined) return undefined;
    const file = `${page}-${cells}.webp`;
    const kept = await readFile(join(this.directory, file)).catch(() => null);
    if (kept !== null) return kept;
    let making = this.making.get(file);
    if (making === undefined) {
      making = this.make(page, cells, file).finally(() => this.making.delete(file));
      this.making.set(file, making);
    }
    return making;
  }

  /** A page holds another picture than it did: what was composed of it is composed anew. */
  async forget(page: number): Promise<void> {
    for (const [file, making] of this.making) if (file.startsWith(`${page}-`)) await making.catch(() => {});
    await this.forgetFewerThan(page, ATLAS_CELLS + 1);
  }

  private async make(page: number, cells: number, file: string): Promise<Uint8Array> {
    const pixels = new Uint8Array(PAGE_PX * PAGE_PX * 4);
    for (let index = 0; index < cells; index++) {
      const path = this.cellAt(page * ATLAS_CELLS + index);
      if (path !== undefined) drawCell(pixels, index, await readFile(path));
    }
    const bytes = await sharp(pixels, { raw: { width: PAGE_PX, height: PAGE_PX, channels: 4 } })
      .webp({ quality: 80, alphaQuality: 90, effort: 2 })
      .toBuffer();
    await writeFile(join(this.directory, `${file}.part`), bytes);
    await rename(join(this.directory, `${file}.part`), join(this.directory, file));
    await this.forgetFewerThan(page, cells);
    return bytes;
  }

  /** Earlier states of a page are asked for no more. */
  private async forgetFewerThan(page: number, cells: number): Promise<void> {
    for (const name of await readdir(this.directory)) {
      const parts = /^(\d+)-(\d+)\.webp$/.exec(name);
      if (parts !== null && Number(parts[1]) === page && Number(parts[2]) < cells) {
        await rm(join(this.directory, name), { force: true });
      }
    }
  }
}
