/** Dimension lines from a piece to what is nearest on each side: 45° ticks and figures in the person's unit. */

import type { Box } from '@enfilade/arrangement/boxes';
import { lengthText } from '@enfilade/space/lengths';
import type { Gaps } from './gaps.ts';
import type { ScenePanel } from './panels.ts';
import { fontOf, onSheet, type Sheet } from './sheet.ts';
import { counterInk, ink } from './tones.ts';

/** `quiet`: lines too short for their figure are left out, for the figure would lie over works. */
export function drawGaps(sheet: Sheet, { panel, box, gaps, around }: Gaps, quiet: boolean): void {
  const left = box.xMm - box.widthMm / 2;
  const right = box.xMm + box.widthMm / 2;
  const top = box.yMm + box.heightMm / 2;
  const bottom = box.yMm - box.heightMm / 2;
  const level = (to: number | 'edge') => sharedMiddle(box.yMm, box.heightMm, to === 'edge' ? null : around[to], 'y');
  const upright = (to: number | 'edge') => sharedMiddle(box.xMm, box.widthMm, to === 'edge' ? null : around[to], 'x');
  const ends: [number, number, number, number][] = [];
  if (gaps.left.mm > 0) ends.push([left - gaps.left.mm, level(gaps.left.to), left, level(gaps.left.to)]);
  if (gaps.right.mm > 0) ends.push([right, level(gaps.right.to), right + gaps.right.mm, level(gaps.right.to)]);
  if (gaps.below.mm > 0) {
    ends.push([upright(gaps.below.to), bottom, upright(gaps.below.to), bottom - gaps.below.mm]);
  }
  if (gaps.above.mm > 0 && gaps.above.to !== 'edge') {
    ends.push([upright(gaps.above.to), top, upright(gaps.above.to), top + gaps.above.mm]);
  }
  for (const [x1, y1, x2, y2] of ends) dimension(sheet, panel, x1, y1, x2, y2, quiet);
}

/** The middle of what a box and its neighbour have in common, so that the line meets both. */
function sharedMiddle(at: number, long: number, other: Box | null | undefined, axis: 'x' | 'y'): number {
  if (!other) return at;
  const [oAt, oLong] = axis === 'x' ? [other.xMm, other.widthMm] : [other.yMm, other.heightMm];
  const from = Math.max(at - long / 2, oAt - oLong / 2);
  const to = Math.min(at + long / 2, oAt + oLong / 2);
  return to > from ? (from + to) / 2 : at;
}

/** One dimension line between two points of a panel. */
export function dimension(
  sheet: Sheet,
  panel: ScenePanel,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  quiet: boolean,
): void {
  const { ctx, dpr, unit } = sheet;
  const [ax, ay] = onSheet(sheet, panel, x1, y1);
  const [bx, by] = onSheet(sheet, panel, x2, y2);
  const long = Math.hypot(bx - ax, by - ay);
  const level = Math.abs(by - ay) < Math.abs(bx - ax);
  if (long < (quiet ? (level ? 36 : 16) : 3) * dpr) return;
  const tick = 4 * dpr;
  for (const [colour, more] of [
    [counterInk(panel.ink), 1.25],
    [ink(panel.ink), 0],
  ] as const) {
    ctx.strokeStyle = colour;
    // The edge is only a hint of the other ink: lines lie mostly on the paint they are made for.
    ctx.globalAlpha = more > 0 ? 0.35 : 1;
    ctx.lineWidth = (1 + more) * dpr;
    ctx.beginPath();
    ctx.moveTo(Math.round(ax) + 0.5, Math.round(ay) + 0.5);
    ctx.lineTo(Math.round(bx) + 0.5, Math.round(by) + 0.5);
    ctx.stroke();
    ctx.lineWidth = (1.75 + more) * dpr;
    ctx.beginPath();
    for (const [x, y] of [
      [ax, ay],
      [bx, by],
    ] as const) {
      ctx.moveTo(x - tick, y + tick);
      ctx.lineTo(x + tick, y - tick);
    }
    ctx.stroke();
  }
  ctx.globalAlpha = 1;
  const text = lengthText(Math.hypot(x2 - x1, y2 - y1), unit);
  const midX = (ax + bx) / 2;
  const midY = (ay + by) / 2;
  if (level) figure(sheet, panel, text, midX, midY - 6 * dpr, 'center');
  else figure(sheet, panel, text, midX - 6 * dpr, midY + 4 * dpr, 'right');
}

/** A figure on the paint, with a hint of the other ink behind it where it falls on a work. */
export function figure(
  sheet: Sheet,
  panel: ScenePanel,
  text: string,
  x: number,
  y: number,
  align: CanvasTextAlign,
): void {
  const { ctx, dpr } = sheet;
  ctx.font = fontOf(sheet, 12, { weight: 600 });
  ctx.textAlign = align;
  ctx.textBaseline = 'alphabetic';
  ctx.lineJoin = 'round';
  ctx.strokeStyle = counterInk(panel.ink);
  ctx.lineWidth = 2.5 * dpr;
  ctx.globalAlpha = 0.45;
  ctx.strokeText(text, Math.round(x), Math.round(y));
  ctx.globalAlpha = 1;
  ctx.fillStyle = ink(panel.ink);
  ctx.fillText(text, Math.round(x), Math.round(y));
}
