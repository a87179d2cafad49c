import { readFileSync } from 'node:fs';
import { deltaE2000, differences } from '@enfilade/colour/differences';
import { kernelOf } from '@enfilade/colour/kernel';
import type { LabD65 } from '@enfilade/colour/lab';
import { differenceTable, packedWorksOf, tableInOneLane } from '@enfilade/colour/rank-table';
import { differenceCiede2000 } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomLabs, randomOf } from './samples.ts';

// Sharma, Wu, Dalal 2005, table 1; see tests/reference/colour/SOURCES.md.
const published = readFileSync(new URL('../reference/colour/ciede2000-sharma-2005.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number) as [number, number, number, number, number, number, number, number])
  .map(([pair, L1, a1, b1, L2, a2, b2, dE]) => ({
    pair,
    one: { L: L1, a: a1, b: b1 },
    other: { L: L2, a: a2, b: b2 },
    dE,
  }));

const lab = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -128, max: 128, noNaN: true }),
  b: fc.double({ min: -128, max: 128, noNaN: true }),
});

const culori = differenceCiede2000();
const lab65 = ({ L, a, b }: LabD65) => ({ mode: 'lab65' as const, l: L, a, b });

/** Angle by which two hues miss being opposite, radians, after CIEDE2000's own stretch of a. */
function missOfOpposite(p: LabD65, q: LabD65): number {
  const mean7 = ((Math.hypot(p.a, p.b) + Math.hypot(q.a, q.b)) / 2) ** 7;
  const stretch = 1.5 - 0.5 * Math.sqrt(mean7 / (mean7 + 25 ** 7));
  const turn = Math.abs(Math.atan2(p.b, p.a * stretch) - Math.atan2(q.b, q.a * stretch));
  return Math.abs(turn - Math.PI);
}

