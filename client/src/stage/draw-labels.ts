/** A work's label on its wall: a small plate at true size, its lines as strokes until they are large enough to be told. */
import type { SceneLabel } from './scene-labels.ts';
import { line, onSheet, px, py, type Sheet, setWeight } from './sheet.ts';

/** As the engine sets it: so much is left free round the text. */
const MARGIN_MM = 10;
/** Lines nearer to each other than this (CSS px) run into a grey. */
const LEAST_LEADING_PX = 2.5;

export function drawLabel(sheet: Sheet, { panel, label, minX, minY, maxX, maxY }: SceneLabel): void {
  const { ctx, dpr, tones } = sheet;
  const [x, y] = [Math.round(px(sheet, minX)), Math.round(py(sheet, minY))];
  const w = Math.max(2, Math.round(px(sheet, maxX)) - x);
  const h = Math.max(2, Math.round(py(sheet, maxY)) - y);
  ctx.fillStyle = tones.bare;
  ctx.fillRect(x, y, w, h);
  ctx.strokeStyle = '#111';
  setWeight(sheet, 0.75);
  ctx.save();
  // Dashed where it lies over something: it cannot stand there.
  if (label.meets.length > 0) ctx.setLineDash([3 * dpr, 2 * dpr]);
  ctx.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
  ctx.restore();
  const lines = label.text.split('\n').filter((text) => text !== '');
  const leadingMm = (label.heightMm - 2 * MARGIN_MM) / Math.max(1, lines.length);
  if (leadingMm * sheet.k < LEAST_LEADING_PX * dpr) return;
  const longest = Math.max(1, ...lines.map(({ length }) => length));
  const [left, top] = [label.xMm - label.widthMm / 2 + MARGIN_MM, label.yMm + label.heightMm / 2 - MARGIN_MM];
  const widest = label.widthMm - 2 * MARGIN_MM;
  ctx.strokeStyle = '#777777';
  setWeight(sheet, 0.75);
  for (const [n, text] of lines.entries()) {
    const up = top - (n + 0.6) * leadingMm;
    const [x1, y1] = onSheet(sheet, panel, left, up);
    const [x2, y2] = onSheet(sheet, panel, left + (widest * text.length) / longest, up);
    line(sheet, x1, y1, x2, y2);
  }
}
