/**
 * A person's word on what of a photograph is the thing. The server derives each such cut as a picture of its own, so
 * that whatever is asked for under its key never changes.
 */
/** `leave out` the ground; `keep` it, within the thing's bounds; the `whole` photograph is the thing. */
export type PictureCut = 'leave out' | 'keep' | 'whole';

export const PICTURE_CUTS: readonly PictureCut[] = ['leave out', 'keep', 'whole'];

/** What a picture is asked for by: its SHA-256, and a person's word on it. */
export function pictureKeyOf(sha256: string, cut: PictureCut | undefined): string {
  return cut === undefined ? sha256 : `${sha256}~${cut.replace(' ', '-')}`;
}

/** SHA-256 and cut of a key; null for what is none. */
export function pictureKeyParts(key: string): { readonly sha256: string; readonly cut: PictureCut | null } | null {
  const [, sha256, word] = /^([0-9a-f]{64})(?:~([a-z-]+))?$/.exec(key) ?? [];
  if (sha256 === undefined) return null;
  if (word === undefined) return { sha256, cut: null };
  const cut = PICTURE_CUTS.find((known) => known.replace(' ', '-') === word);
  return cut === undefined ? null : { sha256, cut };
}
