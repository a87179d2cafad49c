import { colourNameOf } from '@enfilade/colour/colour-words';
import { deltaE2000 } from '@enfilade/colour/differences';
import type { LabD65 } from '@enfilade/colour/lab';
import type { Swatch } from '@enfilade/colour/palette';
import { pictureColoursOf } from '@enfilade/colour/picture-colours';
import { readingOn } from '@enfilade/colour/reading';
import { figureSentencesOf } from '@enfilade/colour/reading-figures';
import { fractionWordsOf } from '@enfilade/colour/reading-reasons';
import { DEFAULT_THRESHOLDS, thresholdsFrom } from '@enfilade/colour/reading-thresholds';
import { hueDegreesOf } from '@enfilade/colour/spaces';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COPPER, drawn, HANGING, OIL_VIEW, PEAR_BLOCK, SAFFRON, VERDIGRIS, WELD } from './samples.ts';

const WORDS = ['lost', 'weak', 'holds', 'carries'];
const rankOf = (word: string) => WORDS.indexOf(word);

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lab = fc.record({ L: real(0, 100), a: real(-70, 70), b: real(-70, 70) });
const swatches = fc.array(fc.record({ lab, share: real(0.01, 1) }), { minLength: 1, maxLength: 6 });
const plain = (colour: LabD65) => ({ body: [{ lab: colour, share: 1 }], edge: [{ lab: colour, share: 1 }] });

