/** What a cell says of a frame: `gilt, 6 cm` is gilt and 60 mm wide as faced. What kind is not said is not guessed. */
import { unitStatedBy } from './stated-by-heading.ts';

export type FrameWord =
  | 'none'
  | 'from the picture'
  | 'gilt'
  | 'silver'
  | 'black'
  | 'white'
  | 'pale wood'
  | 'wood'
  | 'dark wood';

export interface FrameWords {
  readonly kind: FrameWord;
  /** Of the moulding, as faced; 0: not said. */
  readonly widthMm: number;
}

export interface FrameRead {
  readonly frame: FrameWords | null;
  /** What was not understood, as a sentence; empty where all was. */
  readonly doubt: string;
}

// In the order asked: what covers a wood is seen before it. Common practice, no source; beyond English from memory.
const KINDS: readonly (readonly [RegExp, FrameWord])[] = [
  [/\b(unframed|no frame|none|without frame|frameless|ungerahmt|sans cadre)\b/, 'none'],
  // Its colours are those of the photograph's edge.
  [/\bfrom the picture\b/, 'from the picture'],
  [/\b(gilt|gilded|gold|golden|giltwood|vergoldet|dor[ée]e?)\b/, 'gilt'],
  [/\b(silver|silvered|silver-gilt|alumini?um|steel|silber|argent[ée]?)\b/, 'silver'],
  [/\b(black|ebon(y|ised|ized)|schwarz|noire?)\b/, 'black'],
  [/\b(white|cream|weiss|weiß|blanc|blanche)\b/, 'white'],
  [/\b(mahogany|walnut|rosewood|dark|wenge|stained)\b/, 'dark wood'],
  [/\b(maple|ash|birch|limed|pine|lime|beech|sycamore|light|pale)\b/, 'pale wood'],
  [/\b(wood|wooden|oak|cherry|teak|elm|pear|timber|holz|bois)\b/, 'wood'],
];
const MM_PER: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
  '″': 25.4,
};
/** No moulding is wider, mm (own rule). */
const WIDE_MM = 600;

/** `heading`: of its column, which may state the unit. */
export function frameFromCell(cell: string, heading: string): FrameRead {
  const text = cell.toLowerCase().replaceAll(/\s+/g, ' ').trim();
  const kind = KINDS.find(([words]) => words.test(text))?.[1];
  const widths = [...text.matchAll(/(\d+(?:[.,]\d+)?)\s*(mm|cm|m|inch(?:es)?|in|"|″)?(?![\w.])/g)];
  const [width] = widths;
  const unit = width?.[2] ?? unitStatedBy(heading);
  const mm = width === undefined ? 0 : Number((width[1] ?? '').replace(',', '.')) * (MM_PER[unit] ?? Number.NaN);
  if (kind === undefined) return { frame: null, doubt: `“${cell}” does not say what kind of frame it is.` };
  if (kind === 'none') return { frame: { kind, widthMm: 0 }, doubt: '' };
  const rounded = Math.round(mm * 10) / 10;
  if (widths.length > 1 || !(rounded >= 0 && rounded <= WIDE_MM)) {
    const why =
      widths.length > 1
        ? 'gives more than one figure'
        : unit === ''
          ? 'gives a width without a unit'
          : 'is too wide for a frame';
    return { frame: { kind, widthMm: 0 }, doubt: `“${cell}” ${why}: the frame is ${kind}, its width not known.` };
  }
  return { frame: { kind, widthMm: rounded }, doubt: '' };
}
