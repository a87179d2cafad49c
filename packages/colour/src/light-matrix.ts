import type { ColourMatrix } from './colour-matrix.ts';
import type { LabD65 } from './lab.ts';
import type { Light } from './lights.ts';
import { seenUnder, surfaceFromLab } from './seen.ts';
import { linearLightOf } from './spaces.ts';

// Colours a picture is made of: three lightnesses, two strengths, eight hues, and greys.
const LEARNT_FROM: readonly LabD65[] = [30, 50, 70].flatMap((L) => [
  { L, a: 0, b: 0 },
  ...[16, 32].flatMap((chroma) =>
    Array.from({ length: 8 }, (_, i) => ({
      L,
      a: chroma * Math.cos((i * Math.PI) / 4),
      b: chroma * Math.sin((i * Math.PI) / 4),
    })),
  ),
]);

/**
 * The matrix that comes nearest to what a light does to a photograph, of which nothing but colours is known: least squares
 * over likely reflectances of 51 colours (see `surfaceFromLab`), white kept white. For looking, not for
 * reading: over the CIE’s test colours it is off by ΔE00 2.2 on the mean where it is worst.
 */
export function lightMatrixOf(light: Light): ColourMatrix {
  const pairs = LEARNT_FROM.flatMap((lab) => {
    const surface = surfaceFromLab(lab);
    if (surface.basis !== 'likely') return [];
    // By its own lightness, so that darks count as lights do.
    const weight = 1 / (lab.L + 16) ** 2;
    return [{ from: linearLightOf(lab), to: linearLightOf(seenUnder(surface, light)), weight }];
  });
  return [0, 1, 2].flatMap((row) => rowOf(pairs.map(({ from, to, weight }) => ({ from, to: to[row]!, weight }))));
}

/** Three weights that sum to 1 for one channel: the third is what the others leave, so two are found. */
function rowOf(pairs: readonly { readonly from: readonly number[]; readonly to: number; readonly weight: number }[]) {
  let [pp, pq, qq, ps, qs] = [0, 0, 0, 0, 0];
  for (const { from, to, weight } of pairs) {
    const p = from[0]! - from[2]!;
    const q = from[1]! - from[2]!;
    const left = to - from[2]!;
    pp += weight * p * p;
    pq += weight * p * q;
    qq += weight * q * q;
    ps += weight * p * left;
    qs += weight * q * left;
  }
  const det = pp * qq - pq * pq;
  const r = (ps * qq - qs * pq) / det;
  const g = (qs * pp - ps * pq) / det;
  return [r, g, 1 - r - g];
}