describe('readingOn, people in a scene', () => {
  test('story: the oil view is lost on verdigris, and a curator reads why', () => {
    const reading = readingOn(pictureColoursOf(OIL_VIEW), VERDIGRIS);
    expect(reading.word).toBe('lost');
    expect(reading.reason).toBe(
      "Two thirds of it is the wall's own green, and the edge is as dark. Only the greyed green parts them.",
    );
    expect(reading.patchName).toMatch(/green$/);
    expect(reading.shareWithin10).toBeGreaterThan(0.55);
  });

  test('story: repainted in weld the same view carries', () => {
    const reading = readingOn(pictureColoursOf(OIL_VIEW), WELD);
    expect(reading.word).toBe('carries');
    expect(reading.reason).toMatch(/^It stands clear of the wall, much darker/);
    expect(reading.body.deltaL).toBeLessThan(-30);
    expect(reading.shareWithin10).toBe(0);
  });

  test('story: the hanging of red, blue, cream and yellow carries on verdigris', () => {
    expect(readingOn(pictureColoursOf(HANGING), VERDIGRIS).word).toBe('carries');
  });

  test('story: pear-wood blocks hold or carry on verdigris, copper is weaker on saffron', () => {
    expect(['holds', 'carries']).toContain(readingOn(pictureColoursOf(PEAR_BLOCK), VERDIGRIS).word);
    expect(['weak', 'holds']).toContain(readingOn(pictureColoursOf(COPPER), SAFFRON).word);
  });

  test('story: a picture of the wall’s own colour in a pale frame is weak, and the frame is named as what parts it', () => {
    const gilt = { L: 72, a: 4, b: 42 };
    const picture = drawn(100, 100, (x, y) => (Math.min(x, y, 99 - x, 99 - y) < 6 ? gilt : VERDIGRIS), 2);
    const reading = readingOn(pictureColoursOf(picture), VERDIGRIS);
    expect(reading.word).toBe('weak');
    expect(reading.reason).toMatch(/^All of it is the wall's own green\. Only the .*yellow edge parts them\.$/);
  });

  test('story: a dark frame melts into a dark wall although the picture in it is pale', () => {
    const colours = {
      body: [{ lab: { L: 86, a: 2, b: 16 }, share: 1 }],
      edge: [{ lab: { L: 22, a: 3, b: 3 }, share: 1 }],
    };
    const reading = readingOn(colours, { L: 20, a: 1, b: 1 });
    expect(reading.word).toBe('weak');
    expect(reading.reason).toBe(
      "The dark grey edge melts into the wall's dark grey. What stands off is the cream inside it.",
    );
  });
});

describe('readingOn, laws', () => {
  test('law: a thing painted exactly the wall’s colour is lost, whatever the colour', () => {
    fc.assert(
      fc.property(lab, (colour) => {
        const reading = readingOn(plain(colour), colour);
        expect(reading.word).toBe('lost');
        expect(reading.reason).toMatch(/^All of it is .* and the edge is the same\. Nothing parts them\.$/);
        expect(reading.body).toMatchObject({ deltaE: 0, deltaL: 0, deltaC: 0 });
      }),
      { numRuns: 500, seed: 41 },
    );
  });

  test('law: as the wall goes away from a single-coloured thing in lightness, the word never worsens', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(lab, fc.boolean(), (colour, up) => {
        let rank = 0;
        for (let wallL = colour.L; wallL >= 0 && wallL <= 100; wallL += up ? 0.5 : -0.5) {
          const { word } = readingOn(plain(colour), { ...colour, L: wallL });
          expect(rankOf(word)).toBeGreaterThanOrEqual(rank);
          rank = rankOf(word);
          seen.add(word);
        }
      }),
      { numRuns: 200, seed: 42 },
    );
    expect([...seen].sort()).toEqual([...WORDS].sort());
  });

  test('law: the order of swatches does not matter, nor do shares that add up to something else', () => {
    fc.assert(
      fc.property(swatches, swatches, lab, (body, edge, wall) => {
        const reading = readingOn({ body, edge }, wall);
        expect(readingOn({ body: [...body].reverse(), edge: [...edge].reverse() }, wall)).toEqual(reading);
        const doubled = (list: Swatch[]) => list.map((swatch) => ({ ...swatch, share: swatch.share * 2 }));
        expect(readingOn({ body: doubled(body), edge: doubled(edge) }, wall)).toEqual(reading);
      }),
      { numRuns: 1_000, seed: 43 },
    );
  });

  test('law: a reason is one or two sentences without figures, per cents or a ruling', () => {
    const said = new Set<string>();
    fc.assert(
      fc.property(swatches, swatches, lab, (body, edge, wall) => {
        const { word, reason, patchName } = readingOn({ body, edge }, wall);
        said.add(word);
        expect(reason).not.toMatch(/\d|%|should|must|undefined|NaN/i);
        expect(reason).toMatch(/^[A-Z][^.]+\.( [A-Z][^.]+\.)?$/);
        expect(patchName.length).toBeGreaterThan(2);
      }),
      { numRuns: 3_000, seed: 44 },
    );
    expect(said.has('holds') && said.has('weak') && said.has('carries')).toBe(true);
  });

  test('law: what is said to part a lost work from its wall is there and stands off, and nothing is when nothing does', () => {
    const said = { only: 0, nothing: 0 };
    fc.assert(
      fc.property(swatches, lab, real(0, 20), (others, wall, off) => {
        // Mostly the wall's own colour, so that lost comes up often.
        const own = { lab: { ...wall, L: Math.min(100, wall.L + off / 2) }, share: 8 };
        const { word, reason } = readingOn({ body: [own, ...others], edge: [own] }, wall);
        if (word !== 'lost') return;
        const total = others.reduce((sum, { share }) => sum + share, own.share);
        const far = [own, ...others].filter(({ lab, share }) => share >= total * 0.05 && deltaE2000(lab, wall) >= 24);
        const parting = reason.split('. ')[1]!;
        if (parting === 'Nothing parts them.') {
          expect(far).toEqual([]);
          said.nothing++;
        } else {
          expect(far.length).toBeGreaterThan(0);
          const named = far.filter(({ lab }) => parting.includes(colourNameOf(lab)));
          expect(named.length === far.length || parting === 'Only its smaller fields part them.').toBe(true);
          said.only++;
        }
      }),
      { numRuns: 2_000, seed: 45 },
    );
    expect(Math.min(said.only, said.nothing)).toBeGreaterThan(20);
  });

  test('law: measures are work minus wall, the weakest edge is the nearest of some length', () => {
    const wall = { L: 40, a: 10, b: 0 };
    const body = [{ lab: { L: 60, a: 0, b: 30 }, share: 1 }];
    const edge = [
      { lab: { L: 80, a: 0, b: 0 }, share: 0.7 },
      { lab: { L: 55, a: 10, b: 0 }, share: 0.2 },
      { lab: wall, share: 0.1 },
    ];
    const reading = readingOn({ body, edge }, wall);
    expect(reading.body.deltaL).toBe(20);
    expect(reading.body.deltaC).toBeCloseTo(20, 12);
    expect(reading.body.deltaH).toBeCloseTo(90, 12);
    expect(reading.edge.deltaL).toBeCloseTo(0.7 * 80 + 0.2 * 55 + 0.1 * 40 - 40, 12);
    expect(reading.weakestEdge.lab).toEqual({ L: 55, a: 10, b: 0 });
    expect(reading.weakestEdge.deltaL).toBe(15);
    expect(reading.patch).toEqual(body[0]!.lab);
  });

  test('law: the hue between takes the short way round, and is left out where one side is grey', () => {
    const at = (degrees: number) => ({
      L: 50,
      a: 30 * Math.cos((degrees * Math.PI) / 180),
      b: 30 * Math.sin((degrees * Math.PI) / 180),
    });
    expect(readingOn(plain(at(10)), at(350)).body.deltaH).toBeCloseTo(20, 9);
    expect(readingOn(plain(at(350)), at(10)).body.deltaH).toBeCloseTo(-20, 9);
    expect(hueDegreesOf(at(350))).toBeCloseTo(350, 9);
    expect(readingOn(plain({ L: 50, a: 0, b: 0 }), at(10)).body).not.toHaveProperty('deltaH');
  });

  test('law: the patch is the largest field of the wall’s own colour, before a nearer small one', () => {
    const wall = { L: 50, a: 0, b: 0 };
    const body = [
      { lab: { L: 90, a: 0, b: 0 }, share: 0.6 },
      { lab: wall, share: 0.1 },
      { lab: { L: 55, a: 0, b: 0 }, share: 0.3 },
    ];
    expect(readingOn({ body, edge: [] }, wall).patch.L).toBe(55);
  });

  test('law: thresholds given are obeyed, a body of nothing is refused', () => {
    const colours = pictureColoursOf(PEAR_BLOCK);
    expect(readingOn(colours, VERDIGRIS, { ...DEFAULT_THRESHOLDS, weakMean: 90 }).word).toBe('weak');
    expect(readingOn(colours, VERDIGRIS, { ...DEFAULT_THRESHOLDS, carriesMean: 90 }).word).toBe('holds');
    expect(() => readingOn({ body: [], edge: [] }, VERDIGRIS)).toThrow(RangeError);
  });

  test('law: a larger share never has a smaller word', () => {
    const words = Array.from({ length: 101 }, (_, i) => fractionWordsOf(i / 100));
    expect(words.filter((word, i) => word !== words[i - 1])).toEqual([
      'a trace',
      'a small part',
      'a quarter',
      'a third',
      'half',
      'two thirds',
      'three quarters',
      'nearly all',
      'all',
    ]);
  });
});

