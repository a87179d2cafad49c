import { deltaE2000 } from '@enfilade/colour/differences';
import type { LabD65 } from '@enfilade/colour/lab';
import { pictureColoursOf } from '@enfilade/colour/picture-colours';
import { diverseOf } from '@enfilade/colour/rank-diverse';
import { type PaintRanking, rankPaints } from '@enfilade/colour/rank-paints';
import { metBy, standingOf, type Wish, type WishedWork } from '@enfilade/colour/rank-wishes';
import { readingOn } from '@enfilade/colour/reading';
import { DEFAULT_THRESHOLDS } from '@enfilade/colour/reading-thresholds';
import { labD65FromSrgb } from '@enfilade/colour/spaces';
import { DECK } from '@enfilade/server/demo/deck';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COPPER, HANGING, OIL_VIEW, PEAR_BLOCK, randomOf } from './samples.ts';

const plain = (name: string, lab: LabD65, wish: Wish): WishedWork => {
  return { name, body: [{ lab, share: 1 }], edge: [{ lab, share: 1 }], wish };
};
const pictured = (name: string, picture: typeof OIL_VIEW, wish: Wish): WishedWork => {
  return { name, ...pictureColoursOf(picture), wish };
};
const deck = Object.entries(DECK).map(([id, { lab }]) => ({ id, lab }));
const random = randomOf(31);
const wide = Array.from({ length: 2_000 }, (_, i) => {
  return { id: `paint ${i}`, lab: labD65FromSrgb(random() * 255, random() * 255, random() * 255) };
});
const labsOf = (ranking: PaintRanking<{ readonly lab: LabD65 }>) => ranking.order.map(({ paint }) => paint.lab);

describe('rankPaints, monotone', () => {
  // Evenly stepped ways out from a known palette: in lightness, in chroma, round in hue.
  const known = { L: 48, a: 24, b: 18 };
  const radians = Math.atan2(known.b, known.a);
  const chroma = Math.hypot(known.a, known.b);
  const at = (L: number, C: number, turn: number): LabD65 => {
    return { L, a: C * Math.cos(radians + turn), b: C * Math.sin(radians + turn) };
  };
  const steps = Array.from({ length: 25 }, (_, i) => i);
  const ways = {
    lighter: steps.map((i) => at(known.L + 2 * i, chroma, 0)),
    darker: steps.map((i) => at(known.L - 1.9 * i, chroma, 0)),
    quieter: steps.map((i) => at(known.L, chroma * (1 - i / 25), 0)),
    stronger: steps.map((i) => at(known.L, chroma + 2 * i, 0)),
    turning: steps.map((i) => at(known.L, chroma, (i * Math.PI) / 30)),
    'all at once': steps.map((i) => at(known.L + i, chroma + i, (i * Math.PI) / 50)),
  };

  test('law: evenly stepped paints round a known palette come out in ΔE’s order, farthest first, to let it carry', () => {
    for (const [way, labs] of Object.entries(ways)) {
      // Handed over out of order, so that the deck's order cannot pass for a ranking.
      const shuffled = labs.map((_, i) => ({ lab: labs[(i * 7) % labs.length]! }));
      const distances = labsOf(rankPaints(shuffled, [plain('known', known, 'let carry')])).map((lab) =>
        deltaE2000(lab, known),
      );
      expect(distances, way).toHaveLength(25);
      expect(distances, way).toEqual([...distances].sort((p, q) => q - p));
    }
  });

  test('law: to keep it quiet they come out nearest first, those on which it would be lost after those where it is weak', () => {
    for (const [way, labs] of Object.entries(ways)) {
      const order = labsOf(
        rankPaints(
          labs.map((lab) => ({ lab })),
          [plain('known', known, 'keep quiet')],
        ),
      );
      const weak = order.filter((lab) => readingOn(plain('', known, 'keep quiet'), lab).word === 'weak');
      const distances = weak.map((lab) => deltaE2000(lab, known));
      expect(distances, way).toEqual([...distances].sort((p, q) => p - q));
      if (weak.length > 0) expect(weak, way).toContain(order[0]);
    }
  });

  test('law: standing rises with either distance and falls with the share', () => {
    const real = (max: number) => fc.double({ min: 0, max, noNaN: true });
    fc.assert(
      fc.property(
        real(100),
        real(100),
        real(1),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (body, edge, share, more) => {
          const standing = standingOf(body, edge, share, DEFAULT_THRESHOLDS);
          expect(standing).toBeGreaterThanOrEqual(0);
          expect(standing).toBeLessThan(1);
          expect(standingOf(body + more, edge, share, DEFAULT_THRESHOLDS)).toBeGreaterThan(standing);
          expect(standingOf(body, edge + more, share, DEFAULT_THRESHOLDS)).toBeGreaterThan(standing);
          expect(standingOf(body + 1, edge, Math.min(1, share + more), DEFAULT_THRESHOLDS)).toBeLessThanOrEqual(
            standingOf(body + 1, edge, share, DEFAULT_THRESHOLDS),
          );
        },
      ),
      { numRuns: 2_000, seed: 51 },
    );
    expect(metBy('let carry', 'carries')).toBeGreaterThan(metBy('let carry', 'holds'));
    expect(metBy('keep quiet', 'weak')).toBeGreaterThan(metBy('keep quiet', 'lost'));
    expect(metBy('keep quiet', 'lost')).toBeGreaterThan(metBy('keep quiet', 'carries'));
  });
});

