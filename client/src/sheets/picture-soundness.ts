/** Whether a file can be a whole picture, from its first and last bytes; the server decodes it and has the last word. */
import { PICTURE_AT_MOST } from '@enfilade/shared/protocol';

const HEAD_BYTES = 256 << 10;
const TAIL_BYTES = 64 << 10;

interface Header {
  /** Null where the size is not told in the first bytes. */
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  readonly whole: (file: Blob) => Promise<boolean>;
}

/**
 * What is wrong with it, to be said after its name; null where nothing is seen to be.
 * Sources: JPEG ITU-T T.81 B.1.1, PNG ISO/IEC 15948 11.2, WebP container RFC 9649, TIFF 6.0 section 2.
 */
export async function pictureFaultOf(file: Blob): Promise<string | null> {
  if (file.size === 0) return 'is empty: 0 bytes.';
  const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
  const header = jpegHeader(head) ?? pngHeader(head) ?? webpHeader(head, file.size) ?? tiffHeader(head, file.size);
  if (header === null) return 'is not a JPEG, PNG, WebP or TIFF picture.';
  const { widthPx, heightPx } = header;
  const pixels = (widthPx ?? 0) * (heightPx ?? 0);
  if (pixels > PICTURE_AT_MOST.pixels) {
    const most = Math.round(PICTURE_AT_MOST.pixels / 1e6);
    return `has ${Math.round(pixels / 1e6)} megapixels (${widthPx} × ${heightPx}); at most ${most} are taken. Save it smaller and bring it in again.`;
  }
  if (file.size > PICTURE_AT_MOST.bytes) return `is larger than ${Math.round(PICTURE_AT_MOST.bytes / (1 << 20))} MB.`;
  return (await header.whole(file)) ? null : `is damaged: it breaks off after ${sizeWords(file.size)}.`;
}

function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}

function jpegHeader(head: Uint8Array): Header | null {
  if (head[0] !== 0xff || head[1] !== 0xd8 || head[2] !== 0xff) return null;
  let widthPx: number | null = null;
  let heightPx: number | null = null;
  let at = 2;
  while (head[at] === 0xff && at + 9 < head.length) {
    const marker = head[at + 1] ?? 0;
    if (marker === 0xda) break;
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      heightPx = ((head[at + 5] ?? 0) << 8) | (head[at + 6] ?? 0);
      widthPx = ((head[at + 7] ?? 0) << 8) | (head[at + 8] ?? 0);
    }
    at += 2 + (((head[at + 2] ?? 0) << 8) | (head[at + 3] ?? 0));
  }
  // A miniature inside the first segments has an end of its own: only one after them counts.
  return { widthPx, heightPx, whole: (file) => holds(file, [0xff, 0xd9], at) };
}

function pngHeader(head: Uint8Array): Header | null {
  if (![0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a].every((byte, index) => head[index] === byte)) return null;
  const view = new DataView(head.buffer);
  const told = head.length >= 24;
  return {
    widthPx: told ? view.getUint32(16) : null,
    heightPx: told ? view.getUint32(20) : null,
    whole: (file) => holds(file, [0x49, 0x45, 0x4e, 0x44], 24),
  };
}

function webpHeader(head: Uint8Array, size: number): Header | null {
  const text = (from: number): string => String.fromCharCode(...head.slice(from, from + 4));
  if (text(0) !== 'RIFF' || text(8) !== 'WEBP') return null;
  const view = new DataView(head.buffer);
  const whole = async (): Promise<boolean> => view.getUint32(4, true) + 8 <= size;
  if (head.length < 30) return { widthPx: null, heightPx: null, whole };
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = head.slice(
    text(12) === 'VP8L' ? 21 : text(12) === 'VP8X' ? 24 : 26,
  );
  switch (text(12)) {
    case 'VP8X':
      return { widthPx: 1 + (a | (b << 8) | (c << 16)), heightPx: 1 + (d | (e << 8) | (f << 16)), whole };
    case 'VP8L':
      return { widthPx: 1 + (a | ((b & 0x3f) << 8)), heightPx: 1 + ((b >> 6) | (c << 2) | ((d & 0x0f) << 10)), whole };
    default:
      return { widthPx: a | ((b & 0x3f) << 8), heightPx: c | ((d & 0x3f) << 8), whole };
  }
}

/** A directory may stand anywhere in the file, often at its end: what can be told is whether it is there at all. */
function tiffHeader(head: Uint8Array, size: number): Header | null {
  const order = String.fromCharCode(head[0] ?? 0, head[1] ?? 0);
  if ((order !== 'II' && order !== 'MM') || head.length < 8) return null;
  const view = new DataView(head.buffer);
  const little = order === 'II';
  const kind = view.getUint16(2, little);
  if (kind !== 42 && kind !== 43) return null;
  const at = kind === 42 ? view.getUint32(4, little) : head.length < 16 ? size : Number(view.getBigUint64(8, little));
  return { widthPx: null, heightPx: null, whole: async () => at + 2 <= size };
}

/** The last bytes first; the whole of it only where something else was put behind the picture. */
async function holds(file: Blob, sought: readonly number[], from: number): Promise<boolean> {
  for (const start of [Math.max(from, file.size - TAIL_BYTES), from]) {
    const bytes = new Uint8Array(await file.slice(start).arrayBuffer());
    for (let at = bytes.length - sought.length; at >= 0; at -= 1) {
      if (sought.every((byte, index) => bytes[at + index] === byte)) return true;
    }
  }
  return false;
}