describe('figures behind the words', () => {
  test('story: what the oil view’s fields are to verdigris, in figures that add up', () => {
    const sentences = figureSentencesOf({ ...pictureColoursOf(OIL_VIEW), framed: true }, VERDIGRIS);
    expect(sentences[0]).toMatch(/^The \D+, \d+ % of the surface, lies \d from the wall: the wall's own colour\.$/);
    expect(sentences.at(-1)).toMatch(/^The frame lies \d+ from the wall/);
    const shares = sentences.slice(0, -1).map((sentence) => Number(/(\d+) %/.exec(sentence)![1]));
    const total = shares.reduce((sum, share) => sum + share, 0);
    expect(total).toBeGreaterThan(85);
    expect(total).toBeLessThan(103);
  });

  test('law: each figure is the ΔE00 and the share of a field that is there', () => {
    const wall = { L: 50, a: 0, b: 0 };
    const body = [
      { lab: { L: 70, a: 0, b: 0 }, share: 0.7 },
      { lab: { L: 55, a: 0, b: 0 }, share: 0.28 },
      { lab: { L: 10, a: 0, b: 0 }, share: 0.02 },
    ];
    const edge = [
      { lab: { L: 70, a: 0, b: 0 }, share: 0.8 },
      { lab: { L: 55, a: 0, b: 0 }, share: 0.2 },
    ];
    const [far, near] = [70, 55].map((L) => Math.round(deltaE2000({ L, a: 0, b: 0 }, wall)));
    expect(figureSentencesOf({ body, edge }, wall)).toEqual([
      `The grey, 70 % of the surface, lies ${far} from the wall.`,
      `The grey, 28 % of the surface, lies ${near} from the wall: the wall's own colour.`,
      `The edge lies ${Math.round(0.8 * deltaE2000(edge[0]!.lab, wall) + 0.2 * deltaE2000(edge[1]!.lab, wall))} from the wall, at its nearest ${near}, over 20 % of its length.`,
    ]);
    expect(figureSentencesOf({ body: body.slice(0, 1), edge: [] }, wall)).toHaveLength(1);
    expect(() => figureSentencesOf({ body: [], edge }, wall)).toThrow(RangeError);
  });
});

describe('a show’s own thresholds', () => {
  test('law: what is sound is taken, what is not is told and left as it was', () => {
    expect(thresholdsFrom({})).toEqual({ thresholds: DEFAULT_THRESHOLDS, issues: [] });
    expect(thresholdsFrom({ weakMean: 15, lostShare: 0.5 })).toEqual({
      thresholds: { ...DEFAULT_THRESHOLDS, weakMean: 15, lostShare: 0.5 },
      issues: [],
    });
    const { thresholds, issues } = thresholdsFrom({
      lostShare: 2,
      weakEdge: 'ten',
      carriesRim: Number.NaN,
      glow: 1,
      weakMean: 12,
    });
    expect(thresholds).toEqual({ ...DEFAULT_THRESHOLDS, weakMean: 12 });
    expect(issues.map(({ where }) => where)).toEqual(['lostShare', 'weakEdge', 'carriesRim', 'glow']);
    expect(issues[0]).toEqual({ where: 'lostShare', what: 'A number from 0 to 1 is wanted.', value: 2 });
  });

  test('law: thresholds in which a stronger word asks for less are not taken at all', () => {
    for (const given of [{ carriesMean: 10 }, { carriesEdge: 5 }, { weakShare: 0.9 }, { carriesShare: 0.3 }]) {
      const { thresholds, issues } = thresholdsFrom(given);
      expect(thresholds).toEqual(DEFAULT_THRESHOLDS);
      expect(issues).toHaveLength(1);
    }
  });
});
