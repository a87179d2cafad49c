import { uint32 } from 'lib0/random';

/** A new opaque id: 10 characters of base 36, random; works where a page has no secure context. */
export function newId(): string {
  const characters = uint32().toString(36).padStart(7, '0') + uint32().toString(36).padStart(7, '0');
  return characters.slice(-7) + characters.slice(0, 3);
}
