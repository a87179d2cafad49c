import { acrossGapMm, type Box, upGapMm } from './boxes.ts';
import type { HangName } from './hang-task.ts';

/** Farther than this from all others, and from so many least gaps, a frame is no part of a salon (own rule). */
const ALONE_MM = 300;
const ALONE_GAPS = 4;
/** Between pairs so many times the gap within them, or nobody sees pairs (own rule). */
const PAIRS_APART = 1.5;
/** Where one of a row is so many times as high as another, two straight outer edges leave a hollow between (own rule). */
const HOLLOW = 2;

/**
 * Whether what was hung is what its name says and a person would see it so: boxes of the pieces that found room (mm), with
 * the least gap asked for. A way that is not is none to be offered.
 */
export function trueToName(name: HangName, boxes: readonly Box[], gapMm: number): boolean {
  switch (name) {
    case 'massed salon':
    case 'salon on an axis':
    case 'salon in columns':
      return boxes.every((box) => nearestMm(box, boxes) <= Math.max(ALONE_MM, ALONE_GAPS * gapMm));
    case 'line in pairs':
      return isInPairs(boxes);
    case 'double hang in a rectangle':
      return !isHollow(boxes);
    case 'pendants stacked':
      // One pair, with or without something between, is no stack.
      return boxes.length > 3;
    default:
      return true;
  }
}

function nearestMm(box: Box, boxes: readonly Box[]): number {
  const away = boxes
    .filter((other) => other !== box)
    .map((other) => Math.hypot(Math.max(0, acrossGapMm(box, other)), Math.max(0, upGapMm(box, other))));
  return away.length === 0 ? 0 : Math.min(...away);
}

function isInPairs(boxes: readonly Box[]): boolean {
  if (boxes.length < 4 || boxes.length % 2 === 1) return false;
  const along = [...boxes].sort((a, b) => a.xMm - b.xMm);
  const gaps = along.slice(1).map((box, i) => acrossGapMm(box, along[i]!));
  const within = gaps.filter((_, i) => i % 2 === 0);
  const between = gaps.filter((_, i) => i % 2 === 1);
  return Math.min(...between) >= PAIRS_APART * Math.max(...within);
}

/** Two rows, parted where the upper feet and the lower tops are farthest from each other. */
function isHollow(boxes: readonly Box[]): boolean {
  const middles = boxes.map(({ yMm }) => yMm);
  const middle = (Math.min(...middles) + Math.max(...middles)) / 2;
  return [true, false].some((upper) => {
    const heights = boxes.filter(({ yMm }) => yMm > middle === upper).map(({ heightMm }) => heightMm);
    return Math.max(...heights) > HOLLOW * Math.min(...heights);
  });
}
