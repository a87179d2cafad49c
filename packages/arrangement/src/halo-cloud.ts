import type { Extent } from './boxes.ts';
import { obstacleOf, type Thing } from './halo-ground.ts';
import { nearestFree, type Obstacle } from './nearest-free.ts';
import { straightness } from './straightness.ts';

/** How many places are thrown for each piece. */
const THROWS = 28;
const MOST_SPOTS = 6000;
/** Thrown rectangles leave so much more room between them than a grid does: at the wanted gaps, and at the least. */
const SPARE = { wanted: 1.25, least: 1.9 };

export interface CloudTask {
  readonly surface: Extent;
  readonly focal: Thing;
  readonly clear: readonly Thing[];
  /** In the order they are to be placed. */
  readonly pieces: readonly Thing[];
  readonly across: number;
  /** Where it tapers to, degrees anticlockwise from the right; NaN where it lies all round. */
  readonly leanDegrees: number;
  readonly looseness: number;
  readonly reachMm: number;
  /** 1: the wanted gaps; 0: the least ones. */
  readonly level: number;
  readonly goOn: () => boolean;
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly away: number;
}

/**
 * Pieces let loose round the focal work: near it close together, outward ever more freely, and with a lean tapering
 * off to one side. For each piece places are thrown over the ground the whole needs and the one kept that leaves the
 * gap it would like, near the focal work, in no column; then it goes to the nearest place where no rule is broken.
 * Undefined where one finds no room, or when stopped.
 */
export function cloudOf(task: CloudTask, random: () => number): Thing[] | undefined {
  const ground = groundOf(task);
  if (ground === undefined) return undefined;
  const { focal, clear, pieces } = task;
  const { spots, spacing, step } = ground;
  const top = Math.min(task.surface.topMm, task.reachMm);
  const surface = { ...task.surface, topMm: top };
  const obstacles: Obstacle[] = [focal, ...clear].map(obstacleOf);
  const placed: Thing[] = [];
  for (const [turn, piece] of pieces.entries()) {
    // The first and largest stay near the focal work; the last may go anywhere.
    const share = Math.min(1, 0.25 + 0.85 * ((turn + 1) / pieces.length));
    let most = -Infinity;
    let aim = spots[0]!;
    for (let i = 0; i < THROWS; i++) {
      const rank = Math.floor(random() * share * spots.length);
      const at = spots[rank]!;
      const [x, y] = [at.x + (random() - 0.5) * step, at.y + (random() - 0.5) * step];
      const worth = worthOf(task, piece, x, y, placed, spacing(rank / spots.length)) - 0.25 * (rank / spots.length);
      if (worth > most) [most, aim] = [worth, { x, y, away: 0 }];
    }
    const size = { widthMm: 2 * piece.halfWidth, heightMm: 2 * piece.halfHeight };
    const found = nearestFree(
      { xMm: aim.x, yMm: aim.y, ...size },
      obstacles,
      surface,
      4 * (size.widthMm + size.heightMm),
    );
    if (found === undefined) return undefined;
    const standing = { ...piece, x: found.xMm, y: found.yMm };
    placed.push(standing);
    obstacles.push(obstacleOf(standing));
    if (!task.goOn()) return undefined;
  }
  return placed;
}

/** Up to 1.2 where it has the gap it would like and stands in no column. */
function worthOf(task: CloudTask, piece: Thing, x: number, y: number, placed: readonly Thing[], spacing: number) {
  let least = 1.2;
  let straight = 0;
  const near = 2 * (piece.halfWidth + piece.halfHeight) + 4 * piece.leastMm;
  const see = (other: Thing, wanted: number) => {
    const across = Math.abs(x - other.x) - piece.halfWidth - other.halfWidth;
    const up = Math.abs(y - other.y) - piece.halfHeight - other.halfHeight;
    const gap = across < 0 && up < 0 ? Math.max(across, up) : Math.hypot(Math.max(0, across), Math.max(0, up));
    least = Math.min(least, gap / Math.max(1, wanted));
    if (other.kind === 'piece' && gap < near) straight += straightness(piece, x, y, other);
  };
  const ease = 1 + task.level * (piece.ease - 1);
  see(task.focal, task.focal.leastMm * (1 + task.level * (task.focal.ease - 1)));
  for (const other of task.clear) see(other, other.leastMm);
  const wanted = piece.leastMm * ease * spacing;
  const sight = Math.max(near, 1.2 * Math.max(1, wanted));
  for (const other of placed) {
    if (Math.abs(x - other.x) - piece.halfWidth - other.halfWidth >= sight) continue;
    if (Math.abs(y - other.y) - piece.halfHeight - other.halfHeight < sight) see(other, wanted);
  }
  return least - 0.22 * straight;
}

