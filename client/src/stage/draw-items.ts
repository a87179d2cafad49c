/** Draws pieces: grey at true size first, then the miniature, then the detail; hatched where the size is not certain. */
import type { Bitmaps } from './bitmaps.ts';
import type { SceneItem } from './scene-items.ts';
import { type Canvas2D, fontOf, hatch, px, py, type Sheet, setWeight, write } from './sheet.ts';
import { ink } from './tones.ts';

/** A picture whose own proportions differ from the record's by more than this is fitted in, not pulled. */
const SAME_SHAPE = 0.04;

export function drawItem(sheet: Sheet, item: SceneItem, bitmaps: Bitmaps): void {
  const { ctx } = sheet;
  const w = item.widthMm * sheet.k;
  const h = item.heightMm * sheet.k;
  const cx = px(sheet, item.X);
  const cy = py(sheet, item.Y);
  if (item.rotationDegrees === 0) {
    // Level edges on whole pixels: resting pictures are sharp, and many of them cost less.
    const x = Math.round(cx - w / 2);
    const y = Math.round(cy - h / 2);
    drawAt(
      sheet,
      item,
      bitmaps,
      x,
      y,
      Math.max(1, Math.round(cx + w / 2) - x),
      Math.max(1, Math.round(cy + h / 2) - y),
    );
    return;
  }
  ctx.save();
  ctx.translate(cx, cy);
  ctx.rotate((item.rotationDegrees * Math.PI) / 180);
  drawAt(sheet, item, bitmaps, -w / 2, -h / 2, w, h);
  ctx.restore();
}

function drawAt(sheet: Sheet, item: SceneItem, bitmaps: Bitmaps, x: number, y: number, w: number, h: number): void {
  const { ctx } = sheet;
  if (item.as === 'flank') {
    drawFlank(sheet, item, x, y, w, h);
    return;
  }
  if (item.as === 'footprint') {
    drawFootprint(sheet, item, x, y, w, h);
    return;
  }
  if (item.hatch !== null) drawUncertain(sheet, item.hatch, x, y, w, h);
  const found = item.picture === null ? null : bitmaps.drawableOf(item.picture, Math.max(w, h));
  if (found === null) {
    // Nothing to see yet, or no photograph: its true size in grey.
    if (item.hatch !== 'unsized') {
      ctx.fillStyle = sheet.tones.stand;
      ctx.fillRect(x, y, w, h);
    }
    if (item.picture === null) drawName(sheet, item.name, x, y, w, h);
    return;
  }
  const ratio = (found.sw / found.sh) * (h / w);
  const inset = item.hatch === 'unsized' ? 0.8 : 1;
  // A miniature's sides are whole pixels: its ratio is only nearly its picture's.
  const slack = found.level === 64 ? SAME_SHAPE + 1.5 / Math.min(found.sw, found.sh) : SAME_SHAPE;
  const pulled = Math.abs(ratio - 1) < slack;
  const dw = w * inset * (pulled || ratio >= 1 ? 1 : ratio);
  const dh = h * inset * (pulled || ratio <= 1 ? 1 : 1 / ratio);
  ctx.drawImage(found.image, found.sx, found.sy, found.sw, found.sh, x + (w - dw) / 2, y + (h - dh) / 2, dw, dh);
}

/** A side that no photograph shows, standing before the wall: only its outline, so that what hangs there is seen. */
function drawFlank(sheet: Sheet, item: SceneItem, x: number, y: number, w: number, h: number): void {
  const { ctx, dpr } = sheet;
  ctx.save();
  ctx.strokeStyle = ink(item.panel.ink);
  ctx.setLineDash([3 * dpr, 3 * dpr]);
  setWeight(sheet, 1);
  ctx.strokeRect(Math.round(x) + 0.5, Math.round(y) + 0.5, Math.round(w), Math.round(h));
  ctx.restore();
}

/** From above: grey board with its edge and its name; what stands on it as a bare outline. */
function drawFootprint(sheet: Sheet, item: SceneItem, x: number, y: number, w: number, h: number): void {
  const { ctx, tones } = sheet;
  if (item.hatch !== null) drawUncertain(sheet, item.hatch, x, y, w, h);
  ctx.fillStyle = tones.slab;
  ctx.strokeStyle = '#111';
  setWeight(sheet, 1);
  if (item.hatch !== 'unsized' && item.direct) ctx.fillRect(x, y, w, h);
  ctx.strokeRect(
    Math.round(x) + 0.5,
    Math.round(y) + 0.5,
    Math.max(1, Math.round(w) - 1),
    Math.max(1, Math.round(h) - 1),
  );
}

/** What a thing on a plan is called. Drawn when everything beneath is: no footprint covers another's name. */
export function drawNameOnPlan(sheet: Sheet, item: SceneItem): void {
  if (item.as !== 'footprint' || !item.direct) return;
  // Which of several alike it is, its card says.
  const name = item.name.replace(/, piece \d+$/, '');
  // Names stay upright however the thing is turned.
  const wide = (item.maxX - item.minX) * sheet.k;
  const high = (item.maxY - item.minY) * sheet.k;
  const [x, y] = [px(sheet, item.X), py(sheet, item.Y)];
  if (drawName(sheet, name, x - wide / 2, y - high / 2, wide, high, true)) return;
  if (drawInTwoLines(sheet, name, x, y, wide, high)) return;
  drawNameBelow(sheet, item, name, x, y + high / 2);
}

