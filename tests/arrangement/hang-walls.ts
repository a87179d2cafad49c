import type { HangCandidate, HangTask } from '@enfilade/arrangement/hang-task';
import { seeded } from '@enfilade/arrangement/seeded';

/** A wall with openings and fixtures and 3–60 pieces of very unequal sizes, some decimal, some heavy, some pinned. */
export function hangWallOf(seed: number): HangTask {
  const random = seeded(seed * 6007 + 5);
  const between = (low: number, high: number) => Math.round(low + (high - low) * random());
  const [width, height] = [between(2500, 9000), between(2300, 4200)];
  const keepClear: { xMm: number; yMm: number; widthMm: number; heightMm: number }[] = [];
  for (let i = between(0, 2); i > 0; i--)
    keepClear.push({ xMm: between(450, width - 450), yMm: 1050, widthMm: 900, heightMm: 2100 });
  for (let i = between(0, 4); i > 0; i--)
    keepClear.push({ xMm: between(100, width), yMm: between(200, height), widthMm: between(80, 400), heightMm: 121 });
  const pieces = Array.from({ length: between(3, 60) }, () => {
    const widthMm = 60 + 900 * random() ** 3;
    const heightMm = 60 + between(0, 900) * random() ** 2;
    return { widthMm, heightMm, depthMm: between(10, 160), ...(random() < 0.3 ? { weightKg: between(2, 40) } : {}) };
  });
  const pinned = random() < 0.3 ? { xMm: between(600, width - 600), yMm: between(900, 2000) } : undefined;
  return {
    surface: { leftMm: 50, rightMm: width - 50, bottomMm: between(50, 700), topMm: height - 50 },
    pieces: pieces.map((piece, i) => (i === 1 && pinned ? { ...piece, pinnedAt: pinned } : piece)),
    keepClear,
    gapMm: between(0, 90),
    centreLineMm: between(1400, 1600),
    seed,
    ...(random() < 0.5 ? { reachMm: between(1900, 2400) } : {}),
    ...(random() < 0.3 ? { focal: 0 } : {}),
  };
}

/** Every broken rule in words, by brute force over edges: it shares no code with the engine. */
export function brokenHang(task: HangTask, { places, unplaced }: Pick<HangCandidate, 'places' | 'unplaced'>): string[] {
  const broken: string[] = [];
  const { surface } = task;
  const edges = (x: number, y: number, w: number, h: number) => [x - w / 2, x + w / 2, y - h / 2, y + h / 2] as const;
  const apart = (a: ReturnType<typeof edges>, b: ReturnType<typeof edges>) =>
    Math.max(b[0] - a[1], a[0] - b[1], b[2] - a[3], a[2] - b[3]);
  const at = task.pieces.map((piece, i) => {
    const place = places[i];
    return place ? edges(place.xMm, place.yMm, piece.widthMm, piece.heightMm) : null;
  });
  task.pieces.forEach((piece, i) => {
    const mine = at[i]!;
    if ((mine === null) !== unplaced.includes(i)) broken.push(`${i} is placed and unplaced at once`);
    if (piece.pinnedAt) {
      const { xMm, yMm } = places[i] ?? { xMm: Number.NaN, yMm: Number.NaN };
      if (xMm !== piece.pinnedAt.xMm || yMm !== piece.pinnedAt.yMm) broken.push(`${i} was pinned and has moved`);
      return;
    }
    if (mine === null) return;
    const { xMm, yMm } = places[i]!;
    if (!Number.isInteger(xMm) || !Number.isInteger(yMm)) broken.push(`${i} is not on whole mm`);
    const out = [
      surface.leftMm - mine[0],
      mine[1] - surface.rightMm,
      surface.bottomMm - mine[2],
      mine[3] - surface.topMm,
    ];
    if (Math.max(...out) > 1e-5) broken.push(`${i} leaves the surface`);
    if (task.reachMm !== undefined && (piece.weightKg ?? 0) >= 11.3 && mine[3] > task.reachMm + 1e-5)
      broken.push(`${i} is heavy and out of reach`);
    for (const [k, box] of task.keepClear.entries())
      if (apart(mine, edges(box.xMm, box.yMm, box.widthMm, box.heightMm)) < task.gapMm - 1e-5)
        broken.push(`${i} comes too near clear ${k}`);
    at.forEach((other, j) => {
      if (other !== null && j !== i && (j < i || task.pieces[j]!.pinnedAt) && apart(mine, other) < task.gapMm - 1e-5)
        broken.push(`${i} comes too near ${j}`);
    });
  });
  return broken;
}

/** 40 frames of 14 to 68 cm on a 6 × 3.6 m wall with a door at either end. */
export function salonOf(seed: number): HangTask {
  const random = seeded(seed);
  return {
    surface: { leftMm: 80, rightMm: 5920, bottomMm: 600, topMm: 3500 },
    pieces: Array.from({ length: 40 }, () => {
      const [size, shape] = [180 + 340 * random() ** 2, 0.75 + 0.65 * random()];
      return { widthMm: Math.round(size * shape), heightMm: Math.round(size / shape) };
    }),
    keepClear: [700, 5300].map((xMm) => ({ xMm, yMm: 1050, widthMm: 900, heightMm: 2100 })),
    gapMm: 60,
    centreLineMm: 1500,
    reachMm: 2300,
    seed,
  };
}
