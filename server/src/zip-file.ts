/** A zip on the disk, read entry by entry by its directory (APPNOTE 4.3.7, 4.3.12, 4.3.16), never as a whole. */
import { type FileHandle, open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { inflateRawSync } from 'node:zlib';

export class NoZip extends Error {}

interface Entry {
  readonly method: number;
  readonly packed: number;
  readonly bytes: number;
  readonly at: number;
}

const END = 0x06054b50;
const DIRECTORY = 0x02014b50;
const LOCAL = 0x04034b50;
const MOST_DIRECTORY = 64 << 20;

export class ZipFile {
  readonly entries = new Map<string, Entry>();
  private readonly file: FileHandle;

  private constructor(file: FileHandle) {
    this.file = file;
  }

  /** @throws NoZip where it is none, or says so much that it cannot be true. */
  static async open(path: string): Promise<ZipFile> {
    const zip = new ZipFile(await open(path));
    try {
      await zip.readDirectory();
    } catch (error) {
      await zip.close();
      throw error instanceof NoZip ? error : new NoZip();
    }
    return zip;
  }

  close(): Promise<void> {
    return this.file.close();
  }

  /** The bytes of a packed entry. @throws NoZip where it is not there or unpacks to more than `most`. */
  async bytes(name: string, most: number): Promise<Buffer> {
    const entry = this.entries.get(name);
    if (entry === undefined || entry.bytes > most || entry.packed > most) throw new NoZip(name);
    const packed = await this.read(await this.contentAt(entry), entry.packed);
    if (entry.method === 0) return packed;
    try {
      return inflateRawSync(packed, { maxOutputLength: Math.max(1, entry.bytes) });
    } catch {
      throw new NoZip(name);
    }
  }

  /** An entry that is stored as it is. @throws NoZip where it is not. */
  async stored(name: string): Promise<Readable> {
    const entry = this.entries.get(name);
    if (entry === undefined || entry.method !== 0) throw new NoZip(name);
    return Readable.from(this.pieces(await this.contentAt(entry), entry.packed));
  }

  private async *pieces(from: number, bytes: number): AsyncGenerator<Buffer> {
    for (let at = 0; at < bytes; at += 1 << 20) yield await this.read(from + at, Math.min(1 << 20, bytes - at));
  }

  private async readDirectory(): Promise<void> {
    const { size } = await this.file.stat();
    const tail = await this.read(Math.max(0, size - 66_000), Math.min(size, 66_000));
    let end = tail.length - 22;
    while (end >= 0 && tail.readUInt32LE(end) !== END) end -= 1;
    if (end < 0) throw new NoZip();
    const [count, bytes, from] = [
      tail.readUInt16LE(end + 10),
      tail.readUInt32LE(end + 12),
      tail.readUInt32LE(end + 16),
    ];
    if (bytes > MOST_DIRECTORY || from + bytes > size) throw new NoZip();
    const directory = await this.read(from, bytes);
    let at = 0;
    for (let n = 0; n < count; n++) {
      if (directory.readUInt32LE(at) !== DIRECTORY) throw new NoZip();
      const [nameLength, extra, comment] = [28, 30, 32].map((offset) => directory.readUInt16LE(at + offset)) as [
        number,
        number,
        number,
      ];
      this.entries.set(directory.toString('utf8', at + 46, at + 46 + nameLength), {
        method: directory.readUInt16LE(at + 10),
        packed: directory.readUInt32LE(at + 20),
        bytes: directory.readUInt32LE(at + 24),
        at: directory.readUInt32LE(at + 42),
      });
      at += 46 + nameLength + extra + comment;
    }
  }

  /** Where its content begins: behind its own header, whose lengths are its own. */
  private async contentAt({ at }: Entry): Promise<number> {
    const header = await this.read(at, 30);
    if (header.readUInt32LE(0) !== LOCAL) throw new NoZip();
    return at + 30 + header.readUInt16LE(26) + header.readUInt16LE(28);
  }

  private async read(at: number, bytes: number): Promise<Buffer> {
    const buffer = Buffer.alloc(bytes);
    const { bytesRead } = await this.file.read(buffer, 0, bytes, at);
    if (bytesRead < bytes) throw new NoZip();
    return buffer;
  }
}