/** The ground the pieces need, from the focal work outward, and how freely they hang at each share of it. */
function groundOf(task: CloudTask) {
  const { surface, pieces, focal, clear, level } = task;
  const mean = (of: (piece: Thing) => number) => pieces.reduce((sum, piece) => sum + of(piece), 0) / pieces.length;
  const [halfWidth, halfHeight] = [mean((p) => p.halfWidth), mean((p) => p.halfHeight)];
  const [wide, high] = [surface.rightMm - surface.leftMm, Math.min(surface.topMm, task.reachMm) - surface.bottomMm];
  if (wide <= 2 * halfWidth || high <= 2 * halfHeight) return undefined;
  const step = Math.max((halfWidth + halfHeight) / 2.5, Math.sqrt((wide * high) / MOST_SPOTS));
  const spots: Spot[] = [];
  for (let y = surface.bottomMm + halfHeight; y <= surface.bottomMm + high - halfHeight; y += step)
    for (let x = surface.leftMm + halfWidth; x <= surface.rightMm - halfWidth; x += step) {
      const taken = [focal, ...clear].some(
        (other) =>
          Math.abs(x - other.x) < halfWidth + other.halfWidth + other.leastMm &&
          Math.abs(y - other.y) < halfHeight + other.halfHeight + other.leastMm,
      );
      if (!taken) spots.push({ x, y, away: awayOf(task, x, y) });
    }
  spots.sort((p, q) => p.away - q.away);
  const leaning = !Number.isNaN(task.leanDegrees);
  const spacing = (share: number) => (leaning ? 0.7 + 2 * share ** 1.5 : 0.8 + (0.4 + task.looseness) * share);
  const areaAt = (ease: (piece: Thing) => number) =>
    pieces.reduce((sum, piece) => {
      const gap = piece.leastMm * ease(piece);
      return sum + (2 * piece.halfWidth + gap) * (2 * piece.halfHeight + gap);
    }, 0);
  const least = areaAt(() => 1);
  const needed = Math.max(SPARE.wanted * areaAt((piece) => 1 + level * (piece.ease - 1)), SPARE.least * least);
  let filled = 0;
  let count = 0;
  while (count < spots.length && filled < needed) {
    // A wider gap takes its square of the room, but the pieces themselves grow no larger.
    filled += step ** 2 / (0.5 + 0.5 * spacing(filled / needed) ** 2);
    count++;
  }
  if (filled < 1.1 * least) return undefined;
  return { spots: spots.slice(0, count), spacing, step };
}

/** How far out a place lies: from the focal work's edges, and with a lean drawn out to one side. */
function awayOf({ focal, across, leanDegrees }: CloudTask, x: number, y: number): number {
  const stretch = Math.sqrt(across);
  const beyond = (off: number, half: number) => Math.sign(off) * Math.max(0, Math.abs(off) - 0.85 * half);
  const dx = beyond(x - focal.x, focal.halfWidth) / stretch;
  const dy = beyond(y - focal.y, focal.halfHeight) * stretch;
  if (Number.isNaN(leanDegrees)) return Math.hypot(dx, dy);
  const lean = (leanDegrees * Math.PI) / 180;
  const along = dx * Math.cos(lean) + dy * Math.sin(lean);
  const aside = dy * Math.cos(lean) - dx * Math.sin(lean);
  return Math.hypot(along > 0 ? along / 2.2 : along * 3, aside * 1.1);
}