/** Its name, where there is room for it, along its longer side. */
function drawName(sheet: Sheet, name: string, x: number, y: number, w: number, h: number, wholly = false): boolean {
  const { ctx, dpr } = sheet;
  const long = Math.max(w, h);
  if (Math.min(w, h) < 15 * dpr || long < 34 * dpr) return false;
  ctx.font = fontOf(sheet, 11);
  const text = shortened(ctx, name, long - 8 * dpr);
  // A stump of a name says nothing.
  if (text !== name && (wholly || text.length < 9)) return false;
  ctx.save();
  ctx.fillStyle = '#111';
  ctx.translate(Math.round(x + w / 2), Math.round(y + h / 2));
  if (h > w * 1.3) ctx.rotate(-Math.PI / 2);
  write(sheet, text, 0, 4 * dpr, 11, 'center');
  ctx.restore();
  return true;
}

/** Its name in two lines about (x, y), where both fit. */
function drawInTwoLines(sheet: Sheet, name: string, x: number, y: number, w: number, h: number): boolean {
  const { ctx, dpr } = sheet;
  if (h < 30 * dpr) return false;
  ctx.font = fontOf(sheet, 11);
  const words = name.split(' ');
  let best: { readonly lines: readonly [string, string]; readonly width: number } | null = null;
  for (let first = 1; first < words.length; first++) {
    const lines = [words.slice(0, first).join(' '), words.slice(first).join(' ')] as const;
    const width = Math.max(...lines.map((text) => ctx.measureText(text).width));
    if (best === null || width < best.width) best = { lines, width };
  }
  if (best === null || best.width > w - 3 * dpr) return false;
  ctx.fillStyle = '#111';
  write(sheet, best.lines[0], x, y - 3 * dpr, 11, 'center');
  write(sheet, best.lines[1], x, y + 10 * dpr, 11, 'center');
  return true;
}

/** Its name under it, for a footprint too small to hold it; never wider than what a repaint reaches. */
function drawNameBelow(sheet: Sheet, item: SceneItem, name: string, x: number, y: number): void {
  const { panel, X } = item;
  const { ctx, dpr } = sheet;
  if (sheet.k / dpr < 0.02) return;
  ctx.font = fontOf(sheet, 11);
  ctx.fillStyle = '#111';
  const [wide, high] = [(item.maxX - item.minX) * sheet.k, (item.maxY - item.minY) * sheet.k];
  if (high > 2 * wide && high > 60 * dpr) {
    drawNameBeside(sheet, item, name, x, y - high / 2, wide, high);
    return;
  }
  const text = shortened(ctx, name, 116 * dpr);
  const half = ctx.measureText(text).width / 2 + 5 * dpr;
  // Within the plan: the walls laid out around it have things of their own to show.
  const at = px(sheet, X);
  const from = px(sheet, panel.origin.X) + half;
  const to = px(sheet, panel.origin.X + panel.widthMm) - half;
  write(sheet, text, x + Math.max(from, Math.min(to, at)) - at, y + 13 * dpr, 11, 'center');
}

/** Along the side of a long narrow footprint that faces into the room. (x, y): its middle. */
function drawNameBeside(
  sheet: Sheet,
  { panel, X }: SceneItem,
  name: string,
  x: number,
  y: number,
  wide: number,
  high: number,
): void {
  const { ctx, dpr } = sheet;
  const side = X < panel.origin.X + panel.widthMm / 2 ? 1 : -1;
  ctx.save();
  ctx.translate(Math.round(x + side * (wide / 2 + 8 * dpr)), Math.round(y));
  ctx.rotate(-Math.PI / 2);
  write(sheet, shortened(ctx, name, high), 0, 4 * dpr, 11, 'center');
  ctx.restore();
}

function shortened(ctx: Canvas2D, name: string, width: number): string {
  let text = name;
  while (text.length > 3 && ctx.measureText(text).width > width) text = `${text.slice(0, -2).trimEnd()}…`;
  return text;
}

/** Not known: the whole stand-in is hatched. Not certain: a hatched band round its edge, outside the picture. */
function drawUncertain(sheet: Sheet, kind: 'unsized' | 'uncertain', x: number, y: number, w: number, h: number): void {
  const { ctx, dpr, tones } = sheet;
  const band = kind === 'unsized' ? 0 : Math.round(5 * dpr);
  ctx.save();
  ctx.beginPath();
  ctx.rect(x - band, y - band, w + 2 * band, h + 2 * band);
  if (band > 0) ctx.rect(x, y, w, h);
  ctx.clip('evenodd');
  ctx.fillStyle = tones.bare;
  ctx.fillRect(x - band, y - band, w + 2 * band, h + 2 * band);
  ctx.strokeStyle = '#525252';
  setWeight(sheet, 1);
  hatch({ ...sheet, ox: x, oy: y }, x - band, y - band, w + 2 * band, h + 2 * band, 5 * dpr);
  ctx.restore();
  if (kind === 'unsized') {
    ctx.strokeStyle = '#525252';
    setWeight(sheet, 1);
    ctx.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
  }
}
