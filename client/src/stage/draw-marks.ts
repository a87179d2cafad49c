/** Marks laid over the drawing: what is selected, what others hold, where a drag came from. */
import { initialsOf, type RingPattern } from '@enfilade/shared/presence';
import type { SceneItem } from './scene-items.ts';
import { fontOf, px, py, type Sheet } from './sheet.ts';
import { counterInk, ink } from './tones.ts';

/** Corners of an item on the canvas, `out` CSS px outside it, clockwise from its left upper one. */
function cornersOf(sheet: Sheet, item: SceneItem, out: number): [number, number][] {
  const turn = (item.rotationDegrees * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const hw = (item.widthMm * sheet.k) / 2 + out * sheet.dpr;
  const hh = (item.heightMm * sheet.k) / 2 + out * sheet.dpr;
  const cx = px(sheet, item.X);
  const cy = py(sheet, item.Y);
  const ends: [number, number][] = [
    [-hw, -hh],
    [hw, -hh],
    [hw, hh],
    [-hw, hh],
  ];
  return ends.map(([x, y]) => [cx + x * c - y * s, cy + x * s + y * c]);
}

/** Strokes what the path draws twice: a wider edge in the other ink first, so that it is seen on anything. */
function strokeSeen(sheet: Sheet, on: 'white' | 'black', weight: number, path: () => void): void {
  const { ctx, dpr } = sheet;
  for (const [colour, more] of [
    [counterInk(on), 1.5],
    [ink(on), 0],
  ] as const) {
    ctx.strokeStyle = colour;
    ctx.lineWidth = (weight + more) * dpr;
    ctx.beginPath();
    path();
    ctx.stroke();
  }
}

/** Four corner marks: this is selected. */
export function drawSelected(sheet: Sheet, item: SceneItem): void {
  const corners = cornersOf(sheet, item, 5);
  const arm = Math.min(10 * sheet.dpr, 0.4 * Math.min(item.widthMm, item.heightMm) * sheet.k + 4 * sheet.dpr);
  strokeSeen(sheet, item.panel.ink, 2.25, () => {
    corners.forEach((corner, i) => {
      const before = corners[(i + 3) % 4] as [number, number];
      const after = corners[(i + 1) % 4] as [number, number];
      const a = towards(corner, before, arm);
      const b = towards(corner, after, arm);
      sheet.ctx.moveTo(a[0], a[1]);
      sheet.ctx.lineTo(corner[0], corner[1]);
      sheet.ctx.lineTo(b[0], b[1]);
    });
  });
}

function towards(from: [number, number], to: [number, number], by: number): [number, number] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  return [from[0] + ((to[0] - from[0]) / length) * by, from[1] + ((to[1] - from[1]) / length) * by];
}

/** A nail above the middle of the upper edge: it stays when others move. Outside the thing, like every mark. */
export function drawPinned(sheet: Sheet, item: SceneItem): void {
  const middleOf = (out: number): [number, number] => {
    const [left, right] = cornersOf(sheet, item, out) as [[number, number], [number, number]];
    return [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2];
  };
  const [foot, head] = [middleOf(1), middleOf(8)];
  strokeSeen(sheet, item.panel.ink, 1.75, () => {
    sheet.ctx.moveTo(foot[0], foot[1]);
    sheet.ctx.lineTo(head[0], head[1]);
    sheet.ctx.arc(head[0], head[1], 2 * sheet.dpr, 0, 2 * Math.PI);
  });
}

/** A thin pencil outline: under the pointer. */
export function drawHovered(sheet: Sheet, item: SceneItem): void {
  outline(sheet, item, 2, 1, []);
}

/** Dotted: where it was before the drag. */
export function drawFormer(sheet: Sheet, item: SceneItem): void {
  outline(sheet, item, 1, 1.5, [1.5, 3.5]);
}

