/** What the server derived from pictures, kept by hash, and the way new ones go up. */
import { ATLAS_CELLS, type ImageFacts, type Refusal } from '@enfilade/shared/protocol';

export class PictureStore {
  private readonly base: string;
  private readonly facts = new Map<string, ImageFacts>();
  private readonly missing = new Set<string>();
  private readonly listeners = new Set<() => void>();
  private asking: Promise<void> | null = null;
  version = 0;

  /** `base`: the seat's path, `/seat/<id>`. */
  constructor(base: string) {
    this.base = base;
  }

  /** Facts of a picture, or undefined; asking for one that is not here yet fetches what is new, once. */
  get(sha256: string): ImageFacts | undefined {
    const known = this.facts.get(sha256);
    if (known === undefined && !this.missing.has(sha256)) {
      this.missing.add(sha256);
      void this.refresh();
    }
    return known;
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

  urlOf(sha256: string, sizePx: 256 | 1024): string {
    return `${this.base}/images/${sha256}/${sizePx}.webp`;
  }

  /** Address of an atlas page as it stands with the cells known now; it changes when more have come. */
  atlasUrl(page: number): string {
    let cells = 0;
    for (const { cell } of this.facts.values()) if (cell.page === page) cells = Math.max(cells, cell.index + 1);
    return `${this.base}/images/atlas/${page}.webp?cells=${Math.min(cells, ATLAS_CELLS)}`;
  }

  /** Sends a picture's bytes. The answer is its facts, or why it was refused (nothing else is touched). */
  async send(file: File, signal: AbortSignal): Promise<ImageFacts | Refusal> {
    const answer = await fetch(`${this.base}/images?name=${encodeURIComponent(file.name)}`, {
      method: 'POST',
      body: file,
      signal,
      headers: { 'content-type': 'application/octet-stream' },
    });
    const body = (await answer.json()) as ImageFacts | Refusal;
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
