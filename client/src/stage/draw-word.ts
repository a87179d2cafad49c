/** How the selected work reads, written beside it on its wall: the word with its mark, and a thin line from the work. */
import type { ReadingWord } from '@enfilade/colour/reading-thresholds';
import type { Judgements } from '@enfilade/shared/judgements';
import { toDrawing } from '@enfilade/space/fold-out';
import { paintTrial } from '../selection.ts';
import type { Gaps } from './gaps.ts';
import { boxInDrawing } from './panels.ts';
import type { Scene } from './scene.ts';
import type { Rect, SceneItem } from './scene-items.ts';
import { fontOf, px, py, type Sheet } from './sheet.ts';
import { ink } from './tones.ts';
import { wordPlaceOf } from './word-place.ts';

const MARK_PX = 13;
const BETWEEN_PX = 6;
const HEIGHT_PX = 18;
/** How far about the work other things are looked for: the farthest a word stands off, and its length. */
const ABOUT_PX = 240;
/** What a figure beside a dimension line takes. */
const FIGURE_PX = 44;

/** The word for a work hanging on a wall, by the wall's paint or the one on trial; null where it has none. */
export function readingBeside(judgements: Judgements, item: SceneItem): ReadingWord | null {
  const { panel } = item;
  // In an opening there is light behind it, and no paint.
  if (panel.kind !== 'wall' || !item.direct || item.as !== 'picture' || item.openingId !== null) return null;
  const tried = paintTrial.get();
  const lab = tried?.surface === panel.surface ? tried.lab : judgements.paintOf(panel.surface)?.lab;
  return lab === undefined ? null : (judgements.readingOf(item.pieceId, lab)?.word ?? null);
}

/** Draws nothing where no place near the work is free: the card says the word as well. */
export function drawWord(
  sheet: Sheet,
  scene: Scene,
  item: SceneItem,
  word: ReadingWord,
  moving: readonly SceneItem[],
  gaps: Gaps | null,
): void {
  const { ctx, dpr } = sheet;
  const serif = { serif: true, italic: true };
  const size = scene.frame.sheet === 'wall' ? 18 : 15;
  ctx.font = fontOf(sheet, size, serif);
  const width = MARK_PX + BETWEEN_PX + ctx.measureText(word).width / dpr + 2;
  const place = wordPlaceOf({
    work: onCanvas(sheet, item),
    width: width * dpr,
    height: HEIGHT_PX * dpr,
    within: onCanvas(sheet, panelRect(item)),
    taken: takenAbout(sheet, scene, item, moving, gaps),
    pixel: dpr,
  });
  if (place === null) return;
  ctx.save();
  ctx.strokeStyle = ink(item.panel.ink);
  ctx.fillStyle = ink(item.panel.ink);
  ctx.lineWidth = dpr;
  ctx.beginPath();
  ctx.moveTo(Math.round(place.from[0]) + 0.5, Math.round(place.from[1]) + 0.5);
  ctx.lineTo(Math.round(place.to[0]) + 0.5, Math.round(place.to[1]) + 0.5);
  ctx.stroke();
  const [x, y] = [Math.round(place.x), Math.round(place.y)];
  drawMark(sheet, word, x, y + Math.round(((HEIGHT_PX - MARK_PX) / 2) * dpr));
  ctx.font = fontOf(sheet, size, serif);
  ctx.textAlign = 'left';
  ctx.textBaseline = 'alphabetic';
  ctx.fillText(word, x + Math.round((MARK_PX + BETWEEN_PX) * dpr), y + Math.round(14 * dpr));
  ctx.restore();
}

