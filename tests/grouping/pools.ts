import type { GroupingRecord } from '@enfilade/grouping/records';
import { seeded } from '@enfilade/grouping/seeded';

const TYPES = ['mould', 'jug', 'level', 'slide', 'map', 'trap', 'dial', 'block'];
const MATERIALS = ['copper', 'pear wood', 'brass', 'glass', 'paper', 'willow', 'enamel', 'iron'];
const TAGS = ['fluted', 'dated', 'painted', 'carved', 'printed', 'mended', 'signed', 'plain', 'pierced', 'gilt'];
const PLACES = ['lower weir', 'osk', 'tollgate', 'held', 'overwick'];

export interface Planted {
  readonly records: GroupingRecord[];
  /** The planted set of each record, −1 for one that is of none. */
  readonly sets: Int32Array;
}

/** A pool of invented things in which `sets` sets are planted, each alike in material, two tags, size, age and colour. */
export function plantedPool(n: number, sets: number, share = 0.5, seed = 1): Planted {
  const random = seeded(seed);
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const around = (middle: number, spread: number) => middle + spread * (random() + random() + random() - 1.5);
  const plans = Array.from({ length: sets }, () => {
    return {
      type: one(TYPES),
      material: one(MATERIALS),
      tags: [one(TAGS), one(TAGS)],
      from: one(PLACES),
      size: Math.exp(4 + 2.5 * random()),
      aspect: 0.4 + 1.6 * random(),
      year: 1700 + 220 * random(),
      colour: [20 + 60 * random(), 80 * random() - 40, 80 * random() - 40] as const,
    };
  });
  const found = Int32Array.from({ length: n }, () => (random() < share ? Math.floor(random() * sets) : -1));
  const records = Array.from(found, (set, i): GroupingRecord => {
    const plan = set < 0 ? undefined : plans[set]!;
    const heightMm = plan ? plan.size * Math.exp(around(0, 0.15)) : Math.exp(4 + 2.5 * random());
    const aspect = plan ? plan.aspect * Math.exp(around(0, 0.1)) : 0.4 + 1.6 * random();
    const year = Math.round(plan ? around(plan.year, 12) : 1700 + 220 * random());
    const [L, a, b] = plan?.colour ?? [20 + 60 * random(), 80 * random() - 40, 80 * random() - 40];
    return {
      id: `t${String(i).padStart(6, '0')}`,
      type: plan && random() < 0.9 ? plan.type : one(TYPES),
      materials: [plan && random() < 0.95 ? plan.material : one(MATERIALS)],
      tags: plan && random() < 0.9 ? plan.tags : [one(TAGS), one(TAGS)],
      from: plan && random() < 0.8 ? plan.from : one(PLACES),
      earliestYear: year - 5,
      latestYear: year + 5,
      heightMm,
      widthMm: heightMm * aspect,
      palette: [
        { L: around(L, 8), a: around(a, 8), b: around(b, 8), share: 0.7 },
        { L: around(L, 20), a: around(a, 20), b: around(b, 20), share: 0.3 },
      ],
    };
  });
  return { records, sets: found };
}
