/** The stamp on a print: which version of which paper it is, and whether a later one has taken its place. */
import type { Version } from './protocol.ts';

/** `Version.what` of the frozen vignette list. */
export const VIGNETTE_LIST = 'vignette list';

/** So many of a digest's first characters stand on a print. */
const DIGEST_SHOWN = 8;
/** With fewer a stamp could be anybody's. */
const DIGEST_LEAST = 4;

/** '4f1c09ab': what a print bears beside its number. */
export function shortDigest(digest: string): string {
  return digest.slice(0, DIGEST_SHOWN);
}

/** Every version of one paper, the newest first. */
export function versionsOf(versions: Iterable<Version>, what: string): Version[] {
  return [...versions].filter((version) => version.what === what).sort((a, b) => b.number - a.number);
}

export function newestOf(versions: Iterable<Version>, what: string): Version | null {
  return versionsOf(versions, what)[0] ?? null;
}

export type StampAnswer =
  | { readonly kind: 'not a stamp' }
  | { readonly kind: 'unknown'; readonly number: number | null }
  /** Several versions begin with these characters. */
  | { readonly kind: 'several'; readonly numbers: readonly number[] }
  | { readonly kind: 'newest'; readonly version: Version }
  | { readonly kind: 'superseded'; readonly version: Version; readonly by: Version };

/** What a print is, from its number ('5', 'v5', 'Version 5') or its digest's first characters, as somebody types them. */
export function printFrom(versions: Iterable<Version>, typed: string): StampAnswer {
  const all = [...versions];
  const text = typed.trim().toLowerCase();
  const [, figures] = /^(?:version|v\.?|no\.?)?\s*(\d{1,9})$/.exec(text) ?? [];
  const number = figures === undefined ? null : Number(figures);
  const byNumber = all.filter((version) => version.number === number);
  const digest = text.replace(/[\s.-]/g, '');
  const isDigest = /^[0-9a-f]+$/.test(digest) && digest.length >= DIGEST_LEAST;
  const byDigest = isDigest ? all.filter((version) => version.digest.startsWith(digest)) : [];
  // The same facts frozen once more, after others, bear the same digest: the latest of them is meant.
  const found = byNumber.length > 0 ? byNumber : oneOfEach(byDigest);
  const [version] = found;
  if (version === undefined)
    return number === null && !isDigest ? { kind: 'not a stamp' } : { kind: 'unknown', number };
  if (found.length > 1) return { kind: 'several', numbers: found.map((one) => one.number).sort((a, b) => a - b) };
  const newest = newestOf(all, version.what) as Version;
  return newest.number === version.number ? { kind: 'newest', version } : { kind: 'superseded', version, by: newest };
}

function oneOfEach(versions: readonly Version[]): Version[] {
  const latest = new Map<string, Version>();
  for (const version of [...versions].sort((a, b) => a.number - b.number)) {
    latest.set(`${version.what}\n${version.digest}`, version);
  }
  return [...latest.values()];
}
