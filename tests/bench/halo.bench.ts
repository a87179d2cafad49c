import { halo } from '@enfilade/arrangement/halo';
import { described } from '@enfilade/arrangement/halo-described';
import type { HaloTask } from '@enfilade/arrangement/halo-task';
import { forceCollide, forceSimulation, forceX, forceY } from 'd3-force';
import { brokenRules, fortyOf, wallOf } from '../arrangement/walls.ts';

export const name =
  'halo: 40 and 300 pieces round one work, beside d3-force collide (half-diagonals, 300 ticks, held inside the wall)';

interface Node {
  x?: number;
  y?: number;
  fx?: number;
  fy?: number;
  r: number;
  piece: number;
}

type Places = ReturnType<typeof halo>['places'];

/** The same pieces pushed apart as circles round the focal work; the rules are the wall's business, so it may break them. */
function forced(task: HaloTask): Places {
  const { surface, focal, pieces, keepClear, gapMm } = task;
  const fixed = [focal, ...keepClear].map((box): Node => {
    return { fx: box.xMm, fy: box.yMm, r: (Math.hypot(box.widthMm, box.heightMm) + gapMm) / 2, piece: -1 };
  });
  const moving = pieces.map((size, piece): Node => {
    // a spiral start, as the peer has of itself, but round the focal work
    const away = 60 * Math.sqrt(piece + 0.5);
    return {
      x: focal.xMm + away * Math.cos(2.4 * piece),
      y: focal.yMm + away * Math.sin(2.4 * piece),
      r: (Math.hypot(size.widthMm, size.heightMm) + gapMm) / 2,
      piece,
    };
  });
  const held = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  const simulation = forceSimulation<Node>([...fixed, ...moving])
    .force('apart', forceCollide<Node>((node) => node.r).iterations(3))
    .force('x', forceX(focal.xMm).strength(0.05))
    .force('y', forceY(focal.yMm).strength(0.07))
    .stop();
  for (let tick = 0; tick < 300; tick++) {
    simulation.tick();
    for (const node of moving) {
      const { widthMm, heightMm } = pieces[node.piece]!;
      node.x = held(node.x!, surface.leftMm + widthMm / 2, surface.rightMm - widthMm / 2);
      node.y = held(node.y!, surface.bottomMm + heightMm / 2, surface.topMm - heightMm / 2);
    }
  }
  return moving.map(({ x, y }) => ({ xMm: Math.round(x!), yMm: Math.round(y!) }));
}

function threeHundredOf(seed: number): HaloTask {
  const forty = fortyOf(seed);
  return {
    ...forty,
    surface: { leftMm: 50, rightMm: 13_950, bottomMm: 50, topMm: 4750 },
    focal: { ...forty.focal, xMm: 6000, yMm: 2000 },
    keepClear: [{ xMm: 12_500, yMm: 1050, widthMm: 900, heightMm: 2100 }],
    pieces: Array.from({ length: 8 }, (_, i) => fortyOf(1000 * seed + i).pieces)
      .flat()
      .slice(0, 300),
  };
}

/** Three hundred squares of one side (mm), by seeds that differ. */
function alike(sideMm: number): HaloTask {
  const pieces = Array.from({ length: 300 }, () => ({ widthMm: sideMm, heightMm: sideMm }));
  return { ...threeHundredOf(1), looseness: 0, seed: sideMm, pieces };
}

function measured(tasks: HaloTask[], way: (task: HaloTask) => Places) {
  const each = tasks.map((task) => {
    const before = process.cpuUsage();
    const places = way(task);
    const { user, system } = process.cpuUsage(before);
    const { measures } = described(task, places);
    const unplaced = places.flatMap((place, i) => (place === null ? [i] : []));
    const broken = brokenRules(task, { places, unplaced }).length;

    return { ms: (user + system) / 1000, measures, broken };
  });
  const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1]!;
  return {
    ms: median(each.map(({ ms }) => ms)),
    cv: median(each.map(({ measures }) => measures.facingGapCv)),
    void: median(each.map(({ measures }) => measures.largestVoidMm)),
    broken: each.filter(({ broken }) => broken > 0).length,
  };
}

export function* run() {
  const sizes = [
    { of: 40, tasks: Array.from({ length: 40 }, (_, i) => fortyOf(i + 1)), gates: ['≤ 25 ms', '≤ .30'] },
    { of: 300, tasks: Array.from({ length: 5 }, (_, i) => threeHundredOf(i + 1)), gates: ['≤ 1,000 ms', '≤ .35'] },
    { of: 300, what: ' of one size', tasks: [120, 160, 200].map(alike), gates: ['≤ 1,000 ms', '≤ .35'] },
  ];
  measured(sizes[0]!.tasks.slice(0, 10), (task) => halo(task).places);
  measured(sizes[0]!.tasks.slice(0, 10), forced);
  for (const { of, what: which = '', tasks, gates } of sizes) {
    const ours = measured(tasks, (task) => halo(task).places);
    const peer = measured(tasks, forced);
    const null1 = measured(tasks, forced);
    const row = (what: string, a: number, b: number, unit: string, gate?: string) => {
      return { row: `${of}${which}: ${what}`, ours: a, peer: b, ratio: a / b, unit, ...(gate ? { gate } : {}) };
    };
    yield row('CPU, median', ours.ms, peer.ms, 'ms', gates[0]);
    yield row('facing-gap CV, median', ours.cv, peer.cv, '', gates[1]);
    yield row('largest void, median', ours.void, peer.void, 'mm');
    yield row(`walls of ${tasks.length} with a rule broken`, ours.broken, peer.broken, 'walls', '0');
    yield row('null test: the peer against itself, facing-gap CV', null1.cv, peer.cv, '', '1');
  }
  const broken = (walls: number, way: (task: HaloTask) => Places) =>
    Array.from({ length: walls }, (_, i) => wallOf(i + 1)).filter((task) => {
      const places = way(task);
      return brokenRules(task, { places, unplaced: places.flatMap((at, i) => (at === null ? [i] : [])) }).length > 0;
    }).length;
  const ours = broken(1000, (task) => halo(task).places);
  const peer = 10 * broken(100, forced);
  yield {
    row: 'of 1,000 random walls, with a rule broken (peer: 10 × its 100)',
    ours,
    peer,
    ratio: ours / peer,
    unit: 'walls',
    gate: '0',
  };
}
