/** What moves, drawn over what rests: pieces under a hand, selection, others' rings, gaps, frames. */

import type { PieceId } from '@enfilade/shared/schema';
import { selection, trial } from '../selection.ts';
import type { ShowSession } from '../sync/show-session.ts';
import type { Bitmaps } from './bitmaps.ts';
import type { Insets, WindowSize } from './camera.ts';
import { drawGaps } from './draw-gaps.ts';
import { drawItem } from './draw-items.ts';
import { drawFormer, drawFrame, drawHeld, drawHovered, drawPinned, drawRing, drawSelected } from './draw-marks.ts';
import { drawNameOnPlan } from './draw-names.ts';
import { drawScaleBar } from './draw-surrounds.ts';
import { drawWord, readingBeside } from './draw-word.ts';
import { type Gaps, gapsAbout } from './gaps.ts';
import { drawLightNotes, lightNotes } from './light-notes.ts';
import type { ScenePanel } from './panels.ts';
import type { Scene } from './scene.ts';
import { backToFront, itemsOf, type SceneItem, type SceneLookup } from './scene-items.ts';
import { line, onSheet, px, py, type Sheet, setWeight } from './sheet.ts';
import { ink } from './tones.ts';

export interface HotState {
  readonly hovered: SceneItem | null;
  /** Where what is dragged was before. */
  readonly former: readonly SceneItem[];
  /** What is dragged while it is over nothing it could rest on. */
  readonly free: SceneItem | null;
  /** Gaps of what is dragged. */
  readonly gaps: Gaps | null;
  /** A frame being drawn to take many, in drawing mm. */
  readonly marquee: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  } | null;
  /** The centre line a drag has settled on. */
  readonly settled: ScenePanel | null;
}

/** What the hot layer reads of the stage. */
export interface HotView {
  readonly scene: Scene | null;
  readonly show: ShowSession;
  readonly bitmaps: Bitmaps;
  /** Geometry with what is under a hand. */
  readonly hot: SceneLookup;
  readonly hotState: HotState;
  readonly insets: Insets;
  readonly size: WindowSize;
  readonly liftedNow: ReadonlySet<PieceId>;
  /** I am dragging something. */
  readonly dragging: boolean;
}

export function drawHot(sheet: Sheet, machine: HotView): void {
  const { scene, hotState, show } = machine;
  if (scene === null) return;
  if (scene.frame.sheet === 'layout') {
    const { insets, size } = machine;
    drawScaleBar(sheet, (insets.left + 16) * sheet.dpr, (size.height - insets.bottom - 34) * sheet.dpr);
  }
  const others = show.presence.everyoneIn(show.layerId);
  for (const item of hotState.former) drawFormer(sheet, item);
  if (hotState.settled !== null) drawSettled(sheet, scene.frame.centreLineMm, hotState.settled);
  const lifted = [...machine.liftedNow].flatMap((id) => itemsOf(scene.frame, machine.hot, id));
  const shown = new Map<string, SceneItem[]>();
  for (const item of lifted) shown.set(item.pieceId, [...(shown.get(item.pieceId) ?? []), item]);
  for (const item of lifted.sort(backToFront)) if (!isFree(hotState, item)) drawItem(sheet, item, machine.bitmaps);
  for (const item of lifted) if (!isFree(hotState, item)) drawNameOnPlan(sheet, item);
  if (hotState.free !== null) drawItem(sheet, hotState.free, machine.bitmaps);
  const itemsNow = (id: string): readonly SceneItem[] =>
    hotState.free?.pieceId === id ? [hotState.free] : (shown.get(id) ?? scene.itemsOf(id));

  if (trial.get() !== null) drawTrial(sheet, machine);
  for (const { person, ring, presence } of others) {
    const held = new Set([...(presence.drag ?? []).map(([id]) => id), ...(presence.selected ?? [])]);
    const items = [...held].flatMap(itemsNow);
    for (const [i, item] of (held.size > MANY ? aroundEach(items) : items).entries()) {
      drawHeld(sheet, item, ring);
      if (i === 0) drawRing(sheet, item, person.name, ring);
    }
  }
  for (const id of show.documents.all('pinned').keys()) {
    const item = itemsNow(id).find(({ direct }) => direct);
    if (item !== undefined) drawPinned(sheet, item);
  }
  const chosen = selection.get();
  const { hovered } = hotState;
  if (hovered !== null && !chosen.includes(hovered.pieceId) && !machine.liftedNow.has(hovered.pieceId)) {
    drawHovered(sheet, hovered);
  }
  const mine = chosen.flatMap(itemsNow);
  if (chosen.length > MANY) for (const item of mine) drawHovered(sheet, item);
  for (const item of chosen.length > MANY ? aroundEach(mine) : mine) drawSelected(sheet, item);
  const gaps = hotState.gaps ?? (!machine.dragging ? restingGaps(machine) : null);
  if (gaps !== null && hotState.free === null) {
    drawGaps(sheet, gaps, scene.frame.sheet === 'room' && !machine.dragging);
  }
  const only = chosen.length === 1 ? mine.find(({ direct }) => direct) : undefined;
  if (only !== undefined && hotState.free === null) {
    const word = readingBeside(show.judgements, only);
    if (word !== null) drawWord(sheet, scene, only, word, lifted, gaps);
  }
  // Over the marks of what is selected: a figure is read or it is nothing.
  const notes = lightNotes.get();
  if (notes !== null) drawLightNotes(sheet, notes, (id) => itemsNow(id).find(({ as }) => as === 'picture'));
  if (hotState.marquee !== null) {
    const { minX, minY, maxX, maxY } = hotState.marquee;
    const on = scene.frame.panels[0]?.ink ?? 'black';
    drawFrame(sheet, on, px(sheet, minX), py(sheet, minY), (maxX - minX) * sheet.k, (maxY - minY) * sheet.k);
  }
}

