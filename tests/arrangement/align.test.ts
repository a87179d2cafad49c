import { type AlignedBy, align } from '@enfilade/arrangement/align';
import { type Box, extentOf, mirrored } from '@enfilade/arrangement/boxes';
import { distribute } from '@enfilade/arrangement/distribute';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const INCH = 25.4;
const boxOf = fc.record({
  xMm: fc.integer({ min: 0, max: 9000 }),
  yMm: fc.integer({ min: 0, max: 4000 }),
  widthMm: fc.integer({ min: 20, max: 900 }),
  heightMm: fc.integer({ min: 20, max: 900 }),
});
const boxesOf = fc.array(boxOf, { minLength: 1, maxLength: 12 });
const moved = (boxes: readonly Box[], places: readonly { xMm: number; yMm: number }[]): Box[] =>
  boxes.map((box, i) => ({ ...box, ...places[i]! }));
const runs = { seed: 3, numRuns: 300 };

describe('align', () => {
  test('law: tops, centres or feet stand at one height to the millimetre, and nothing goes sideways', () => {
    fc.assert(
      fc.property(boxesOf, fc.constantFrom<AlignedBy>('tops', 'centres', 'feet'), (boxes, by) => {
        const { places, atMm } = align(boxes, by);
        for (const [i, box] of moved(boxes, places).entries()) {
          const { topMm, bottomMm } = extentOf(box);
          expect(Math.abs({ tops: topMm, feet: bottomMm, centres: box.yMm }[by as 'tops'] - atMm)).toBeLessThanOrEqual(
            0.5,
          );
          expect(box.xMm).toBe(boxes[i]!.xMm);
          expect(Number.isInteger(box.yMm)).toBe(true);
        }
        expect(align(moved(boxes, places), by, { toMm: atMm }).places).toEqual(places);
      }),
      runs,
    );
  });

  test('law: the highest top and the lowest foot lead; seen in a mirror, lefts are rights', () => {
    fc.assert(
      fc.property(boxesOf, (boxes) => {
        expect(align(boxes, 'tops').atMm).toBe(Math.max(...boxes.map((box) => extentOf(box).topMm)));
        expect(align(boxes, 'feet').atMm).toBe(Math.min(...boxes.map((box) => extentOf(box).bottomMm)));
        const [lefts, rights] = [align(boxes, 'lefts'), align(boxes.map(mirrored), 'rights')];
        expect(rights.atMm).toBe(0 - lefts.atMm);
        rights.places.forEach(({ xMm }, i) => {
          expect(Math.abs(xMm + lefts.places[i]!.xMm)).toBeLessThanOrEqual(1);
        });
      }),
      runs,
    );
  });

  test('story: two that stand over each other and one above the wall are told', () => {
    const boxes = [
      { xMm: 500, yMm: 1800, widthMm: 400, heightMm: 300 },
      { xMm: 600, yMm: 1200, widthMm: 400, heightMm: 300 },
    ];
    const surface = { leftMm: 0, rightMm: 3000, bottomMm: 0, topMm: 1900 };
    expect(align(boxes, 'tops', { surface }).issues).toEqual([
      { where: 'pieces[0]', what: 'leaves the surface', value: '500, 1800' },
      { where: 'pieces[1]', what: 'leaves the surface', value: '600, 1800' },
      { where: 'pieces[1]', what: 'stands over another', value: 'pieces[0]' },
    ]);
    expect(align(boxes, 'centres', { toMm: 1475 }).places).toEqual([
      { xMm: 500, yMm: 1475 },
      { xMm: 600, yMm: 1475 },
    ]);
  });
});

