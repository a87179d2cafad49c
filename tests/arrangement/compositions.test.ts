import { aroundCarrier } from '@enfilade/arrangement/around-carrier';
import { type AroundCandidate, type AroundTask, boxesOn } from '@enfilade/arrangement/around-task';
import type { Box } from '@enfilade/arrangement/boxes';
import { type PlinthCandidate, type PlinthTask, plinthGroups } from '@enfilade/arrangement/plinth-group';
import { seeded } from '@enfilade/arrangement/seeded';
import { describe, expect, test } from 'vitest';

const INCH = 25.4;
/** Random walls and floors a law tries: few where every change is checked, many in `npm run soak`. */
const WALLS = Number(process.env.LAW_WALLS ?? 40);

/** Seen from the front or in plan: how far two boxes are apart, by their edges. */
function apartMm(a: Box, b: Box): number {
  const [left, right] = a.xMm < b.xMm ? [a, b] : [b, a];
  const [low, high] = a.yMm < b.yMm ? [a, b] : [b, a];
  return Math.max(
    right.xMm - right.widthMm / 2 - (left.xMm + left.widthMm / 2),
    high.yMm - high.heightMm / 2 - (low.yMm + low.heightMm / 2),
  );
}

function aroundOf(seed: number): AroundTask {
  const random = seeded(seed * 17 + 3);
  const between = (low: number, high: number) => Math.round(low + (high - low) * random());
  const many = <T>(most: number, make: () => T) => Array.from({ length: between(0, most) }, make);
  const width = between(3000, 8000);
  return {
    surface: { leftMm: 60, rightMm: width - 60, bottomMm: 300, topMm: between(2400, 3600) },
    floorMm: between(-20, 20),
    carrier: {
      xMm: between(1200, width - 1200),
      widthMm: between(500, 2000),
      depthMm: between(250, 800),
      heightMm: between(350, 1100),
    },
    on: many(14, () => ({ widthMm: between(40, 200), depthMm: between(40, 160), heightMm: between(40, 450) })),
    around: many(5, () => ({ widthMm: between(200, 700), depthMm: between(200, 700), heightMm: between(300, 1500) })),
    above: many(9, () => ({ widthMm: between(100, 800), heightMm: between(100, 800) })),
    keepClear: many(2, () => ({ xMm: between(0, width), yMm: 1050, widthMm: 900, heightMm: 2100 })),
    gapMm: between(20, 90),
    centreLineMm: 1500,
    overMm: between(75, 200),
  };
}

function brokenAround(task: AroundTask, found: AroundCandidate): string[] {
  const broken: string[] = [];
  const { carrier, floorMm, surface } = task;
  const body = { ...carrier, yMm: floorMm + carrier.heightMm / 2, name: 'carrier' };
  const load = boxesOn(task, found.on).map((box) => ({ ...box, name: 'load' }));
  const floor = found.around.flatMap((at, i) => (at ? [{ ...task.around[i]!, ...at, name: `floor ${i}` }] : []));
  const hung = found.above.flatMap((at, i) => (at ? [{ ...task.above[i]!, ...at, name: `hung ${i}` }] : []));
  const clear = task.keepClear.map((box) => ({ ...box, name: 'clear' }));
  const pair = (a: Box & { name: string }, b: Box & { name: string }, gap: number) => {
    if (apartMm(a, b) < gap - 1e-5) broken.push(`${a.name} too near ${b.name}`);
  };
  hung.forEach((one, i) => {
    for (const other of [body, ...load]) pair(one, other, task.overMm ?? 100);
    for (const other of [...clear, ...floor, ...hung.slice(i + 1)]) pair(one, other, task.gapMm);
    if (one.yMm + one.heightMm / 2 > surface.topMm || one.xMm - one.widthMm / 2 < surface.leftMm)
      broken.push(`${one.name} off the wall`);
    if (one.xMm + one.widthMm / 2 > surface.rightMm || one.yMm - one.heightMm / 2 < surface.bottomMm)
      broken.push(`${one.name} off the wall`);
  });
  floor.forEach((one, i) => {
    for (const other of [body, ...clear, ...floor.slice(i + 1)]) pair(one, other, task.gapMm);
    if (Math.abs(one.yMm - one.heightMm / 2 - floorMm) > 1e-6) broken.push(`${one.name} floats`);
    if (one.xMm - one.widthMm / 2 < surface.leftMm || one.xMm + one.widthMm / 2 > surface.rightMm)
      broken.push(`${one.name} off the wall`);
  });
  for (const one of load)
    if (one.xMm - one.widthMm / 2 < carrier.xMm - carrier.widthMm / 2) broken.push('load over the side');
  return broken;
}

