/**
 * Decoded pictures kept by use: the least lately used goes first, and is closed at once, for a decoded bitmap left to
 * the collector holds its memory for a long time.
 */
export interface Closable {
  close(): void;
}

export class BitmapShelf<B extends Closable> {
  private readonly kept = new Map<string, { readonly bitmap: B; readonly bytes: number; used: number }>();
  private readonly mostBytes: number;
  private bytes = 0;

  /** @throws RangeError when mostBytes is not positive. */
  constructor(mostBytes: number) {
    if (!(mostBytes > 0)) throw new RangeError(`mostBytes is ${mostBytes}; it must be more than 0`);
    this.mostBytes = mostBytes;
  }

  get heldBytes(): number {
    return this.bytes;
  }

  has(key: string): boolean {
    return this.kept.has(key);
  }

  /** The bitmap, marked as used in this draw. */
  use(key: string, draw: number): B | undefined {
    const entry = this.kept.get(key);
    if (entry === undefined) return undefined;
    entry.used = draw;
    this.kept.delete(key);
    this.kept.set(key, entry);
    return entry.bitmap;
  }

  /** Takes a bitmap in and closes what no longer fits; what this same draw uses is kept. */
  put(key: string, bitmap: B, bytes: number, draw: number): void {
    this.drop(key);
    this.kept.set(key, { bitmap, bytes, used: draw });
    this.bytes += bytes;
    for (const [oldest, { used }] of this.kept) {
      if (this.bytes <= this.mostBytes || used >= draw) break;
      this.drop(oldest);
    }
  }

  /** Whether another bitmap would push out nothing that this draw uses. */
  hasRoomFor(bytes: number, draw: number): boolean {
    let free = this.mostBytes - this.bytes;
    for (const { used, bytes: held } of this.kept.values()) {
      if (free >= bytes || used >= draw) break;
      free += held;
    }
    return free >= bytes;
  }

  clear(): void {
    for (const key of [...this.kept.keys()]) this.drop(key);
  }

  private drop(key: string): void {
    const entry = this.kept.get(key);
    if (entry === undefined) return;
    this.kept.delete(key);
    this.bytes -= entry.bytes;
    entry.bitmap.close();
  }
}
