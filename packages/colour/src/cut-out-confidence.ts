import { type Backdrop, nearOf } from './cut-out-backdrop.ts';
import { PLAIN, SHADED } from './cut-out-ground.ts';
import { type LabPlanes, lengthOf } from './lab-planes.ts';

/** How sure a mask is: by the border, by the contrast along its outline, and by what is odd about its shape. */
export function judgedOf(
  mask: Uint8Array,
  ground: Uint8Array,
  planes: LabPlanes,
  backdrop: Backdrop,
): { confidence: number; doubts: string[] } {
  const { width, height } = planes;
  const doubts: string[] = [];
  let area = 0;
  let outline = 0;
  let faint = 0;
  let atBorder = 0;
  let odd = 0;
  const near = nearOf(backdrop);
  const offAt = (i: number): number =>
    lengthOf(
      planes.L[i]! - backdrop.planes.L[i]!,
      planes.a[i]! - backdrop.planes.a[i]!,
      planes.b[i]! - backdrop.planes.b[i]!,
    );
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (mask[i] === 0) {
        if (ground[i] === SHADED || (ground[i] === PLAIN && offAt(i) > near / 2)) odd++;
        continue;
      }
      area++;
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) {
        atBorder++;
        continue;
      }
      if (mask[i - 1] !== 0 && mask[i + 1] !== 0 && mask[i - width] !== 0 && mask[i + width] !== 0) continue;
      outline++;
      if (offAt(i) < 3 * near) faint++;
    }
  }
  const share = area / mask.length;
  if (area === 0) return { confidence: 0, doubts: ['Nothing stands out from the ground.'] };
  const clear = 1 - faint / Math.max(1, outline);
  let confidence = Math.min(1, backdrop.borderShare + 0.05) * (0.4 + 0.6 * clear);
  if (clear < 0.8) doubts.push('Along part of its outline the thing is nearly the colour of the ground.');
  if (atBorder > 0.02 * 2 * (width + height)) {
    confidence *= 0.8;
    doubts.push('The thing runs out of the picture.');
  }
  if (odd > area) {
    confidence *= area / odd;
    doubts.push('More was taken for shadow than is left of the thing: it may be the colour of its ground.');
  }
  if (share < 0.02) {
    confidence *= 0.6;
    doubts.push('What is left is very small.');
  }
  return { confidence, doubts };
}
