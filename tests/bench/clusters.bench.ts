import { deltaE2000 } from '@enfilade/colour/differences';
import { clustersOf } from '@enfilade/grouping/clusters';
import type { Column } from '@enfilade/grouping/columns';
import { echoesOf } from '@enfilade/grouping/echoes';
import { type Features, featuresOf } from '@enfilade/grouping/features';
import { euclidean } from '@enfilade/grouping/mixed-distance';
import { seeded } from '@enfilade/grouping/seeded';
import { denseGroups, sightOf } from '@enfilade/grouping/sight';
import { agnes } from 'ml-hclust';
import { agreement } from '../grouping/agreement.ts';
import { plantedPool } from '../grouping/pools.ts';

export const name =
  'clusters: planted sets among noise, 30 columns (20 numbers, a type as ten), beside ml-hclust average on 2,000';

const WIDTH = 30;

/** Sets tight in about six of ten numbers, four of ten things of no set, as seed 1 draws them. */
function planted(n: number) {
  const random = seeded(1);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const sets = Array.from({ length: Math.max(6, Math.round(n / 80)) }, () => ({
    middle: Array.from({ length: 20 }, random),
    tight: Array.from({ length: 20 }, () => random() < 0.6),
    type: Math.floor(10 * random()),
  }));
  const values = new Float32Array(n * WIDTH);
  const truth = new Int32Array(n).fill(-1);
  for (let i = 0; i < n; i++) {
    if (random() >= 0.4) truth[i] = Math.floor(random() * sets.length);
    const set = sets[truth[i]!];
    for (let c = 0; c < 20; c++) {
      const value = set ? set.middle[c]! + normal() * (set.tight[c] ? 0.05 : 0.22) : random();
      values[i * WIDTH + c] = Math.min(1, Math.max(0, value));
    }
    const type = set && random() < 0.85 ? set.type : Math.floor(10 * random());
    values[i * WIDTH + 20 + type] = Math.SQRT1_2;
  }
  return { n, values, truth };
}

/** The same as features: thirty columns of numbers, all of one look. */
function featuresFrom({ n, values }: ReturnType<typeof planted>): Features {
  const columns = Array.from({ length: WIDTH }, (_, c): Column => {
    const column = Float64Array.from({ length: n }, (_, i) => values[i * WIDTH + c]!);
    return { kind: 'number', name: `n${c}`, look: 'use', unit: '', values: column, range: 1 };
  });
  const ids = Array.from({ length: n }, (_, i) => String(i).padStart(6, '0'));
  return { ids, columns, records: ids.map((id) => ({ id })), issues: [] };
}

function cpuMs<T>(of: () => T): { ms: number; made: T } {
  const before = process.cpuUsage();
  const made = of();
  const { user, system } = process.cpuUsage(before);
  return { ms: (user + system) / 1000, made };
}

/** The most memory the process has had. */
const megabytes = () => process.resourceUsage().maxRSS / 1000;

const row = (what: string, ours: number, peer: number, unit: string, gate?: string) => {
  return { row: what, ours, peer, ratio: ours / peer, unit, ...(gate ? { gate } : {}) };
};

export function* run() {
  const dense = (pool: ReturnType<typeof planted>) =>
    denseGroups(sightOf(pool.n, euclidean(pool.values, WIDTH)), pool.n > 10_000 ? 25 : 8)[0]!;

  // The large pool first, while the process is small, so that what it grows by is this.
  const large = planted(100_000);
  const empty = megabytes();
  const { ms: largeMs, made: largeGroups } = cpuMs(() => dense(large));
  yield row('100,000 × 30, density groups, CPU', largeMs, Number.NaN, 'ms', '≤ 25,000 ms');
  yield row('100,000 × 30, agreement with what was planted', agreement(largeGroups, large.truth), Number.NaN, '');
  const features = featuresFrom(large);
  const { ms: wholeMs, made: likenesses } = cpuMs(() => clustersOf(features));
  yield row('100,000 × 30, with stability, chance and reasons, CPU', wholeMs, Number.NaN, 'ms', '≤ 25,000 ms');
  yield row('100,000 × 30, sets that stand (planted: 1,250)', likenesses.sets.length, Number.NaN, '');
  yield row('100,000 × 30, most memory of the process, and before', megabytes(), empty, 'MB', '≤ 500 MB');

  const small = planted(2000);
  dense(small);
  const { ms, made } = cpuMs(() => dense(small));
  const points = Array.from({ length: 2000 }, (_, i) => Array.from(small.values.subarray(i * WIDTH, (i + 1) * WIDTH)));
  const { ms: peerMs, made: tree } = cpuMs(() => agnes(points, { method: 'average' }));
  yield row('2,000 × 30, density groups, CPU', ms, peerMs, 'ms', '≤ 1/80');
  const parts = new Int32Array(2000);
  // Its tree has no noise; it is cut where it has as many parts as were planted, and one for each of none.
  const cut = tree.group(25 + small.truth.filter((t) => t < 0).length).children;
  for (const [part, cluster] of cut.entries()) for (const i of cluster.indices()) parts[i] = part;
  yield row(
    '2,000 × 30, agreement with what was planted',
    agreement(made, small.truth),
    agreement(parts, small.truth),
    '',
  );
  const { ms: fullMs } = cpuMs(() => clustersOf(featuresFrom(small)));
  yield row('2,000 × 30, with stability, chance and reasons, CPU', fullMs, peerMs, 'ms');
  const { ms: recordsMs } = cpuMs(() => clustersOf(featuresOf(plantedPool(3000, 25).records)));
  yield row('3,000 records, features to likenesses, CPU', recordsMs, Number.NaN, 'ms');
  const fifty = featuresOf(plantedPool(50, 3).records);
  yield row('50 records, likenesses, CPU', cpuMs(() => clustersOf(fifty)).ms, Number.NaN, 'ms');

  // The peer is every palette compared by every pair of swatches, without the mover or the bound that spares it.
  const pool = featuresOf(plantedPool(3000, 25).records);
  const asked = pool.ids.slice(0, 20);
  const one = (id: string) => echoesOf([id], pool, { difference: deltaE2000 });
  one(asked[0]!);
  const { ms: echoMs } = cpuMs(() => asked.map(one));
  const { ms: pairsMs } = cpuMs(() => asked.map((id) => everyPair(id, pool)));
  yield row(
    'echoes of one in 3,000, palettes known, CPU',
    echoMs / asked.length,
    pairsMs / asked.length,
    'ms',
    '≤ 100 ms',
  );
}

/** The sum of every difference between one palette's swatches and every other's. */
function everyPair(id: string, { ids, records }: Features): number {
  const own = records[ids.indexOf(id)]!.palette ?? [];
  let sum = 0;
  for (const { palette = [] } of records) for (const one of own) for (const its of palette) sum += deltaE2000(one, its);
  return sum;
}
