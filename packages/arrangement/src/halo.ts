import { type Box, boundsOf, mirrored } from './boxes.ts';
import { type BuildTask, type Built, buildHalo } from './halo-build.ts';
import type { Thing } from './halo-ground.ts';
import { relaxHalo } from './halo-relax.ts';
import type { HaloCandidate, HaloMeasures, HaloName, HaloReason, HaloTask } from './halo-task.ts';
import { balanceOf, facingGaps, largestVoidMm, spreadOf } from './measures.ts';
import { seeded } from './seeded.ts';

/** Gaps wider than so many least ones are no longer between neighbours. */
const NEIGHBOURS = 6;
/** From the wanted gaps to the least ones, until everything finds room. */
const LEVELS = [1, 0.6, 0.3, 0];

/**
 * Pieces hung round a focal work: whole-mm centres by piece, null where one found no room, never a rule broken (inside
 * the surface, least gaps kept, clear of what is to be kept clear). The same task and seed have the same answer; a
 * mirrored wall has the mirrored answer. Stopped by `progress`, it places nothing and says so.
 * RangeError for sizes that are not above 0, a negative gap, a looseness outside 0 … 1, a roominess below 1.
 */
export function halo(task: HaloTask): HaloCandidate {
  check(task);
  if (!facesLeft(task)) return made(task);
  const { surface } = task;
  const turned = made({
    ...task,
    surface: { ...surface, leftMm: -surface.rightMm, rightMm: -surface.leftMm },
    focal: mirrored(task.focal),
    keepClear: task.keepClear.map(mirrored),
    ...(task.leanDegrees === undefined ? {} : { leanDegrees: 180 - task.leanDegrees }),
  });
  const places = turned.places.map((place) => (place === null ? null : { xMm: 0 - place.xMm, yMm: place.yMm }));
  return described(
    task,
    places,
    turned.reasons.some(({ kind }) => kind === 'stopped'),
  );
}

function made(task: HaloTask): HaloCandidate {
  const random = seeded(task.seed);
  const roominess = task.roominess ?? 1.4;
  const clear = task.keepClear.map((box) => thingOf(box, 'clear', task.gapMm, 1, -1));
  const focalEase = roominess * (1 + 0.3 * task.looseness);
  const focal = thingOf(task.focal, 'focal', task.focalGapMm ?? task.gapMm, focalEase, -1);
  const ordered = task.pieces
    .map((size, index) => {
      const ease = roominess * (1 + (0.3 + task.looseness * 1.3) * (random() - 0.3));
      const thing = thingOf({ xMm: 0, yMm: 0, ...size }, 'piece', task.gapMm, Math.max(1, ease), index);
      return { thing, rank: size.widthMm * size.heightMm * Math.exp((random() - 0.5) * 1.2) };
    })
    .sort((a, b) => b.rank - a.rank)
    .map(({ thing }) => thing);
  let stopped = false;
  let done = 0;
  const passes = 30;
  const of = ordered.length + passes;
  const goOn = () => {
    done = Math.min(done + 1, of);
    if (task.progress?.(done, of) === false) stopped = true;
    return !stopped;
  };
  const common = {
    surface: task.surface,
    focal,
    clear,
    pieces: ordered,
    across: task.across ?? 1.2,
    leanDegrees: task.leanDegrees ?? Number.NaN,
    wander: 0.04 + 0.22 * task.looseness + (task.leanDegrees === undefined ? 0 : 0.25),
    reachMm: task.reachMm ?? Infinity,
    goOn,
  } satisfies Partial<BuildTask>;
  let built: Built | undefined;
  let level = 0;
  for (level of LEVELS) {
    if (level > 0 && !mayFit(task, ordered, level)) continue;
    done = 0;
    built = buildHalo({ ...common, level }, random, level > 0);
    if (built !== undefined || stopped) break;
  }
  const places: ({ xMm: number; yMm: number } | null)[] = task.pieces.map(() => null);
  if (built !== undefined && !stopped) {
    const limitMm = NEIGHBOURS * task.gapMm;
    relaxHalo(built.placed, focal, clear, task.surface, {
      passes,
      level,
      limitMm,
      sight: 5 - 2.5 * task.looseness,
      reachMm: common.reachMm,
      goOn,
    });
    if (!stopped) for (const piece of built.placed) places[piece.index] = { xMm: piece.x, yMm: piece.y };
  }
  return described(task, places, stopped);
}

/** Whether the pieces and the gaps they would like can find room at all, by area alone. */
function mayFit(task: HaloTask, pieces: readonly Thing[], level: number): boolean {
  const { surface } = task;
  const free = (surface.rightMm - surface.leftMm) * (surface.topMm - surface.bottomMm);
  const needed = pieces.reduce((sum, { halfWidth, halfHeight, leastMm, ease }) => {
    const gap = leastMm * (1 + level * (ease - 1));
    return sum + (2 * halfWidth + gap) * (2 * halfHeight + gap);
  }, task.focal.widthMm * task.focal.heightMm);
  return needed <= free;
}

