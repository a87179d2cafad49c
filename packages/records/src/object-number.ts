/** Object numbers as people type them in different ways, and keys under which the same number is found again. */

const SEPARATORS = /[\s\p{Pd}\u2212._/\\]+/gu;
const INVISIBLE = /[\u200b-\u200f\u2060\ufeff\u00ad]/g;

/** The number without regard to case, and with spaces, dashes, dots, underscores and slashes alike; '' when nothing is left. */
export function objectNumberKey(number: string): string {
  return alike(number, '.');
}

/** The key of who owns a thing; 'held' for the museum's own. A lender's key begins with `of-`, so that none can be 'held'. */
export function ownerKeyFrom(lender: string): string {
  const name = alike(lender, '-');
  return name === '' ? 'held' : `of-${name}`;
}

/** The key of a record: two lenders may use the same number. */
export function recordKeyOf({ lender, number }: { readonly lender: string; readonly number: string }): string {
  return `${ownerKeyFrom(lender)}:${objectNumberKey(number)}`;
}

function alike(text: string, joint: string): string {
  const joined = text.normalize('NFKC').toLowerCase().replace(INVISIBLE, '').replace(SEPARATORS, joint);
  const from = joined.startsWith(joint) ? 1 : 0;
  return joined.slice(from, joined.endsWith(joint) ? Math.max(from, joined.length - 1) : undefined);
}

/** The pieces a number names: `1902.7.1–60` is 1 to 60 of `1902.7`, `1987.12a–c` is 1 to 3 of `1987.12`. */
export interface NumberRange {
  readonly stem: string;
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/**
 * The range a number ends in, or null. A plain hyphen joins the groups of many numbers (`1931-14-3`), so between two
 * figures only a longer dash or `to` makes a range; between single letters, or with the whole number said again, any dash does.
 */
export function numberRangeOf(number: string): NumberRange | null {
  const text = number.normalize('NFKC').trim();
  const letters = /^(.*\d)\s*([a-z])\s*[\p{Pd}\u2212]\s*([a-z])$/iu.exec(text);
  if (letters) return rangeFrom(letters[1], letterAt(letters[2]), letterAt(letters[3]));
  const again = /^(.*[\s._/-])?(\d+)\s*(?:[\p{Pd}\u2212]|to)\s*(.*[\s._/-])(\d+)$/iu.exec(text);
  if (again && again[1] !== undefined && objectNumberKey(again[1]) === objectNumberKey(again[3] ?? '')) {
    return rangeFrom(again[1], Number(again[2]), Number(again[4]));
  }
  const figures = /^(.*?)(\d+)\s*(?:[\u2012-\u2015]|\s-\s|\bto\b)\s*(\d+)$/iu.exec(text);
  if (figures === null || /[\u2012-\u2015]/.test(figures[1] ?? '')) return null;
  return rangeFrom(figures[1], Number(figures[2]), Number(figures[3]));
}

function rangeFrom(stem: string | undefined, from: number, to: number): NumberRange | null {
  return to > from && to - from < 100_000
    ? { stem: objectNumberKey(stem ?? ''), from, to, count: to - from + 1 }
    : null;
}

/** a is 1. */
export function letterAt(letter: string | undefined): number {
  return (letter ?? '').toLowerCase().charCodeAt(0) - 96;
}
