import type { LabD65 } from '@enfilade/colour/lab';
import { differenceTable, packedWorksOf, tableInOneLane } from '@enfilade/colour/rank-table';
import { labD65FromSrgb } from '@enfilade/colour/spaces';
import { differenceCiede2000 } from 'culori';
import { randomOf } from '../colour/samples.ts';
import { paletteRows } from './palette-rows.ts';

export const name =
  'colour: 2,000 paints on 3,000 works of 6 swatches beside culori (lab65); palettes of ten pictures beside quantize (MMCQ)';

const PAINTS = 2_000;
const WORKS = 3_000;
const SWATCHES = 6;
// The peer takes a quarter of the paints, four times as long for all of them.
const PEER_PART = 4;
const ROUNDS = 3;

const culori = differenceCiede2000();
const lab65 = ({ L, a, b }: LabD65) => ({ mode: 'lab65' as const, l: L, a, b });

interface Made {
  readonly mean: ArrayLike<number>;
  readonly least: ArrayLike<number>;
}

function cpuOf(job: () => Made): { ms: number; made: Made } {
  const before = process.cpuUsage();
  const made = job();
  const { user, system } = process.cpuUsage(before);
  return { ms: (user + system) / 1000, made };
}

function differenceRows() {
  const random = randomOf(4242);
  const paint = (): LabD65 => labD65FromSrgb(random() * 255, random() * 255, random() * 255);
  const paints = Array.from({ length: PAINTS }, paint);
  const palettes = Array.from({ length: WORKS }, () => {
    const ground = paint();
    const raw = Array.from({ length: SWATCHES }, (_, j) => ({
      share: random() + 0.05,
      lab:
        j === 0
          ? ground
          : {
              L: Math.min(100, Math.max(0, ground.L + random() * 50 - 25)),
              a: ground.a + random() * 50 - 25,
              b: ground.b + random() * 50 - 25,
            },
    }));
    const total = raw.reduce((sum, { share }) => sum + share, 0);
    return raw.map(({ lab, share }) => ({ lab, share: share / total }));
  });
  const theirs = palettes.map((palette) => palette.map(({ lab, share }) => ({ colour: lab65(lab), share })));
  const peerPaints = paints.slice(0, PAINTS / PEER_PART).map(lab65);
  const peer = (): Made => {
    const mean = new Float64Array(peerPaints.length * WORKS);
    const least = new Float64Array(peerPaints.length * WORKS);
    peerPaints.forEach((one, p) => {
      for (let work = 0; work < WORKS; work++) {
        let sum = 0;
        let lowest = Number.POSITIVE_INFINITY;
        for (const { colour, share } of theirs[work]!) {
          const d = culori(one, colour);
          sum += d * share;
          if (d < lowest) lowest = d;
        }
        mean[p * WORKS + work] = sum;
        least[p * WORKS + work] = lowest;
      }
    });
    return { mean, least };
  };
  const ways = {
    peer,
    again: peer,
    vectors: () => differenceTable(paints, packedWorksOf(palettes), { least: true }),
    lane: () => tableInOneLane(paints, packedWorksOf(palettes), { least: true }),
  };
  const times: Record<keyof typeof ways, number[]> = { peer: [], again: [], vectors: [], lane: [] };
  const made = {} as Record<keyof typeof ways, Made>;
  for (let round = 0; round <= ROUNDS; round++) {
    for (const way of Object.keys(ways) as (keyof typeof ways)[]) {
      const once = cpuOf(ways[way]);
      // The first round warms up.
      if (round > 0) times[way].push(once.ms * (way === 'peer' || way === 'again' ? PEER_PART : 1));
      made[way] = once.made;
    }
  }
  const median = (values: number[]) => values.sort((p, q) => p - q)[values.length >> 1]!;
  const peerMs = median(times.peer);
  const errorOf = (ours: Made): number => {
    let worst = 0;
    for (let i = 0; i < made.peer.mean.length; i++) {
      worst = Math.max(
        worst,
        Math.abs(ours.mean[i]! - made.peer.mean[i]!),
        Math.abs(ours.least[i]! - made.peer.least[i]!),
      );
    }
    return worst;
  };
  const row = (what: string, ms: number, gate?: string) => ({
    row: what,
    ours: ms,
    peer: peerMs,
    ratio: peerMs / ms,
    unit: 'ms CPU',
    ...(gate ? { gate } : {}),
  });
  return [
    row('mean and least, one core, vectors', median(times.vectors), '≥ 20'),
    row('the same without vectors', median(times.lane), '≥ 2.5'),
    row('null test: the peer against itself', median(times.again), '1'),
    {
      row: 'greatest error, vectors',
      ours: errorOf(made.vectors),
      peer: 0,
      ratio: Number.NaN,
      unit: 'ΔE00',
      gate: '≤ 1e-4',
    },
    {
      row: 'greatest error, without',
      ours: errorOf(made.lane),
      peer: 0,
      ratio: Number.NaN,
      unit: 'ΔE00',
      gate: '≤ 1e-4',
    },
  ];
}

export async function run() {
  return [...differenceRows(), ...(await paletteRows())];
}
