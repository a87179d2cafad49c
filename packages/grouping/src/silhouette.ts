import type { Silhouette } from './records.ts';

const RAYS = 128;
const HARMONICS = 8;
const SOLID = 128;

/**
 * The silhouette of a cut-out from its alpha mask (rows of `width`, 0 to 255, half and over is solid), or undefined when
 * nothing or next to nothing is solid. The outline is the distance from the centre of gravity to the farthest solid pixel
 * along each of 128 rays, as magnitudes of its first eight Fourier terms over the mean (centroid distance signature:
 * D. Zhang, G. Lu, Pattern Recognition 37, 2004). RangeError when the mask is not whole rows.
 */
export function silhouetteOf(alpha: Uint8Array | Uint8ClampedArray, width: number): Silhouette | undefined {
  const height = alpha.length / width;
  if (!Number.isInteger(height)) throw new RangeError(`silhouetteOf: ${alpha.length} pixels are not rows of ${width}`);
  let [solid, sumX, sumY] = [0, 0, 0];
  let [left, right, top, bottom] = [width, -1, height, -1];
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at++) {
      if (alpha[at]! < SOLID) continue;
      solid++;
      sumX += x;
      sumY += y;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = y;
    }
  if (solid < 16) return undefined;
  const boxWidth = right - left + 1;
  const boxHeight = bottom - top + 1;
  const radii = radiiOf(alpha, width, sumX / solid, sumY / solid, Math.hypot(boxWidth, boxHeight));
  return { aspect: boxWidth / boxHeight, fill: solid / (boxWidth * boxHeight), outline: magnitudesOf(radii) };
}

function radiiOf(alpha: Uint8Array | Uint8ClampedArray, width: number, x: number, y: number, reach: number) {
  const height = alpha.length / width;
  const radii = new Float64Array(RAYS);
  for (let ray = 0; ray < RAYS; ray++) {
    const angle = (2 * Math.PI * ray) / RAYS;
    const across = Math.cos(angle);
    const down = Math.sin(angle);
    for (let r = reach; r > 0; r -= 0.5) {
      const column = Math.round(x + r * across);
      const row = Math.round(y + r * down);
      if (column < 0 || row < 0 || column >= width || row >= height) continue;
      if (alpha[row * width + column]! < SOLID) continue;
      radii[ray] = r;
      break;
    }
  }
  return radii;
}

function magnitudesOf(radii: Float64Array): number[] {
  const mean = radii.reduce((sum, r) => sum + r, 0) / RAYS;
  return Array.from({ length: HARMONICS }, (_, h) => {
    let [re, im] = [0, 0];
    for (const [ray, r] of radii.entries()) {
      const angle = (2 * Math.PI * ray * (h + 1)) / RAYS;
      re += r * Math.cos(angle);
      im += r * Math.sin(angle);
    }
    return (2 * Math.hypot(re, im)) / (RAYS * mean);
  });
}

/** How far apart two silhouettes are, 0 the same, about 1 a disc and a long rod; `turned` looks past how they stand. */
export function outlineDistance(one: Silhouette, other: Silhouette, turned = false): number {
  const outline = Math.hypot(...one.outline.map((v, h) => v - other.outline[h]!));
  if (turned) return outline;
  return Math.hypot(outline, 0.5 * Math.log(one.aspect / other.aspect), one.fill - other.fill);
}
