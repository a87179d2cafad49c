/**
 * A stream of numbers in [0, 1) that a seed fixes for ever, so that the same pool gives the same answer everywhere.
 * The generator is Mulberry32 (T. Ettinger, 2017, public domain).
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** The whole numbers from 0 to n, shuffled by a stream (Fisher and Yates). */
export function shuffledUpTo(n: number, random: () => number): Int32Array {
  const order = Int32Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    const kept = order[i]!;
    order[i] = order[j]!;
    order[j] = kept;
  }
  return order;
}