function outline(sheet: Sheet, item: SceneItem, out: number, weight: number, dash: readonly number[]): void {
  const corners = cornersOf(sheet, item, out);
  const { ctx, dpr } = sheet;
  ctx.save();
  ctx.setLineDash(dash.map((length) => length * dpr));
  strokeSeen(sheet, item.panel.ink, weight, () => {
    for (const [x, y] of corners) ctx.lineTo(x, y);
    ctx.closePath();
  });
  ctx.restore();
}

const DASHES: Record<RingPattern, readonly number[]> = {
  plain: [],
  dashed: [5, 3],
  dotted: [1.5, 2.5],
  double: [],
  notched: [9, 2],
  'dash-dot': [6, 2.5, 1.5, 2.5],
  'half-heavy': [],
};

/** Outlined in a person's pattern: they hold it. */
export function drawHeld(sheet: Sheet, item: SceneItem, pattern: RingPattern): void {
  outline(sheet, item, 4, pattern === 'half-heavy' ? 2.75 : 1.75, DASHES[pattern]);
  if (pattern === 'double') outline(sheet, item, 8, 1, []);
}

/** Their initials in their ring, at the right upper corner of what they hold. */
export function drawRing(sheet: Sheet, item: SceneItem, name: string, pattern: RingPattern): void {
  const { ctx, dpr } = sheet;
  const x = px(sheet, item.maxX) + 3 * dpr;
  const y = py(sheet, item.minY) - 3 * dpr;
  const r = 10 * dpr;
  ctx.save();
  ctx.beginPath();
  ctx.arc(x, y, r + 1.5 * dpr, 0, 2 * Math.PI);
  ctx.fillStyle = '#f6f6f6';
  ctx.fill();
  ctx.strokeStyle = '#111';
  ctx.lineWidth = (pattern === 'dotted' ? 2 : 1.4) * dpr;
  const round = 2 * Math.PI * r;
  // Whole dashes to the round, so that no seam shows.
  const dash = DASHES[pattern].map((length) => length * dpr);
  const sum = dash.reduce((a, b) => a + b, 0);
  if (sum > 0) ctx.setLineDash(dash.map((length) => (length * round) / (Math.round(round / sum) * sum)));
  ctx.beginPath();
  ctx.arc(x, y, r, 0, 2 * Math.PI);
  ctx.stroke();
  ctx.setLineDash([]);
  if (pattern === 'double') {
    ctx.lineWidth = dpr;
    ctx.beginPath();
    ctx.arc(x, y, r - 2.6 * dpr, 0, 2 * Math.PI);
    ctx.stroke();
  } else if (pattern === 'half-heavy') {
    ctx.lineWidth = 3 * dpr;
    ctx.beginPath();
    ctx.arc(x, y, r, -Math.PI / 2, Math.PI / 2);
    ctx.stroke();
  } else if (pattern === 'notched') {
    ctx.beginPath();
    for (let i = 0; i < 8; i++) {
      const [cx, cy] = [Math.cos((i * Math.PI) / 4 + 0.39), Math.sin((i * Math.PI) / 4 + 0.39)];
      ctx.moveTo(x + cx * (r - dpr), y + cy * (r - dpr));
      ctx.lineTo(x + cx * (r + 3 * dpr), y + cy * (r + 3 * dpr));
    }
    ctx.stroke();
  }
  ctx.fillStyle = '#111';
  ctx.font = fontOf(sheet, 9.5, { weight: 600 });
  ctx.textAlign = 'center';
  ctx.textBaseline = 'alphabetic';
  ctx.fillText(initialsOf(name), Math.round(x), Math.round(y + 3.5 * dpr));
  ctx.restore();
}

/** A thin dashed frame round what is being tried, or being caught in a frame. Canvas px. */
export function drawFrame(sheet: Sheet, on: 'white' | 'black', x: number, y: number, w: number, h: number): void {
  const { ctx, dpr } = sheet;
  ctx.save();
  ctx.setLineDash([5 * dpr, 4 * dpr]);
  strokeSeen(sheet, on, 1, () => ctx.rect(Math.round(x) + 0.5, Math.round(y) + 0.5, Math.round(w), Math.round(h)));
  ctx.restore();
}
