/** Which picture shows which object, by the object number in the file's name. */
import { letterAt, numberRangeOf, objectNumberKey } from './object-number.ts';

export interface PictureMatch {
  readonly fileName: string;
  /** As it stands in the checklist. */
  readonly number: string;
  /** Which piece of the number: 1 for `1902.7_01.jpg`; null when the name says only the number. */
  readonly order: number | null;
}

export interface PicturesMatched {
  readonly matched: readonly PictureMatch[];
  readonly unmatched: readonly string[];
}

interface Target {
  readonly number: string;
  /** What may follow the stem of a range. */
  readonly within: { readonly from: number; readonly to: number } | null;
}

/** null: more than one number answers to this key, so it finds none. */
type Index = Map<string, Target | null>;

const EXTENSION = /\.(jpe?g|png|webp|tiff?|gif|bmp|hei[cf]|avif|psd|dng|cr2|nef)$/i;

/**
 * Pictures by number; the longest number in a name wins, and what answers to two numbers is left for a person. A leading
 * abbreviation of the house (`OM 1919.22.4`) and leading noughts (`1919_22_04.png`) may be missing or added in the name.
 * Common practice, no source.
 */
export function picturesMatched(fileNames: readonly string[], numbers: readonly string[]): PicturesMatched {
  // Sure ones first: as written, then without noughts, then without the house's letters.
  const indexes = [indexOf(numbers, wordsOf), indexOf(numbers, severalPlain), indexOf(numbers, figuresOnly)];
  const matched: PictureMatch[] = [];
  const unmatched: string[] = [];
  for (const fileName of fileNames) {
    const name = (fileName.split(/[/\\]/).at(-1) ?? '').replace(EXTENSION, '');
    const found =
      find(name, indexes[0] as Index, wordsOf) ??
      find(name, indexes[1] as Index, plainWords) ??
      find(name, indexes[2] as Index, plainWords);
    if (found) matched.push({ fileName, ...found });
    else unmatched.push(fileName);
  }
  return { matched, unmatched };
}

function wordsOf(text: string): string[] {
  return objectNumberKey(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

function plainWords(text: string): string[] {
  return wordsOf(text).map((word) => word.replace(/^0+(?=\d)/, ''));
}

/** One bare figure without its noughts would find too much: 412 is not DSC_0412. */
function severalPlain(text: string): string[] {
  const words = plainWords(text);
  return words.length > 1 ? words : [];
}

function figuresOnly(text: string): string[] {
  const words = plainWords(text);
  const figures = words.findIndex((word) => /\d/.test(word));
  return figures > 0 && words.length - figures > 1 ? words.slice(figures) : [];
}

function indexOf(numbers: readonly string[], split: (text: string) => string[]): Index {
  const index: Index = new Map();
  const put = (words: readonly string[], target: Target) => {
    const key = words.join('.');
    if (key === '') return;
    const other = index.get(key);
    const same = other && objectNumberKey(other.number) === objectNumberKey(target.number);
    if (other === undefined) index.set(key, target);
    else if (!same && !(other !== null && other.within === null && target.within !== null)) {
      // A number outright beats the stem of a range; otherwise nobody can tell.
      index.set(key, other?.within && target.within === null ? target : null);
    }
  };
  for (const number of numbers) {
    put(split(number), { number, within: null });
    const range = numberRangeOf(number);
    if (range) put(split(range.stem), { number, within: { from: range.from, to: range.to } });
  }
  return index;
}

function find(name: string, index: Index, split: (text: string) => string[]): Omit<PictureMatch, 'fileName'> | null {
  const words = split(name);
  for (let length = words.length; length > 0; length -= 1) {
    const found = new Map<string, Omit<PictureMatch, 'fileName'>>();
    for (let at = 0; at + length <= words.length; at += 1) {
      const match = matchAt(words, at, length, index);
      if (match) found.set(match.number, match);
    }
    if (found.size > 1) return null;
    for (const match of found.values()) return match;
  }
  return null;
}

function matchAt(
  words: readonly string[],
  at: number,
  length: number,
  index: Index,
): Omit<PictureMatch, 'fileName'> | null {
  const own = words.slice(at, at + length);
  // A figure alone, after or before other figures, is a group of some other number.
  if (length === 1 && isFigure(own[0]) && (isFigure(words[at - 1]) || isFigure(words[at + 1]))) return null;
  const after = words[at + length];
  const piece = isFigure(after) && (after ?? '').length <= 4 ? Number(after) : null;
  const target = index.get(own.join('.'));
  if (target?.within === null) return { number: target.number, order: piece };
  if (target && piece !== null && piece >= target.within.from && piece <= target.within.to) {
    return { number: target.number, order: piece };
  }
  // 1987.12b.jpg is the second piece of 1987.12.
  const lettered = /^(.*\d)([a-z])$/.exec(own.at(-1) ?? '');
  const stem = lettered ? index.get([...own.slice(0, -1), lettered[1]].join('.')) : undefined;
  if (!lettered || !stem) return null;
  const order = letterAt(lettered[2]);
  if (stem.within !== null && (order < stem.within.from || order > stem.within.to)) return null;
  return { number: stem.number, order };
}

function isFigure(word: string | undefined): boolean {
  return word !== undefined && /^\d+$/.test(word);
}
