import { dimensionChoices } from '@enfilade/records/dimension-choices';
import type { Axis, DimensionPart, DimensionReading } from '@enfilade/records/dimension-reading';
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { outerSizeOf } from '@enfilade/records/outer-size';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

/** Millimetres of one part, axis by axis. */
type Sizes = { readonly [axis in Axis]?: number | null };

function sizesOf(part: DimensionPart | undefined): Sizes {
  const { extent: _, ...axes } = part ?? { extent: '' };
  return Object.fromEntries(Object.entries(axes).map(([axis, measure]) => [axis, measure.mm]));
}

function partOf(reading: DimensionReading, extent: string): Sizes {
  return sizesOf(reading.parts.find((part) => part.extent === extent));
}

// Worked table of the ways registrars write sizes; canonical in mm, height × width × depth.
const TABLE: readonly (readonly [
  row: number,
  text: string,
  parts: { readonly [extent: string]: Sizes },
  issues?: readonly string[],
])[] = [
  [1, '24 1/2 x 36 in. (62.2 x 91.4 cm)', { overall: { height: 622.3, width: 914.4 } }],
  [2, '62.2 × 91.4 cm', { overall: { height: 622, width: 914 } }],
  [
    3,
    'H. 14 3/8 in. (36.5 cm); W. 9 in. (22.9 cm); D. 7 1/4 in. (18.4 cm)',
    { overall: { height: 365.125, width: 228.6, depth: 184.15 } },
  ],
  [4, '34 × 21 × 19 1/2 in.', { overall: { height: 863.6, width: 533.4, depth: 495.3 } }],
  [5, 'Diam. 11 5/8 in. (29.5 cm)', { overall: { diameter: 295.275 } }],
  [6, 'H. 9 1/2 in.; Diam. of base 4 3/4 in.', { overall: { height: 241.3 }, base: { diameter: 120.65 } }],
  [
    7,
    'Unframed: 18 × 24 in.; framed: 25 1/4 × 31 1/4 × 2 1/2 in.',
    { unframed: { height: 457.2, width: 609.6 }, framed: { height: 641.35, width: 793.75, depth: 63.5 } },
  ],
  [
    8,
    'Image: 7 3/4 × 9 5/8 in.; sheet: 11 × 14 in.',
    { image: { height: 196.85, width: 244.475 }, sheet: { height: 279.4, width: 355.6 } },
  ],
  [9, 'Sight: 12 × 9 1/2 in.', { sight: { height: 304.8, width: 241.3 } }, ['sight size']],
  [
    10,
    'Overall: 96 × 48 × 3 in. (243.8 × 121.9 × 7.6 cm)',
    { overall: { height: 2438.4, width: 1219.2, depth: 76.2 } },
  ],
  [11, 'each: 10 × 8 in. (25.4 × 20.3 cm)', { overall: { height: 254, width: 203.2 } }],
  [12, 'Set of 12, each approx. 10 1/2 × 3 3/4 in.', { overall: { height: 266.7, width: 95.25 } }],
  [13, 'Pair, each H. 12 in.', { overall: { height: 304.8 } }],
  [
    14,
    'a: 8 × 5 × 5 in.; b: 3 × 4 × 4 in.',
    { a: { height: 203.2, width: 127, depth: 127 }, b: { height: 76.2, width: 101.6, depth: 101.6 } },
  ],
  [
    15,
    'with lid: H. 10 1/4 in.; without lid: H. 7 7/8 in.',
    { 'with lid': { height: 260.35 }, 'without lid': { height: 200.025 } },
  ],
  [16, 'Dimensions variable', {}],
  [17, 'Approx. 150 × 200 cm (irregular)', { overall: { height: 1500, width: 2000 } }],
  [18, '5 ft. 4 in. × 3 ft. 2 1/2 in.', { overall: { height: 1625.6, width: 977.9 } }],
  [19, '6\'2" x 3\'11"', { overall: { height: 1879.6, width: 1193.8 } }],
  [20, 'H 1200 x W 450 x D 300 mm', { overall: { height: 1200, width: 450, depth: 300 } }],
  [21, '20.3–25.4 cm high (8–10 in.)', { overall: { height: 203 } }],
  [22, 'H. 7½ in.', { overall: { height: 190.5 } }],
  [23, '12,5 x 8,0 cm', { overall: { height: 125, width: 80 } }],
  [24, '1.83 m × 2.44 m', { overall: { height: 1830, width: 2440 } }],
  [25, 'L. 108 in., W. 54 in.; repeat 27 in.', { overall: { length: 2743.2, width: 1371.6, repeat: 685.8 } }],
  [26, '40 × 30 × 30 in.; 80 lb. (36.3 kg)', { overall: { height: 1016, width: 762, depth: 762 } }],
  [27, '24 × 36 in. (61 × 81.4 cm)', { overall: { height: 609.6, width: 914.4 } }, ['systems disagree']],
  [28, '30 x 40', { overall: { height: null, width: null } }, ['unit unknown', 'unit unknown']],
  [29, 'W 20 × H 16 in.', { overall: { height: 406.4, width: 508 } }],
  [
    30,
    'H. 36 in.; shade: Diam. 16 in.; drop 48 in.',
    { overall: { height: 914.4, drop: 1219.2 }, shade: { diameter: 406.4 } },
  ],
];

