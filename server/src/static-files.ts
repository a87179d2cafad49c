/** The client as it was built: packed once, kept in memory. */
import { readFile, stat } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { Answer } from './answers.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

const PACKED = new Set(['.html', '.js', '.css', '.json', '.svg', '.wasm', '.txt']);

interface Kept {
  readonly changed: number;
  readonly type: string;
  readonly packable: boolean;
  readonly plain: Uint8Array;
  br?: Uint8Array;
  gzip?: Uint8Array;
}

const asBrotli = (bytes: Uint8Array): Promise<Uint8Array> =>
  promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 6 } });
const asGzip = (bytes: Uint8Array): Promise<Uint8Array> => promisify(gzip)(bytes);

export class StaticFiles {
  private readonly directory: string;
  private readonly kept = new Map<string, Kept>();

  constructor(directory: string) {
    this.directory = directory;
  }

  /** The file at a path below the client's folder, or undefined. Names under assets/ carry their hash: kept for ever. */
  async answer(path: string, acceptEncoding: string | undefined): Promise<Answer | undefined> {
    const relative = normalize(path).replace(/^[/\\]+/, '');
    if (relative.split(sep).some((part) => part.startsWith('.')) || relative.includes('\0')) return undefined;
    const file = await this.read(relative);
    if (file === undefined) return undefined;
    const cache = relative.startsWith(`assets${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache';
    const headers: Record<string, string> = { 'cache-control': cache };
    let body = file.plain;
    if (file.packable) {
      headers.vary = 'accept-encoding';
      const accepted = acceptEncoding ?? '';
      if (/\bbr\b/.test(accepted)) {
        file.br ??= await asBrotli(file.plain);
        body = file.br;
        headers['content-encoding'] = 'br';
      } else if (/\bgzip\b/.test(accepted)) {
        file.gzip ??= await asGzip(file.plain);
        body = file.gzip;
        headers['content-encoding'] = 'gzip';
      }
    }
    return { status: 200, type: file.type, body, headers };
  }

  private async read(relative: string): Promise<Kept | undefined> {
    const path = join(this.directory, relative);
    const type = TYPES[extname(relative)];
    const about = type === undefined ? null : await stat(path).catch(() => null);
    if (type === undefined || about === null || !about.isFile()) return undefined;
    const known = this.kept.get(relative);
    if (known !== undefined && known.changed === about.mtimeMs) return known;
    const plain = await readFile(path);
    const file = {
      changed: about.mtimeMs,
      type,
      packable: PACKED.has(extname(relative)) && plain.length > 1000,
      plain,
    };
    this.kept.set(relative, file);
    return file;
  }
}