/** What the places come to: figures, a name, and reasons. Reads the pieces' sizes from the task. */
export function described(task: HaloTask, places: HaloCandidate['places'], stopped = false): HaloCandidate {
  const boxes = places.flatMap((place, i): Box[] => (place === null ? [] : [{ ...place, ...task.pieces[i]! }]));
  const all = [...boxes, task.focal];
  const gaps = facingGaps(all, NEIGHBOURS * task.gapMm, boxes.length).sort((a, b) => a - b);
  const { meanMm, cv } = spreadOf(gaps);
  const bounds = boundsOf(all)!;
  const balance = balanceOf(boxes, task.focal);
  const tops = boxes.map((box) => box.yMm + box.heightMm / 2);
  const measures: HaloMeasures = {
    facingGapCv: cv,
    meanGapMm: meanMm,
    largestVoidMm: largestVoidMm(all, task.keepClear),
    balanceX: balance.x,
    balanceY: balance.y,
    outline: { widthMm: bounds.widthMm, heightMm: bounds.heightMm },
    highestTopMm: tops.length === 0 ? null : Math.max(...tops),
  };
  const unplaced = places.flatMap((place, i) => (place === null ? [i] : []));
  const reasons: HaloReason[] = [];
  const { reachMm } = task;
  if (stopped) reasons.push({ kind: 'stopped' });
  if (gaps.length > 0) {
    const [leastMm, mostMm] = [gaps[Math.floor(gaps.length * 0.05)]!, gaps[Math.floor(gaps.length * 0.95)]!];
    reasons.push({ kind: 'gaps', leastMm, mostMm });
    reasons.push({ kind: 'outline', ...measures.outline }, { kind: 'largest void', mm: measures.largestVoidMm });
    if (Math.abs(balance.x) > 0.15) reasons.push({ kind: 'leans', to: balance.x < 0 ? 'left' : 'right' });
  }
  const above = reachMm === undefined ? 0 : tops.filter((top) => top > reachMm).length;
  if (reachMm !== undefined && above > 0) reasons.push({ kind: 'above reach', count: above, reachMm });
  if (unplaced.length > 0 && !stopped) reasons.push({ kind: 'no room', count: unplaced.length });
  return { places, unplaced, looseness: task.looseness, measures, name: nameOf(task), reasons };
}

function nameOf(task: HaloTask): HaloName {
  if (task.across !== undefined && task.across >= 1.6) return 'wide halo';
  if (task.across !== undefined && task.across <= 0.8) return 'tall halo';
  return task.looseness < 0.4 ? 'even halo' : 'loose halo';
}

function thingOf(box: Box, kind: Thing['kind'], leastMm: number, ease: number, index: number): Thing {
  const [halfWidth, halfHeight] = [box.widthMm / 2, box.heightMm / 2];
  return { x: box.xMm, y: box.yMm, halfWidth, halfHeight, kind, leastMm, ease, index, spent: 0 };
}

/** Whether a wall is the one of the two mirror twins that is turned round first, so that both have one answer. */
function facesLeft({ surface, focal, keepClear }: HaloTask): boolean {
  const marks = (at: (x: number) => number) =>
    [at(focal.xMm), ...keepClear.map((b) => at(b.xMm) * 1e-3 + b.yMm + b.widthMm * 7 + b.heightMm * 13)].map((mark) =>
      Math.round(mark * 1e3),
    );
  const fromLeft = marks((x) => x - surface.leftMm);
  const fromRight = marks((x) => surface.rightMm - x);
  const differs = fromLeft.findIndex((mark, i) => mark !== fromRight[i]);
  return differs >= 0 && fromLeft[differs]! > fromRight[differs]!;
}

function check(task: HaloTask): void {
  const above0 = (value: number, what: string) => {
    if (!(value > 0 && value < Infinity)) throw new RangeError(`${what} is ${value}; it must be above 0`);
  };
  task.pieces.forEach((piece, i) => {
    above0(piece.widthMm, `pieces[${i}].widthMm`);
    above0(piece.heightMm, `pieces[${i}].heightMm`);
  });
  if (!(task.gapMm >= 0)) throw new RangeError(`gapMm is ${task.gapMm}; it must be 0 or more`);
  if (!((task.focalGapMm ?? 0) >= 0)) throw new RangeError(`focalGapMm is ${task.focalGapMm}; it must be 0 or more`);
  if (!(task.looseness >= 0 && task.looseness <= 1))
    throw new RangeError(`looseness is ${task.looseness}; it must be 0 … 1`);
  if (!((task.roominess ?? 1) >= 1)) throw new RangeError(`roominess is ${task.roominess}; it must be 1 or more`);
  if (!((task.across ?? 1) > 0)) throw new RangeError(`across is ${task.across}; it must be above 0`);
}
