/** A dimension text as tokens: numbers, units, labels, signs between them, and the words that are left. */

export type LengthUnit = 'in' | 'ft' | 'cm' | 'mm' | 'm';
export type WeightUnit = 'kg' | 'g' | 'lb' | 'oz';
export type Axis = 'height' | 'width' | 'depth' | 'diameter' | 'length';

export type Token =
  | { readonly kind: 'number'; readonly value: number; readonly max?: number; readonly written: string }
  | { readonly kind: 'unit'; readonly unit: LengthUnit }
  | { readonly kind: 'weight'; readonly unit: WeightUnit }
  | { readonly kind: 'axis'; readonly axis: Axis }
  | { readonly kind: 'by' | 'open' | 'close' | 'colon' | 'comma' | 'end' }
  | { readonly kind: 'word'; readonly text: string };

export const MM_PER: Readonly<Record<LengthUnit, number>> = { in: 25.4, ft: 304.8, cm: 10, mm: 1, m: 1000 };
export const KG_PER: Readonly<Record<WeightUnit, number>> = { kg: 1, g: 0.001, lb: 0.45359237, oz: 0.028349523125 };

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

const UNITS: readonly (readonly [RegExp, LengthUnit])[] = [
  [/^(inches|inch|ins|in)(?![a-z])\.?/, 'in'],
  [/^(''|"|″|”|“|′′)/, 'in'],
  [/^(feet|foot|ft)(?![a-z])\.?/, 'ft'],
  [/^('|′|’)/, 'ft'],
  [/^(millimet(?:er|re)s?|mm)(?![a-z])\.?/, 'mm'],
  [/^(centimet(?:er|re)s?|cms?)(?![a-z])\.?/, 'cm'],
  [/^(met(?:er|re)s?|m)(?![a-z])\.?/, 'm'],
];

const WEIGHTS: readonly (readonly [RegExp, WeightUnit])[] = [
  [/^(kilograms?|kilos?|kgs?)(?![a-z])\.?/, 'kg'],
  [/^(grams?|grammes?|gr?s?)(?![a-z])\.?/, 'g'],
  [/^(pounds?|lbs?)(?![a-z])\.?/, 'lb'],
  [/^(ounces?|ozs?)(?![a-z])\.?/, 'oz'],
];

const AXES: readonly (readonly [RegExp, Axis])[] = [
  [/^(diameter|diam|dia|ø|⌀)(?![a-z])\.?/, 'diameter'],
  [/^(height|high|ht|h)(?![a-z])\.?/, 'height'],
  [/^(width|wide|wd|w)(?![a-z])\.?/, 'width'],
  [/^(depth|deep|dp|d)(?![a-z])\.?/, 'depth'],
  [/^(length|long|lg|l)(?![a-z])\.?/, 'length'],
];

// 1,234.5 and 1.234,5 can be read one way only; 1,234 cannot, see `twoReadings`.
const PLAIN = String.raw`\d{1,3}(?:,\d{3})+\.\d+|\d{1,3}(?:\.\d{3})+,\d+|\d{1,3}(?:,\d{3}){2,}|\d{1,3}(?:\.\d{3}){2,}|\d+(?:[.,]\d+)?`;
const NUMBER = new RegExp(String.raw`^(?:(\d+)(?:\s+|-)(\d+)\s*\/\s*(\d+)|(\d+)\s*\/\s*(\d+)|(${PLAIN}))`);

/** Reads a text into tokens; never throws, and drops nothing but spaces. */
export function tokensFrom(text: string): Token[] {
  let rest = text
    .replace(/<br\s*\/?>/gi, '\n')
    .replace(/&nbsp;/gi, ' ')
    .replace(/(\d)?\s*([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/g, (_, whole: string | undefined, sign: string) =>
      whole === undefined ? ` ${VULGAR[sign]}` : `${whole} ${VULGAR[sign]}`,
    )
    .replace(/⁄/g, '/')
    .replace(/[‐‑–—−]/g, '-')
    .toLowerCase();
  const tokens: Token[] = [];
  while (rest.length > 0) {
    const space = /^[ \t\u00a0]+/.exec(rest)?.[0].length ?? 0;
    rest = rest.slice(space);
    if (rest === '') break;
    const [token, length] = nextToken(rest, tokens.at(-1));
    rest = rest.slice(length);
    if (token !== null) tokens.push(token);
  }
  return tokens;
}

function nextToken(rest: string, before: Token | undefined): [Token | null, number] {
  const first = rest[0] as string;
  if (first === '\n' || first === '\r' || first === ';') return [{ kind: 'end' }, 1];
  if (first === '(' || first === '[') return [{ kind: 'open' }, 1];
  if (first === ')' || first === ']') return [{ kind: 'close' }, 1];
  if (first === ':') return [{ kind: 'colon' }, 1];
  if (first === ',') return [{ kind: 'comma' }, 1];
  if (first === '.') return [null, 1];
  if (first === '×' || first === '*') return [{ kind: 'by' }, 1];
  const by = /^(x|by)(?![a-z])/.exec(rest);
  if (by) return [{ kind: 'by' }, by[0].length];
  const number = numberAt(rest);
  if (number !== null) return number;
  if (before?.kind === 'number') {
    for (const [pattern, unit] of WEIGHTS) {
      const found = pattern.exec(rest);
      if (found && !(unit === 'g' && found[0].length === 0)) return [{ kind: 'weight', unit }, found[0].length];
    }
    for (const [pattern, unit] of UNITS) {
      const found = pattern.exec(rest);
      if (found) return [{ kind: 'unit', unit }, found[0].length];
    }
  }
  for (const [pattern, axis] of AXES) {
    const found = pattern.exec(rest);
    if (found) return [{ kind: 'axis', axis }, found[0].length];
  }
  const word = /^[\p{L}][\p{L}'’-]*/u.exec(rest)?.[0] ?? first;
  return [{ kind: 'word', text: word }, word.length];
}

function numberAt(rest: string): [Token, number] | null {
  const single = singleAt(rest);
  if (single === null) return null;
  const [value, length] = single;
  const range = /^\s*-\s*(?=\d)/.exec(rest.slice(length));
  const end = range === null ? null : singleAt(rest.slice(length + range[0].length));
  if (range === null || end === null || end[0] <= value) {
    return [{ kind: 'number', value, written: rest.slice(0, length) }, length];
  }
  const whole = length + range[0].length + end[1];
  return [{ kind: 'number', value, max: end[0], written: rest.slice(0, whole) }, whole];
}

function singleAt(rest: string): [number, number] | null {
  const found = NUMBER.exec(rest);
  if (found === null) return null;
  const [all, whole, top, bottom, topOnly, bottomOnly, plain] = found;
  if (whole !== undefined && Number(bottom) > 0) return [Number(whole) + Number(top) / Number(bottom), all.length];
  if (topOnly !== undefined && Number(bottomOnly) > 0) return [Number(topOnly) / Number(bottomOnly), all.length];
  if (plain === undefined) return null;
  const marks = plain.replace(/\d/g, '');
  const grouped = marks.length > 1;
  const decimal = grouped && marks[0] !== marks.at(-1) ? marks.at(-1) : grouped ? '' : marks;
  const plainValue = grouped ? plain.replaceAll(marks[0] as string, '') : plain;
  return [Number(decimal === ',' ? plainValue.replace(',', '.') : plainValue), all.length];
}

/** True when a figure may be thousands or a decimal: `1,250` of anything, `1.250` of a unit nobody divides so finely. */
export function twoReadings(written: string, unit: LengthUnit | WeightUnit | null): boolean {
  return (
    /^[1-9]\d{0,2},\d{3}$/.test(written) || (/^[1-9]\d{0,2}\.\d{3}$/.test(written) && (unit === 'mm' || unit === 'cm'))
  );
}
