/** What the server derived from pictures, kept by hash, and the way new ones go up. */
import { pictureKeyParts } from '@enfilade/shared/picture-cuts';
import {
  ATLAS_CELLS,
  type BundleAnswer,
  type ImageFacts,
  type ManifestAnswer,
  type Refusal,
} from '@enfilade/shared/protocol';

export class PictureStore {
  /** The seat's path. */
  readonly base: string;
  private readonly facts = new Map<string, ImageFacts>();
  private readonly missing = new Set<string>();
  private readonly listeners = new Set<() => void>();
  private asking: Promise<void> | null = null;
  version = 0;

  /** `base`: the seat's path, `/seat/<id>`. */
  constructor(base: string) {
    this.base = base;
  }

  /**
   * Facts of a picture, or undefined; asking for one that is not here yet fetches what is new, once. Until a person's
   * cut of a picture has come, it is shown as it is cut by itself.
   */
  get(key: string): ImageFacts | undefined {
    const known = this.facts.get(key);
    if (known !== undefined) return known;
    const parts = pictureKeyParts(key);
    const isCut = parts !== null && parts.cut !== null;
    if (!this.missing.has(key)) {
      this.missing.add(key);
      void (isCut ? this.askForCut(key) : this.refresh());
    }
    return isCut ? this.facts.get(parts.sha256) : undefined;
  }

  private async askForCut(key: string): Promise<void> {
    try {
      const answer = await fetch(`${this.base}/images/${key}/facts`);
      if (!answer.ok) return;
      this.facts.set(key, (await answer.json()) as ImageFacts);
      this.tell();
    } catch {
      // Asked for again when it is next drawn.
    } finally {
      this.missing.delete(key);
    }
  }

  all(): ReadonlyMap<string, ImageFacts> {
    return this.facts;
  }

  async refresh(): Promise<void> {
    this.asking ??= (async () => {
      // A breath, so that a whole import arriving asks once.
      await new Promise((done) => setTimeout(done, 60));
      this.asking = null;
      const answer = await fetch(`${this.base}/images/facts`);
      if (!answer.ok) return;
      for (const facts of (await answer.json()) as ImageFacts[]) this.facts.set(facts.sha256, facts);
      for (const sha256 of [...this.missing]) if (this.facts.has(sha256)) this.missing.delete(sha256);
      this.tell();
    })().catch(() => {
      this.asking = null;
      this.missing.clear();
    });
    return this.asking;
  }

  /** Of a cut that has not come, the picture as it is cut by itself. A later engine's picture has another address. */
  urlOf(key: string, sizePx: 256 | 1024): string {
    const facts = this.get(key);
    const by = facts === undefined ? '' : `?by=${encodeURIComponent(facts.engine)}`;
    return `${this.base}/images/${facts?.sha256 ?? key}/${sizePx}.webp${by}`;
  }

  /** Address of an atlas page as it stands with the cells known now; it changes when more, or better, have come. */
  atlasUrl(page: number): string {
    let cells = 0;
    const engines = new Map<string, number>();
    for (const { cell, engine } of this.facts.values()) {
      if (cell.page !== page) continue;
      cells = Math.max(cells, cell.index + 1);
      engines.set(engine, (engines.get(engine) ?? 0) + 1);
    }
    // While pictures are derived anew, how many are.
    const by = [...engines].sort().map(([engine, n]) => (engines.size === 1 ? engine : `${engine}:${n}`));
    const made = by.length === 0 ? '' : `&by=${encodeURIComponent(by.join())}`;
    return `${this.base}/images/atlas/${page}.webp?cells=${Math.min(cells, ATLAS_CELLS)}${made}`;
  }

  /** Sends a picture's bytes. The answer is its facts, or why it was refused (nothing else is touched). */
  async send(file: File, signal: AbortSignal): Promise<ImageFacts | Refusal> {
    const answer = await fetch(`${this.base}/images?name=${encodeURIComponent(file.name)}`, {
      method: 'POST',
      body: file,
      signal,
      headers: { 'content-type': 'application/octet-stream' },
    });
    return this.taken((await answer.json()) as ImageFacts | Refusal);
  }

  /** Has the server keep a manifest, or fetch one from an address; then the pictures it names can be asked for. */
  async manifest(from: File | { readonly address: string }, signal: AbortSignal): Promise<ManifestAnswer | Refusal> {
    const isFile = from instanceof File;
    const answer = await fetch(`${this.base}/manifests${isFile ? '' : '/fetch'}`, {
      method: 'POST',
      body: isFile ? from : JSON.stringify(from),
      signal,
      headers: { 'content-type': 'application/json' },
    });
    return (await answer.json()) as ManifestAnswer | Refusal;
  }

  /** Has the server fetch a picture that a manifest names; rows and pictures from 0. */
  async fetchNamed(manifestId: string, row: number, n: number, signal: AbortSignal): Promise<ImageFacts | Refusal> {
    const answer = await fetch(`${this.base}/manifests/${manifestId}/pictures/${row}/${n}`, { method: 'POST', signal });
    return this.taken((await answer.json()) as ImageFacts | Refusal);
  }

  /** Sends a whole show, to be taken into this one. */
  async takeBundle(file: File, signal: AbortSignal): Promise<BundleAnswer | Refusal> {
    const answer = await fetch(`${this.base}/bundle`, {
      method: 'POST',
      body: file,
      signal,
      headers: { 'content-type': 'application/zip' },
    });
    return (await answer.json()) as BundleAnswer | Refusal;
  }

  private taken(body: ImageFacts | Refusal): ImageFacts | Refusal {
    if ('sha256' in body) {
      this.facts.set(body.sha256, body);
      this.tell();
    }
    return body;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private tell(): void {
    this.version += 1;
    for (const listener of this.listeners) listener();
  }
}
