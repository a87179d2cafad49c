/** A ceiling from below, and round it the names of the walls it ends at. */
import { wallNameOf } from '@enfilade/space/room';
import type { ScenePanel } from './panels.ts';
import { SECTION_MM } from './scene-wall.ts';
import { pathOn, px, py, type Sheet, write } from './sheet.ts';

/** The head wall's name beneath a ceiling, and its own above it, CSS px. */
export const WALL_NAME_PX = 24;

/** A ceiling from below: its paint or bare, the walls it ends at as cut. */
export function drawCeiling(sheet: Sheet, panel: ScenePanel): void {
  const { ctx, tones } = sheet;
  const { widthMm, heightMm } = panel;
  const round = (mm: number, off: number) => Math.round(sheet.k * mm + off);
  const [x0, y0] = [round(-SECTION_MM, sheet.ox), round(-SECTION_MM, sheet.oy)];
  ctx.fillStyle = tones.section;
  ctx.fillRect(x0, y0, round(widthMm + SECTION_MM, sheet.ox) - x0, round(heightMm + SECTION_MM, sheet.oy) - y0);
  const corners = [
    [0, 0],
    [widthMm, 0],
    [widthMm, heightMm],
    [0, heightMm],
  ] as const;
  pathOn(sheet, panel, corners);
  ctx.fillStyle = panel.paint ?? tones.bare;
  ctx.fill();
}

/** Round a ceiling, the wall each of its edges ends at. */
export function drawWallNames(sheet: Sheet, { room, widthMm, heightMm }: ScenePanel): void {
  if (room === null) return;
  const { ctx, dpr, tones } = sheet;
  ctx.fillStyle = tones.onBoard;
  const [midX, midY] = [px(sheet, widthMm / 2), py(sheet, heightMm / 2)];
  const [over, under] = [py(sheet, -SECTION_MM) - 6 * dpr, py(sheet, heightMm + SECTION_MM) + 15 * dpr];
  write(sheet, wallNameOf(room, 'foot'), midX, over, 12, 'center');
  write(sheet, wallNameOf(room, 'head'), midX, under, 12, 'center');
  for (const side of ['left', 'right'] as const) {
    ctx.save();
    const x = side === 'left' ? px(sheet, -SECTION_MM) - 7 * dpr : px(sheet, widthMm + SECTION_MM) + 15 * dpr;
    ctx.translate(Math.round(x), Math.round(midY));
    ctx.rotate(-Math.PI / 2);
    write(sheet, wallNameOf(room, side), 0, 0, 12, 'center');
    ctx.restore();
  }
}
