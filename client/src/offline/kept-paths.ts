/** Which addresses are kept for work without a connection, and under what names. Pure. */

export const SHELL_CACHE = 'shell';
/** Written at the build: the addresses of everything the page is made of. */
export const SHELL_LIST = '/shell.json';

/** A seat's facts that are asked for anew each time, and kept as last answered. */
export const TO_KEEP_FRESH = /^\/seat\/[^/]+\/(me|images\/facts)$/;

/** Pictures a seat keeps at most: a 1,024 px picture is about 100 KB, so about 150 MB. */
export const PICTURES_KEPT = 1500;

export function seatOf(path: string): string | null {
  return /^\/seat\/([^/]+)\//.exec(path)?.[1] ?? null;
}

/** A picture, an atlas page or a kept state: named by what is in it, so it never changes. */
export function isPicturePath(path: string): boolean {
  return /^\/seat\/[^/]+\/(images\/[^/]+\/[^/]+\.webp|states\/[0-9a-f]{64})$/.test(path);
}

export function pictureCacheOf(seat: string): string {
  return `pictures ${seat}`;
}

/** What is to go so that no more than the bound is kept; keys come in the order they were put. */
export function withinBound<T>(keys: readonly T[], bound = PICTURES_KEPT): readonly T[] {
  return keys.slice(0, Math.max(0, keys.length - bound));
}
