/** Unguessable texts, of which only the hash is ever kept. */
import { createHash, randomBytes } from 'node:crypto';

/** 256 random bits, in the letters an address takes. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** SHA-256, hex. A secret of 256 random bits needs no slower hash. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
