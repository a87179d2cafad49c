/**
 * An outline in words, from a row of the column of outlines: eight magnitudes, half the logarithm of width over height, the
 * part of its box it fills. Common practice, no source: bands set by eye.
 */
export function outlineWords(values: ArrayLike<number>): string {
  const across = Math.exp(2 * values[8]!);
  const fill = values[9]!;
  const uneven = Math.hypot(...Array.from({ length: 8 }, (_, h) => values[h]!));
  const level = across > 0.92 && across < 1.09;
  if (level && uneven < 0.09 && Math.abs(fill - Math.PI / 4) < 0.05) return 'round';
  if (fill >= RECTANGLE) return level ? 'square' : `${proportion(across)} and straight-sided`;
  return level ? 'as wide as high, of one outline' : `${proportion(across)}, of one outline`;
}

/** From this part of its box on, an outline is the box itself: every rectangle fills it. */
export const RECTANGLE = 0.95;

function proportion(across: number): string {
  const ratio = across > 1 ? across : 1 / across;
  const said =
    ratio < 1.25
      ? 'a little'
      : ratio < 1.75
        ? 'half again as'
        : ratio < 2.5
          ? 'twice as'
          : `${Math.round(ratio)} times as`;
  if (said === 'a little') return across > 1 ? 'a little wider than high' : 'a little higher than wide';
  return across > 1 ? `about ${said} wide as high` : `about ${said} high as wide`;
}
