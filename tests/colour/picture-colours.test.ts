import { deltaE2000 } from '@enfilade/colour/differences';
import { ENGINE_VERSION, pictureColoursOf, rimOf } from '@enfilade/colour/picture-colours';
import { describe, expect, test } from 'vitest';
import { CHALK, COPPER, drawn, OIL_VIEW, VERDIGRIS, WELD } from './samples.ts';

const FRAME = { L: 20, a: 2, b: 5 };

describe('pictureColoursOf', () => {
  test('law: a frame is the edge, the picture inside it the body', () => {
    // 100 × 100 with a frame of 6: just the rim of 6 %.
    const picture = drawn(100, 100, (x, y) => (Math.min(x, y, 99 - x, 99 - y) < 6 ? FRAME : WELD));
    const { body, edge, opaqueShare, engine } = pictureColoursOf(picture);
    expect(edge).toHaveLength(1);
    expect(deltaE2000(edge[0]!.lab, FRAME)).toBeLessThan(1);
    expect(body).toHaveLength(1);
    expect(deltaE2000(body[0]!.lab, WELD)).toBeLessThan(1);
    expect(opaqueShare).toBe(1);
    expect(engine).toBe(ENGINE_VERSION);
  });

  test('law: the rim follows the outline of a cut-out, all round and of even depth', () => {
    const radius = 45;
    const distance = (x: number, y: number) => Math.hypot(x - 60, y - 60);
    const picture = drawn(121, 121, (x, y) => (distance(x, y) <= radius ? WELD : null));
    const rim = rimOf(picture);
    const band = Math.round(0.06 * (2 * radius + 1));
    for (let y = 0; y < 121; y++) {
      for (let x = 0; x < 121; x++) {
        const d = distance(x, y);
        // One pixel of doubt: the outline is a staircase, and the chamfer distance is within 8 %.
        if (d > radius || d < radius - band - 1) expect(rim[y * 121 + x]).toBe(0);
        else if (d > radius - band + 1) expect(rim[y * 121 + x]).toBe(1);
      }
    }
  });

  test('law: the rim goes round holes too, and a margin of nothing does not change it', () => {
    const inside = (x: number, y: number) => Math.max(Math.abs(x - 50), Math.abs(y - 50)) <= 40;
    const hole = (x: number, y: number) => Math.max(Math.abs(x - 50), Math.abs(y - 50)) <= 10;
    const ring = drawn(101, 101, (x, y) => (inside(x, y) && !hole(x, y) ? CHALK : null));
    const rim = rimOf(ring);
    expect(rim[50 * 101 + 61]).toBe(1);
    expect(rim[50 * 101 + 75]).toBe(0);
    expect(rim[50 * 101 + 90]).toBe(1);
    const tight = drawn(81, 81, (x, y) => (inside(x + 10, y + 10) && !hole(x + 10, y + 10) ? CHALK : null));
    expect(rimOf(tight).reduce((sum, one) => sum + one, 0)).toBe(rim.reduce((sum, one) => sum + one, 0));
  });

  test('law: what is all rim has its whole shape for a body', () => {
    const wicker = drawn(60, 60, (x, y) => (x % 6 === 0 || y % 6 === 0 ? VERDIGRIS : null));
    const { body, edge } = pictureColoursOf(wicker);
    expect(body).toEqual(edge);
    expect(body).toHaveLength(1);
  });

  test('law: nothing opaque, nothing said; a single pixel is body and edge', () => {
    const blank = pictureColoursOf(drawn(20, 20, () => null));
    expect(blank).toEqual({ body: [], edge: [], opaqueShare: 0, engine: ENGINE_VERSION });
    const dot = pictureColoursOf(drawn(3, 3, (x, y) => (x === 1 && y === 1 ? WELD : null)));
    expect(dot.body).toEqual(dot.edge);
    expect(dot.opaqueShare).toBeCloseTo(1 / 9, 12);
  });

  test('law: the edge takes 3 to 6 swatches, the body as many as asked for, alike each time', () => {
    for (const k of [3, 6, 12]) {
      const colours = pictureColoursOf(OIL_VIEW, { k });
      expect(colours.edge.length).toBeLessThanOrEqual(Math.min(k, 6));
      expect(colours.body.length).toBeLessThanOrEqual(k);
      expect(pictureColoursOf(OIL_VIEW, { k })).toEqual(colours);
    }
    expect(() => pictureColoursOf(OIL_VIEW, { k: 2 })).toThrow(RangeError);
  });

  test('story: a round copper mould is darker at its rim than inside', () => {
    const { body, edge, opaqueShare } = pictureColoursOf(COPPER);
    const meanL = (swatches: typeof body) => swatches.reduce((sum, { lab, share }) => sum + lab.L * share, 0);
    expect(meanL(edge)).toBeLessThan(meanL(body) - 8);
    expect(opaqueShare).toBeGreaterThan(0.6);
    expect(opaqueShare).toBeLessThan(0.75);
  });
});
