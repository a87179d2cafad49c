/**
 * The show's pictures: the original kept untouched under the SHA-256 of its bytes, what was derived beside it. The same
 * bytes a second time are the same picture, and no work.
 */
import { createHash, randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, open, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { pictureKeyParts } from '@enfilade/shared/picture-cuts';
import type { ImageFacts } from '@enfilade/shared/protocol';
import { Atlas, cellOf } from './atlas.ts';
import type { Limits } from './limits.ts';
import {
  assertTakeable,
  type Ingested,
  ingest,
  type Palette,
  PICTURES_MADE_BY,
  PictureRefused,
} from './picture-ingest.ts';
import type { Store } from './store.ts';

/** Pictures worked on at once. */
const AT_ONCE = 2;

export class Images {
  readonly atlas: Atlas;
  private readonly store: Store;
  private readonly directory: string;
  private readonly limits: Limits;
  private readonly known = new Map<string, ImageFacts>();
  private readonly byCell: string[] = [];
  private readonly working = new Map<string, Promise<ImageFacts>>();
  private running = 0;
  private readonly queue: (() => void)[] = [];
  private closed = false;

  private constructor(store: Store, directory: string, limits: Limits) {
    this.store = store;
    this.directory = directory;
    this.limits = limits;
    this.atlas = new Atlas(join(directory, 'atlas'), (n) => {
      const sha256 = this.byCell[n];
      return sha256 === undefined ? undefined : join(this.folderOf(sha256), '64.rgba');
    });
  }

  static async open(store: Store, dataDirectory: string, limits: Limits): Promise<Images> {
    const directory = join(dataDirectory, 'images');
    await rm(join(directory, 'incoming'), { recursive: true, force: true });
    await mkdir(join(directory, 'incoming'), { recursive: true });
    await mkdir(join(directory, 'atlas'), { recursive: true });
    const images = new Images(store, directory, limits);
    for (const { sha256, cell, facts } of await store.query.selectFrom('images').selectAll().execute()) {
      images.byCell[cell] = sha256;
      images.known.set(sha256, { sha256, ...(JSON.parse(facts) as Palette), cell: cellOf(cell) });
    }
    return images;
  }

  facts(): ImageFacts[] {
    return [...this.known.values()];
  }

  factsOf(sha256: string): ImageFacts | undefined {
    return this.known.get(sha256);
  }

  /** Path of the original, as it was sent. */
  originalOf(sha256: string): string | undefined {
    return this.known.has(sha256) ? join(this.folderOf(sha256), 'original') : undefined;
  }

  async thumbnail(key: string, px: '256' | '1024'): Promise<Uint8Array | undefined> {
    if ((await this.cutOf(key)) === undefined) return undefined;
    return readFile(join(this.folderOf(key), `${px}.webp`)).catch(() => undefined);
  }

  /** Facts of a picture as a person would have it cut, derived when first asked for; undefined when there is none. */
  async cutOf(key: string): Promise<ImageFacts | undefined> {
    const known = this.known.get(key);
    const parts = pictureKeyParts(key);
    if (known !== undefined || parts === null || parts.cut === null || !this.known.has(parts.sha256)) return known;
    return this.once(key, async () => {
      const made = await this.madeAnew(key);
      await this.keepDerived(key, made);
      return this.entered(key, made.palette);
    });
  }

  /** The facts at hand for a key: as the picture is cut by itself, while a person's cut of it is being derived. */
  factsFor(key: string, trouble: (error: unknown) => void): ImageFacts | undefined {
    const known = this.known.get(key);
    if (known !== undefined || this.closed) return known;
    this.cutOf(key).catch(trouble);
    return this.known.get(pictureKeyParts(key)?.sha256 ?? '');
  }

  /**
   * Takes a picture as a stream or as bytes; answers its facts once everything is kept.
   * @throws PictureRefused with a sentence that names the file.
   */
  async add(source: Readable | Uint8Array, name: string): Promise<ImageFacts> {
    const path = join(this.directory, 'incoming', randomUUID());
    try {
      const sha256 = await this.receive(source, path, name);
      const known = this.known.get(sha256);
      if (known !== undefined) return known;
      return await this.once(sha256, () => this.take(sha256, path, name));
    } finally {
      await rm(path, { force: true });
    }
  }

  /** Derives again whatever an earlier engine derived. Goes on in the background; stops when the server does. */
  async refreshPalettes(trouble: (error: unknown) => void): Promise<number> {
    const old = [...this.known.values()].filter(({ engine }) => engine !== PICTURES_MADE_BY);
    let done = 0;
    for (const { sha256, cell } of old) {
      if (this.closed) break;
      try {
        const made = await this.inTurn(() => this.madeAnew(sha256));
        await this.keepDerived(sha256, made);
        await this.store.query
          .updateTable('images')
          .set({ engine: made.palette.engine, facts: JSON.stringify(made.palette) })
          .where('sha256', '=', sha256)
          .execute();
        await this.atlas.forget(cell.page);
        this.known.set(sha256, { sha256, ...made.palette, cell });
        done += 1;
      } catch (error) {
        trouble(error);
      }
    }
    return done;
  }

  async close(): Promise<void> {
    this.closed = true;
    await Promise.allSettled(this.working.values());
  }

  private folderOf(key: string): string {
    return join(this.directory, key.slice(0, 2), key);
  }

  /** From the original once more, by the engine as it is now. */
  private madeAnew(key: string): Promise<Ingested> {
    const { sha256, cut } = pictureKeyParts(key) ?? { sha256: key, cut: null };
    return ingest(join(this.folderOf(sha256), 'original'), 'kept', this.limits.picturePixels, cut);
  }

  private async keepDerived(key: string, { large, small, cell }: Ingested): Promise<void> {
    const folder = this.folderOf(key);
    await mkdir(folder, { recursive: true });
    await writeFile(join(folder, '1024.webp'), large);
    await writeFile(join(folder, '256.webp'), small);
    await writeFile(join(folder, '64.rgba'), cell);
  }

  /** A picture into the list, with a cell of its own. */
  private async entered(key: string, palette: Palette): Promise<ImageFacts> {
    const n = this.byCell.length;
    this.byCell[n] = key;
    try {
      await this.store.query
        .insertInto('images')
        .values({ sha256: key, cell: n, engine: palette.engine, facts: JSON.stringify(palette) })
        .execute();
    } catch (error) {
      // Its cell stays empty: another picture may have taken the next one meanwhile.
      delete this.byCell[n];
      throw error;
    }
    const facts: ImageFacts = { sha256: key, ...palette, cell: cellOf(n) };
    this.known.set(key, facts);
    return facts;
  }

  /** Work on a key, in its turn, and only once however many ask at that moment. */
  private once(key: string, work: () => Promise<ImageFacts>): Promise<ImageFacts> {
    let working = this.working.get(key);
    if (working === undefined) {
      working = this.inTurn(work).finally(() => this.working.delete(key));
      this.working.set(key, working);
    }
    return working;
  }

  private async receive(source: Readable | Uint8Array, path: string, name: string): Promise<string> {
    const hash = createHash('sha256');
    let bytes = 0;
    const limit = this.limits.pictureBytes;
    async function* measured(chunks: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
      for await (const chunk of chunks) {
        bytes += chunk.length;
        if (bytes > limit) {
          throw new PictureRefused(
            `“${name}” is larger than ${Math.round(limit / (1 << 20))} MB. Nothing of it was kept.`,
          );
        }
        hash.update(chunk);
        yield chunk;
      }
    }
    const chunks = source instanceof Uint8Array ? Readable.from([Buffer.from(source)]) : source;
    await pipeline(chunks, measured, createWriteStream(path));
    return hash.digest('hex');
  }

  private async take(sha256: string, path: string, name: string): Promise<ImageFacts> {
    await assertTakeable(path, name, this.limits.picturePixels);
    const made = await ingest(path, name, this.limits.picturePixels);
    await this.keepDerived(sha256, made);
    const original = join(this.folderOf(sha256), 'original');
    await rename(path, original);
    await onDisk(original);
    return this.entered(sha256, made.palette);
  }

  private async inTurn<T>(work: () => Promise<T>): Promise<T> {
    if (this.running >= AT_ONCE) await new Promise<void>((turn) => this.queue.push(turn));
    else this.running += 1;
    try {
      return await work();
    } finally {
      // The place is handed on, or given back.
      const next = this.queue.shift();
      if (next === undefined) this.running -= 1;
      else next();
    }
  }
}

async function onDisk(path: string): Promise<void> {
  const file = await open(path, 'r+');
  await file.sync();
  await file.close();
}
