import type { HaloCandidate, HaloTask } from '@enfilade/arrangement/halo-task';
import { seeded } from '@enfilade/arrangement/seeded';

/** A wall with openings, fixtures, and 3–60 pieces of very unequal sizes, some decimal, round a focal work clear of them. */
export function wallOf(seed: number): HaloTask {
  const random = seeded(seed * 7919 + 1);
  const between = (low: number, high: number) => Math.round(low + (high - low) * random());
  const [width, height] = [between(2500, 9000), between(2300, 4200)];
  const focal = {
    xMm: between(0.3 * width, 0.7 * width),
    yMm: 1500,
    widthMm: between(300, 1400),
    heightMm: between(300, 1200),
  };
  const keepClear: { xMm: number; yMm: number; widthMm: number; heightMm: number }[] = [];
  if (random() < 0.7)
    keepClear.push({ xMm: random() < 0.5 ? 450 : width - 450, yMm: 1050, widthMm: 900, heightMm: 2100 });
  for (let i = between(0, 4); i > 0; i--)
    keepClear.push({ xMm: between(100, width), yMm: between(200, height), widthMm: between(80, 400), heightMm: 121 });
  return {
    surface: { leftMm: 50, rightMm: width - 50, bottomMm: between(50, 500), topMm: height - 50 },
    focal,
    keepClear,
    pieces: Array.from({ length: between(3, 60) }, () => ({
      widthMm: 40 + 700 * random() ** 4,
      heightMm: 40 + between(0, 700) * random() ** 3,
    })),
    gapMm: between(0, 90),
    ...(random() < 0.5 ? { focalGapMm: between(20, 200) } : {}),
    looseness: random(),
    seed,
    ...(random() < 0.3 ? { across: 0.5 + 2 * random(), roominess: 1 + 2 * random() } : {}),
    ...(random() < 0.3 ? { leanDegrees: between(0, 360) } : {}),
    ...(random() < 0.3 ? { reachMm: 2000 } : {}),
  };
}

/** Every broken rule in words, by brute force over edges and in a way of its own: it shares no code with the engine. */
export function brokenRules(
  task: HaloTask,
  { places, unplaced }: Pick<HaloCandidate, 'places' | 'unplaced'>,
): string[] {
  const broken: string[] = [];
  const edges = (x: number, y: number, w: number, h: number) => [x - w / 2, x + w / 2, y - h / 2, y + h / 2] as const;
  const apart = (a: ReturnType<typeof edges>, b: ReturnType<typeof edges>) =>
    Math.max(b[0] - a[1], a[0] - b[1], b[2] - a[3], a[2] - b[3]);
  const named = task.keepClear.map((b, i) => ({
    name: `clear ${i}`,
    gap: task.gapMm,
    at: edges(b.xMm, b.yMm, b.widthMm, b.heightMm),
  }));
  const { focal, surface } = task;
  named.push({
    name: 'focal',
    gap: task.focalGapMm ?? task.gapMm,
    at: edges(focal.xMm, focal.yMm, focal.widthMm, focal.heightMm),
  });
  if (places.length !== task.pieces.length) broken.push('a piece is missing');
  places.forEach((place, i) => {
    if ((place === null) !== unplaced.includes(i)) broken.push(`${i} is placed and unplaced at once`);
    if (place === null) return;
    if (!Number.isInteger(place.xMm) || !Number.isInteger(place.yMm)) broken.push(`${i} is not on whole mm`);
    const at = edges(place.xMm, place.yMm, task.pieces[i]!.widthMm, task.pieces[i]!.heightMm);
    const out = [surface.leftMm - at[0], at[1] - surface.rightMm, surface.bottomMm - at[2], at[3] - surface.topMm];
    if (Math.max(...out) > 1e-5) broken.push(`${i} leaves the surface`);
    for (const other of named)
      if (apart(at, other.at) < other.gap - 1e-5) broken.push(`${i} comes too near ${other.name}`);
    named.push({ name: `${i}`, gap: task.gapMm, at });
  });
  return broken;
}

/** 40 pieces of 8–26 cm round a 76 × 102 cm work on a 6 × 3.6 m wall with a door and a socket. */
export function fortyOf(seed: number, looseness = 0): HaloTask {
  const random = seeded(seed);
  const size = () => Math.round(80 + 180 * random() * random());
  return {
    surface: { leftMm: 50, rightMm: 5950, bottomMm: 50, topMm: 3550 },
    focal: { xMm: 2700, yMm: 1520, widthMm: 760, heightMm: 1020 },
    keepClear: [
      { xMm: 5250, yMm: 1050, widthMm: 900, heightMm: 2100 },
      { xMm: 460, yMm: 260, widthMm: 120, heightMm: 120 },
    ],
    pieces: Array.from({ length: 40 }, () => ({ widthMm: size(), heightMm: size() })),
    gapMm: 40,
    looseness,
    seed,
  };
}
