/** Surfaces: what wood, wool, canvas, paper and iron do to flat colour. Light comes from the upper left. */
import { linear, n } from './ink.ts';

/** A filter that turns any shape into grey noise; to be blended over the shape with `textured`. Frequencies per cm. */
export function noise(id: string, fx: number, fy: number, octaves: number, seed: number, contrast: number): string {
  const c = n(0.5 - contrast / 2);
  const row = `0 0 0 ${n(contrast)} ${c} `;
  return `<filter id="${id}" x="0" y="0" width="1" height="1" color-interpolation-filters="sRGB"><feTurbulence type="fractalNoise" baseFrequency="${fx} ${fy}" numOctaves="${octaves}" seed="${seed % 997}"/><feColorMatrix values="${row}${row}${row}0 0 0 0 1"/><feComposite operator="in" in2="SourceAlpha"/></filter>`;
}

/** The path `d` covered with a noise filter, blended so that it lightens and darkens what lies under it. */
export function textured(d: string, filterId: string, strength: number): string {
  return `<g style="mix-blend-mode:soft-light" opacity="${n(strength)}"><path d="${d}" fill="#808080" filter="url(#${filterId})"/></g>`;
}

/** The fall of light over a flat thing: a little white at the upper left, a little black at the lower right. */
export function light(id: string, white: number, black: number): string {
  return linear(
    id,
    [0, 0, 1, 1],
    [
      [0, '#fff', white],
      [0.45, '#fff', 0],
      [0.55, '#000', 0],
      [1, '#000', black],
    ],
  );
}
