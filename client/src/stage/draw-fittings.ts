/** Openings as clear shapes, fixtures as small plates. */
import { boxInDrawing, type PanelBox, type ScenePanel } from './panels.ts';
import { line, px, py, type Sheet, setWeight, write } from './sheet.ts';

export function drawOpening(sheet: Sheet, panel: ScenePanel, box: PanelBox): void {
  const { ctx, tones } = sheet;
  const at = boxInDrawing(panel, box);
  const x = Math.round(px(sheet, at.X));
  const y = Math.round(py(sheet, at.Y));
  const w = Math.round(px(sheet, at.X + at.width)) - x;
  const h = Math.round(py(sheet, at.Y + at.height)) - y;
  ctx.fillStyle = tones.bare;
  ctx.fillRect(x, y, w, h);
  ctx.strokeStyle = '#777777';
  setWeight(sheet, 0.75);
  if (box.kind === 'doorway') {
    line(sheet, x, y, x + w, y + h);
    line(sheet, x + w, y, x, y + h);
  } else {
    line(sheet, x + w / 2, y, x + w / 2, y + h);
    line(sheet, x, y + h / 2, x + w, y + h / 2);
  }
  ctx.strokeStyle = tones.onBoard;
  ctx.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
}

/** A white plate with the sign of its kind, at true size but never too small to be seen. */
export function drawFixture(
  sheet: Sheet,
  at: { readonly X: number; readonly Y: number; readonly width: number; readonly height: number },
  kind: string,
): void {
  const { ctx, dpr } = sheet;
  const least = 5 * dpr;
  const w = Math.round(Math.max(least, at.width * sheet.k));
  const h = Math.round(Math.max(least, at.height * sheet.k));
  const x = Math.round(px(sheet, at.X + at.width / 2) - w / 2);
  const y = Math.round(py(sheet, at.Y + at.height / 2) - h / 2);
  ctx.fillStyle = '#fff';
  ctx.strokeStyle = '#111';
  setWeight(sheet, 0.75);
  ctx.fillRect(x, y, w, h);
  ctx.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
  const small = Math.min(w, h);
  if (small < 8 * dpr) return;
  const [cx, cy] = [x + w / 2, y + h / 2];
  ctx.fillStyle = '#111';
  if (/socket|outlet/i.test(kind)) {
    const r = Math.max(1, small * 0.12);
    ctx.fillRect(cx - small * 0.22 - r / 2, cy - r, r, 2 * r);
    ctx.fillRect(cx + small * 0.22 - r / 2, cy - r, r, 2 * r);
  } else if (/exit/i.test(kind) && w > 20 * dpr) {
    write(sheet, 'exit', cx, cy + 3.5 * dpr, Math.min(10, (h / dpr) * 0.7), 'center', { weight: 600 });
  } else if (/call|fire/i.test(kind)) {
    ctx.beginPath();
    ctx.arc(cx, cy, small * 0.25, 0, 2 * Math.PI);
    ctx.stroke();
  } else {
    line(sheet, cx - small * 0.2, cy - small * 0.12, cx + small * 0.2, cy - small * 0.12);
    line(sheet, cx - small * 0.2, cy + small * 0.12, cx + small * 0.2, cy + small * 0.12);
  }
}
