import { type Box, mirrored } from './boxes.ts';
import { describedHang } from './hang-described.ts';
import { withDominant } from './hang-dominant.ts';
import { doubleInRectangle, doubleOnAxis, doubleOnTwoLines } from './hang-double.ts';
import { checkHang } from './hang-ground.ts';
import { lineFilling, lineInPairs, lineOneGap, type Places } from './hang-line.ts';
import { pendantsClose, pendantsStacked, pendantsWide } from './hang-pendants.ts';
import type { HangCandidate, HangName, HangTask } from './hang-task.ts';
import { facesLeft, mirroredExtent, mirroredSpots } from './mirror.ts';
import { salonOnAxis } from './salon-axis.ts';
import { salonInColumns } from './salon-columns.ts';
import { massedSalon } from './salon-massed.ts';

export type HangKind = 'salon' | 'line' | 'double' | 'pendants';

/** Two ways nearer to each other than this, in mean sizes of a piece, look alike. */
const VISIBLY = 0.25;

type Way = (task: HangTask, goOn: () => boolean) => Places | undefined;

const WAYS: Readonly<Record<HangKind, readonly (readonly [HangName, Way])[]>> = {
  salon: [
    ['massed salon', massedSalon],
    ['salon on an axis', withDominant(salonOnAxis)],
    ['salon in columns', withDominant(salonInColumns)],
  ],
  line: [
    ['line with one gap', lineOneGap],
    ['line that fills the wall', lineFilling],
    ['line in pairs', lineInPairs],
  ],
  double: [
    ['double hang on an axis', doubleOnAxis],
    ['double hang on two lines', doubleOnTwoLines],
    ['double hang in a rectangle', doubleInRectangle],
  ],
  pendants: [
    ['pendants close', pendantsClose],
    ['pendants wide', pendantsWide],
    ['pendants stacked', pendantsStacked],
  ],
};

/** The names of the ways a kind of hang can be made, in the order they are offered. */
export function waysOf(kind: HangKind): readonly HangName[] {
  return WAYS[kind].map(([name]) => name);
}

/** One way to hang the pieces, by its name; it breaks no rule, and what finds no room is left unplaced and said. */
export function hang(name: HangName, task: HangTask): HangCandidate {
  checkHang(task);
  const way = Object.values(WAYS)
    .flat()
    .find(([one]) => one === name);
  if (way === undefined) throw new RangeError(`name is '${name}'; it is none of the ways`);
  let done = 0;
  const of = task.pieces.length + 1;
  const goOn = () => {
    done = Math.min(done + 1, of);
    return task.progress?.(done, of) !== false;
  };
  const made = (of: HangTask) => (goOn() ? way[1](of, goOn) : undefined);
  // A line keeps the order it was given, mirror or not.
  const turned = name !== 'line with one gap' && facesLeft(task.surface, marksOf(task));
  const found = made(turned ? mirroredTask(task) : task);
  const places = turned && found ? mirroredSpots(found) : found;
  const pinned = task.pieces.map((piece) => piece.pinnedAt ?? null);
  return describedHang(task, name, places ?? pinned, places === undefined);
}

/** What a wall is told from its mirror twin by. */
function marksOf({ keepClear, pieces }: HangTask): readonly Box[] {
  return [...keepClear, ...pieces.flatMap(({ pinnedAt, ...piece }) => (pinnedAt ? [{ ...piece, ...pinnedAt }] : []))];
}

function mirroredTask(task: HangTask): HangTask {
  const { surface, pieces, keepClear } = task;
  return {
    ...task,
    surface: mirroredExtent(surface),
    keepClear: keepClear.map(mirrored),
    pieces: pieces.map((piece) =>
      piece.pinnedAt ? { ...piece, pinnedAt: { ...piece.pinnedAt, xMm: -piece.pinnedAt.xMm } } : piece,
    ),
  };
}

/**
 * Every way of a kind that differs visibly from those before it, with its measured terms and reasons. Pinned pieces
 * stay where they are; all others lie inside the surface, keep the least gap to each other and to what is kept clear,
 * and heavy ones hang below reach. The same task has the same answer, a mirrored wall the mirrored one. Ends early, with what is done, when stopped.
 * RangeError for sizes that are not above 0, a negative gap, or a focal piece that is not there.
 */
export function hangs(kind: HangKind, task: HangTask): readonly HangCandidate[] {
  const kept: HangCandidate[] = [];
  const ways = waysOf(kind);
  const sizes = task.pieces.reduce((sum, { widthMm, heightMm }) => sum + (widthMm + heightMm) / 2, 0);
  const leastMm = (VISIBLY * sizes) / (task.pieces.length || 1);
  for (const [turn, name] of ways.entries()) {
    const { progress } = task;
    const candidate = hang(name, {
      ...task,
      ...(progress && { progress: (done: number, of: number) => progress(turn + done / of, ways.length) }),
    });
    if (candidate.reasons.some(({ kind: why }) => why === 'stopped')) return kept;
    if (kept.every((other) => apartMm(task, candidate, other) > leastMm)) kept.push(candidate);
  }
  return kept;
}

/** How far the free pieces of two candidates lie apart, on average (mm); what only one places counts as a metre. */
function apartMm(task: HangTask, a: HangCandidate, b: HangCandidate): number {
  const free = task.pieces.flatMap((piece, i) => (piece.pinnedAt ? [] : [i]));
  const sum = free.reduce((total, i) => {
    const [one, other] = [a.places[i], b.places[i]];
    if (!one || !other) return total + (one === other ? 0 : 1000);
    return total + Math.hypot(one.xMm - other.xMm, one.yMm - other.yMm);
  }, 0);
  return sum / (free.length || 1);
}
