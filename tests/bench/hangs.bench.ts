import type { HangTask } from '@enfilade/arrangement/hang-task';
import { type HangKind, hang, hangs, waysOf } from '@enfilade/arrangement/hangs';
import { makeRoom } from '@enfilade/arrangement/make-room';
import { forceCollide, forceSimulation, forceX, forceY } from 'd3-force';
import { brokenHang, hangWallOf, salonOf } from '../arrangement/hang-walls.ts';

export const name =
  'hangs: a salon of 40 on a 6 m wall with two doors, beside d3-force collide (half-diagonals, 300 ticks)';

type Places = ReturnType<typeof hang>['places'];
type Node = { x?: number; y?: number; fx?: number; fy?: number; r: number };

/** A salon of 60 on a 9 m wall, the first so many of it dragged across as one in 120 steps: what each step's making room takes. */
function dragged(count: number) {
  const pieces = [1, 2].flatMap((seed) => salonOf(seed).pieces).slice(0, 60);
  const task: HangTask = { ...salonOf(1), pieces, surface: { ...salonOf(1).surface, rightMm: 8920 }, keepClear: [] };
  const { places } = hang('massed salon', task);
  const boxes = pieces.map((piece, i) => ({ ...piece, ...places[i]! }));
  const { surface, gapMm } = task;
  const along = Array.from({ length: count - 1 }, (_, i) => i + 1);
  const pinned = [45, 49];
  return {
    task,
    steps: Array.from({ length: 120 }, (_, i) => ({ xMm: 1500 + 50 * i, yMm: 1300 + 6 * i })).map((to) =>
      cpuMs(() => makeRoom({ surface, boxes, moved: 0, along, to, pinned, keepClear: [], gapMm })),
    ),
  };
}

/** The same frames pushed apart as circles about the wall's middle, held inside it; rules are the wall's business. */
function forced({ surface, pieces, keepClear, gapMm, centreLineMm }: HangTask): Places {
  const middle = (surface.leftMm + surface.rightMm) / 2;
  const radius = (w: number, h: number) => (Math.hypot(w, h) + gapMm) / 2;
  const still = keepClear.map((b): Node => ({ fx: b.xMm, fy: b.yMm, r: radius(b.widthMm, b.heightMm) }));
  const nodes = pieces.map((p, i): Node => {
    const away = 120 * Math.sqrt(i + 0.5);
    return {
      x: middle + away * Math.cos(2.4 * i),
      y: centreLineMm + away * Math.sin(2.4 * i),
      r: radius(p.widthMm, p.heightMm),
    };
  });
  const held = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  const simulation = forceSimulation<Node>([...still, ...nodes])
    .force('apart', forceCollide<Node>((node) => node.r).iterations(3))
    .force('x', forceX(middle).strength(0.05))
    .force('y', forceY(centreLineMm).strength(0.07))
    .stop();
  for (let tick = 0; tick < 300; tick++) {
    simulation.tick();
    for (const [i, node] of nodes.entries()) {
      const { widthMm, heightMm } = pieces[i]!;
      node.x = held(node.x!, surface.leftMm + widthMm / 2, surface.rightMm - widthMm / 2);
      node.y = held(node.y!, surface.bottomMm + heightMm / 2, surface.topMm - heightMm / 2);
    }
  }
  return nodes.map(({ x, y }) => ({ xMm: Math.round(x!), yMm: Math.round(y!) }));
}

const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1]!;

function cpuMs(of: () => unknown): number {
  const before = process.cpuUsage();
  of();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

export function* run() {
  const row = (what: string, ours: number, peer: number, unit: string, gate?: string) => {
    return { row: what, ours, peer, ratio: ours / peer, unit, ...(gate ? { gate } : {}) };
  };
  const salons = Array.from({ length: 30 }, (_, i) => salonOf(i + 1));
  const first = waysOf('salon')[0]!;
  const cold = cpuMs(() => hang(first, salons[0]!));
  const coldPeer = cpuMs(() => forced(salons[0]!));
  yield row('first candidate, cold, CPU', cold, coldPeer, 'ms', '≤ 300 ms');
  const peer = median(salons.map((task) => cpuMs(() => forced(task))));
  for (const way of waysOf('salon'))
    yield row(
      `${way}, CPU, median of 30`,
      median(salons.map((task) => cpuMs(() => hang(way, task)))),
      peer,
      'ms',
      '≤ 300 ms',
    );
  for (const count of [1, 12]) {
    for (let warm = 0; warm < 2; warm++) dragged(count);
    const { task: sixty, steps } = dragged(count);
    const p95 = steps.sort((a, b) => a - b)[Math.floor(steps.length * 0.95)]!;
    const what = count === 1 ? '' : `, ${count} of them moved as one`;
    yield row(
      `making room among 60${what}, CPU a step, warm, 95th of 120 (60 frames a second leave 16 ms)`,
      p95,
      cpuMs(() => forced(sixty)),
      'ms',
      '≤ 16 ms',
    );
  }
  const wrong = (task: HangTask, places: Places) =>
    brokenHang(task, { places, unplaced: places.flatMap((at, i) => (at === null ? [i] : [])) }).length > 0;
  const kinds: readonly HangKind[] = ['salon', 'line', 'double', 'pendants'];
  let ours = 0;
  for (let seed = 1; seed <= 1000; seed++) {
    const task = hangWallOf(seed);
    if (kinds.some((kind) => hangs(kind, task).some(({ places }) => wrong(task, places)))) ours++;
  }
  const theirs = Array.from({ length: 100 }, (_, i) => hangWallOf(i + 1)).filter((task) => wrong(task, forced(task)));
  yield row(
    'of 1,000 random walls, with a rule broken by any of 12 ways (peer: 10 × its 100)',
    ours,
    10 * theirs.length,
    'walls',
    '0',
  );
  yield row(
    'null test: the peer against itself, CPU',
    median(salons.map((task) => cpuMs(() => forced(task)))),
    peer,
    'ms',
    '1',
  );
}
