/** How the bytes of a text file are written, told from the bytes themselves. */

/** Names as the Encoding Standard has them, for `TextDecoder`. */
export type TextEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** So many bytes are looked at for UTF-16 without a mark. */
const LOOKED_AT = 4096;

/**
 * By its byte order mark; else UTF-16 where every other byte of the beginning is mostly zero; else UTF-8 where all bytes are
 * well-formed (RFC 3629); else Windows-1252, which spreadsheets of Western Europe write and any bytes are.
 */
export function textEncodingOf(bytes: Uint8Array): TextEncoding {
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  const zeros = [0, 0];
  const looked = Math.min(bytes.length, LOOKED_AT);
  for (let at = 0; at < looked; at++) if (bytes[at] === 0) zeros[at % 2] = (zeros[at % 2] as number) + 1;
  const [even, odd] = zeros as [number, number];
  // Text of Latin letters has a zero in each pair; a file that is no text has them on both sides.
  if (odd > looked / 5 && even < odd / 20) return 'utf-16le';
  if (even > looked / 5 && odd < even / 20) return 'utf-16be';
  return isUtf8(bytes) ? 'utf-8' : 'windows-1252';
}

function isUtf8(bytes: Uint8Array): boolean {
  let at = 0;
  while (at < bytes.length) {
    const lead = bytes[at] as number;
    const more =
      lead < 0x80 ? 0 : lead >= 0xc2 && lead < 0xe0 ? 1 : lead >> 4 === 0xe ? 2 : lead >= 0xf0 && lead < 0xf5 ? 3 : -1;
    if (more < 0 || at + more >= bytes.length) return false;
    for (let n = 1; n <= more; n++) if (((bytes[at + n] as number) & 0xc0) !== 0x80) return false;
    const next = bytes[at + 1] as number;
    // Overlong forms, surrogates and what lies beyond Unicode.
    if ((lead === 0xe0 && next < 0xa0) || (lead === 0xed && next > 0x9f)) return false;
    if ((lead === 0xf0 && next < 0x90) || (lead === 0xf4 && next > 0x8f)) return false;
    at += more + 1;
  }
  return true;
}
