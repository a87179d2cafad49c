import type { Distance } from './mixed-distance.ts';
import { seeded, shuffledUpTo } from './seeded.ts';

/** The k nearest of each of n things, nearest first: row i of `near` holds rows, of `far` their distances. */
export interface Neighbours {
  readonly n: number;
  readonly k: number;
  readonly near: Int32Array;
  readonly far: Float32Array;
}

const LEAF = 24;
const TREES = 5;
// Of a large pool fewer are tried: sets of 25 and more come out the same by three neighbours of four as by nearly all.
const SAMPLE = { most: 10, ofLarge: 7 };
const LARGE = 50_000;
const ROUNDS = 7;
const ENOUGH = { most: 0.03, ofLarge: 0.12 };

function nothingYet(n: number, k: number): Neighbours {
  if (!(Number.isInteger(k) && k > 0)) throw new RangeError(`neighbours: k is ${k}, needs a whole number from 1`);
  return { n, k, near: new Int32Array(n * k).fill(-1), far: new Float32Array(n * k).fill(Number.POSITIVE_INFINITY) };
}

/** Puts j into i's row where it belongs, and says whether it was new and near enough. */
function insert({ k, near, far }: Neighbours, i: number, j: number, apart: number, fresh?: Uint8Array): boolean {
  const from = i * k;
  let at = from + k - 1;
  if (!(apart < far[at]!)) return false;
  if (fresh) for (let q = from; q <= at; q++) if (near[q] === j) return false;
  for (; at > from && far[at - 1]! > apart; at--) {
    far[at] = far[at - 1]!;
    near[at] = near[at - 1]!;
    if (fresh) fresh[at] = fresh[at - 1]!;
  }
  far[at] = apart;
  near[at] = j;
  if (fresh) fresh[at] = 1;
  return true;
}

const TILE = 64;

/** The k nearest of each by trying every pair: n(n − 1)/2 distances. RangeError when k is not a whole number from 1. */
export function exactNeighbours(n: number, k: number, distance: Distance): Neighbours {
  const found = nothingYet(n, k);
  // Pairs in tiles, for those who keep what they are asked in a square: it is then written where it was just before.
  for (let high = 0; high < n; high += TILE)
    for (let low = 0; low <= high; low += TILE)
      for (let i = high; i < Math.min(n, high + TILE); i++)
        for (let j = low; j < Math.min(i, low + TILE); j++) {
          const apart = Math.fround(distance(i, j));
          insert(found, i, j, apart);
          insert(found, j, i, apart);
        }
  return found;
}

/**
 * Nearly the k nearest of each (about 95 of 100 in 30 columns, of a large pool 75): trees that part things by which of two of them is nearer,
 * then neighbours of neighbours tried until few are new. Trees after S. Dasgupta, Y. Freund, "Random projection trees and
 * low dimensional manifolds", STOC 2008, with pairs for projections, so that any distance serves; descent after W. Dong,
 * M. Charikar, K. Li, "Efficient k-nearest neighbor graph construction for generic similarity measures", WWW 2011.
 */
export function nearNeighbours(n: number, k: number, distance: Distance, seed = 1): Neighbours {
  const found = nothingYet(n, k);
  const random = seeded(seed);
  const fresh = new Uint8Array(n * k);
  // The farthest each has, side by side: most of what is tried is farther than both of a pair have, and is done with here.
  const worst = new Float32Array(n).fill(Number.POSITIVE_INFINITY);
  const last = k - 1;
  const tryPair = (i: number, j: number): number => {
    const within = Math.max(worst[i]!, worst[j]!);
    const apart = Math.fround(distance(i, j, within));
    if (!(apart < within)) return 0;
    const changed = Number(insert(found, i, j, apart, fresh)) + Number(insert(found, j, i, apart, fresh));
    worst[i] = found.far[i * k + last]!;
    worst[j] = found.far[j * k + last]!;
    return changed;
  };
  for (let tree = 0; tree < TREES; tree++) plantTree(n, distance, random, tryPair);
  descend(found, fresh, random, tryPair);
  return found;
}