describe('reference: dimension strings as registrars write them (worked table of trade conventions)', () => {
  const table = TABLE.map(([row, text, parts, issues = []]) => ({ row, text, parts, issues }));

  test.each(table)('reference: row $row: $text', ({ text, parts, issues }) => {
    const reading = dimensionsFrom(text);
    expect(reading.parts.map(({ extent }) => extent)).toEqual(Object.keys(parts));
    for (const [extent, sizes] of Object.entries(parts)) expect(partOf(reading, extent)).toEqual(sizes);
    expect(reading.issues.map(({ kind }) => kind)).toEqual(issues);
    expect(reading.written).toBe(text);
  });

  test('reference: what the table says beside the sizes', () => {
    expect(dimensionsFrom('each: 10 × 8 in.').perItem).toBe(true);
    expect(dimensionsFrom('Set of 12, each approx. 10 1/2 × 3 3/4 in.')).toMatchObject({
      quantity: 12,
      approximate: true,
    });
    expect(dimensionsFrom('Pair, each H. 12 in.')).toMatchObject({ quantity: 2, perItem: true });
    expect(dimensionsFrom('Dimensions variable').variable).toBe(true);
    expect(dimensionsFrom('Approx. 150 × 200 cm (irregular)')).toMatchObject({ approximate: true, irregular: true });
    expect(dimensionsFrom('20.3–25.4 cm high (8–10 in.)').parts[0]?.height?.maxMm).toBe(254);
    expect(dimensionsFrom('40 × 30 × 30 in.; 80 lb. (36.3 kg)').weight?.kg).toBeCloseTo(36.287, 3);
    expect(dimensionsFrom('24 × 36 in. (61 × 81.4 cm)').parts[0]?.width?.conflictMm).toBe(814);
  });
});

describe('words and figures museums really write', () => {
  // From the odd shapes of open data; figures changed, so nothing of the data is copied here.
  test('story: what is measured is kept before `each`, and unconfirmed sizes are approximate', () => {
    expect(partOf(dimensionsFrom('image, each: 110 x 230 mm'), 'image')).toEqual({ height: 110, width: 230 });
    expect(partOf(dimensionsFrom('frame, each: 276 x 277 x 10 mm'), 'framed')).toEqual({
      height: 276,
      width: 277,
      depth: 10,
    });
    expect(dimensionsFrom('unconfirmed: 360 x 480 mm')).toMatchObject({ approximate: true, issues: [] });
    expect(partOf(dimensionsFrom('confirmed: 34 x 49 mm'), 'overall')).toEqual({ height: 34, width: 49 });
    expect(dimensionsFrom('Overall display dimensions variable')).toMatchObject({ variable: true, issues: [] });
  });

  test('story: several things are counted, the parts of one thing are told apart', () => {
    expect(dimensionsFrom('two panels, each 30 x 40 cm')).toMatchObject({ quantity: 2, perItem: true, issues: [] });
    const album = dimensionsFrom('24 sheets, 30 x 40 cm');
    expect(album).toMatchObject({ partCount: 24, issues: [] });
    expect(album.quantity).toBeUndefined();
    expect(dimensionsFrom('duration: 8min, 11sec\n30 x 40 cm')).toMatchObject({ duration: 'duration: 8min, 11sec' });
  });

  test('story: thousands that can be read one way are read, those that can be read two ways are told', () => {
    expect(partOf(dimensionsFrom('1,234.5 x 1.234,5 mm'), 'overall')).toEqual({ height: 1234.5, width: 1234.5 });
    expect(partOf(dimensionsFrom('1.250 m x 0.125 in.'), 'overall')).toEqual({ height: 1250, width: 3.175 });
    // No size is stated to the thousandth of a millimetre after a comma; the second system may say which it is.
    expect(partOf(dimensionsFrom('1,250 x 2,000 mm'), 'overall')).toEqual({ height: 1250, width: 2000 });
    expect(partOf(dimensionsFrom('H 1.250 mm (49 1/4 in.)'), 'overall')).toEqual({ height: 1250 });
    for (const text of ['1.250 x 30 mm', '1,250 x 30 cm', '1,250 in. x 30 in.']) {
      expect(partOf(dimensionsFrom(text), 'overall').height).toBeNull();
      expect(dimensionsFrom(text).issues.length).toBe(1);
    }
    expect(dimensionsFrom('1,250 lb').weight).toBeUndefined();
    expect(dimensionsFrom('1,250 lb').issues.length).toBe(1);
  });
});