describe('rankPaints, on a deck', () => {
  const asked = [pictured('the oil view', OIL_VIEW, 'let carry'), pictured('the hanging', HANGING, 'let carry')];

  test('story: the paint on which the oil view is lost comes low, one on which it carries comes first', () => {
    const { order, top } = rankPaints(deck, [asked[0]!]);
    expect(order).toHaveLength(deck.length);
    expect(readingOn(asked[0]!, order[0]!.paint.lab).word).toBe('carries');
    const place = order.findIndex(({ paint }) => paint.id === 'verdigris-deep');
    expect(place).toBeGreaterThan(deck.length * 0.8);
    expect(top[0]!.paint).toBe(order[0]!.paint);
    expect(top[0]!.reason).toBe('It does as asked.');
    expect(top[0]!.works[0]!.reading).toEqual(readingOn(asked[0]!, top[0]!.paint.lab));
  });

  test('story: let the oil view carry and keep the block quiet: both are seen to, and what is amiss is named', () => {
    const works = [
      ...asked,
      pictured('the block', PEAR_BLOCK, 'keep quiet'),
      pictured('the mould', COPPER, 'keep quiet'),
    ];
    const { top } = rankPaints(wide, works);
    expect(top[0]!.score).toBeGreaterThan(0.6);
    expect(top.every(({ works: read }) => read.length === 4)).toBe(true);
    for (const { works: read, reason } of top) {
      const amiss = read.filter(({ met }) => !met);
      expect(reason).toMatch(amiss.length === 0 ? /^All do as asked\.$/ : /^(All as asked but|Not as asked:) .+\.$/);
      for (const { name } of amiss.slice(0, 3)) expect(reason).toContain(name);
    }
    const oppositely = rankPaints(
      wide,
      works.map((work) => ({ ...work, wish: work.wish === 'let carry' ? 'keep quiet' : 'let carry' }) as const),
    );
    expect(oppositely.order[0]!.paint).not.toBe(top[0]!.paint);
  });

  test('law: a heavier wish is heeded more', () => {
    const [here, there] = [
      plain('pale', { L: 88, a: 0, b: 8 }, 'let carry'),
      plain('dark', { L: 15, a: 0, b: 0 }, 'let carry'),
    ];
    const best = (weight: number) => rankPaints(deck, [{ ...here, weight }, there]).order[0]!.paint.lab;
    expect(deltaE2000(best(50), here.body[0]!.lab)).toBeGreaterThan(deltaE2000(best(0.02), here.body[0]!.lab));
  });

  test('law: what the filter leaves out is counted, what is left keeps within it', () => {
    const next = { L: 37, a: 42, b: 24 };
    const ranking = rankPaints(deck, asked, {
      lightness: { from: 30, to: 70 },
      beside: [{ lab: next, least: 20, most: 60 }],
    });
    for (const { paint } of ranking.order) {
      expect(paint.lab.L >= 30 && paint.lab.L <= 70).toBe(true);
      expect(deltaE2000(paint.lab, next)).toBeGreaterThanOrEqual(20);
      expect(deltaE2000(paint.lab, next)).toBeLessThanOrEqual(60);
    }
    expect(ranking.leftOut.lightness).toBe(deck.filter(({ lab }) => lab.L < 30 || lab.L > 70).length);
    expect(ranking.leftOut.beside).toBeGreaterThan(0);
    expect(ranking.order.length + ranking.leftOut.lightness + ranking.leftOut.beside).toBe(deck.length);
    expect(rankPaints(deck, asked, { lightness: { from: 101, to: 102 } })).toMatchObject({ order: [], top: [] });
    expect(rankPaints([], asked).order).toEqual([]);
    expect(rankPaints(deck, []).top[0]!.reason).toBe('Nothing was asked of it.');
    expect(() => rankPaints(deck, [{ ...asked[0]!, weight: 0 }])).toThrow(/the oil view/);
  });

  test('law: scores are those of the words that would be shown, whichever way they were reckoned', () => {
    const works = [...asked, pictured('the mould', COPPER, 'keep quiet')];
    let amiss = 0;
    for (const { paint, score } of rankPaints(wide, works).order) {
      const by = works.map((work) => {
        const { word, body, edge, shareWithin10 } = readingOn(work, paint.lab);
        const standing = standingOf(body.deltaE, edge.deltaE, shareWithin10, DEFAULT_THRESHOLDS);
        return 0.5 * metBy(work.wish, word) + 0.5 * (work.wish === 'let carry' ? standing : 1 - standing);
      });
      if (Math.abs(score - by.reduce((sum, one) => sum + one, 0) / 3) > 1e-5) amiss++;
    }
    // f32 may fall on the other side of a threshold once in many thousands.
    expect(amiss).toBeLessThanOrEqual(2);
  });
});

