import { clustersOf } from '@enfilade/grouping/clusters';
import { dealtAgain } from '@enfilade/grouping/dealt-again';
import { featuresOf } from '@enfilade/grouping/features';
import { kindsOf } from '@enfilade/grouping/kinds';
import type { Likenesses } from '@enfilade/grouping/likeness';
import { seeded, shuffledUpTo } from '@enfilade/grouping/seeded';
import { describe, expect, test } from 'vitest';
import { type Planted, plantedPool } from './pools.ts';

/** How pure the sets found are, and how many of the planted are in one. */
function judged({ sets }: Likenesses, { records, sets: planted }: Planted) {
  const plantedOf = new Map(records.map(({ id }, i) => [id, planted[i]!]));
  let [right, held] = [0, 0];
  for (const { members } of sets) {
    const count = new Map<number, number>();
    for (const id of members) count.set(plantedOf.get(id)!, (count.get(plantedOf.get(id)!) ?? 0) + 1);
    count.delete(-1);
    right += Math.max(0, ...count.values());
    held += members.length;
  }
  return { pure: right / held, found: right / planted.filter((set) => set >= 0).length };
}

/** Few where every change is checked, many in `npm run soak`. */
const POOLS = Number(process.env.LAW_POOLS ?? 6);

describe('likenesses', () => {
  test.each([
    [50, 3],
    [600, 6],
    [3000, 25],
  ])('law: in a pool of %i the %i planted sets are found, pure and with reasons', (n, count) => {
    const pool = plantedPool(n, count);
    const found = clustersOf(featuresOf(pool.records));
    const { pure, found: recall } = judged(found, pool);
    expect(pure).toBeGreaterThan(0.9);
    expect(recall).toBeGreaterThan(0.7);
    expect(found.sets.length).toBeGreaterThanOrEqual(count - Math.ceil(count / 8));
    for (const set of found.sets) {
      expect(set.reasons.length).toBeGreaterThan(0);
      expect(set.together.words).toMatch(/^\d+ of \d+ are .+: \d+ % of these, \d+ % of the rest$/);
      expect(set.stability).toBeGreaterThanOrEqual(0.6);
      expect(set.tightness).toBeGreaterThan(set.chance);
    }
    expect(found.leftOut.length + found.sets.reduce((sum, { members }) => sum + members.length, 0)).toBe(n);
  });

  test(`law: nothing is found where there is nothing to find, and it is said: ${POOLS} pools with every field dealt out again`, () => {
    for (let seed = 1; seed <= POOLS; seed++) {
      const n = seed % 2 ? 300 : 80;
      const { records } = plantedPool(n, 5, 0.6, seed);
      const { sets, words, leftOut, fallen } = clustersOf(featuresOf(dealtAgain(records, seed)));
      // What was tried is shown with the figures it fell by.
      for (const { why, stability, tightness, chance } of fallen)
        expect(why).toBe(
          stability < 0.6
            ? 'its set fell apart when others were left away'
            : tightness <= chance
              ? 'its set is no closer than chance would make it'
              : 'nothing can be said of its set that few others share',
        );
      expect(sets.map((set) => set.together.words)).toEqual([]);
      expect(words).toBe(`Nothing in these ${n} hangs together more than chance would have it.`);
      expect(leftOut).toHaveLength(n);
    }
  }, 600_000);

  test('law: being of one type is not a discovery', () => {
    const random = seeded(4);
    const records = Array.from({ length: 400 }, (_, i) => {
      const [type, h] = [i % 8, Math.exp(4 + 2 * random())];
      return {
        id: `${i}`,
        type: `type ${type}`,
        heightMm: h,
        widthMm: h * (0.5 + random()),
        earliestYear: 1700 + 200 * random(),
      };
    });
    expect(clustersOf(featuresOf(records)).sets).toEqual([]);
  });

  test('law: the order things come in and the unit of length change nothing', () => {
    const { records } = plantedPool(300, 5);
    const found = clustersOf(featuresOf(records));
    const order = shuffledUpTo(300, seeded(8));
    expect(clustersOf(featuresOf([...order].map((i) => records[i]!)))).toEqual(found);
    const longer = records.map((r) => ({ ...r, heightMm: 25.4 * r.heightMm!, widthMm: 25.4 * r.widthMm! }));
    const members = ({ sets }: Likenesses) => sets.map((set) => set.members);
    expect(members(clustersOf(featuresOf(longer)))).toEqual(members(found));
  });

  test('law: a look that is turned away from changes nothing, and one looked by alone is enough', () => {
    // Of these pools one in which colour alone sets a group apart.
    const pool = plantedPool(300, 4, 0.5, 2);
    const weights = { colour: 1, shape: 0, size: 0, use: 0, age: 0 };
    const found = clustersOf(featuresOf(pool.records), { weights });
    const otherwise = pool.records.map((r) => ({ ...r, type: 'any', heightMm: 10, earliestYear: 1 }));
    expect(clustersOf(featuresOf(otherwise), { weights })).toEqual(found);
    expect(found.sets.length).toBeGreaterThan(0);
  });

  test('law: one of whom too little is known is left out and told so', () => {
    const { records } = plantedPool(300, 5);
    const { leftOut } = clustersOf(featuresOf([...records, { id: 'u', type: 'jug' }]));
    expect(leftOut.find(({ id }) => id === 'u')).toEqual({ id: 'u', why: 'too little is known of it' });
  });

  test('law: how far it is goes up to 1, and drawn copies are no denser a set than what is like them', () => {
    const told: number[] = [];
    const outline = (id: string, uneven: number) => ({
      id,
      silhouette: { aspect: 1, fill: Math.PI / 4, outline: [uneven, 0, 0, 0, 0, 0, 0, 0] },
    });
    const copies = Array.from({ length: 8 }, (_, i) => outline(`copy ${i}`, 0));
    const alike = Array.from({ length: 8 }, (_, i) => outline(`alike ${i}`, 0.002 * i));
    const random = seeded(3);
    const others = Array.from({ length: 30 }, (_, i) => ({
      id: `other ${i}`,
      silhouette: {
        aspect: 0.3 + 3 * random(),
        fill: 0.3 + 0.7 * random(),
        outline: Array.from({ length: 8 }, () => 0.4 * random()),
      },
    }));
    const weights = { colour: 0, size: 0, use: 0, age: 0 };
    const { sets } = clustersOf(featuresOf([...copies, ...alike, ...others]), {
      weights,
      progress: (s) => told.push(s),
    });
    expect(sets.map(({ members }) => members.filter((id) => !id.startsWith('other')).length)).toEqual([16]);
    expect(sets[0]!.together.words).toContain('are round:');
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(1);
  });

  test('story: the types of a pool are told as types, with what is unlike in each', () => {
    const moulds = Array.from({ length: 8 }, (_, i) => ({
      id: `m${i}`,
      type: 'Mould',
      materials: i === 7 ? ['tin'] : ['copper'],
    }));
    const maps = Array.from({ length: 5 }, (_, i) => ({ id: `p${i}`, type: 'map', materials: ['paper'] }));
    const kinds = kindsOf(featuresOf([...moulds, ...maps, { id: 'x', type: 'dial' }]));
    expect(kinds.map(({ type, together }) => [type, together.words])).toEqual([
      ['Mould', '7 of 8 are copper: 88 % of these, 0 % of the rest'],
      ['map', '5 of 5 are paper: 100 % of these, 0 % of the rest'],
    ]);
    expect(kinds[0]!.unlike).toEqual([{ id: 'm7', words: 'tin' }]);
    expect(kindsOf(featuresOf([{ id: 'a' }]))).toEqual([]);
  });
});
