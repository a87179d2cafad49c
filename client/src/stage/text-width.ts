/** How wide a line of text comes out, CSS px, before it is laid out. */

let measuring: OffscreenCanvasRenderingContext2D | null = null;
const families = new Map<string, string>();

/** `family`: the token that names it, 'serif' or 'sans'. */
export function textWidthPx(text: string, sizePx: number, family: 'serif' | 'sans'): number {
  measuring ??= new OffscreenCanvas(1, 1).getContext('2d');
  if (measuring === null) return text.length * sizePx * 0.5;
  const known = families.get(family) ?? getComputedStyle(document.documentElement).getPropertyValue(`--${family}`);
  families.set(family, known);
  measuring.font = `${sizePx}px ${known}`;
  return Math.ceil(measuring.measureText(text).width);
}
