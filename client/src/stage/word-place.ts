/** Where a word about a work can stand on its wall: near it, clear of everything else, joined by a short line. Pure. */
import type { Rect } from './scene-items.ts';

export interface WordPlace {
  /** Left upper corner of the word. */
  readonly x: number;
  readonly y: number;
  /** The line's end at the work, and at the word. */
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

export interface WordTask {
  readonly work: Rect;
  readonly width: number;
  readonly height: number;
  /** The wall. */
  readonly within: Rect;
  /** What neither the word nor its line may touch. */
  readonly taken: readonly Rect[];
  /** Units of the task a CSS px. */
  readonly pixel: number;
}

/** How far from the work the word is looked for: clear of its corner marks first (CSS px). */
const DISTANCES = [26, 34, 46, 62, 84, 112] as const;
/** What the line keeps from the work and from the word, and the word from anything (CSS px). */
const OFF = 4;
const WORD_OFF = 3;
const CLEAR = 4;

/** The nearest free place: above before beside before beneath; null where the wall is too full. */
export function wordPlaceOf(task: WordTask): WordPlace | null {
  for (const distance of DISTANCES) {
    for (const place of placesAt(task, distance * task.pixel)) if (isFree(task, place)) return place;
  }
  return null;
}

function placesAt({ work, width, height, pixel }: WordTask, distance: number): WordPlace[] {
  const [off, wordOff] = [OFF * pixel, WORD_OFF * pixel];
  const places: WordPlace[] = [];
  const middleX = (work.minX + work.maxX) / 2;
  const middleY = (work.minY + work.maxY) / 2;
  const level = [work.maxX - width, work.minX, middleX - width / 2];
  const upright = [work.minY, work.maxY - height, middleY - height / 2];
  const within = (value: number, from: number, to: number) => Math.min(Math.max(value, from), Math.max(from, to));
  const across = (y: number, workY: number, wordY: number) => {
    for (const x of level) {
      const end = x + width / 2;
      const at = within(end, work.minX + off, work.maxX - off);
      places.push({ x, y, from: [at, workY], to: [end, wordY] });
    }
  };
  const beside = (x: number, workX: number, wordX: number) => {
    for (const y of upright) {
      const end = y + height / 2;
      const at = within(end, work.minY + off, work.maxY - off);
      places.push({ x, y, from: [workX, at], to: [wordX, end] });
    }
  };
  across(work.minY - distance - height, work.minY - off, work.minY - distance + wordOff);
  beside(work.maxX + distance, work.maxX + off, work.maxX + distance - wordOff);
  beside(work.minX - distance - width, work.minX - off, work.minX - distance + wordOff);
  across(work.maxY + distance, work.maxY + off, work.maxY + distance - wordOff);
  return places;
}

function isFree({ width, height, within, taken, pixel }: WordTask, { x, y, from, to }: WordPlace): boolean {
  const clear = CLEAR * pixel;
  const word = { minX: x - clear, minY: y - clear, maxX: x + width + clear, maxY: y + height + clear };
  if (word.minX < within.minX || word.maxX > within.maxX) return false;
  if (word.minY < within.minY || word.maxY > within.maxY) return false;
  const line = {
    minX: Math.min(from[0], to[0]) - 1,
    minY: Math.min(from[1], to[1]) - 1,
    maxX: Math.max(from[0], to[0]) + 1,
    maxY: Math.max(from[1], to[1]) + 1,
  };
  return !taken.some((rect) => meets(rect, word) || meets(rect, line));
}

function meets(a: Rect, b: Rect): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