describe('the top list', () => {
  test('law: is not one colour many times: nearer to none, at little cost', () => {
    const asked = [pictured('the oil view', OIL_VIEW, 'let carry')];
    const nearestIn = (labs: readonly LabD65[]) =>
      Math.min(...labs.flatMap((one, i) => labs.slice(i + 1).map((other) => deltaE2000(one, other))));
    const alike = rankPaints(wide, asked, { diversity: 0 }).top;
    const diverse = rankPaints(wide, asked).top;
    expect(diverse).toHaveLength(12);
    expect(nearestIn(alike.map(({ paint }) => paint.lab))).toBeLessThan(4);
    expect(nearestIn(diverse.map(({ paint }) => paint.lab))).toBeGreaterThan(8);
    const mean = (list: typeof diverse) => list.reduce((sum, { score }) => sum + score, 0) / list.length;
    expect(mean(diverse)).toBeGreaterThan(mean(alike) * 0.8);
    expect(diverse.every(({ works }) => works[0]!.reading.word !== 'lost')).toBe(true);
  });

  test('law: without diversity it is the order’s beginning, never longer than the deck, and refuses what is no share', () => {
    const labs = deck.map(({ lab }) => lab);
    const scores = labs.map((_, i) => 1 - i / 100);
    expect(diverseOf(labs, scores, 5, 0)).toEqual([0, 1, 2, 3, 4]);
    expect(new Set(diverseOf(labs, scores, 500, 0.5)).size).toBe(labs.length);
    for (const diversity of [-0.1, 1.1, Number.NaN])
      expect(() => diverseOf(labs, scores, 3, diversity)).toThrow(RangeError);
  });
});