type TryPair = (i: number, j: number) => number;

function plantTree(n: number, distance: Distance, random: () => number, tryPair: TryPair): void {
  // The rows of a large pool are gone through as they lie, for else each is waited for; by which two it parts is chance enough.
  const order = n > LARGE ? Int32Array.from({ length: n }, (_, i) => i) : shuffledUpTo(n, random);
  const lean = new Float32Array(n);
  const open: [number, number][] = [[0, n]];
  for (let part = open.pop(); part; part = open.pop()) {
    const [low, high] = part;
    if (high - low <= LEAF) {
      for (let a = low; a < high; a++) for (let b = low; b < a; b++) tryPair(order[a]!, order[b]!);
      continue;
    }
    const one = order[low + Math.floor(random() * (high - low))]!;
    const other = order[low + Math.floor(random() * (high - low))]!;
    for (let a = low; a < high; a++) lean[a] = distance(order[a]!, one) - distance(order[a]!, other);
    const middle = (low + high) >> 1;
    partAtMiddle(order, lean, low, high, middle);
    open.push([low, middle], [middle, high]);
  }
}

/** Quickselect: what leans less than the median goes before it (C. A. R. Hoare, 1961). */
function partAtMiddle(order: Int32Array, lean: Float32Array, low: number, high: number, middle: number): void {
  let left = low;
  let right = high - 1;
  while (left < right) {
    const pivot = lean[(left + right) >> 1]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (lean[i]! < pivot) i++;
      while (lean[j]! > pivot) j--;
      if (i > j) break;
      const [l, o] = [lean[i]!, order[i]!];
      lean[i] = lean[j]!;
      order[i++] = order[j]!;
      lean[j] = l;
      order[j--] = o;
    }
    if (middle <= j) right = j;
    else if (middle >= i) left = i;
    else return;
  }
}

function descend({ n, k, near }: Neighbours, fresh: Uint8Array, random: () => number, tryPair: TryPair): void {
  const sample = n > LARGE ? SAMPLE.ofLarge : SAMPLE.most;
  const enough = n > LARGE ? ENOUGH.ofLarge : ENOUGH.most;
  const news = new Int32Array(n * sample);
  const olds = new Int32Array(n * sample);
  const newCount = new Int32Array(n);
  const oldCount = new Int32Array(n);
  // Reservoir sampling: each list keeps so many of what it is offered, each as likely.
  const offer = (list: Int32Array, count: Int32Array, i: number, j: number): void => {
    const seen = count[i]!;
    count[i] = seen + 1;
    const at = seen < sample ? seen : Math.floor(random() * (seen + 1));
    if (at < sample) list[i * sample + at] = j;
  };
  for (let round = 0; round < ROUNDS; round++) {
    newCount.fill(0);
    oldCount.fill(0);
    for (let i = 0; i < n; i++)
      for (let q = i * k; q < (i + 1) * k; q++) {
        const j = near[q]!;
        if (j < 0) continue;
        const [list, count] = fresh[q] ? [news, newCount] : [olds, oldCount];
        offer(list, count, i, j);
        offer(list, count, j, i);
        fresh[q] = 0;
      }
    let changed = 0;
    for (let i = 0; i < n; i++) {
      const newEnd = i * sample + Math.min(newCount[i]!, sample);
      const oldEnd = i * sample + Math.min(oldCount[i]!, sample);
      for (let p = i * sample; p < newEnd; p++) {
        const a = news[p]!;
        for (let q = p + 1; q < newEnd; q++) if (news[q] !== a) changed += tryPair(a, news[q]!);
        for (let q = i * sample; q < oldEnd; q++) if (olds[q] !== a) changed += tryPair(a, olds[q]!);
      }
    }
    if (changed < enough * n * k) return;
  }
}
