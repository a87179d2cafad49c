/** A canvas to draw on, and how the drawing lies on it. Everything is drawn in device pixels, on whole ones. */

import { toDrawing } from '@enfilade/space/fold-out';
import type { LengthUnit } from '@enfilade/space/lengths';
import type { ScenePanel } from './panels.ts';
import type { Tones } from './tones.ts';

export type Canvas2D = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

export interface Sheet {
  readonly ctx: Canvas2D;
  /** Device px a mm. */
  readonly k: number;
  /** Device px of the drawing's (0, 0). */
  readonly ox: number;
  readonly oy: number;
  /** Device px a CSS px. */
  readonly dpr: number;
  readonly tones: Tones;
  readonly unit: LengthUnit;
  /** Whether there is room for the standing figure beside a faced wall. */
  readonly figure: boolean;
  /** What the vignettes' brackets take beneath a faced wall, CSS px. */
  readonly belowPx: number;
}

export function px(sheet: Sheet, X: number): number {
  return sheet.ox + X * sheet.k;
}

export function py(sheet: Sheet, Y: number): number {
  return sheet.oy + Y * sheet.k;
}

/** Device px of a point on a panel. */
export function onSheet(sheet: Sheet, panel: ScenePanel, xMm: number, yMm: number): readonly [number, number] {
  const { X, Y } = toDrawing(panel, xMm, yMm);
  return [px(sheet, X), py(sheet, Y)];
}

/** A closed path through points of a panel, on whole pixels. */
export function pathOn(sheet: Sheet, panel: ScenePanel, points: readonly (readonly [number, number])[]): void {
  const { ctx } = sheet;
  ctx.beginPath();
  for (const [xMm, yMm] of points) {
    const [x, y] = onSheet(sheet, panel, xMm, yMm);
    ctx.lineTo(Math.round(x), Math.round(y));
  }
  ctx.closePath();
}

/** A stroke between two points of the canvas; upright and level ones fall on whole pixels. */
export function line(sheet: Sheet, x1: number, y1: number, x2: number, y2: number): void {
  const half = (Math.max(1, Math.round(sheet.ctx.lineWidth)) % 2) / 2;
  sheet.ctx.beginPath();
  sheet.ctx.moveTo(Math.round(x1) + half, Math.round(y1) + half);
  sheet.ctx.lineTo(Math.round(x2) + half, Math.round(y2) + half);
  sheet.ctx.stroke();
}

export function setWeight(sheet: Sheet, cssPx: number): void {
  sheet.ctx.lineWidth = Math.max(1, Math.round(cssPx * sheet.dpr));
}

/** Text at whole pixels. `size` in CSS px. */
export function write(
  sheet: Sheet,
  text: string,
  x: number,
  y: number,
  size: number,
  align: CanvasTextAlign = 'left',
  style: { readonly serif?: boolean; readonly weight?: number; readonly italic?: boolean } = {},
): void {
  const { ctx } = sheet;
  ctx.font = fontOf(sheet, size, style);
  ctx.textAlign = align;
  ctx.textBaseline = 'alphabetic';
  ctx.fillText(text, Math.round(x), Math.round(y));
}

export function fontOf(
  { dpr, tones }: Sheet,
  size: number,
  { serif = false, weight = 400, italic = false }: { serif?: boolean; weight?: number; italic?: boolean } = {},
): string {
  return `${italic ? 'italic ' : ''}${weight} ${Math.round(size * dpr)}px ${serif ? tones.serif : tones.sans}`;
}

/** Strokes of a hatching at 45° over a rectangle of the canvas, `step` device px apart; anchored to the drawing. */
export function hatch(sheet: Sheet, x: number, y: number, w: number, h: number, step: number): void {
  const { ctx, ox, oy } = sheet;
  ctx.beginPath();
  const first = Math.floor((x + y - ox - oy) / step) * step + ox + oy;
  for (let c = first; c <= x + y + w + h; c += step) {
    // Along the lines X + Y = c.
    const x1 = Math.min(x + w, c - y);
    const x2 = Math.max(x, c - y - h);
    if (x1 < x || x2 > x + w) continue;
    ctx.moveTo(x1, c - x1);
    ctx.lineTo(x2, c - x2);
  }
  ctx.stroke();
}
