/** Lengths as people read and type them: centimetres to one decimal, or inches to a fraction. */
import type { Issue } from './issues.ts';

export type LengthUnit = 'cm' | 'in';

export type LengthReading =
  | { readonly mm: number; readonly issue?: never }
  | { readonly mm?: never; readonly issue: Issue };

const MM_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };
/** A kilometre: longer than any room, so a slip of the hand. */
const LONGEST_MM = 1_000_000;
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Centimetres with one decimal, always, as '152.4', rounded to the millimetre. RangeError where mm is not finite. */
export function centimetresText(mm: number): string {
  const whole = nearest(mm);
  return `${whole < 0 ? '-' : ''}${Math.floor(Math.abs(whole) / 10)}.${Math.abs(whole) % 10}`;
}

/**
 * Inches to the nearest 1/denominator, reduced: whole + numerator/denominator, both of the same sign; numerator 0 and
 * denominator 1 where nothing is left over. RangeError where mm is not finite or the denominator no positive integer.
 */
export function inchesText(
  mm: number,
  denominator = 16,
): { readonly negative: boolean; readonly whole: number; readonly numerator: number; readonly denominator: number } {
  if (!Number.isInteger(denominator) || denominator < 1) {
    throw new RangeError(`denominator is ${denominator}; it must be a whole number of 1 or more`);
  }
  const parts = Math.abs(nearest((mm / 25.4) * denominator));
  const left = parts % denominator;
  const shared = divisorOf(left, denominator);
  return {
    negative: mm < 0 && parts > 0,
    whole: (parts - left) / denominator,
    numerator: left / shared,
    denominator: denominator / shared,
  };
}

/** Inches as plain text, '60 1/16', '1/2', '60', to the nearest sixteenth unless another denominator is asked for. */
export function toInches(mm: number, denominator = 16): string {
  const inches = inchesText(mm, denominator);
  const fraction = inches.numerator > 0 ? `${inches.numerator}/${inches.denominator}` : '';
  const whole = inches.whole > 0 || fraction === '' ? String(inches.whole) : '';
  return `${inches.negative ? '-' : ''}${[whole, fraction].filter((part) => part !== '').join(' ')}`;
}

/** A length in a person's unit, without its name: '152.4' or '60'. */
export function lengthText(mm: number, unit: LengthUnit): string {
  return unit === 'cm' ? centimetresText(mm) : toInches(mm);
}

/**
 * A size in the order height × width × depth (CCO 2006, 3.2.1) without its unit: '66 × 86 × 6', '8.3 × 8.3'; whole
 * centimetres lose their '.0'. Depth is left out where it is null.
 */
export function sizeText(heightMm: number, widthMm: number, depthMm: number | null, unit: LengthUnit): string {
  const sides = depthMm === null ? [heightMm, widthMm] : [heightMm, widthMm, depthMm];
  return sides.map((mm) => lengthText(mm, unit).replace(/\.0$/, '')).join(' × ');
}

/**
 * A typed length in mm (decimals kept). A bare number is in the given unit; mm, cm, m, in, ", ft and ' override it; feet
 * and inches may be joined. Fractions as 60 1/16, 60-1/16, 60½; decimals with point or comma. What cannot be read, or
 * could be read two ways (1,524), is an issue; nothing throws.
 */
export function lengthFrom(text: string, unit: LengthUnit): LengthReading {
  const refuse = (what: string): LengthReading => ({ issue: { where: 'length', what, value: text } });
  let rest = plainOf(text);
  if (rest === '') return refuse('nothing is written');
  const negative = rest.startsWith('-');
  if (negative) rest = rest.slice(1).trim();
  if (/(^|[^\d.,])[1-9]\d{0,2},\d{3}(?!\d)/.test(rest)) return refuse('could be thousands or decimals; write a point');

  const feet = /^(.*?)\s*(?:ft\.?|feet|foot|')\s*(.*)$/.exec(rest);
  let mm: number | null;
  if (feet) {
    const inches = feet[2] === '' ? 0 : measureOf(feet[2] ?? '', 'in', ['in']);
    const whole = numberOf(feet[1] ?? '');
    mm = whole === null || inches === null ? null : whole * 304.8 + inches;
  } else {
    mm = measureOf(rest, unit, ['mm', 'cm', 'm', 'in']);
  }
  if (mm === null) return refuse('is not a length');
  if (mm > LONGEST_MM) return refuse('is longer than a kilometre');
  // Trims the last bits of binary arithmetic, far below anything measurable.
  const tidy = Math.round(mm * 1e6) / 1e6;
  return { mm: negative && tidy !== 0 ? -tidy : tidy };
}

function plainOf(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign] ?? ''} `)
    .replace(/[⁰¹²³⁴-⁹]+/g, ' $&')
    .normalize('NFKC')
    .replace(/[⁄∕]/g, '/')
    .replace(/[−–—‐‑]/g, '-')
    .replace(/[′’‘]/g, "'")
    .replace(/[″“”]|''/g, '"')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}

function measureOf(text: string, unit: string, allowed: readonly string[]): number | null {
  const found = /^([^a-z"]*?)\s*(mm|cm|m|inches|inch|in|")?\.?$/.exec(text);
  if (!found) return null;
  const named = found[2] === undefined ? unit : found[2] === '"' || found[2].startsWith('in') ? 'in' : found[2];
  const number = numberOf(found[1] ?? '');
  const perUnit = MM_PER[named];
  return number === null || perUnit === undefined || !allowed.includes(named) ? null : number * perUnit;
}

/** '60', '60.5', '60,5', '.5', '1/2', '60 1/2', '60-1/2'; null for anything else. */
function numberOf(text: string): number | null {
  const found = /^(?:(\d{1,9}(?:[.,]\d{0,9})?|[.,]\d{1,9})(?!\/))?(?:(?:^|[ -]+)(\d{1,4}) ?\/ ?(\d{1,4}))?$/.exec(
    text.trim(),
  );
  if (!found || (found[1] === undefined && found[2] === undefined)) return null;
  const whole = found[1] === undefined ? 0 : Number(found[1].replace(',', '.'));
  if (found[2] === undefined) return whole;
  const fraction = Number(found[2]) / Number(found[3]);
  if (!Number.isFinite(fraction) || (found[1] !== undefined && (fraction >= 1 || !Number.isInteger(whole))))
    return null;
  return whole + fraction;
}

function nearest(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`length is ${value}; it must be finite`);
  // Halves go away from zero on both sides.
  return Math.sign(value) * Math.round(Math.abs(value)) + 0;
}

function divisorOf(a: number, b: number): number {
  return a === 0 ? b : divisorOf(b % a, a);
}
