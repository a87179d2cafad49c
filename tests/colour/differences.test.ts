import { readFileSync } from 'node:fs';
import { deltaE2000, differences } from '@enfilade/colour/differences';
import type { LabD65 } from '@enfilade/colour/lab';
import { differenceCiede2000 } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomLabs } from './samples.ts';

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

  test('reference: 100,000 seeded pairs as an independent library has them (culori, lab65), to 1e-4', () => {
    const labs = randomLabs(200_000, 2005);
    let compared = 0;
    let worst = 0;
    for (let i = 0; i < labs.length; i += 2) {
      const one = labs[i]!;
      const other = labs[i + 1]!;
      if (missOfOpposite(one, other) < 1e-5) continue;
      worst = Math.max(worst, Math.abs(deltaE2000(one, other) - culori(lab65(one), lab65(other))));
      compared++;
    }
    expect(compared).toBeGreaterThan(99_000);
    expect(worst).toBeLessThan(1e-4);
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

describe('differences', () => {
  test('law: one to many is the same figure as one to one, in f64 and in f32 triples', () => {
    const labs = randomLabs(500, 7);
    const reference = { L: 33, a: -25, b: -4 };
    const triples = Float64Array.from(labs.flatMap(({ L, a, b }) => [L, a, b]));
    expect([...differences(triples, reference)]).toEqual(labs.map((sample) => deltaE2000(sample, reference)));
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
