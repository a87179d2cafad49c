/** CRC-32 as PNG wants it (ISO 3309, polynomial 0xEDB88320 reflected). */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let c = byte;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

/** The checksum of `bytes`, 0 … 2³² − 1. */
export function crc32Of(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = (TABLE[(c ^ byte) & 0xff] as number) ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
