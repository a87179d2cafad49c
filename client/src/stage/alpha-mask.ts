/** Where a picture is opaque: a cut-out is taken hold of by itself, not by the air round it. */
import type { Drawable } from './bitmap-source.ts';

/** Whether a mask of w × h alpha values is opaque at (u, v) in 0..1; a pixel to each side counts, for small things. */
export function opaqueIn(mask: ArrayLike<number>, w: number, h: number, u: number, v: number): boolean {
  const cx = Math.min(w - 1, Math.max(0, Math.floor(u * w)));
  const cy = Math.min(h - 1, Math.max(0, Math.floor(v * h)));
  for (let y = Math.max(0, cy - 1); y <= Math.min(h - 1, cy + 1); y++) {
    for (let x = Math.max(0, cx - 1); x <= Math.min(w - 1, cx + 1); x++) {
      if ((mask[y * w + x] ?? 0) > 40) return true;
    }
  }
  return false;
}

/** Alpha values of a drawable, row by row; null where the browser gives no canvas. */
export function alphaOf({ image, sx, sy, sw, sh }: Drawable): Uint8ClampedArray | null {
  const canvas = new OffscreenCanvas(sw, sh);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) return null;
  context.drawImage(image, sx, sy, sw, sh, 0, 0, sw, sh);
  const { data } = context.getImageData(0, 0, sw, sh);
  return data.filter((_, index) => index % 4 === 3);
}
