/** Draws pieces: grey at true size first, then the miniature, then the detail; hatched where the size is not certain. */
import type { Bitmaps } from './bitmaps.ts';
import { drawMoulding, drawSightEdge } from './draw-moulding.ts';
import { drawName } from './draw-names.ts';
import { sightOf, type Within } from './moulding.ts';
import type { SceneItem } from './scene-items.ts';
import { hatch, line, onSheet, px, py, type Sheet, setWeight } from './sheet.ts';
import { ink } from './tones.ts';

/** A picture whose own proportions differ from the record's by more than this is fitted in, not pulled. */
const SAME_SHAPE = 0.04;
/** Within a frame, proportions that differ by less than this are the rebate's doing: it covers the longer side's ends. */
const UNDER_REBATE = 0.25;

export function drawItem(sheet: Sheet, item: SceneItem, bitmaps: Bitmaps): void {
  const { ctx } = sheet;
  const w = item.widthMm * sheet.k;
  const h = item.heightMm * sheet.k;
  const cx = px(sheet, item.X);
  const cy = py(sheet, item.Y);
  if (item.hangsFromMm !== null) drawSuspension(sheet, item);
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
  if (item.as === 'flank' || item.as === 'overhead') {
    drawOutline(sheet, item, x, y, w, h);
    return;
  }
  if (item.as === 'footprint') {
    drawFootprint(sheet, item, x, y, w, h);
    return;
  }
  if (item.hatch !== null) drawUncertain(sheet, item.hatch, x, y, w, h);
  const outer = { x, y, w, h };
  const { moulding } = item;
  if (moulding === null) {
    drawPicture(sheet, item, bitmaps, outer);
    return;
  }
  const sight = sightOf(moulding, outer);
  drawMoulding(ctx, moulding.finish, outer, sight);
  drawPicture(sheet, item, bitmaps, sight);
  drawSightEdge(ctx, outer, sight);
}

/** The picture in its rectangle. Within a frame no wall is seen: what a picture leaves of it is grey. */
function drawPicture(sheet: Sheet, item: SceneItem, bitmaps: Bitmaps, within: Within): void {
  const { ctx } = sheet;
  const { x, y, w, h } = within;
  const found = item.picture === null ? null : bitmaps.drawableOf(item.picture, Math.max(w, h));
  if (found === null) {
    // Nothing to see yet, or no photograph: its true size in grey.
    if (item.hatch !== 'unsized') fillGrey(sheet, within);
    if (item.picture === null) drawName(sheet, item.name, x, y, w, h);
    return;
  }
  const ratio = found.sw / found.sh / item.shape;
  // A miniature's sides are whole pixels: its ratio is only nearly its picture's.
  const slack = found.level === 64 ? SAME_SHAPE + 1.5 / Math.min(found.sw, found.sh) : SAME_SHAPE;
  if (item.moulding !== null) fillGrey(sheet, within);
  if (item.moulding !== null && Math.abs(ratio - 1) >= slack && Math.abs(ratio - 1) < UNDER_REBATE) {
    const [sw, sh] = [found.sw * Math.min(1, 1 / ratio), found.sh * Math.min(1, ratio)];
    const [sx, sy] = [found.sx + (found.sw - sw) / 2, found.sy + (found.sh - sh) / 2];
    ctx.drawImage(found.image, sx, sy, sw, sh, x, y, w, h);
    return;
  }
  const inset = item.hatch === 'unsized' ? 0.8 : 1;
  const pulled = Math.abs(ratio - 1) < slack;
  const dw = w * inset * (pulled || ratio >= 1 ? 1 : ratio);
  const dh = h * inset * (pulled || ratio <= 1 ? 1 : 1 / ratio);
  ctx.drawImage(found.image, found.sx, found.sy, found.sw, found.sh, x + (w - dw) / 2, y + (h - dh) / 2, dw, dh);
}

function fillGrey({ ctx, tones }: Sheet, { x, y, w, h }: Within): void {
  ctx.fillStyle = tones.stand;
  ctx.fillRect(x, y, w, h);
}

/**
 * Only its outline, so that what is behind or beneath it is seen: a side that no photograph shows, a thing far before the
 * wall, or one that hangs over the plan (drawn dashed, as architects draw what is above the cut).
 */
function drawOutline(sheet: Sheet, item: SceneItem, x: number, y: number, w: number, h: number): void {
  const { ctx, dpr } = sheet;
  ctx.save();
  ctx.strokeStyle = ink(item.panel.ink);
  ctx.setLineDash(item.as === 'overhead' ? [6 * dpr, 4 * dpr] : [3 * dpr, 3 * dpr]);
  setWeight(sheet, 1);
  if (Math.min(w, h) < 3 * dpr) {
    // Two dashed lines so near to each other would run into one that wavers.
    setWeight(sheet, 2);
    if (w < h) line(sheet, x + w / 2, y, x + w / 2, y + h);
    else line(sheet, x, y + h / 2, x + w, y + h / 2);
  } else ctx.strokeRect(Math.round(x) + 0.5, Math.round(y) + 0.5, Math.round(w), Math.round(h));
  ctx.restore();
}

/** What it hangs by, from its two upper corners plumb up to the ceiling; from its middle where it is narrow. */
function drawSuspension(sheet: Sheet, { panel, xMm, yMm, widthMm, heightMm, hangsFromMm }: SceneItem): void {
  const top = yMm + heightMm / 2;
  if (hangsFromMm === null || hangsFromMm - top < 1) return;
  sheet.ctx.strokeStyle = ink(panel.ink);
  setWeight(sheet, 0.75);
  const off = widthMm < 300 ? 0 : widthMm / 2 - Math.min(60, widthMm / 8);
  for (const x of off === 0 ? [xMm] : [xMm - off, xMm + off]) {
    const [x1, y1] = onSheet(sheet, panel, x, top);
    const [x2, y2] = onSheet(sheet, panel, x, hangsFromMm);
    line(sheet, x1, y1, x2, y2);
  }
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