describe('equal gaps', () => {
  const gapsOf = (boxes: readonly Box[]) => {
    const sorted = [...boxes].sort((a, b) => a.xMm - b.xMm);
    return sorted.slice(1).map((box, i) => extentOf(box).leftMm - extentOf(sorted[i]!).rightMm);
  };

  test('reference: practice example 25 (common practice): wall 240 in, widths 30, 24, 48, 24, 30 → gap 14.0 in', () => {
    const boxes = [30, 24, 48, 24, 30].map((inches, i) => {
      return { xMm: 1000 * (i + 1), yMm: 1475, widthMm: inches * INCH, heightMm: 500 };
    });
    const surface = { leftMm: 0, rightMm: 240 * INCH, bottomMm: 0, topMm: 3000 };
    const { gapMm, places } = distribute(boxes, 'across', { kind: 'fill' }, surface);
    expect(gapMm / INCH).toBeCloseTo(14, 10);
    expect(places[2]).toEqual({ xMm: 3048, yMm: 1475 });
  });

  test('law: with fixed ends the ends stay and every gap is the same to the millimetre, whatever the order given', () => {
    fc.assert(
      fc.property(fc.array(boxOf, { minLength: 2, maxLength: 12 }), (boxes) => {
        const { places, gapMm, issues } = distribute(boxes, 'across', { kind: 'fixed ends' });
        if (places.length === 0) {
          expect(issues).toHaveLength(1);
          expect(gapMm).toBeLessThan(0);
          return;
        }
        const now = moved(boxes, places);
        if (gapMm > 1) for (const gap of gapsOf(now)) expect(Math.abs(gap - gapMm)).toBeLessThanOrEqual(1);
        const order = boxes.map((_, i) => i).sort((a, b) => boxes[a]!.xMm - boxes[b]!.xMm || a - b);
        for (const end of [order[0]!, order[order.length - 1]!]) expect(now[end]!.xMm).toBe(boxes[end]!.xMm);
        expect(now.map(({ yMm }) => yMm)).toEqual(boxes.map(({ yMm }) => yMm));
        if (new Set(boxes.map(({ xMm }) => xMm)).size === boxes.length) {
          const backwards = distribute([...boxes].reverse(), 'across', { kind: 'fixed ends' }).places;
          expect([...backwards].reverse()).toEqual(places);
        }
      }),
      runs,
    );
  });

  test('law: with a fixed gap the group keeps its middle, or comes back onto the wall', () => {
    const surface = { leftMm: 100, rightMm: 9000, bottomMm: 0, topMm: 4000 };
    fc.assert(
      fc.property(boxesOf, fc.integer({ min: 2, max: 400 }), (boxes, gap) => {
        const free = distribute(boxes, 'across', { kind: 'fixed gap', gapMm: gap });
        const before = [
          Math.min(...boxes.map((b) => extentOf(b).leftMm)),
          Math.max(...boxes.map((b) => extentOf(b).rightMm)),
        ];
        const now = moved(boxes, free.places).map(extentOf);
        const after = [Math.min(...now.map((b) => b.leftMm)), Math.max(...now.map((b) => b.rightMm))];
        expect(Math.abs(after[0]! + after[1]! - before[0]! - before[1]!)).toBeLessThanOrEqual(2);
        for (const one of gapsOf(moved(boxes, free.places))) expect(Math.abs(one - gap)).toBeLessThanOrEqual(1);
        const held = distribute(boxes, 'across', { kind: 'fixed gap', gapMm: gap }, surface);
        for (const box of held.places.length === 0 ? [] : moved(boxes, held.places)) {
          expect(extentOf(box).leftMm).toBeGreaterThanOrEqual(100);
          expect(extentOf(box).rightMm).toBeLessThanOrEqual(9000);
        }
        if (held.places.length === 0) expect(held.issues[0]!.value).toBeGreaterThan(0);
      }),
      runs,
    );
  });

  test('law: up is across seen lying down', () => {
    fc.assert(
      fc.property(boxesOf, (boxes) => {
        const lying = boxes.map((b) => ({ xMm: b.yMm, yMm: b.xMm, widthMm: b.heightMm, heightMm: b.widthMm }));
        const up = distribute(boxes, 'up', { kind: 'fixed gap', gapMm: 40 }).places;
        const across = distribute(lying, 'across', { kind: 'fixed gap', gapMm: 40 }).places;
        expect(up).toEqual(across.map(({ xMm, yMm }) => ({ xMm: yMm, yMm: xMm })));
      }),
      runs,
    );
  });

  test('story: three wide ones between two ends do not fit, and by how much is said', () => {
    const boxes = [500, 800, 1100].map((xMm) => ({ xMm, yMm: 1500, widthMm: 400, heightMm: 300 }));
    expect(distribute(boxes, 'across', { kind: 'fixed ends' })).toMatchObject({ places: [], issues: [{ value: 200 }] });
    expect(() => distribute(boxes, 'across', { kind: 'fixed gap', gapMm: -1 })).toThrow(/gapMm is -1/);
    expect(() => distribute(boxes, 'across', { kind: 'fill' })).toThrow(/surface is undefined/);
  });
});
