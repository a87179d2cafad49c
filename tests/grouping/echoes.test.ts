import { deltaE2000 } from '@enfilade/colour/differences';
import { clustersOf } from '@enfilade/grouping/clusters';
import { echoesOf } from '@enfilade/grouping/echoes';
import { featuresOf } from '@enfilade/grouping/features';
import { goesWith } from '@enfilade/grouping/goes-with';
import { moversDistance } from '@enfilade/grouping/movers-distance';
import type { GroupingRecord } from '@enfilade/grouping/records';
import { seeded, shuffledUpTo } from '@enfilade/grouping/seeded';
import { describe, expect, test } from 'vitest';
import { plantedPool } from './pools.ts';

const green = [
  { L: 45, a: -30, b: 12, share: 0.6 },
  { L: 75, a: -10, b: 30, share: 0.4 },
];
const nearGreen = [
  { L: 47, a: -31, b: 14, share: 0.5 },
  { L: 74, a: -9, b: 27, share: 0.5 },
];
const red = [{ L: 45, a: 60, b: 35, share: 1 }];
const hanging: GroupingRecord = { id: 'hanging', type: 'hanging', from: 'artist', earliestYear: 2024, palette: green };
const pool = (...others: GroupingRecord[]) => featuresOf([hanging, ...others]);

describe('echoes', () => {
  test('story: an oil view of 1840 in the same greens answers the hanging, and what is shared can be shown', () => {
    const features = pool(
      { id: 'view', type: 'oil view', from: 'osk', earliestYear: 1838, latestYear: 1842, palette: nearGreen },
      { id: 'mill', type: 'oil view', from: 'osk', earliestYear: 1838, latestYear: 1842, palette: red },
      { id: 'other', type: 'hanging', from: 'artist', earliestYear: 2023, palette: green },
    );
    const [echo, ...more] = echoesOf(['hanging'], features, { difference: deltaE2000 });
    expect(more).toEqual([]);
    expect(echo).toMatchObject({ id: 'view', apart: ['182 years apart', 'oil view, not hanging', 'from osk'] });
    expect(echo!.colour!.shared[0]).toMatchObject({ own: green[0], its: nearGreen[0], share: 0.5 });
    expect(echo!.words).toContain('% of its colours answer within 10 ΔE');
  });

  test('law: what differs only by not being known is not apart', () => {
    expect(echoesOf(['hanging'], pool({ id: 'x', palette: green }), { difference: deltaE2000 })).toEqual([]);
  });

  test('law: shape alone is enough, and is looked past when colour is asked for', () => {
    const silhouette = { aspect: 0.5, fill: 0.8, outline: [0.1, 0.2, 0.05, 0, 0, 0, 0, 0] };
    const asked = { ...hanging, silhouette };
    const features = featuresOf([asked, { id: 'eel trap', type: 'trap', palette: red, silhouette }]);
    const options = { difference: deltaE2000 };
    expect(echoesOf(['hanging'], features, options)[0]).toMatchObject({ id: 'eel trap', outline: { distance: 0 } });
    expect(echoesOf(['hanging'], features, { ...options, by: 'colour' })).toEqual([]);
  });

  test('law: in any order the same things answer, and by colour they are all those that trying every one finds', () => {
    const { records } = plantedPool(400, 5, 0.5, 3);
    const order = shuffledUpTo(400, seeded(2));
    const asked = ['t000000'];
    const found = echoesOf(asked, featuresOf(records), { difference: deltaE2000, count: 10 });
    expect(found.length).toBeGreaterThan(3);
    const shuffled = featuresOf([...order].map((i) => records[i]!));
    expect(echoesOf(asked, shuffled, { difference: deltaE2000, count: 10 })).toEqual(found);
    for (const echo of found) expect(echo.apart.length).toBeGreaterThan(0);
    const [own] = records;
    const near = records.filter(({ id, palette }) => {
      const costs = own!.palette!.flatMap((one) => palette!.map((other) => deltaE2000(one, other)));
      const shares = (list: readonly { share: number }[]) => list.map(({ share }) => share);
      return id !== own!.id && moversDistance(costs, shares(own!.palette!), shares(palette!)).distance <= 14;
    });
    const unlike = near.filter((r) => r.type !== own!.type || Math.abs(r.earliestYear! - own!.earliestYear!) >= 60);
    const all = echoesOf(asked, featuresOf(records), { difference: deltaE2000, by: 'colour', count: 400 });
    const whole = all.filter(({ colour }) => colour!.whole);
    expect(whole.map(({ id }) => id).sort()).toEqual(unlike.map(({ id }) => id).sort());
    // Of the rest, strong colours answer, though the palettes do not.
    for (const { colour } of all)
      if (!colour!.whole)
        for (const { own: one, its } of colour!.shared) {
          expect(Math.min(Math.hypot(one.a, one.b), Math.hypot(its.a, its.b))).toBeGreaterThanOrEqual(25);
          expect(deltaE2000(one, its)).toBeLessThanOrEqual(8);
        }
  });

  test('story: an orange disc in a blue panel answers copper, whatever else the panel is made of', () => {
    const copper = { id: 'mould', type: 'mould', earliestYear: 1840, palette: [{ L: 55, a: 28, b: 34, share: 1 }] };
    const disc = [
      { L: 57, a: 29, b: 37, share: 0.3 },
      { L: 30, a: 5, b: -45, share: 0.7 },
    ];
    const features = featuresOf([copper, { id: 'panel', type: 'tile panel', earliestYear: 2024, palette: disc }]);
    const colourWords = () => 'orange';
    const [echo] = echoesOf(['mould'], features, { difference: deltaE2000, colourWords });
    expect(echo).toMatchObject({ id: 'panel', colour: { whole: false, shared: [{ share: 0.3 }] } });
    expect(echo!.words).toMatch(/yet 30 % of both is orange, \d ΔE apart$/);
    const grey = disc.map((swatch) => ({ ...swatch, a: 0, b: 0 }));
    const dull = [
      { ...copper, palette: [{ L: 57, a: 0, b: 0, share: 1 }] },
      { id: 'p', type: 'panel', palette: grey },
    ];
    expect(echoesOf(['mould'], featuresOf(dull), { difference: deltaE2000 })).toEqual([]);
  });

  test('law: as near in colour, a strong green is the better echo, and a grey the worse', () => {
    const of = (chroma: number) => ({ L: 50, a: -chroma, b: 0, share: 1 });
    const score = (chroma: number) => {
      const features = featuresOf([
        { id: 'own', type: 'hanging', palette: [of(chroma)] },
        { id: 'its', type: 'map', palette: [of(chroma)] },
      ]);
      return echoesOf(['own'], features, { difference: deltaE2000 })[0]!.score;
    };
    expect(score(2)).toBeLessThan(score(15));
    expect(score(15)).toBeLessThan(score(30));
  });

  test('law: two rectangles do not echo each other, nor two of a kind for having two lenders', () => {
    const silhouette = { aspect: 1, fill: 1, outline: [0, 0, 0, 0.14, 0, 0, 0, 0.04] };
    const square = { id: 'slide', type: 'slide', from: 'osk', palette: green, silhouette };
    const options = { difference: deltaE2000, by: 'shape' } as const;
    const tile = { id: 'tile', type: 'tile', silhouette };
    expect(echoesOf(['slide'], featuresOf([square, tile]), options)).toEqual([]);
    const other = { ...square, id: 'other', from: 'weir' };
    expect(echoesOf(['slide'], featuresOf([square, other]), { difference: deltaE2000 })).toEqual([]);
    // Where the type of one is not known, another origin is all there is to set them apart.
    const { type: _, ...untyped } = other;
    expect(echoesOf(['slide'], featuresOf([square, untyped]), { difference: deltaE2000 })).toHaveLength(1);
  });

  test('law: one who is not there is an error that names the id', () => {
    expect(() => echoesOf(['gone'], pool(), { difference: deltaE2000 })).toThrow(/gone/);
  });
});

