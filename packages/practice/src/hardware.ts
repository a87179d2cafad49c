/** What a piece hangs by, as its card says it. */
import type { Issue } from './issues.ts';

export const HARDWARE_KINDS = [
  'D-rings',
  'plates',
  'cleat',
  'wire',
  'batten',
  'screws',
  'sleeve',
  'hooks',
  'none',
] as const;

export type HardwareKind = (typeof HARDWARE_KINDS)[number];

export interface Hardware {
  readonly kind: HardwareKind;
  /** Points that bear on the wall; 0 where it does not hang. */
  readonly hooks: number;
  /** Top edge to where the hardware bears, under tension. Absent: not known. */
  readonly dropMm?: number;
  /** Between the outer hooks. Absent: not known. */
  readonly spacingMm?: number;
}

/** How each kind is written, and its usual number of hooks where none is written (common practice, no source). */
const WRITTEN: readonly (readonly [kind: HardwareKind, pattern: RegExp, hooks: number])[] = [
  ['none', /^(none|nothing|no hardware|stands|leans)\b/, 0],
  // Before the rings: a wire between two D-rings bears on the hook by the wire.
  ['wire', /\bwires?\b|\bcords?\b/, 1],
  ['D-rings', /\bd[- ]?rings?\b/, 2],
  ['plates', /\bplates?\b/, 2],
  ['cleat', /\bcleats?\b/, 1],
  ['batten', /\bbattens?\b/, 1],
  ['sleeve', /\bsleeves?\b|\brods?\b/, 2],
  ['screws', /\bscrews?\b/, 2],
  ['hooks', /\bhooks?\b/, 1],
];

const COUNTS: Readonly<Record<string, number>> = { a: 1, an: 1, one: 1, single: 1, two: 2, pair: 2, three: 3, four: 4 };
const MM_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

const NUMBER = String.raw`(\d+(?:[.,]\d+)?(?:[ -]\d+ ?\/ ?\d+)?(?![\d ]*\/)|\d+ ?\/ ?\d+)`;
const LENGTH = String.raw`${NUMBER} ?(mm|cm|m\b|in\b|inch|inches|")?\.?`;
const DROP = [
  new RegExp(String.raw`\bdrop(?: of|:| =)? ${LENGTH}`),
  new RegExp(String.raw`${LENGTH} (?:drop\b|(?:below|under|from)(?: the)? top)`),
];
const SPACING = [
  new RegExp(String.raw`${LENGTH} (?:apart|between)\b`),
  new RegExp(String.raw`\b(?:spacing|spaced|apart)(?: of|:| =)? ${LENGTH}`),
];
const MOST_HOOKS = 12;

/**
 * Hardware as written on a card, like '2 D-rings, drop 95 mm, 50 cm apart' or 'wire, one hook, drop 1 1/2 in'. An issue
 * where its kind is not understood or a figure has no unit: no unit is ever guessed. Never throws.
 */
export function hardwareFrom(text: string): Hardware | Issue {
  const plain = plainOf(text);
  const found = WRITTEN.find(([, pattern]) => pattern.test(plain));
  if (!found) return { where: 'hardware', what: 'is not understood', value: text };
  const [kind, , usual] = found;
  if (kind === 'none') return { kind, hooks: 0 };
  const hooks = hooksIn(plain, kind) ?? (kind === 'D-rings' && /\bd[- ]?ring\b/.test(plain) ? 1 : usual);
  if (hooks < 1 || hooks > MOST_HOOKS) return { where: 'hooks', what: 'is no number of hooks', value: hooks };
  const dropMm = lengthIn(plain, DROP);
  const spacingMm = lengthIn(plain, SPACING);
  if (typeof dropMm === 'string') return { where: 'drop', what: `has ${dropMm}`, value: text };
  if (typeof spacingMm === 'string') return { where: 'spacing', what: `has ${spacingMm}`, value: text };
  return {
    kind,
    hooks,
    ...(dropMm === null ? {} : { dropMm }),
    ...(spacingMm === null ? {} : { spacingMm }),
  };
}

/** What cannot be true of hardware on a piece of this size (mm): bearing below its foot, hooks beyond its edges. */
export function hardwareIssuesOf(
  hardware: Hardware,
  piece: { readonly widthMm: number; readonly heightMm: number },
): readonly Issue[] {
  const issues: Issue[] = [];
  const { dropMm, spacingMm } = hardware;
  if (dropMm !== undefined && dropMm > piece.heightMm) {
    issues.push({ where: 'drop', what: 'is more than the height', value: dropMm });
  }
  if (spacingMm !== undefined && spacingMm > piece.widthMm) {
    issues.push({ where: 'spacing', what: 'is more than the width', value: spacingMm });
  }
  return issues;
}

function plainOf(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, ' $&')
    .normalize('NFKC')
    .replace(/⁄/g, '/')
    .replace(/[″“”]|′′/g, '"')
    .replace(/[–—‑]/g, '-')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}

function hooksIn(plain: string, kind: HardwareKind): number | null {
  const counted = (noun: string) =>
    new RegExp(String.raw`\b(\d+|an?|one|single|two|pair|three|four)(?: of)?(?: [a-z]+)? ${noun}`).exec(plain)?.[1];
  const own = kind === 'wire' || kind === 'cleat' || kind === 'batten' ? undefined : NOUNS[kind];
  const word = counted('hooks?\\b') ?? (own === undefined ? undefined : counted(own));
  return word === undefined ? null : (COUNTS[word] ?? Number(word));
}

const NOUNS: Readonly<Partial<Record<HardwareKind, string>>> = {
  'D-rings': 'd[- ]?rings?\\b',
  plates: 'plates?\\b',
  screws: 'screws?\\b',
};

function lengthIn(plain: string, patterns: readonly RegExp[]): number | 'no unit' | 'no number' | null {
  for (const pattern of patterns) {
    const found = pattern.exec(plain);
    if (!found?.[1]) continue;
    if (found[2] === undefined) return 'no unit';
    const unit = found[2] === '"' || found[2].startsWith('in') ? 'in' : found[2];
    const mm = numberOf(found[1]) * (MM_PER[unit] ?? Number.NaN);
    // Trims the last bits of binary arithmetic.
    return Number.isFinite(mm) ? Math.round(mm * 1e6) / 1e6 : 'no number';
  }
  return null;
}

/** '95', '9,5', '1/2', '3 3/4'. */
function numberOf(text: string): number {
  const [, whole, top, bottom] = /^(?:(\d+(?:[.,]\d+)?)(?:$|[ -](?=\d+ ?\/)))?(?:(\d+) ?\/ ?(\d+))?$/.exec(text) ?? [];
  const fraction = top === undefined ? 0 : Number(top) / Number(bottom);
  return Number((whole ?? '0').replace(',', '.')) + fraction;
}
