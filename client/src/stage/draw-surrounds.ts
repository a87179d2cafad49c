/** What stands round a drawing on the board: figures at a wall's edge, a person of 165 cm, a scale bar. */
import { lengthText } from '@enfilade/space/lengths';
import { drawWallNames, WALL_NAME_PX } from './draw-ceiling.ts';
import type { SceneFrame, ScenePanel } from './panels.ts';
import type { Rect } from './scene-items.ts';
import { SECTION_MM, SLAB_MM } from './scene-wall.ts';
import { line, px, py, type Sheet, setWeight, write } from './sheet.ts';

const FIGURE_MM = 1650;
/** What a window leaves free for it left of a faced wall, CSS px. */
export const FIGURE_LANE_PX = 112;
/** What the scale bar takes beneath a faced wall, beyond the window's own margin, CSS px. */
export const SCALE_BAR_PX = 14;
/** What the names of the levels take of the lane. */
const NAMES_PX = 66;
/** The same for a figure's whole breadth at a scale: window px left of the wall that it needs. */
export function figureReachPx(cssPxPerMm: number): number {
  return SECTION_MM * cssPxPerMm + NAMES_PX + FIGURE_MM * FIGURE_SLENDER * cssPxPerMm * 1.1;
}
/** Width over height of the figure as drawn. */
const FIGURE_SLENDER = 0.31;

/** Round a faced wall or a fold-out; nothing where `clip` (drawing mm) lies within the wall itself. */
export function drawSurrounds(sheet: Sheet, frame: SceneFrame, clip: Rect): void {
  const panel = frame.panels[0];
  if (panel === undefined) return;
  const within = clip.minX >= 0 && clip.minY >= 0 && clip.maxX <= panel.widthMm && clip.maxY <= panel.heightMm;
  if ((frame.sheet === 'wall' || frame.sheet === 'ceiling') && within) return;
  if (frame.sheet === 'wall') {
    drawEdgeFigures(sheet, panel);
    drawLevelNames(sheet, frame, panel);
    if (sheet.figure) drawFigure(sheet, panel);
    drawScaleBar(sheet, px(sheet, -SECTION_MM), beneath(sheet, panel) + 16 * sheet.dpr);
  } else if (frame.sheet === 'ceiling') {
    drawWallNames(sheet, panel);
    const below = py(sheet, panel.heightMm + SECTION_MM) + WALL_NAME_PX * sheet.dpr;
    drawScaleBar(sheet, px(sheet, -SECTION_MM), below);
  } else if (frame.sheet === 'room') {
    // In the corner of the right wall, whose caption stands above it.
    drawScaleBar(
      sheet,
      px(sheet, panel.origin.X + panel.widthMm) + 12 * sheet.dpr,
      py(sheet, frame.bounds.maxY) - 22 * sheet.dpr,
    );
  }
}

/** Device px of where the board beneath a faced wall is free: under its slab and the vignettes' brackets. */
function beneath(sheet: Sheet, panel: ScenePanel): number {
  return py(sheet, panel.heightMm - panel.lowestMm + SLAB_MM) + sheet.belowPx * sheet.dpr;
}

/** The wall's height at its upper corner, and the floor's fall beneath it. */
function drawEdgeFigures(sheet: Sheet, panel: ScenePanel): void {
  const { ctx, dpr, unit, tones } = sheet;
  const x = px(sheet, -SECTION_MM);
  ctx.fillStyle = tones.onBoard;
  ctx.strokeStyle = tones.onBoard;
  setWeight(sheet, 1);
  const y = py(sheet, 0);
  line(sheet, x - 9 * dpr, y, x, y);
  write(sheet, short(panel.heightMm, unit), x - 13 * dpr, y + 4 * dpr, 12, 'right');
  const fall = panel.floorMm[0] - panel.floorMm[1];
  if (fall === 0) return;
  const text = `floor falls ${short(Math.abs(fall), unit)} to the ${fall > 0 ? 'right' : 'left'}`;
  const below = beneath(sheet, panel) + 20 * dpr;
  write(sheet, text, px(sheet, panel.widthMm + SECTION_MM), below, 12, 'right');
}

/** What the lines across the wall are, at its left end: the name over the line, its height under it. */
function drawLevelNames(sheet: Sheet, frame: SceneFrame, panel: ScenePanel): void {
  const { ctx, dpr, unit, tones } = sheet;
  const x = px(sheet, -SECTION_MM);
  ctx.fillStyle = tones.onBoard;
  ctx.strokeStyle = tones.onBoard;
  setWeight(sheet, 1);
  const names: [number, string][] = [[frame.centreLineMm, 'centre line']];
  if (panel.room !== null) names.push([panel.room.laserMm, 'laser line']);
  for (const [yMm, name] of names) {
    const y = py(sheet, panel.heightMm - yMm);
    line(sheet, x - 9 * dpr, y, x, y);
    write(sheet, name, x - 5 * dpr, y - 5 * dpr, 11, 'right');
    write(sheet, short(yMm, unit), x - 13 * dpr, y + 9 * dpr, 12, 'right');
  }
}