describe('labels and orders', () => {
  const sizes = (text: string) =>
    Object.fromEntries(dimensionsFrom(text).parts.map((part) => [part.extent, sizesOf(part)]));

  test('story: a frame that travels is not the frame that hangs', () => {
    for (const label of ['Transit Frame', 'frame (carry frame)', 'travelling frame', 'packed (in transit frame)']) {
      const reading = dimensionsFrom(`support: 94 x 174 cm\n${label}: 110 x 190 x 20 cm`);
      expect(outerSizeOf({ dimensions: reading })).toMatchObject({ basis: 'support', heightMm: 940, widthMm: 1740 });
    }
    expect(Object.keys(sizes('frame (Half Royal): 31 x 44 cm'))).toEqual(['framed']);
    expect(dimensionsFrom('frame 2: 31 x 44 cm')).toMatchObject({ issues: [{ kind: 'not understood' }] });
  });

  test('story: an order that is stated is kept, before or after the figures', () => {
    const wide = { overall: { width: 300, height: 400 } };
    for (const text of ['30 x 40 cm (W x H)', '(W x H) 30 x 40 cm', 'W × H: 30 × 40 cm', '30 x 40 cm W x H']) {
      expect(sizes(text)).toEqual(wide);
      expect(dimensionsFrom(text).issues).toEqual([]);
    }
    for (const text of ['30 (W) x 40 (H) cm', '(W) 30 x (H) 40 cm', 'W: 30 cm x H: 40 cm', '30 W x 40 H cm']) {
      expect(sizes(text)).toEqual(wide);
    }
    expect(sizes('H: 40 cm x W: 30 cm')).toEqual({ overall: { height: 400, width: 300 } });
    expect(dimensionsFrom('30 x 40 x 50 cm (W x H)').issues).toMatchObject([{ kind: 'not understood' }]);
  });

  test('story: German and French labels, accents composed or not', () => {
    for (const height of ['Höhe', 'Höhe'.normalize('NFD'), 'Hauteur']) {
      expect(sizes(`${height}: 36 cm`)).toEqual({ overall: { height: 360 } });
    }
    expect(sizes('Höhe: 58 mm Breite: 92 mm, Tiefe 4 mm')).toEqual({ overall: { height: 58, width: 92, depth: 4 } });
    expect(sizes('Hauteur 30 cm, Largeur 40 cm, Profondeur 5 cm')).toEqual({
      overall: { height: 300, width: 400, depth: 50 },
    });
    expect(sizes('H 38,5 x B 24 x T 10 cm')).toEqual({ overall: { height: 385, width: 240, depth: 100 } });
    expect(sizes('sans cadre : 30 x 40 cm ; avec cadre : 50 x 60 cm')).toEqual({
      unframed: { height: 300, width: 400 },
      framed: { height: 500, width: 600 },
    });
    expect(sizes('Rahmen: 50 x 60 cm; Blatt: 30 x 40 cm')).toMatchObject({ framed: {}, sheet: {} });
  });

  test('story: a word after the figures says what was measured', () => {
    for (const text of [
      '61 x 91 cm unframed',
      '61 x 91 cm, unframed',
      '61 x 91 cm; unframed',
      '61 x 91 cm (unframed)',
    ]) {
      expect(sizes(text)).toEqual({ unframed: { height: 610, width: 910 } });
      expect(dimensionsFrom(text).issues).toEqual([]);
    }
    const both = { framed: { height: 900, width: 700 }, unframed: { height: 800, width: 600 } };
    for (const text of [
      'framed 90 x 70 cm, unframed 80 x 60 cm',
      '90 x 70 cm framed, 80 x 60 cm unframed',
      '90 x 70 cm (framed) 80 x 60 cm (unframed)',
      'Framed\n90 x 70 cm\nUnframed\n80 x 60 cm',
    ]) {
      expect(sizes(text)).toEqual(both);
    }
    expect(sizes('80 x 60 cm (framed: 90 x 70 cm)')).toMatchObject({
      overall: { height: 800 },
      framed: { height: 900 },
    });
  });

  test('story: a unit closes its own list and no other', () => {
    const split = dimensionsFrom('framed: 30 x 40; unframed: 20 x 30 cm');
    expect(partOf(split, 'framed')).toEqual({ height: null, width: null });
    expect(partOf(split, 'unframed')).toEqual({ height: 200, width: 300 });
    expect(split.issues.map(({ kind }) => kind)).toEqual(['unit unknown', 'unit unknown']);
    for (const text of ['H 40, W 30, D 20 cm', 'H. 40; W. 30; D. 20 cm', 'H: 40, W: 30, D: 20 (cm)']) {
      expect(sizes(text)).toEqual({ overall: { height: 400, width: 300, depth: 200 } });
    }
    expect(sizes('Dimensions (cm): 30 x 40')).toEqual({ overall: { height: 300, width: 400 } });
    expect(partOf(dimensionsFrom('30 cm x 40'), 'overall')).toEqual({ height: 300, width: null });
  });

  test('story: an extent stated twice is two parts, told, and drawn at the larger', () => {
    const reading = dimensionsFrom('image: 10 x 20 cm; image: 30 x 40 cm');
    expect(reading.parts.map(sizesOf)).toEqual([
      { height: 100, width: 200 },
      { height: 300, width: 400 },
    ]);
    expect(reading.issues.map(({ kind }) => kind)).toEqual(['said twice']);
    expect(outerSizeOf({ dimensions: reading })).toMatchObject({ heightMm: 300, widthMm: 400, certain: false });
  });

  test('story: the second system may be rounded, on a line of its own, or wrong', () => {
    for (const text of ['24 x 36 in. (61 x 91 cm)', '24 x 36 in.\n61 x 91.4 cm', '24 x 36 in. / 61 x 91 cm']) {
      expect(dimensionsFrom(text)).toMatchObject({ parts: [{ height: { mm: 609.6 } }], issues: [] });
    }
    expect(dimensionsFrom('24 × 36 in.\n61 × 81.4 cm').issues).toMatchObject([{ kind: 'systems disagree' }]);
    expect(dimensionsFrom('24 x 36 in. (26 x 38 in.)').issues).toMatchObject([{ kind: 'not understood' }]);
  });
});