/** A sideboard with nine things on it, two beside it and four over it, on a wall with a door. */
function sideboard(): AroundTask {
  const random = seeded(4);
  return {
    surface: { leftMm: 80, rightMm: 5920, bottomMm: 300, topMm: 3400 },
    floorMm: 0,
    carrier: { xMm: 2800, widthMm: 1600, depthMm: 550, heightMm: 850 },
    on: Array.from({ length: 9 }, () => ({ widthMm: 100, depthMm: 100, heightMm: Math.round(60 + 300 * random()) })),
    around: [
      { widthMm: 400, depthMm: 500, heightMm: 900 },
      { widthMm: 400, depthMm: 500, heightMm: 880 },
    ],
    above: [400, 410, 300, 310].map((widthMm) => ({ widthMm, heightMm: 350 })),
    keepClear: [{ xMm: 5200, yMm: 1050, widthMm: 900, heightMm: 2100 }],
    gapMm: 60,
    centreLineMm: 1500,
  };
}

describe('on, around and above a carrier', () => {
  test(`law: on ${WALLS} random walls nothing covers anything, floats, or hangs too near the load`, () => {
    let [missing, all] = [0, 0];
    for (let seed = 1; seed <= WALLS; seed++) {
      const task = aroundOf(seed);
      for (const found of aroundCarrier(task)) {
        expect(brokenAround(task, found), `${found.name} on wall ${seed}`).toEqual([]);
        missing += found.unplaced;
        all += task.on.length + task.around.length + task.above.length;
      }
    }
    expect(missing / all).toBeLessThan(0.4);
  }, 600_000);

  test('law: the checker itself sees each kind of breach', () => {
    const task = sideboard();
    const found = aroundCarrier(task)[0]!;
    const hung = (xMm: number, yMm: number) =>
      brokenAround(task, { ...found, above: [{ xMm, yMm }, ...found.above.slice(1)] }).join();
    expect(hung(2800, 900)).toContain('hung 0 too near carrier');
    expect(hung(5200, 1500)).toContain('hung 0 too near clear');
    expect(hung(0, 3000)).toContain('hung 0 off the wall');
    expect(hung(found.above[1]!.xMm, found.above[1]!.yMm)).toContain('hung 0 too near hung 1');
    const floor = (xMm: number, yMm: number) => brokenAround(task, { ...found, around: [{ xMm, yMm }, null] }).join();
    expect(floor(2800, 450)).toContain('floor 0 too near carrier');
    expect(floor(500, 700)).toContain('floats');
  });

  test('law: symmetrical is balanced, one side leans, the line is one line', () => {
    const [even, side, line] = aroundCarrier(sideboard());
    expect([even, side, line].map((one) => one!.unplaced)).toEqual([0, 0, 0]);
    expect(Math.abs(even!.measures.balanceX)).toBeLessThan(0.05);
    expect(side!.measures.balanceX).toBeGreaterThan(0.2);
    expect(new Set(line!.above.map((at) => at!.yMm)).size).toBe(1);
    expect(new Set(even!.above.map((at) => at!.yMm)).size).toBeGreaterThan(1);
  });

  test('reference: practice section 3: what hangs over furniture leaves 3 to 8 in, the topmost centre at most 84 in up', () => {
    for (const { measures, name, above } of aroundCarrier(sideboard())) {
      expect(measures.overLoadMm, name).toBeGreaterThanOrEqual(3 * INCH);
      expect(measures.overLoadMm, name).toBeLessThanOrEqual(8 * INCH);
      for (const at of above) expect(at!.yMm).toBeLessThanOrEqual(84 * INCH);
    }
  });

  test('law: a bad carrier is the programmer’s error and named', () => {
    expect(() => aroundCarrier({ ...sideboard(), carrier: { ...sideboard().carrier, depthMm: 0 } })).toThrow(
      /carrier.depthMm is 0/,
    );
    const bare = aroundCarrier({ ...sideboard(), on: [], around: [], above: [] });
    expect(bare.map(({ measures }) => measures.overLoadMm)).toEqual([null, null, null]);
  });
});