/** A standing person in outline, beside the wall's left end. */
function drawFigure(sheet: Sheet, panel: ScenePanel): void {
  const { ctx, dpr, tones } = sheet;
  const h = FIGURE_MM * sheet.k;
  const w = h * FIGURE_SLENDER;
  const foot = py(sheet, panel.heightMm - panel.floorMm[0]);
  const cx = px(sheet, -SECTION_MM) - NAMES_PX * dpr - w / 2;
  ctx.strokeStyle = tones.onBoard;
  ctx.fillStyle = tones.onBoard;
  setWeight(sheet, 2);
  ctx.beginPath();
  ctx.moveTo(cx - w * 0.75, foot);
  ctx.lineTo(px(sheet, -SECTION_MM), foot);
  ctx.stroke();
  setWeight(sheet, 1.25);
  // In hundredths of the height, from the ground up the left side; mirrored for the right.
  const at = (side: number, x: number, y: number): [number, number] => [
    cx + (side * x * h) / 100,
    foot - (y * h) / 100,
  ];
  ctx.beginPath();
  ctx.ellipse(cx, foot - 0.935 * h, 0.052 * h, 0.062 * h, 0, 0, 2 * Math.PI);
  ctx.stroke();
  ctx.beginPath();
  for (const side of [-1, 1]) {
    ctx.moveTo(...at(side, 0, 86.4));
    const joints: [number, number][] = [
      [4, 86.2],
      [10, 84.6],
      [13, 80],
      [14.6, 62],
      [15.4, 51],
      [13.2, 49],
      [11.6, 52],
      [10.4, 63],
      [9.6, 73],
      [9.8, 62],
      [10, 48],
      [8.6, 26],
      [7.4, 2.5],
      [6.6, 0.3],
      [2.6, 0.3],
      [2, 3],
      [2, 24],
      [0.8, 43],
      [0, 44.6],
    ];
    for (let i = 0; i < joints.length - 1; i++) {
      const [jx, jy] = joints[i] as [number, number];
      const [nx, ny] = joints[i + 1] as [number, number];
      ctx.quadraticCurveTo(...at(side, jx, jy), ...at(side, (jx + nx) / 2, (jy + ny) / 2));
    }
    ctx.lineTo(...at(side, 0, 44.6));
  }
  ctx.stroke();
  write(sheet, `${short(FIGURE_MM, sheet.unit)} ${sheet.unit}`, cx, foot + 16 * dpr, 12, 'center');
}

/** A bar of a round length near 140 px, its halves told apart. */
export function drawScaleBar(sheet: Sheet, x: number, y: number): void {
  const { ctx, dpr, tones, unit } = sheet;
  const { mm, halves } = barOf(sheet.k / dpr, unit);
  const w = Math.round(mm * sheet.k);
  const h = Math.round(4 * dpr);
  const left = Math.round(x);
  const top = Math.round(y);
  ctx.fillStyle = tones.onBoard;
  ctx.fillRect(left, top, w, h);
  ctx.fillStyle = tones.card;
  ctx.fillRect(left + Math.round(w / 2), top + dpr, w - Math.round(w / 2) - dpr, h - 2 * dpr);
  ctx.fillStyle = tones.onBoard;
  const below = top + h + 13 * dpr;
  write(sheet, halves[0], left, below, 12);
  write(sheet, halves[1], left + w / 2, below, 12, 'center');
  write(sheet, halves[2], left + w + 6 * dpr, below, 12, 'center');
}

/** A round length whose bar is 70 to 180 CSS px long. */
export function barOf(
  cssPxPerMm: number,
  unit: 'cm' | 'in',
): { readonly mm: number; readonly halves: readonly [string, string, string] } {
  const steps: [number, string, string][] =
    unit === 'cm'
      ? [
          [100, '5', '10 cm'],
          [200, '10', '20 cm'],
          [500, '25', '50 cm'],
          [1000, '50', '100 cm'],
          [2000, '1', '2 m'],
          [5000, '2.5', '5 m'],
          [10000, '5', '10 m'],
          [20000, '10', '20 m'],
        ]
      : [
          [101.6, '2', '4 in'],
          [203.2, '4', '8 in'],
          [609.6, '1', '2 ft'],
          [1219.2, '2', '4 ft'],
          [2438.4, '4', '8 ft'],
          [6096, '10', '20 ft'],
          [12192, '20', '40 ft'],
        ];
  const best = steps.find(([mm]) => mm * cssPxPerMm >= 70) ?? (steps.at(-1) as [number, string, string]);
  return { mm: best[0], halves: ['0', best[1], best[2]] };
}

function short(mm: number, unit: 'cm' | 'in'): string {
  return lengthText(mm, unit).replace(/\.0$/, '');
}