describe('what goes with this', () => {
  test('law: a thing of a planted set that was kept apart would join it, with reasons', () => {
    const planted = plantedPool(300, 4);
    const at = planted.sets.indexOf(planted.sets.find((set) => set >= 0)!);
    const { id } = planted.records[at]!;
    const without = featuresOf(planted.records.filter((record) => record.id !== id));
    const { sets } = clustersOf(without);
    const { set } = goesWith(id, featuresOf(planted.records), sets, { difference: deltaE2000 });
    expect(set!.words).toMatch(/^would join these, as /);
    const joined = sets[set!.at]!.members.map((member) => planted.sets[Number(member.slice(1))]);
    expect(joined.filter((of) => of === planted.sets[at]).length / joined.length).toBeGreaterThan(0.9);
  });

  test('story: a small green jug has a large green hanging to carry it and a green tile to answer it', () => {
    const features = featuresOf([
      { ...hanging, heightMm: 3100, widthMm: 2000 },
      { id: 'jug', type: 'jug', earliestYear: 1850, heightMm: 300, widthMm: 200, palette: nearGreen },
      { id: 'tile', type: 'tile', earliestYear: 2020, heightMm: 200, widthMm: 200, palette: green },
      { id: 'level', type: 'level', earliestYear: 1900, heightMm: 60, widthMm: 400, palette: red },
    ]);
    const found = goesWith('jug', features, [], { difference: deltaE2000 });
    expect(found.focal).toMatchObject({ id: 'hanging', words: expect.stringMatching(/^103 times as large/) });
    expect(found.companion!.echo.id).toBe('tile');
    expect(found.words).toBe('no set is close enough to join');
  });

  test('law: where nothing goes with it that is said', () => {
    const features = featuresOf([{ id: 'a', type: 'jug' }]);
    const { words, ...rest } = goesWith('a', features, [], { difference: deltaE2000 });
    expect(rest).toEqual({});
    expect(words).toBe('no set is close enough to join; its size is not known; nothing of its size answers it');
  });
});