/** More things than this are marked as one, with a thin line round each: corner marks of many hide what they mark. */
const MANY = 8;

/** One upright rectangle round all the items of each panel. */
function aroundEach(items: readonly SceneItem[]): SceneItem[] {
  const bySurface = new Map<string, SceneItem[]>();
  for (const item of items) bySurface.set(item.panel.surface, [...(bySurface.get(item.panel.surface) ?? []), item]);
  return [...bySurface.values()].map((all) => {
    const minX = Math.min(...all.map((item) => item.minX));
    const minY = Math.min(...all.map((item) => item.minY));
    const maxX = Math.max(...all.map((item) => item.maxX));
    const maxY = Math.max(...all.map((item) => item.maxY));
    const size = { widthMm: maxX - minX, heightMm: maxY - minY, rotationDegrees: 0 };
    return { ...(all[0] as SceneItem), ...size, X: (minX + maxX) / 2, Y: (minY + maxY) / 2, minX, minY, maxX, maxY };
  });
}

function isFree(state: HotState, item: SceneItem): boolean {
  return state.free?.pieceId === item.pieceId;
}

/** Gaps of the one thing that is selected and rests, where it is shown on its own surface. */
function restingGaps(machine: HotView): Gaps | null {
  const chosen = selection.get();
  const [id] = chosen;
  if (machine.scene === null || id === undefined || chosen.length !== 1 || machine.liftedNow.has(id)) return null;
  const item = machine.scene.itemsOf(id).find(({ direct }) => direct);
  return item === undefined ? null : gapsAbout(machine.show.judgements, machine.scene, item, NONE);
}

const NONE: ReadonlySet<string> = new Set();

/** The centre line, heavier while something rests on it, with a tick at each end. */
function drawSettled(sheet: Sheet, centreLineMm: number, panel: ScenePanel): void {
  const { ctx, dpr } = sheet;
  ctx.strokeStyle = ink(panel.ink);
  setWeight(sheet, 2);
  const [x1, y1] = onSheet(sheet, panel, 0, centreLineMm);
  const [x2, y2] = onSheet(sheet, panel, panel.widthMm, centreLineMm);
  line(sheet, x1, y1, x2, y2);
  setWeight(sheet, 3);
  const tick = 6 * dpr;
  for (const [x, y] of [
    [x1, y1],
    [x2, y2],
  ] as const) {
    ctx.beginPath();
    ctx.moveTo(x - tick, y + tick);
    ctx.lineTo(x + tick, y - tick);
    ctx.stroke();
  }
}

/** A thin dashed frame round all that is being tried. */
function drawTrial(sheet: Sheet, machine: HotView): void {
  const bySurface = new Map<string, SceneItem[]>();
  for (const id of trial.get()?.places.keys() ?? []) {
    for (const item of machine.scene?.itemsOf(id) ?? []) {
      if (!item.direct) continue;
      const list = bySurface.get(item.panel.surface);
      if (list === undefined) bySurface.set(item.panel.surface, [item]);
      else list.push(item);
    }
  }
  const out = 12 * sheet.dpr;
  for (const items of bySurface.values()) {
    const minX = px(sheet, Math.min(...items.map((item) => item.minX))) - out;
    const minY = py(sheet, Math.min(...items.map((item) => item.minY))) - out;
    const maxX = px(sheet, Math.max(...items.map((item) => item.maxX))) + out;
    const maxY = py(sheet, Math.max(...items.map((item) => item.maxY))) + out;
    drawFrame(sheet, (items[0] as SceneItem).panel.ink, minX, minY, maxX - minX, maxY - minY);
  }
}
