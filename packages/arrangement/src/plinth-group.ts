import { acrossGapMm, type Box, boundsOf, type Extent, upGapMm } from './boxes.ts';
import type { StandingThing } from './mass-task.ts';
import { balanceOf, spreadOf } from './measures.ts';
import { nearestFree, type Obstacle, type Spot } from './nearest-free.ts';
import { arched } from './runs.ts';
import { seenShares } from './seen-from-front.ts';

/** 36 in: what a way through needs (ADA 403.5.1). A gap below a third of it invites nobody. */
const WAY_MM = 914.4;

/** Plinths, each with what stands on it as one height, on a floor in plan. y grows away from where they are met. */
export interface PlinthTask {
  readonly floor: Extent;
  readonly plinths: readonly StandingThing[];
  /** Door swings, ways through, other furniture: boxes in plan, x by y. */
  readonly keepClear: readonly Box[];
  /** The least gap between plinths and to what is kept clear (mm). */
  readonly gapMm: number;
  /** The middle of the group; the floor's unless given. */
  readonly around?: Spot;
}

export type PlinthName = 'triangle' | 'arc' | 'steps';

export interface PlinthCandidate {
  readonly name: PlinthName;
  /** Centres in plan, whole mm, by plinth; null where one found no room. */
  readonly places: readonly (Spot | null)[];
  readonly unplaced: readonly number[];
  readonly measures: {
    /** The least share of a plinth seen level from the front. */
    readonly leastSeen: number;
    /** −1 … 1: where the fronts' weight lies from the middle of the outline; positive is right. */
    readonly balanceX: number;
    readonly meanGapMm: number;
    readonly gapCv: number;
    /** In plan: across and deep. */
    readonly outline: { readonly widthMm: number; readonly depthMm: number };
    /** Gaps wide enough to tempt somebody in and too narrow to let a chair through (ADA 403.5.1). */
    readonly narrowWays: number;
  };
}

/**
 * Ways to group plinths in plan: a triangle with the tallest at the back, an arc open to who comes, steps from tall to
 * low along a slant. No two nearer than the gap, none off the floor or in what is kept clear; no room is said, not
 * forced. Common practice. RangeError for sizes that are not above 0 or a negative gap.
 */
export function plinthGroups(task: PlinthTask): readonly PlinthCandidate[] {
  task.plinths.forEach((plinth, i) => {
    for (const what of ['widthMm', 'depthMm', 'heightMm'] as const)
      if (!(plinth[what] > 0)) throw new RangeError(`plinths[${i}].${what} is ${plinth[what]}; it must be above 0`);
  });
  if (!(task.gapMm >= 0)) throw new RangeError(`gapMm is ${task.gapMm}; it must be 0 or more`);
  return (['triangle', 'arc', 'steps'] as const).map((name) => described(task, name, placed(task, name)));
}

function placed(task: PlinthTask, name: PlinthName): (Spot | null)[] {
  const { plinths, floor, gapMm } = task;
  const around = task.around ?? { xMm: (floor.leftMm + floor.rightMm) / 2, yMm: (floor.bottomMm + floor.topMm) / 2 };
  const tallFirst = plinths.map((_, i) => i).sort((a, b) => plinths[b]!.heightMm - plinths[a]!.heightMm || a - b);
  // One pitch for all, so that the figure on the floor can be read.
  const across = Math.max(0, ...plinths.map((plinth) => plinth.widthMm)) + gapMm + 1;
  const deep = Math.max(0, ...plinths.map((plinth) => plinth.depthMm)) + gapMm + 1;
  const offsets = { triangle, arc, steps }[name](tallFirst.length, across, deep);
  const order =
    name === 'arc' ? arched(tallFirst.map((i) => plinths[i]!.heightMm)).map((k) => tallFirst[k]!) : tallFirst;
  const obstacles: Obstacle[] = task.keepClear.map((box) => ({ ...box, gapMm }));
  const middle = boundsOf(offsets.map(({ xMm, yMm }) => ({ xMm, yMm, widthMm: 0, heightMm: 0 })));
  const places: (Spot | null)[] = plinths.map(() => null);
  order.forEach((i, k) => {
    const { widthMm, depthMm: heightMm } = plinths[i]!;
    const xMm = around.xMm + offsets[k]!.xMm - middle!.xMm;
    const yMm = around.yMm + offsets[k]!.yMm - middle!.yMm;
    const spot = nearestFree({ xMm, yMm, widthMm, heightMm }, obstacles, floor);
    if (spot === undefined) return;
    places[i] = spot;
    obstacles.push({ ...spot, widthMm, heightMm, gapMm });
  });
  return places;
}

