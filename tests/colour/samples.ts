import type { Pixels } from '@enfilade/colour/histogram';
import type { LabD65 } from '@enfilade/colour/lab';
import { srgbFromLabD65 } from '@enfilade/colour/spaces';

/** Seeded uniform numbers in [0, 1) for drawn samples. */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** n colours over the whole of CIELAB, a tenth of them near grey. */
export function randomLabs(n: number, seed: number): LabD65[] {
  const random = randomOf(seed);
  return Array.from({ length: n }, () => {
    const reach = random() < 0.1 ? 4 : 128;
    return { L: random() * 100, a: (random() * 2 - 1) * reach, b: (random() * 2 - 1) * reach };
  });
}

/** A picture drawn point by point in CIELAB; `null` is transparent, `noise` a grain in L*. */
export function drawn(
  width: number,
  height: number,
  at: (x: number, y: number) => LabD65 | null,
  noise = 0,
  seed = 1,
): Pixels {
  const random = randomOf(seed);
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i += 4) {
      const lab = at(x, y);
      if (!lab) continue;
      const { r, g, b } = srgbFromLabD65({ ...lab, L: lab.L + (random() - 0.5) * 2 * noise });
      data.set([r, g, b, 255], i);
    }
  }
  return { data, width, height };
}

export const VERDIGRIS: LabD65 = { L: 33, a: -25, b: -4 };
export const SAFFRON: LabD65 = { L: 73, a: 14, b: 58 };
export const WELD: LabD65 = { L: 80, a: -2, b: 60 };
export const CHALK: LabD65 = { L: 91, a: 0, b: 7 };

const oilView = (x: number, y: number): LabD65 => {
  if (x < 8 || y < 8 || x >= 112 || y >= 82) return { L: 26, a: -12, b: 1 };
  if (y < 26) return { L: 66, a: -5, b: 8 };
  if (y < 60) return { L: 36 - (y - 26) * 0.1, a: -21, b: 1 };
  return x < 40 && y > 70 ? { L: 24, a: -15, b: 6 } : { L: 33, a: -22, b: 3 };
};

/** A landscape: pale sky, hills in dark green, in a dark green frame. */
export const OIL_VIEW: Pixels = drawn(120, 90, oilView, 3);

/** A dyed-wool hanging: bands of red, blue, cream and yellow. */
export const HANGING: Pixels = drawn(
  150,
  80,
  (x, y) => {
    const wave = y + 5 * Math.sin(x / 12);
    if (wave < 38) return { L: 43, a: 56, b: 36 };
    if (wave < 58) return { L: 26, a: 10, b: -40 };
    return wave < 70 ? { L: 90, a: 0, b: 13 } : { L: 79, a: 6, b: 68 };
  },
  2,
);

/** A printing block of pear wood: brown, with the darker carving sunk in it. */
export const PEAR_BLOCK: Pixels = drawn(
  80,
  70,
  (x, y) => (Math.hypot((x % 20) - 10, (y % 18) - 9) < 5 ? { L: 40, a: 14, b: 20 } : { L: 52, a: 14, b: 26 }),
  3,
);

/** A copper mould: a round thing cut out, lit from above, with a bright rib. */
export const COPPER: Pixels = drawn(
  90,
  90,
  (x, y) => {
    const r = Math.hypot(x - 44.5, y - 44.5);
    if (r > 42) return null;
    if (r > 36) return { L: 40, a: 28, b: 30 };
    if (Math.abs(r - 22) < 3) return { L: 80, a: 18, b: 30 };
    return y > 50 ? { L: 38, a: 27, b: 28 } : { L: 56, a: 29, b: 34 };
  },
  2,
);