function plinthsOf(seed: number): PlinthTask {
  const random = seeded(seed * 13 + 1);
  const between = (low: number, high: number) => Math.round(low + (high - low) * random());
  return {
    floor: { leftMm: 200, rightMm: between(2500, 9000), bottomMm: 200, topMm: between(2500, 7000) },
    plinths: Array.from({ length: between(1, 12) }, () => {
      return { widthMm: between(200, 900), depthMm: between(200, 900), heightMm: between(300, 1500) };
    }),
    keepClear: Array.from({ length: between(0, 3) }, () => {
      return {
        xMm: between(0, 6000),
        yMm: between(0, 5000),
        widthMm: between(300, 1500),
        heightMm: between(300, 1500),
      };
    }),
    gapMm: between(50, 950),
  };
}

function brokenPlinths(task: PlinthTask, { places }: Pick<PlinthCandidate, 'places'>): string[] {
  const boxes = places.flatMap((at, i) =>
    at ? [{ ...at, widthMm: task.plinths[i]!.widthMm, heightMm: task.plinths[i]!.depthMm, i }] : [],
  );
  return boxes.flatMap((box, k) => {
    const near = [...task.keepClear, ...boxes.slice(k + 1)].filter((other) => apartMm(box, other) < task.gapMm - 1e-5);
    const { leftMm, rightMm, bottomMm, topMm } = task.floor;
    const off =
      box.xMm - box.widthMm / 2 < leftMm ||
      box.xMm + box.widthMm / 2 > rightMm ||
      box.yMm - box.heightMm / 2 < bottomMm ||
      box.yMm + box.heightMm / 2 > topMm;
    return [...near.map(() => `${box.i} too near`), ...(off ? [`${box.i} off the floor`] : [])];
  });
}

const three = (gapMm: number): PlinthTask => ({
  floor: { leftMm: 0, rightMm: 7000, bottomMm: 0, topMm: 5000 },
  plinths: [1000, 1200, 800].map((heightMm) => ({ widthMm: 400, depthMm: 400, heightMm })),
  keepClear: [],
  gapMm,
});

describe('a plinth group in plan', () => {
  test(`law: on ${WALLS} random floors no two are too near, none off the floor or in the way`, () => {
    for (let seed = 1; seed <= WALLS; seed++) {
      const task = plinthsOf(seed);
      for (const found of plinthGroups(task))
        expect(brokenPlinths(task, found), `${found.name} on floor ${seed}`).toEqual([]);
    }
    expect(brokenPlinths(three(100), { places: [{ xMm: 0, yMm: 0 }, { xMm: 90, yMm: 90 }, null] })).toEqual([
      '0 too near',
      '0 off the floor',
      '1 off the floor',
    ]);
  }, 600_000);

  test('story: three make a triangle with the tallest at the back, an arc, and steps; the figures differ', () => {
    const [triangle, arc, steps] = plinthGroups(three(250));
    expect(triangle!.places[1]!.yMm).toBeGreaterThan(Math.max(triangle!.places[0]!.yMm, triangle!.places[2]!.yMm));
    expect(triangle!.places[1]!.xMm).toBe(3500);
    expect(arc!.places[1]!.yMm).toBeGreaterThan(arc!.places[0]!.yMm);
    const byHeight = [1, 0, 2].map((i) => steps!.places[i]!.xMm);
    expect([...byHeight].sort((a, b) => a - b)).toEqual(byHeight);
    expect(arc!.measures.outline.widthMm).toBeGreaterThan(triangle!.measures.outline.widthMm + 300);
  });

  test('reference: ADA 403.5.1: between plinths 36 in are a way, less than that and more than a foot tempt and pinch', () => {
    const ways = (gapMm: number) =>
      plinthGroups({ ...three(gapMm), plinths: three(1).plinths.slice(0, 2) })[0]!.measures;
    expect(ways(36 * INCH).narrowWays).toBe(0);
    expect(ways(30 * INCH).narrowWays).toBe(1);
    expect(ways(200).narrowWays).toBe(0);
  });

  test('law: a bad task is the programmer’s error and named', () => {
    expect(() => plinthGroups({ ...three(1), gapMm: -1 })).toThrow(/gapMm is -1/);
    expect(() => plinthGroups({ ...three(1), plinths: [{ widthMm: 0, depthMm: 1, heightMm: 1 }] })).toThrow(
      /widthMm is 0/,
    );
    expect(plinthGroups({ ...three(1), plinths: [] }).map(({ places }) => places)).toEqual([[], [], []]);
  });
});