describe('outer size', () => {
  const outer = (dimensions: string, framed?: string) =>
    outerSizeOf({ dimensions: dimensionsFrom(dimensions), ...(framed ? { framed: dimensionsFrom(framed) } : {}) });

  test('story: framed is taken before unframed, whichever column it stands in', () => {
    expect(outer('66 × 86 cm', '76 × 96 × 6 cm')).toMatchObject({
      heightMm: 760,
      widthMm: 960,
      depthMm: 60,
      basis: 'framed',
      certain: true,
    });
    expect(outer('Unframed: 18 × 24 in.; framed: 25 1/4 × 31 1/4 × 2 1/2 in.')).toMatchObject({
      heightMm: 641.35,
      basis: 'framed',
    });
  });

  test('story: without a unit, or while two systems disagree, there is no size', () => {
    expect(outer('30 x 40')).toBeNull();
    expect(outer('24 × 36 in. (61 × 81.4 cm)')).toBeNull();
    expect(outer('a large thing')).toBeNull();
  });

  test('story: sight, image and approximate sizes are drawn but not certain', () => {
    expect(outer('Sight: 12 × 9 1/2 in.')).toMatchObject({ basis: 'sight', certain: false });
    expect(outer('Approx. 150 × 200 cm')).toMatchObject({ certain: false });
  });

  test('story: a framed size that cannot be read, or a size said twice, leaves what stands in for it unsure', () => {
    expect(outer('Unframed: 53 × 64 cm; framed: 73 × 84')).toMatchObject({ basis: 'unframed', certain: false });
    expect(outer('53 × 64 cm', '73 × 84')).toMatchObject({ basis: 'overall', certain: false });
    expect(outer('53 × 64 cm; overall: 20 × 30 cm')).toMatchObject({ heightMm: 530, certain: false });
  });

  test('story: a round thing is as wide as its diameter', () => {
    expect(outer('Diam. 44 cm')).toMatchObject({ heightMm: 440, widthMm: 440 });
    expect(outer('H. 20 cm; Diam. 12 cm')).toMatchObject({ heightMm: 200, widthMm: 120, depthMm: 120 });
  });
});

