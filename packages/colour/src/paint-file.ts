import type { MeasuredPaint } from './paints.ts';
import type { Spectrum } from './spectrum.ts';
import { type MeasuredLab, type WhitePoint, whitePointFrom } from './white-points.ts';

/** What could not be read of a colour file: the place (file, line or object, field), a sentence, the value as it stood. */
export interface FileIssue {
  readonly where: string;
  readonly what: string;
  readonly value: string;
}

/** Where a paint stands in its file ("line 7", as issues have it), and its text there as written, at most 200 signs. */
export interface Origin {
  readonly where: string;
  readonly source: string;
}

/** Paints of a colour file in its order, where each stands, and what could not be read of it. */
export interface PaintFile {
  readonly paints: readonly MeasuredPaint[];
  readonly origins: readonly Origin[];
  readonly issues: readonly FileIssue[];
}

export interface PaintFileOptions {
  /** The file's name, for the places of issues. */
  readonly file: string;
  /** A person's word on the white point, where the file says none; without it such L*a*b* is not taken. */
  readonly assume?: WhitePoint;
}

/** One paint as its file has it, all in text; what the file has no field for is left out. */
export interface RawPaint {
  readonly name: string;
  readonly code?: string;
  readonly lab?: readonly [L: string, a: string, b: string];
  readonly illuminant?: string;
  readonly observer?: string;
  readonly lrv?: string;
  readonly sheen?: string;
  readonly measured?: string;
  readonly instrument?: string;
  readonly spectrum?: RawSpectrum;
}

/** Reflectance in text at even wavelengths; `whole` is what the file writes for all light returned, 1 or 100. */
export interface RawSpectrum {
  readonly startNm: number;
  readonly stepNm: number;
  readonly texts: readonly string[];
  readonly whole: number;
}

/** The place of a field of the paint at hand: "deck.csv, line 7, L*". */
type Placed = (field: string) => string;

const MAX_TEXT = 200;

/** A text within bounds on one line, without space round it. */
export function tidy(text: string | undefined): string {
  return (text ?? '')
    .slice(0, 10 * MAX_TEXT)
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, MAX_TEXT)
    .trimEnd();
}

/** A number as people and readers write it, "12.5", "12,5", "1.25e1"; NaN for anything else. */
export function numberFrom(text: string): number {
  const trimmed = text.trim();
  return /^[+-]?(?:\d{1,17}(?:[.,]\d{0,25})?|[.,]\d{1,25})(?:e[+-]?\d{1,3})?$/i.test(trimmed)
    ? Number(trimmed.replace(',', '.'))
    : Number.NaN;
}

/** The paint of a file's texts, or null when nothing measured is left of it; every field refused is told of. */
export function paintFrom(
  raw: RawPaint,
  { assume }: PaintFileOptions,
  placed: Placed,
  issues: FileIssue[],
): MeasuredPaint | null {
  const tell = (field: string, what: string, value: string): undefined => {
    issues.push({ where: placed(field), what, value: tidy(value) });
  };
  const name = tidy(raw.name) || tidy(raw.code);
  if (name === '') tell('name', 'It has neither a name nor a code, and is called unnamed.', '');
  const lab = labFrom(raw, assume, tell);
  const reflectance = raw.spectrum && reflectanceFrom(raw.spectrum, tell);
  if (!lab && !reflectance) {
    tell('measurement', 'Neither its L*a*b* nor its reflectance could be read, so it is left out.', name);
    return null;
  }
  const lrv = lrvFrom(raw.lrv ?? '', tell);
  const [code, sheen, measured, instrument] = [raw.code, raw.sheen, raw.measured, raw.instrument].map(tidy);
  return {
    name: name || 'unnamed',
    ...(code && { code }),
    ...(lab && { lab }),
    ...(reflectance && { reflectance }),
    ...(lrv !== undefined && { lrv }),
    ...(sheen && { sheen }),
    ...(measured && { measured }),
    ...(instrument && { instrument }),
  };
}

type Tell = (field: string, what: string, value: string) => undefined;

// No surface lies outside: the optimal colours under D65 reach from a* −166 to b* 148.
const LAB_BOUNDS = [
  ['L*', 0, 100],
  ['a*', -170, 170],
  ['b*', -170, 170],
] as const;

function labFrom(raw: RawPaint, assume: WhitePoint | undefined, tell: Tell): MeasuredLab | undefined {
  if (!raw.lab || raw.lab.every((text) => text.trim() === '')) return undefined;
  const numbers = raw.lab.map(numberFrom);
  for (const [i, [field, least, most]] of LAB_BOUNDS.entries()) {
    const value = numbers[i]!;
    const text = raw.lab[i]!;
    if (text.trim() === '') return tell(field, `${field} is missing, so its L*a*b* is left out.`, '');
    if (Number.isNaN(value)) return tell(field, `${field} is not a number, so its L*a*b* is left out.`, text);
    if (value < least || value > most) {
      return tell(field, `${field} is outside ${least} to ${most}, so its L*a*b* is left out.`, text);
    }
  }
  const [L = 0, a = 0, b = 0] = numbers;
  // Both may stand in one field: "D65/10".
  const [before = '', after = ''] = tidy(raw.illuminant).split('/');
  const [illuminant, observer] = [before, tidy(raw.observer) || after];
  if (illuminant === '' && observer === '') {
    if (assume) return { L, a, b, ...assume };
    return tell('white point', 'It does not say the illuminant and observer of its L*a*b*, so that is left out.', '');
  }
  const white = whitePointFrom(illuminant, observer);
  if (!white) {
    return tell(
      'white point',
      'Its illuminant or observer is not known here, so its L*a*b* is left out.',
      `${illuminant} ${observer}`,
    );
  }
  return { L, a, b, ...white };
}

function reflectanceFrom(spectrum: RawSpectrum, tell: Tell): Spectrum | undefined {
  const { startNm, stepNm, texts, whole } = spectrum;
  const values: number[] = [];
  for (const [i, text] of texts.entries()) {
    const field = `${startNm + i * stepNm} nm`;
    const share = numberFrom(text) / whole;
    if (Number.isNaN(share))
      return tell(field, 'Its reflectance is not a number here, so all of it is left out.', text);
    if (share > 1) return tell(field, 'Its reflectance is over 1, which no paint is, so all of it is left out.', text);
    if (share < 0) return tell(field, 'Its reflectance is under 0, so all of it is left out.', text);
    values.push(share);
  }
  return { startNm, stepNm, values };
}

function lrvFrom(text: string, tell: Tell): number | undefined {
  const bare = text.replace(/%|^\s*LRV/gi, '').trim();
  if (bare === '') return undefined;
  const lrv = numberFrom(bare);
  if (lrv >= 0 && lrv <= 100) return lrv;
  return tell('LRV', 'Its LRV is not a number from 0 to 100, so it is left out.', text);
}
