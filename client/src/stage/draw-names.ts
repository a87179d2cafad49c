/** Names of things, in them where there is room, else under them or beside them. */
import type { SceneItem } from './scene-items.ts';
import { type Canvas2D, fontOf, px, py, type Sheet, write } from './sheet.ts';

/** What a thing on a plan is called. Drawn when everything beneath is: no footprint covers another's name. */
export function drawNameOnPlan(sheet: Sheet, item: SceneItem): void {
  if (item.as !== 'overhead' && (item.as !== 'footprint' || !item.direct)) return;
  // Which of several alike it is, its card says.
  const name = item.name.replace(/, piece \d+$/, '');
  // Names stay upright however the thing is turned.
  const wide = (item.maxX - item.minX) * sheet.k;
  const high = (item.maxY - item.minY) * sheet.k;
  const [x, y] = [px(sheet, item.X), py(sheet, item.Y)];
  // A turned line fills the rectangle round it as little as a level one.
  const thin = Math.min(item.widthMm, item.heightMm) * sheet.k < 15 * sheet.dpr;
  if (!thin && drawName(sheet, name, x - wide / 2, y - high / 2, wide, high, true)) return;
  if (!thin && drawInTwoLines(sheet, name, x, y, wide, high)) return;
  // Beneath what hangs over the plan stand the names of other things.
  if (item.as === 'overhead') return;
  drawNameBelow(sheet, item, name, x, y + high / 2);
}

/** Its name, where there is room for it, along its longer side. */
export function drawName(
  sheet: Sheet,
  name: string,
  x: number,
  y: number,
  w: number,
  h: number,
  wholly = false,
): boolean {
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