/** One at the back, two before it, three before these, in the gaps. */
function triangle(count: number, across: number, deep: number): Spot[] {
  const spots: Spot[] = [];
  for (let row = 0; spots.length < count; row++) {
    const inRow = Math.min(row + 1, count - spots.length);
    for (let k = 0; k < inRow; k++) spots.push({ xMm: (k - (inRow - 1) / 2) * across, yMm: -row * deep });
  }
  return spots;
}

/** Two thirds of a half circle, its ends towards who comes. */
function arc(count: number, across: number, deep: number): Spot[] {
  const pitch = Math.hypot(across, deep);
  const radius = Math.max(pitch, (pitch * (count - 1)) / ((2 * Math.PI) / 3));
  return Array.from({ length: count }, (_, k) => {
    const angle = count === 1 ? 0 : (k / (count - 1) - 0.5) * ((2 * Math.PI) / 3);
    return { xMm: radius * Math.sin(angle), yMm: radius * Math.cos(angle) };
  });
}

/** From the back on the left to the front on the right. */
function steps(count: number, across: number, deep: number): Spot[] {
  return Array.from({ length: count }, (_, k) => ({
    xMm: k * across * 0.75,
    yMm: -k * deep * (k % 2 === 0 ? 0.5 : 0.62),
  }));
}

function described(task: PlinthTask, name: PlinthName, places: readonly (Spot | null)[]): PlinthCandidate {
  const standing = places.flatMap((at, i) => (at === null ? [] : [{ ...at, ...task.plinths[i]! }]));
  const plan = standing.map((s): Box => ({ xMm: s.xMm, yMm: s.yMm, widthMm: s.widthMm, heightMm: s.depthMm }));
  const fronts = standing.map((s): Box => ({ ...s, yMm: s.heightMm / 2 }));
  const gaps = plan.flatMap((a, i) => {
    const off = plan.filter((_, j) => j !== i).map((b) => Math.max(acrossGapMm(a, b), upGapMm(a, b)));
    return off.length === 0 ? [] : [Math.min(...off)];
  });
  const ways = plan.flatMap((a, i) => plan.slice(i + 1).map((b) => Math.max(acrossGapMm(a, b), upGapMm(a, b))));
  const bounds = boundsOf(plan) ?? { xMm: 0, yMm: 0, widthMm: 0, heightMm: 0 };
  const seen = seenShares(
    standing.map((s) => ({
      leftMm: s.xMm - s.widthMm / 2,
      rightMm: s.xMm + s.widthMm / 2,
      frontMm: s.yMm - s.depthMm / 2,
      bottomMm: 0,
      topMm: s.heightMm,
    })),
  );
  const { meanMm, cv } = spreadOf(gaps);
  return {
    name,
    places,
    unplaced: places.flatMap((at, i) => (at === null ? [i] : [])),
    measures: {
      leastSeen: Math.min(1, ...seen),
      balanceX: balanceOf(fronts, bounds).x,
      meanGapMm: meanMm,
      gapCv: cv,
      outline: { widthMm: bounds.widthMm, depthMm: bounds.heightMm },
      narrowWays: ways.filter((gap) => gap > WAY_MM / 3 && gap < WAY_MM - 0.01).length,
    },
  };
}
