/** Draws what rests beneath the pieces: walls in their paint, plans, openings, fixtures, lines of the drawing. */
import { planFromWall, type WallSide } from '@enfilade/space/room';
import { drawCeiling } from './draw-ceiling.ts';
import { drawFixture, drawOpening } from './draw-fittings.ts';
import { boxInDrawing, type SceneFrame, type ScenePanel } from './panels.ts';
import type { Rect } from './scene-items.ts';
import { SECTION_MM, SLAB_MM } from './scene-wall.ts';
import { hatch, line, onSheet, pathOn, px, py, type Sheet, setWeight } from './sheet.ts';
import { ink } from './tones.ts';

/** `clip`: the part of the drawing (mm) that is being painted. */
export function drawPanels(sheet: Sheet, frame: SceneFrame, clip: Rect): void {
  for (const panel of frame.panels) {
    if (panel.kind === 'layout' || !reaches(panel, clip)) continue;
    if (panel.kind === 'floor') drawPlan(sheet, frame, panel);
    else if (panel.kind === 'ceiling') drawCeiling(sheet, panel);
    else {
      if (frame.sheet === 'wall' && !insideWall(panel, clip)) drawSection(sheet, panel);
      drawWall(sheet, frame, panel);
    }
  }
}

/** Whether a rectangle of a faced wall's drawing shows nothing but the wall above its floor line. */
function insideWall(panel: ScenePanel, clip: Rect): boolean {
  const floor = panel.heightMm - Math.max(...panel.floorMm);
  return clip.minX >= 0 && clip.minY >= 0 && clip.maxX <= panel.widthMm && clip.maxY <= floor;
}

/** Whether a panel, with its section and slab, has a part in the rectangle. */
function reaches(panel: ScenePanel, clip: Rect): boolean {
  const box = boxInDrawing(panel, {
    xMm: panel.widthMm / 2,
    yMm: panel.heightMm / 2,
    widthMm: panel.widthMm,
    heightMm: panel.heightMm,
  });
  const over = 400;
  return (
    box.X - over < clip.maxX &&
    box.Y - over < clip.maxY &&
    box.X + box.width + over > clip.minX &&
    box.Y + box.height + over > clip.minY
  );
}

function drawWall(sheet: Sheet, frame: SceneFrame, panel: ScenePanel): void {
  const { ctx, tones } = sheet;
  const [left, right] = panel.floorMm;
  pathOn(sheet, panel, [
    [0, panel.heightMm],
    [panel.widthMm, panel.heightMm],
    [panel.widthMm, right],
    [0, left],
  ]);
  ctx.fillStyle = panel.paint ?? tones.bare;
  ctx.fill();
  if (frame.sheet === 'room') {
    setWeight(sheet, 1);
    ctx.strokeStyle = tones.lineBoard;
    ctx.stroke();
  }
  for (const box of panel.openings) drawOpening(sheet, panel, box);
  drawLevels(sheet, frame, panel);
  for (const box of panel.fixtures) drawFixture(sheet, boxInDrawing(panel, box), box.kind);
}

/** The centre line dash-dot, the laser line as fine dots: behind works, and not across openings. */
function drawLevels(sheet: Sheet, frame: SceneFrame, panel: ScenePanel): void {
  const { ctx, dpr } = sheet;
  const lines: [number, number[], number][] = [[frame.centreLineMm, [12, 4, 2, 4], 0.62]];
  if (panel.room !== null && frame.sheet === 'wall') lines.push([panel.room.laserMm, [1, 5], 0.62]);
  ctx.save();
  ctx.strokeStyle = ink(panel.ink);
  setWeight(sheet, 0.75);
  for (const [yMm, dash, strength] of lines) {
    ctx.setLineDash(dash.map((length) => length * dpr));
    ctx.globalAlpha = strength;
    for (const [from, to] of clearStretches(panel, yMm)) {
      const [x1, y1] = onSheet(sheet, panel, from, yMm);
      const [x2, y2] = onSheet(sheet, panel, to, yMm);
      line(sheet, x1, y1, x2, y2);
    }
  }
  ctx.restore();
}