describe('anything typed', () => {
  test('law: no text throws, and every digit is in a part, a quantity, a weight or an issue', () => {
    const piece = fc.constantFrom(
      '12',
      '3 1/2',
      'cm',
      'in.',
      'x',
      '×',
      '(',
      ')',
      'H.',
      'Diam.',
      'framed:',
      ';',
      ',',
      '???',
      'Ø',
      '\n',
      '1,234',
      'kg',
      'each',
      'set of',
      '½',
      "5'",
      '-',
      '/',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.array(piece, { maxLength: 14 }).map((parts) => parts.join(' ')),
          fc.string(),
        ),
        (text) => {
          const reading = dimensionsFrom(text);
          expect(reading.written).toBe(text);
          const told =
            JSON.stringify(reading.issues) +
            JSON.stringify(reading.parts) +
            JSON.stringify(reading.weight ?? '') +
            String(reading.quantity ?? '');
          if (/12/.test(text) && !/\d{3,}|\d[,. ]\d|12\s*[-–]|[/½]/.test(text)) expect(told).toMatch(/12/);
        },
      ),
      { seed: 11, numRuns: 2000 },
    );
  });

  test('law: a text of any length is read in its first four thousand characters', () => {
    for (const piece of ['(', '1 (cm)', '1 in (', '½', 'h1 b', 'frame, ', 'each ', '<a', '1,', '1/', '-']) {
      const long = piece.repeat(20_000);
      const { parts, issues } = dimensionsFrom(long);
      expect(parts).toEqual(dimensionsFrom(long.slice(0, 4000)).parts);
      expect(issues.at(-1)?.what).toMatch(/Too long/);
    }
  });

  test('law: what two choices of a conflict say reads back without one', () => {
    const inches = fc.integer({ min: 4, max: 90 });
    fc.assert(
      fc.property(inches, inches, fc.integer({ min: 10, max: 400 }), (height, width, offMm) => {
        const cm = (value: number) => (value / 10).toFixed(1);
        const text = `${height} x ${width} in. (${cm(height * 25.4)} x ${cm(width * 25.4 + offMm)} cm)`;
        const [first, second] = dimensionChoices(dimensionsFrom(text));
        expect(partOf(dimensionsFrom(first ?? ''), 'overall')).toEqual(
          partOf(dimensionsFrom(`${height} x ${width} in.`), 'overall'),
        );
        const other = partOf(dimensionsFrom(second ?? ''), 'overall');
        expect(Math.abs((other.width ?? 0) - (width * 25.4 + offMm))).toBeLessThanOrEqual(1);
        expect(dimensionsFrom(second ?? '').issues).toEqual([]);
      }),
      { seed: 9 },
    );
  });

  test('law: a number without a unit never becomes millimetres', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 999 }), { minLength: 1, maxLength: 3 }), (numbers) => {
        for (const part of dimensionsFrom(numbers.join(' x ')).parts) {
          for (const mm of Object.values(sizesOf(part))) expect(mm).toBeNull();
        }
      }),
      { seed: 5 },
    );
  });
});
