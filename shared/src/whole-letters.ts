/** Texts as they arrive elsewhere: half a letter (a lone surrogate) cannot be sent, and comes out as a replacement mark. */
import type { Json } from './schema.ts';

const HALF_A_LETTER = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** The value with U+FFFD for every half letter in its texts and keys; the very same value where there is none. */
export function inWholeLetters<V extends Json | undefined>(value: V): V;
export function inWholeLetters(value: Json | undefined): Json | undefined {
  if (typeof value === 'string') return value.replace(HALF_A_LETTER, '\ufffd');
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    const parts = value.map((part: Json) => inWholeLetters(part));
    return parts.some((part, index) => part !== value[index]) ? parts : value;
  }
  let changed = false;
  const parts = Object.entries(value).map(([key, part]): [string, Json] => {
    const own: [string, Json] = [inWholeLetters(key), inWholeLetters(part as Json)];
    changed ||= own[0] !== key || own[1] !== part;
    return own;
  });
  return changed ? Object.fromEntries(parts) : value;
}