/** Stretches of a wall at a height that no opening takes. */
export function clearStretches(panel: ScenePanel, yMm: number): (readonly [number, number])[] {
  const stretches: [number, number][] = [];
  let from = 0;
  const cuts = panel.openings.filter((box) => Math.abs(yMm - box.yMm) < box.heightMm / 2).sort((a, b) => a.xMm - b.xMm);
  for (const box of cuts) {
    if (box.xMm - box.widthMm / 2 > from) stretches.push([from, box.xMm - box.widthMm / 2]);
    from = Math.max(from, box.xMm + box.widthMm / 2);
  }
  if (from < panel.widthMm) stretches.push([from, panel.widthMm]);
  return stretches;
}

/** The neighbouring walls and the ceiling as cut, dark; the floor's slab hatched beneath its line, which may fall. */
function drawSection(sheet: Sheet, panel: ScenePanel): void {
  const { ctx, tones, dpr } = sheet;
  const x0 = Math.round(px(sheet, -SECTION_MM));
  const x1 = Math.round(px(sheet, panel.widthMm + SECTION_MM));
  const top = Math.round(py(sheet, -SECTION_MM));
  const [left, right] = panel.floorMm.map((level) => py(sheet, panel.heightMm - level)) as [number, number];
  ctx.fillStyle = tones.section;
  ctx.fillRect(x0, top, x1 - x0, Math.round(Math.max(left, right)) - top);
  const slab = Math.max(6 * dpr, SLAB_MM * sheet.k);
  ctx.save();
  ctx.beginPath();
  ctx.moveTo(x0, left);
  ctx.lineTo(x1, right);
  ctx.lineTo(x1, Math.max(left, right) + slab);
  ctx.lineTo(x0, Math.max(left, right) + slab);
  ctx.closePath();
  ctx.fillStyle = tones.slab;
  ctx.fill();
  ctx.clip();
  ctx.strokeStyle = '#777777';
  setWeight(sheet, 1);
  hatch(sheet, x0, Math.min(left, right), x1 - x0, slab + Math.abs(left - right), 6 * dpr);
  ctx.restore();
  ctx.strokeStyle = tones.onBoard;
  setWeight(sheet, 2);
  ctx.beginPath();
  ctx.moveTo(x0, left);
  ctx.lineTo(x1, right);
  ctx.stroke();
}

/** The plan: light, its edge in ink, doorways as gaps with their jambs. */
function drawPlan(sheet: Sheet, frame: SceneFrame, panel: ScenePanel): void {
  const { ctx, tones, dpr } = sheet;
  const corners = [
    [0, 0],
    [panel.widthMm, 0],
    [panel.widthMm, panel.heightMm],
    [0, panel.heightMm],
  ] as const;
  pathOn(sheet, panel, corners);
  ctx.fillStyle = tones.bare;
  ctx.fill();
  setWeight(sheet, 1.5);
  ctx.strokeStyle = tones.onBoard;
  ctx.stroke();
  const { room } = panel;
  if (room === null) return;
  for (const wall of frame.panels) {
    if (wall.kind !== 'wall') continue;
    const side = wall.side as WallSide;
    const jamb = 60;
    for (const box of wall.openings) {
      const [from, to] = [box.xMm - box.widthMm / 2, box.xMm + box.widthMm / 2];
      const a = planFromWall(room, side, from);
      const b = planFromWall(room, side, to);
      const [ax, ay] = onSheet(sheet, panel, a.xMm, a.yMm);
      const [bx, by] = onSheet(sheet, panel, b.xMm, b.yMm);
      ctx.strokeStyle = tones.bare;
      setWeight(sheet, box.kind === 'doorway' ? 3 : 1);
      line(sheet, ax, ay, bx, by);
      ctx.strokeStyle = tones.onBoard;
      setWeight(sheet, 2);
      for (const end of [from, to]) {
        const inside = planFromWall(room, side, end, jamb);
        const outside = planFromWall(room, side, end, -jamb);
        const [ix, iy] = onSheet(sheet, panel, inside.xMm, inside.yMm);
        const [ux, uy] = onSheet(sheet, panel, outside.xMm, outside.yMm);
        line(sheet, ix, iy, ux, uy);
      }
      if (box.kind === 'doorway') continue;
      setWeight(sheet, 1);
      line(sheet, ax - dpr, ay - dpr, bx - dpr, by - dpr);
    }
  }
}