/** A field with a figure in it, more and more itself; as `ReadingMark` draws it in the page. */
function drawMark({ ctx, dpr }: Sheet, word: ReadingWord, x: number, y: number): void {
  const side = MARK_PX * dpr;
  const inset = Math.round(side * 0.24);
  const inner = Math.round(side) - 2 * inset;
  ctx.lineWidth = dpr;
  ctx.strokeRect(x + 0.5, y + 0.5, Math.round(side) - 1, Math.round(side) - 1);
  const figure = [x + inset, y + inset, inner, inner] as const;
  if (word === 'carries') {
    ctx.fillRect(...figure);
    return;
  }
  ctx.save();
  if (word === 'lost') ctx.setLineDash([dpr, 1.6 * dpr]);
  ctx.strokeRect(figure[0] + 0.5, figure[1] + 0.5, inner - 1, inner - 1);
  ctx.restore();
  if (word !== 'holds') return;
  ctx.beginPath();
  ctx.moveTo(figure[0], figure[1] + inner);
  ctx.lineTo(figure[0], figure[1]);
  ctx.lineTo(figure[0] + inner, figure[1]);
  ctx.closePath();
  ctx.fill();
}

/** Rectangles of the canvas that are not free: other things, fittings, level lines, dimension lines with figures. */
function takenAbout(
  sheet: Sheet,
  scene: Scene,
  item: SceneItem,
  moving: readonly SceneItem[],
  gaps: Gaps | null,
): Rect[] {
  const about = (ABOUT_PX * sheet.dpr) / sheet.k;
  const near = scene.within({
    minX: item.minX - about,
    minY: item.minY - about,
    maxX: item.maxX + about,
    maxY: item.maxY + about,
  });
  const { panel } = item;
  const boxes = [...panel.fixtures, ...panel.openings].map((box) => {
    const { X, Y, width, height } = boxInDrawing(panel, box);
    return { minX: X, minY: Y, maxX: X + width, maxY: Y + height };
  });
  const levels = [scene.frame.centreLineMm];
  if (panel.room !== null && scene.frame.sheet === 'wall') levels.push(panel.room.laserMm);
  const lines = levels.map((yMm) => rectBetween(toDrawing(panel, 0, yMm), toDrawing(panel, panel.widthMm, yMm), 0));
  const others = [...near, ...moving].filter(({ pieceId }) => pieceId !== item.pieceId);
  return [...others, ...boxes, ...lines, ...(gaps === null ? [] : dimensionsOf(sheet, gaps))].map((rect) =>
    onCanvas(sheet, rect),
  );
}

/** Roughly where the dimension lines of a box lie, with room for their figures; drawing mm. */
function dimensionsOf(sheet: Sheet, { panel, box, gaps }: Gaps): Rect[] {
  const over = (FIGURE_PX * sheet.dpr) / sheet.k;
  const [hw, hh] = [box.widthMm / 2, box.heightMm / 2];
  const ends: [number, number, number, number][] = [
    [-hw - gaps.left.mm, 0, -hw, 0],
    [hw, 0, hw + gaps.right.mm, 0],
    [0, hh, 0, hh + (gaps.above.to === 'edge' ? 0 : gaps.above.mm)],
    [0, -hh - gaps.below.mm, 0, -hh],
  ];
  return ends.flatMap(([x1, y1, x2, y2]) => {
    if (x1 === x2 && y1 === y2) return [];
    const a = toDrawing(panel, box.xMm + x1, box.yMm + y1);
    const b = toDrawing(panel, box.xMm + x2, box.yMm + y2);
    const level = Math.abs(a.X - b.X) >= Math.abs(a.Y - b.Y);
    const rect = rectBetween(a, b, 0);
    // A level line has its figure over it, an upright one to its left.
    return [level ? { ...rect, minY: rect.minY - over / 2 } : { ...rect, minX: rect.minX - over }];
  });
}

function rectBetween(a: { X: number; Y: number }, b: { X: number; Y: number }, over: number): Rect {
  return {
    minX: Math.min(a.X, b.X) - over,
    minY: Math.min(a.Y, b.Y) - over,
    maxX: Math.max(a.X, b.X) + over,
    maxY: Math.max(a.Y, b.Y) + over,
  };
}

function panelRect({ panel }: SceneItem): Rect {
  const highest = Math.max(...panel.floorMm);
  return rectBetween(toDrawing(panel, 0, highest), toDrawing(panel, panel.widthMm, panel.heightMm), 0);
}

function onCanvas(sheet: Sheet, rect: Rect): Rect {
  return {
    minX: px(sheet, rect.minX),
    minY: py(sheet, rect.minY),
    maxX: px(sheet, rect.maxX),
    maxY: py(sheet, rect.maxY),
  };
}
