/** Draws frames: four mitred sides, each lit by where it looks, and what they cast on the picture at the sight edge. */
import type { FrameFinish } from '@enfilade/colour/frames';
import { mouldingTonesOf, type Within } from './moulding.ts';
import type { Canvas2D } from './sheet.ts';

/** A moulding narrower than this is one flat ring; from the second on it has an inner slope, which looks the other way. */
const SIDES_PX = 3;
const SLOPE_PX = 9;
const SLOPE_SHARE = 0.3;

/** The moulding between a rectangle and the sight within it. */
export function drawMoulding(ctx: Canvas2D, finish: FrameFinish, outer: Within, sight: Within): void {
  const across = sight.x - outer.x;
  const up = sight.y - outer.y;
  if (across < 1 || up < 1) return;
  const tones = mouldingTonesOf(finish);
  if (Math.min(across, up) < SIDES_PX) {
    ctx.fillStyle = tones.flat;
    ctx.beginPath();
    ctx.rect(outer.x, outer.y, outer.w, outer.h);
    ctx.rect(sight.x, sight.y, sight.w, sight.h);
    ctx.fill('evenodd');
    return;
  }
  if (Math.min(across, up) < SLOPE_PX) drawSides(ctx, tones.sides, outer, sight);
  else {
    const [dx, dy] = [Math.round(across * SLOPE_SHARE), Math.round(up * SLOPE_SHARE)];
    const ridge = { x: sight.x - dx, y: sight.y - dy, w: sight.w + 2 * dx, h: sight.h + 2 * dy };
    drawSides(ctx, tones.sides, outer, ridge);
    drawSides(ctx, tones.slopes, ridge, sight);
  }
}

/** The shadow of its upper and left side on the picture. */
export function drawSightEdge(ctx: Canvas2D, outer: Within, sight: Within): void {
  const deep = Math.round((sight.x - outer.x) * 0.07);
  if (deep < 1) return;
  ctx.fillStyle = 'rgba(0,0,0,.38)';
  ctx.fillRect(sight.x, sight.y, sight.w, deep);
  ctx.fillRect(sight.x, sight.y + deep, deep, sight.h - deep);
}

function drawSides(ctx: Canvas2D, tones: readonly string[], outer: Within, inner: Within): void {
  const [a, b] = [cornersOf(outer), cornersOf(inner)];
  // Under the mitres, where two sides meet, nothing of the wall shines through.
  ctx.fillStyle = tones[1] as string;
  ctx.beginPath();
  ctx.rect(outer.x, outer.y, outer.w, outer.h);
  ctx.rect(inner.x, inner.y, inner.w, inner.h);
  ctx.fill('evenodd');
  for (const side of [0, 2, 3]) {
    const next = (side + 1) % 4;
    ctx.fillStyle = tones[side] as string;
    ctx.beginPath();
    for (const [x, y] of [a[side], a[next], b[next], b[side]] as [number, number][]) ctx.lineTo(x, y);
    ctx.fill();
  }
}

/** From the upper left clockwise. */
function cornersOf({ x, y, w, h }: Within): readonly (readonly [number, number])[] {
  return [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ];
}