describe('deltaE2000', () => {
  test('reference: the 34 published pairs, both ways round, to four decimals (Sharma 2005)', () => {
    expect(published).toHaveLength(34);
    for (const { pair, one, other, dE } of published) {
      expect(deltaE2000(one, other), `pair ${pair}`).toBeCloseTo(dE, 4);
      expect(deltaE2000(other, one), `pair ${pair} turned round`).toBeCloseTo(dE, 4);
    }
  });

  test('reference: Lab (42, 58, 33) to (44, 57, 35) is 2.22 (ISO/CIE 11664-6)', () => {
    expect(deltaE2000({ L: 42, a: 58, b: 33 }, { L: 44, a: 57, b: 35 })).toBeCloseTo(2.22, 2);
  });

  test('reference: 1,000,000 seeded pairs as an independent library has them (culori, lab65), to 1e-6', {
    timeout: 120_000,
  }, () => {
    const labs = randomLabs(2_000_000, 2005);
    let compared = 0;
    let worst = 0;
    for (let i = 0; i < labs.length; i += 2) {
      const one = labs[i]!;
      const other = labs[i + 1]!;
      if (missOfOpposite(one, other) < 1e-5) continue;
      worst = Math.max(worst, Math.abs(deltaE2000(one, other) - culori(lab65(one), lab65(other))));
      compared++;
    }
    expect(compared).toBeGreaterThan(999_000);
    expect(worst).toBeLessThan(1e-6);
  });

  test('law: symmetric to the last bit, zero on itself, never negative', () => {
    fc.assert(
      fc.property(lab, lab, (one, other) => {
        expect(deltaE2000(one, other)).toBe(deltaE2000(other, one));
        expect(deltaE2000(one, one)).toBe(0);
        expect(deltaE2000(one, other)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 5_000, seed: 21 },
    );
  });

  test('law: exactly opposite hues take the mean hue the paper gives them, at every angle', () => {
    // (14) with |h1 − h2| = 180: the mean is half the sum, so the colour turned round from h < 180 lies at h + 90.
    // A hair short of opposite falls on the same branch; a hair past it, on the other.
    for (let degrees = 1; degrees < 180; degrees += 1) {
      const h = (degrees * Math.PI) / 180;
      const one = { L: 50, a: 12 * Math.cos(h), b: 12 * Math.sin(h) };
      const opposite = { L: 50, a: -one.a, b: -one.b };
      const short = { L: 50, a: -12 * Math.cos(h - 1e-9), b: -12 * Math.sin(h - 1e-9) };
      expect(deltaE2000(one, opposite)).toBeCloseTo(deltaE2000(one, short), 6);
    }
  });
});

/** Exactly opposite hues at every whole degree of the upper half, and the same turned a hair (1e-3) short of it. */
const opposites = Array.from({ length: 179 }, (_, i) => {
  const h = ((i + 1) * Math.PI) / 180;
  const one = { L: 50, a: Math.fround(12 * Math.cos(h)), b: Math.fround(12 * Math.sin(h)) };
  const short = { L: 50, a: -12 * Math.cos(h - 1e-3), b: -12 * Math.sin(h - 1e-3) };
  return { one, opposite: { L: 50, a: -one.a, b: -one.b }, short };
});

describe('the kernel on vectors', () => {
  const all = (lab: LabD65) => [{ lab, share: 1 }];

  test('reference: runs here, and gives the 34 published pairs to four decimals in f64, to 1e-4 in f32 (Sharma 2005)', () => {
    expect(kernelOf()).not.toBeNull();
    for (const { pair, one, other, dE } of published) {
      const many = Float64Array.from(Array.from({ length: 65 }, () => [one.L, one.a, one.b]).flat());
      expect(differences(many, other)[64], `pair ${pair}`).toBeCloseTo(dE, 4);
      const { mean } = differenceTable([other], packedWorksOf([all(one)]), {});
      expect(Math.abs(mean[0]! - dE), `pair ${pair}`).toBeLessThan(1.5e-4);
    }
  });

  test('reference: 1,000,000 seeded pairs as culori has them (lab65), f32 to 1e-4, f64 to 1e-6', {
    timeout: 120_000,
  }, () => {
    const paints = randomLabs(1_000, 2006);
    const works = randomLabs(1_000, 2007);
    // Compared as f32 holds them, for that is what the table was given.
    const held = ({ L, a, b }: LabD65) => ({ L: Math.fround(L), a: Math.fround(a), b: Math.fround(b) });
    const heldWorks = works.map(held);
    const triples = Float64Array.from(heldWorks.flatMap(({ L, a, b }) => [L, a, b]));
    const theirs = heldWorks.map(lab65);
    const { mean, least } = differenceTable(paints, packedWorksOf(works.map(all)), { least: true });
    let worst32 = 0;
    let worst64 = 0;
    let compared = 0;
    paints.forEach((paint, p) => {
      const one = held(paint);
      const ours = differences(triples, one);
      for (let work = 0; work < 1_000; work++) {
        if (missOfOpposite(one, heldWorks[work]!) < 1e-5) continue;
        const d = culori(lab65(one), theirs[work]!);
        worst32 = Math.max(worst32, Math.abs(mean[p * 1_000 + work]! - d), Math.abs(least[p * 1_000 + work]! - d));
        worst64 = Math.max(worst64, Math.abs(ours[work]! - d));
        compared++;
      }
    });
    expect(compared).toBeGreaterThan(999_000);
    expect(worst32).toBeLessThan(1e-4);
    expect(worst64).toBeLessThan(1e-6);
  });

  test('law: symmetric to the last bit: a table turned round is the same table', () => {
    const some = randomLabs(203, 2008);
    const { mean } = differenceTable(some, packedWorksOf(some.map(all)), {});
    const broken: string[] = [];
    for (let p = 0; p < some.length; p++) {
      if (mean[p * 203 + p] !== 0) broken.push(`${p}`);
      for (let q = 0; q < p; q++) if (mean[p * 203 + q] !== mean[q * 203 + p]) broken.push(`${p} ${q}`);
    }
    expect(broken).toEqual([]);
  });

  test('law: exactly opposite hues take the side the paper gives them, in f32 and in f64, either way round', () => {
    const rest = new Float64Array(3 * 64);
    for (const { one, opposite, short } of opposites) {
      const expected = deltaE2000(one, short);
      for (const [p, q] of [
        [one, opposite],
        [opposite, one],
      ] as const) {
        expect(deltaE2000(p, q)).toBeCloseTo(expected, 1);
        const { mean } = differenceTable([p], packedWorksOf([all(q)]), {});
        expect(mean[0]).toBeCloseTo(deltaE2000(p, q), 4);
        rest.set([q.L, q.a, q.b]);
        expect(differences(rest, p)[0]).toBeCloseTo(deltaE2000(p, q), 6);
      }
    }
  });

  test('law: with and without vectors the table says the same of palettes of any length, whatever fills the vectors', () => {
    const random = randomOf(9);
    const palettes = Array.from({ length: 13 }, (_, i) =>
      randomLabs(1 + (i % 6), i).map((lab) => ({ lab, share: random() + 0.01 })),
    );
    const paints = randomLabs(19, 77);
    const parts = { least: true, within10: true };
    const packed = packedWorksOf(palettes);
    const vectors = differenceTable(paints, packed, parts);
    const lane = tableInOneLane(paints, packed, parts);
    expect(vectors.mean).toHaveLength(13 * 19);
    paints.forEach((paint, p) => {
      palettes.forEach((palette, work) => {
        const at = p * 13 + work;
        const total = palette.reduce((sum, { share }) => sum + share, 0);
        const each = palette.map(({ lab, share }) => ({ d: deltaE2000(lab, paint), share: share / total }));
        const mean = each.reduce((sum, { d, share }) => sum + d * share, 0);
        const least = Math.min(...each.map(({ d }) => d));
        const within = each.reduce((sum, { d, share }) => sum + (d < 10 ? share : 0), 0);
        for (const table of [vectors, lane]) {
          expect(Math.abs(table.mean[at]! - mean)).toBeLessThan(1e-4);
          expect(Math.abs(table.least[at]! - least)).toBeLessThan(1e-4);
          expect(Math.abs(table.within10[at]! - within)).toBeLessThan(1e-6);
        }
      });
    });
    expect(differenceTable(paints, packed, {}).within10).toHaveLength(0);
    expect(differenceTable(paints, packedWorksOf([]), parts).mean).toHaveLength(0);
    expect(differenceTable([], packed, parts).mean).toHaveLength(0);
    expect(() => packedWorksOf([[]])).toThrow(RangeError);
  });
});

describe('differences', () => {
  test('law: one to many is the same figure as one to one, in f64 and in f32 triples', () => {
    const labs = randomLabs(500, 7);
    const reference = { L: 33, a: -25, b: -4 };
    const triples = Float64Array.from(labs.flatMap(({ L, a, b }) => [L, a, b]));
    differences(triples, reference).forEach((dE, i) => {
      expect(Math.abs(dE - deltaE2000(labs[i]!, reference))).toBeLessThan(1e-7);
    });
    // Few are not worth the vectors.
    expect([...differences(triples.subarray(0, 9), reference)]).toEqual(
      labs.slice(0, 3).map((sample) => deltaE2000(sample, reference)),
    );
    differences(Float32Array.from(triples), reference).forEach((dE, i) => {
      expect(dE).toBeCloseTo(deltaE2000(labs[i]!, reference), 3);
    });
  });

  test('law: fills the array it is given and refuses what does not fit', () => {
    const out = new Float64Array(5).fill(-1);
    const triples = Float64Array.of(50, 0, 0, 60, 0, 0);
    expect(differences(triples, { L: 50, a: 0, b: 0 }, out)).toBe(out);
    expect(out[0]).toBe(0);
    expect(out[1]).toBeGreaterThan(5);
    expect(out[2]).toBe(-1);
    expect(() => differences(triples, { L: 50, a: 0, b: 0 }, new Float64Array(1))).toThrow(RangeError);
    expect(() => differences(Float64Array.of(50, 0), { L: 50, a: 0, b: 0 })).toThrow(RangeError);
    expect(differences(new Float64Array(0), { L: 50, a: 0, b: 0 })).toHaveLength(0);
  });
});
