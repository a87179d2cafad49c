/**
 * What a registrar's dimension text says: parts (overall, framed, image, sheet …) with height × width × depth and the
 * unit as stated. The first-stated unit stands; a second system is checked against it. A unit is never guessed.
 */
import { DimensionReader } from './dimension-reader.ts';
import type { DimensionReading } from './dimension-reading.ts';
import { tokensFrom } from './measure-tokens.ts';

export interface DimensionOptions {
  /** Two systems agree within this: 1/16 in and half a millimetre of rounding (own rule). */
  readonly toleranceMm?: number;
}

/** Reads a dimension text into parts in mm; what is not understood comes back as issues, never as an error. */
export function dimensionsFrom(text: string, options: DimensionOptions = {}): DimensionReading {
  const reader = new DimensionReader(tokensFrom(text), options.toleranceMm ?? 2.2);
  return { written: text, ...reader.read() };
}
