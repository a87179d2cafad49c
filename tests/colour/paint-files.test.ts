import { paintsFromCgats } from '@enfilade/colour/cgats';
import { toCgats } from '@enfilade/colour/cgats-out';
import { type FileElement, paintsFromCxf } from '@enfilade/colour/cxf';
import { paintsFromCsv, toDeckCsv } from '@enfilade/colour/deck-csv';
import { numberFrom, type PaintFile } from '@enfilade/colour/paint-file';
import { type MeasuredPaint, paintColourOf } from '@enfilade/colour/paints';
import { wavelengthOf } from '@enfilade/colour/wavelengths';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tableText } from './tables.ts';

const D65_2 = { illuminant: 'D65', observer: '2°' } as const;

const text = fc
  .string({ minLength: 1, maxLength: 30, unit: 'grapheme' })
  .map((drawn) => drawn.replace(/\s+/g, ' ').trim())
  .filter((drawn) => drawn !== '' && !/\p{Cc}/u.test(drawn));
const share = fc.double({ min: 0, max: 1, noNaN: true }).map((value) => Math.abs(value));
const real = (most: number, least = -most) =>
  fc.double({ min: least, max: most, noNaN: true }).map((value) => value + 0);
const lab = fc.record({
  L: real(100, 0),
  a: real(128),
  b: real(128),
  illuminant: fc.constantFrom('A', 'C', 'D50', 'D65', 'F11'),
  observer: fc.constantFrom('2°', '10°'),
});
const reflectance = fc
  .constantFrom([380, 10, 36], [400, 10, 31], [360, 10, 39], [380, 5, 81], [400, 20, 16])
  .chain(([startNm = 0, stepNm = 0, length = 0]) =>
    fc.record({
      startNm: fc.constant(startNm),
      stepNm: fc.constant(stepNm),
      // A table of reflectances is told from one of per cents by its highest values.
      values: fc.array(share, { minLength: length, maxLength: length }),
    }),
  );
const paint: fc.Arbitrary<MeasuredPaint> = fc
  .record(
    { name: text, code: text, lab, reflectance, lrv: real(100, 0), sheen: text, measured: text, instrument: text },
    { requiredKeys: ['name'] },
  )
  .filter((drawn) => drawn.lab !== undefined || drawn.reflectance !== undefined) as fc.Arbitrary<MeasuredPaint>;

describe('out and in again', () => {
  test('law: any deck written as CSV reads back alike, without issues', () => {
    fc.assert(
      fc.property(fc.array(paint, { minLength: 1, maxLength: 12 }), (paints) => {
        expect(paintsFromCsv(toDeckCsv(paints), { file: 'deck.csv' })).toMatchObject({ paints, issues: [] });
      }),
      { numRuns: 150, seed: 41 },
    );
  });

  test('law: any deck written as CGATS reads back alike, in order, without issues', () => {
    fc.assert(
      fc.property(fc.array(paint, { minLength: 1, maxLength: 12 }), (paints) => {
        expect(paintsFromCgats(toCgats(paints, 'Overwick Museum'), { file: 'deck.txt' })).toMatchObject({
          paints,
          issues: [],
        });
      }),
      { numRuns: 150, seed: 42 },
    );
  });
});

describe('CSV decks', () => {
  test('story: a maker’s deck with semicolons, decimal commas and the white point in its headings', () => {
    const deck =
      'Colour name;Ref.;L* (D65/10°);a* (D65/10°);b* (D65/10°);LRV;Finish\nSluice green;OV 12;33,1;-25;-4;7,6 %;matt\n';
    expect(paintsFromCsv(deck, { file: 'weir.csv' })).toMatchObject({
      paints: [
        {
          name: 'Sluice green',
          code: 'OV 12',
          lab: { L: 33.1, a: -25, b: -4, illuminant: 'D65', observer: '10°' },
          lrv: 7.6,
          sheen: 'matt',
        },
      ],
      issues: [],
    });
  });

  test('story: a reader’s table in per cent, columns out of order, is the same as shares', () => {
    const nms = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
    const inPerCent = (order: number[]) =>
      `name,${order.map((nm) => `R${nm}`).join(',')}\nweld,${order.map((nm) => (nm - 380) / 5).join(',')}\n`;
    const straight = paintsFromCsv(inPerCent(nms), { file: 'r.csv' });
    expect(straight.issues).toEqual([]);
    expect(straight.paints[0]?.reflectance?.values[30]).toBeCloseTo(0.64, 12);
    const backwards = paintsFromCsv(inPerCent([...nms].reverse()), { file: 'r.csv' });
    expect([backwards.paints, backwards.issues]).toEqual([straight.paints, []]);
  });

  const bad: [string, string, string, RegExp, number][] = [
    [
      'a value that is no number',
      'name,L,a,b,illuminant,observer\nx,fifty,0,0,D65,2\ny,50,0,0,D65,2',
      'd.csv, line 2, L*',
      /not a number/,
      1,
    ],
    [
      'L* out of range',
      'name,L,a,b,illuminant,observer\nx,101,0,0,D65,2\ny,50,0,0,D65,2',
      'd.csv, line 2, L*',
      /outside 0 to 100/,
      1,
    ],
    [
      'a* out of range',
      'name,L,a,b,illuminant,observer\ny,50,0,0,D65,2\n\nx,50,-400,0,D65,2',
      'd.csv, line 4, a*',
      /outside -170 to 170/,
      1,
    ],
    [
      'a missing b*',
      'name,L,a,b,illuminant,observer\nx,50,0,,D65,2\ny,50,0,0,D65,2',
      'd.csv, line 2, b*',
      /missing/,
      1,
    ],
    ['no white point', 'name,L,a,b\nx,50,0,0', 'd.csv, line 2, white point', /does not say/, 0],
    [
      'an unknown illuminant',
      'name,L,a,b,illuminant,observer\nx,50,0,0,Q9,2\ny,50,0,0,D65,2',
      'd.csv, line 2, white point',
      /not known/,
      1,
    ],
    ['an LRV over 100', 'name,L,a,b,illuminant,observer,lrv\nx,50,0,0,D65,2,140', 'd.csv, line 2, LRV', /0 to 100/, 1],
    ['no name', 'name,L,a,b,illuminant,observer\n,50,0,0,D65,2', 'd.csv, line 2, name', /neither a name/, 1],
    ['no columns', 'name,price\nx,3', 'd.csv, line 1', /No columns/, 0],
  ];
  test.each(bad)('story: %s is told with its place, and the rest is read', (_, csv, where, what, left) => {
    const { paints, issues } = paintsFromCsv(csv, { file: 'd.csv' });
    expect(paints).toHaveLength(left);
    expect(issues[0]).toMatchObject({ where, what: expect.stringMatching(what) });
  });

  const nms = Array.from({ length: 36 }, (_, i) => 380 + 10 * i);
  const spectralCsv = (values: (number | string)[]) =>
    `name,L*,a*,b*,illuminant,observer,${nms.map((nm) => `${nm} nm`).join(',')}\nx,50,0,0,D65,2,${values.join(',')}\n`;
  test.each([
    ['over 1', 12, '1.2', 'd.csv, line 2, 500 nm', /over 1/],
    ['under 0', 12, '-0.1', 'd.csv, line 2, 500 nm', /under 0/],
    ['no number', 12, 'n/a', 'd.csv, line 2, 500 nm', /not a number/],
    ['missing within', 12, '', 'd.csv, line 2, reflectance', /not even after 490 nm/],
  ] as const)('story: reflectance %s leaves the L*a*b* standing', (_, at, value, where, what) => {
    const values: (number | string)[] = Array(36).fill(0.2);
    values[at] = value;
    const { paints, issues } = paintsFromCsv(spectralCsv(values), { file: 'd.csv' });
    expect(paints).toEqual([{ name: 'x', lab: { L: 50, a: 0, b: 0, ...D65_2 } }]);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ where, what: expect.stringMatching(what) });
  });

  test('story: illuminant and observer in one column, and a name in quotes over two lines', () => {
    const { paints, issues } = paintsFromCsv('name,L,a,b,white point\n"High\nwater",50,10,0,D50/10°', {
      file: 'd.csv',
    });
    expect(issues).toEqual([]);
    expect(paints).toEqual([{ name: 'High water', lab: { L: 50, a: 10, b: 0, illuminant: 'D50', observer: '10°' } }]);
  });

  test('story: a person’s word stands in where the file says no white point, and is kept as such', () => {
    const { paints } = paintsFromCsv('name,L,a,b\nx,50,10,0', {
      file: 'd.csv',
      assume: { illuminant: 'D50', observer: '2°' },
    });
    expect(paintColourOf(paints[0]!).how).toBe('measured under D50/2°, adapted to D65/2° by CAT16');
  });
});

describe('CGATS', () => {
  test('reference: the 24 patches of ColorChecker.cie once a person says that it is D50/2°', () => {
    const file = tableText('ColorChecker.cie');
    expect(paintsFromCgats(file, { file: 'cc' }).paints).toEqual([]);
    const { paints, issues } = paintsFromCgats(file, { file: 'cc', assume: { illuminant: 'D50', observer: '2°' } });
    expect(issues).toEqual([]);
    expect(paints).toHaveLength(24);
    expect(paints[2]).toMatchObject({ name: 'A03', lab: { L: 49.93, a: -4.88, b: -21.93 } });
  });

  test('reference: the 15 test colour samples as colord writes them, 360–830 nm', () => {
    const { paints } = paintsFromCgats(tableText('CIE-TCS.sp'), { file: 'tcs' });
    expect(paints).toHaveLength(15);
    expect(paints[0]).toMatchObject({ name: 'TCS01', reflectance: { startNm: 360, stepNm: 5 } });
    expect(paints[0]?.reflectance?.values).toHaveLength(95);
  });

  const head = 'CGATS.17\nWEIGHTING_FUNCTION "ILLUMINANT, D50"\nWEIGHTING_FUNCTION "OBSERVER, 2 degree"\n';
  const format = 'NUMBER_OF_FIELDS 4\nBEGIN_DATA_FORMAT\nSAMPLE_NAME LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n';

  test('story: a reader’s file: weighting in two lines, comments, tabs, two tables', () => {
    const file = `${head}# first\n${format}NUMBER_OF_SETS 1\nBEGIN_DATA\n"Slate ""blue"""\t40\t-2\t-12 # dry\nEND_DATA\nBEGIN_DATA\nWeld 80 -2 60\nEND_DATA\n`;
    const { paints } = paintsFromCgats(file, { file: 'r.txt' });
    expect(paints.map(({ name, lab: found }) => [name, found?.L, found?.illuminant, found?.observer])).toEqual([
      ['Slate "blue"', 40, 'D50', '2°'],
      ['Weld', 80, 'D50', '2°'],
    ]);
  });

  test('story: pairs of wavelength and per cent, as the standard has them', () => {
    const nms = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
    const fields = nms.flatMap(() => ['SPECTRAL_NM', 'SPECTRAL_PCT']).join(' ');
    const data = nms.flatMap((nm) => [nm, 50]).join(' ');
    const file = `CGATS.17\nNUMBER_OF_FIELDS 63\nBEGIN_DATA_FORMAT\nSAMPLE_ID ${fields}\nEND_DATA_FORMAT\nNUMBER_OF_SETS 1\nBEGIN_DATA\nG1 ${data}\nEND_DATA\n`;
    const { paints, issues } = paintsFromCgats(file, { file: 'p.txt' });
    expect(issues).toEqual([]);
    expect(paints).toEqual([{ name: 'G1', reflectance: { startNm: 400, stepNm: 10, values: Array(31).fill(0.5) } }]);
  });

  test('story: a near-black paint in per cent is known by the norm its file states', () => {
    const fields = Array.from({ length: 31 }, (_, i) => `SPEC_${400 + 10 * i}`).join(' ');
    const file = `CGATS.17\nSPECTRAL_NORM "100"\nBEGIN_DATA_FORMAT\nSAMPLE_ID ${fields}\nEND_DATA_FORMAT\nBEGIN_DATA\nsoot ${Array(31).fill(0.5).join(' ')}\nEND_DATA\n`;
    expect(paintsFromCgats(file, { file: 'n.txt' }).paints[0]?.reflectance?.values[0]).toBe(0.005);
  });

  test('story: sets that run over two lines are read by counting', () => {
    const file = `${head}${format}NUMBER_OF_SETS 2\nBEGIN_DATA\nA 50 0\n0\nB 60 1\n1\nEND_DATA\n`;
    expect(paintsFromCgats(file, { file: 'w.txt' }).paints.map(({ name }) => name)).toEqual(['A', 'B']);
  });

  test.each([
    [
      'a row with a field missing',
      `${head}${format}BEGIN_DATA\nA 50 0\nB 50 0 0\nEND_DATA`,
      'c.txt, line 9, LAB_B',
      /3 values where 4/,
      1,
    ],
    [
      'a wrong count of fields',
      `${head}${format.replace('4', '5')}BEGIN_DATA\nB 50 0 0\nEND_DATA`,
      'c.txt, line 7, NUMBER_OF_FIELDS',
      /says 5/,
      1,
    ],
    [
      'a wrong count of sets',
      `${head}${format}NUMBER_OF_SETS 3\nBEGIN_DATA\nB 50 0 0\nEND_DATA`,
      'c.txt, line 10, NUMBER_OF_SETS',
      /says 3 sets and has 1/,
      1,
    ],
    ['no end of the data', `${head}${format}BEGIN_DATA\nB 50 0 0`, 'c.txt, line 9, END_DATA', /no end/, 1],
    [
      'data before its fields',
      'CGATS.17\nBEGIN_DATA\nB 50 0 0\nEND_DATA',
      'c.txt, line 2, BEGIN_DATA_FORMAT',
      /before its fields/,
      0,
    ],
    ['no data', 'CGATS.17\nORIGINATOR "x"', 'c.txt', /No table/, 0],
    [
      'reflectance over 1',
      `CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID ${Array.from({ length: 31 }, (_, i) => `NM_${400 + 10 * i}`).join(' ')}\nEND_DATA_FORMAT\nBEGIN_DATA\nA ${Array(30).fill(0.4).join(' ')} 1.04\nB ${Array(31).fill(0.4).join(' ')}\nEND_DATA`,
      'c.txt, line 6, 700 nm',
      /over 1/,
      1,
    ],
  ] as const)('story: %s is told with its place, and the rest is read', (_, file, where, what, left) => {
    const { paints, issues } = paintsFromCgats(file, { file: 'c.txt' });
    expect(paints).toHaveLength(left);
    expect(issues[0]).toMatchObject({ where, what: expect.stringMatching(what) });
  });
});

const el = (name: string, attributes: Record<string, string>, ...children: (FileElement | string)[]): FileElement => ({
  name,
  attributes,
  children,
});
const labOf = (L: string) =>
  el('ColorCIELab', { ColorSpecification: 'CS1' }, el('L', {}, L), el('A', {}, '-25'), el('B', {}, '-4'));
const spectrumOf = (attributes: Record<string, string>, values: string) =>
  el('ReflectanceSpectrum', { ColorSpecification: 'CS1', ...attributes }, values);
const cxf = (range: Record<string, string>, ...colours: FileElement[][]) =>
  el(
    'CxF',
    {},
    el(
      'Resources',
      {},
      el(
        'ObjectCollection',
        {},
        ...colours.map((values, i) =>
          el(
            'Object',
            { ObjectType: 'Standard', Name: `Reading ${i + 1}`, Id: `${i}` },
            el('CreationDate', {}, '2026-11-02T10:00:00'),
            el('ColorValues', {}, ...values),
          ),
        ),
      ),
      el(
        'ColorSpecificationCollection',
        {},
        el(
          'ColorSpecification',
          { Id: 'CS1' },
          el('TristimulusSpec', {}, el('Illuminant', {}, 'D50'), el('Observer', {}, '2_Degree')),
          el('MeasurementSpec', {}, el('WavelengthRange', range)),
        ),
      ),
    ),
  );
const GOOD = Array(36).fill('0.25').join(' ');

describe('CxF3 (ISO 17972)', () => {
  test('story: a handheld reader’s file: spectrum and L*a*b* by the specification they point at', () => {
    const file = cxf({ StartWL: '380', Increment: '10' }, [spectrumOf({}, GOOD), labOf('33')], [labOf('40')]);
    const { paints, issues } = paintsFromCxf(file, { file: 'r.cxf' });
    expect(issues).toEqual([]);
    expect(paints[0]).toEqual({
      name: 'Reading 1',
      lab: { L: 33, a: -25, b: -4, illuminant: 'D50', observer: '2°' },
      reflectance: { startNm: 380, stepNm: 10, values: Array(36).fill(0.25) },
      measured: '2026-11-02T10:00:00',
    });
    expect(paints[1]?.lab?.L).toBe(40);
  });

  test.each([
    ['no wavelength start', cxf({ Increment: '10' }, [spectrumOf({}, GOOD), labOf('33')]), /start wavelength/, 1],
    ['no step', cxf({ StartWL: '380' }, [spectrumOf({}, GOOD), labOf('33')]), /step/, 1],
    [
      'one value short',
      cxf({ StartWL: '380', Increment: '10' }, [spectrumOf({}, Array(35).fill('0.2').join(' ')), labOf('33')]),
      /35 values from 380 nm by 10 nm end at 720 nm/,
      1,
    ],
    [
      'far too short',
      cxf({ StartWL: '380', Increment: '10' }, [spectrumOf({}, '0.2 0.2'), labOf('33')]),
      /must cover/,
      1,
    ],
    [
      'over 1',
      cxf({ StartWL: '380', Increment: '10' }, [spectrumOf({}, GOOD.replace('0.25', '1.25')), labOf('33')]),
      /over 1/,
      1,
    ],
    ['L* out of range', cxf({ StartWL: '380', Increment: '10' }, [labOf('133')]), /outside 0 to 100/, 0],
    ['no objects', el('CxF', {}), /No Object/, 0],
  ] as const)('story: %s is told with its object, and the rest is read', (_, file, what, left) => {
    const { paints, issues } = paintsFromCxf(file, { file: 'r.cxf' });
    expect(paints).toHaveLength(left);
    expect(issues[0]).toMatchObject({ where: expect.stringContaining('r.cxf'), what: expect.stringMatching(what) });
  });

  test('law: the start may stand with the spectrum itself, and goes before the specification’s', () => {
    const file = cxf({ StartWL: '400', Increment: '10' }, [spectrumOf({ StartWL: '380' }, GOOD)]);
    expect(paintsFromCxf(file, { file: 'r.cxf' }).paints[0]?.reflectance?.startNm).toBe(380);
  });
});

describe('hostile files', () => {
  const sound = ({ paints, issues }: PaintFile): void => {
    for (const each of paints) {
      expect(each.lab !== undefined || each.reflectance !== undefined).toBe(true);
      expect(Number.isFinite(paintColourOf(each).lab.L)).toBe(true);
      for (const value of each.reflectance?.values ?? []) expect(value >= 0 && value <= 1).toBe(true);
    }
    for (const issue of issues)
      expect(Object.values(issue).every((part) => typeof part === 'string' && part.length < 2000)).toBe(true);
  };
  const scrap = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom(
      '\n',
      '\r\n',
      '"',
      ',',
      ';',
      '\t',
      ' ',
      '#',
      'BEGIN_DATA',
      'END_DATA',
      'BEGIN_DATA_FORMAT',
      'END_DATA_FORMAT',
      'SAMPLE_ID',
      'LAB_L',
      'LAB_A',
      'LAB_B',
    ),
    fc.constantFrom(
      'L*',
      'a*',
      'b*',
      'name',
      'SPECTRAL_NM',
      'SPECTRAL_PCT',
      'NM_400',
      'NUMBER_OF_SETS',
      'NUMBER_OF_FIELDS',
      '-1e400',
      '1e-300',
      '50',
      '__proto__',
    ),
  );

  test('law: no text makes the readers throw, and what they read is sound', () => {
    fc.assert(
      fc.property(fc.array(scrap, { maxLength: 80 }), fc.boolean(), (parts, spaced) => {
        const file = parts.join(spaced ? ' ' : '');
        sound(paintsFromCsv(file, { file: 'f', assume: D65_2 }));
        sound(paintsFromCgats(file, { file: 'f', assume: D65_2 }));
      }),
      { numRuns: 1500, seed: 43 },
    );
  });

  test('law: a good file with any stretch cut out or written over still reads soundly', () => {
    const nms = Array.from({ length: 36 }, (_, i) => 380 + 10 * i);
    const good: MeasuredPaint[] = Array.from({ length: 6 }, (_, i) => ({
      name: `Paint ${i}`,
      lab: { L: 10 * i, a: i, b: -i, ...D65_2 },
      reflectance: { startNm: 380, stepNm: 10, values: nms.map((nm) => (nm * (i + 1)) / 8000) },
    }));
    const files = [toDeckCsv(good), toCgats(good, 'x')];
    fc.assert(
      fc.property(fc.constantFrom(0, 1), fc.nat(6000), fc.nat(300), scrap, (which, from, length, over) => {
        const file = files[which]!;
        const broken = file.slice(0, from) + over + file.slice(from + length);
        sound(which === 0 ? paintsFromCsv(broken, { file: 'f' }) : paintsFromCgats(broken, { file: 'f' }));
      }),
      { numRuns: 800, seed: 44 },
    );
  });

  test('law: no element tree makes the CxF reader throw', () => {
    const name = fc.constantFrom(
      'Object',
      'ColorValues',
      'ReflectanceSpectrum',
      'ColorCIELab',
      'L',
      'A',
      'B',
      'ColorSpecification',
      'WavelengthRange',
      'Illuminant',
      'Observer',
    );
    const tree = fc.letrec<{ element: FileElement }>((tie) => ({
      element: fc.record({
        name,
        attributes: fc.dictionary(
          fc.constantFrom('Id', 'Name', 'StartWL', 'Increment', 'ColorSpecification'),
          fc.constantFrom('CS1', '380', '10', '', 'x'),
        ),
        children: fc.array(
          fc.oneof({ maxDepth: 5 }, fc.constantFrom('0.2', GOOD, '50', 'D65', '2_Degree'), tie('element')),
          { maxLength: 4 },
        ),
      }),
    })).element;
    fc.assert(
      fc.property(tree, (root) => sound(paintsFromCxf(root, { file: 'f' }))),
      { numRuns: 1000, seed: 45 },
    );
  });

  test.each(['', ' ', '1.2.3', '0x10', '1e', 'Infinity', '--1', '1,2,3'])('law: "%s" is no number', (drawn) => {
    expect(numberFrom(drawn)).toBeNaN();
  });

  test.each([
    ['SPEC_400', 400],
    ['400 nm', 400],
    ['R400', 400],
    ['NM_380', 380],
    ['SPECTRAL_NM730', 730],
    ['400', 400],
    ['LAB_L', null],
    ['4000', null],
    ['290', null],
  ] as const)('law: "%s" heads wavelength %s', (heading, nm) => {
    expect(wavelengthOf(heading)).toBe(nm);
  });
});

describe('where a paint stands', () => {
  test('story: each paint of a file is told with its line and its text there, whatever was left out between', () => {
    const text =
      'name,L*,a*,b*,illuminant,observer\nWeld,80,-2,60,D50,2°\nTorn,80,x,60,D50,2°\n"Silt, wet",58,2,12,D50,2°\n';
    const { paints, origins } = paintsFromCsv(text, { file: 'deck.csv' });
    expect(paints.map(({ name }) => name)).toEqual(['Weld', 'Silt, wet']);
    expect(origins).toEqual([
      { where: 'line 2', source: 'Weld | 80 | -2 | 60 | D50 | 2°' },
      { where: 'line 4', source: 'Silt, wet | 58 | 2 | 12 | D50 | 2°' },
    ]);
    const cgats = paintsFromCgats(toCgats(paints, 'Overwick Museum'), { file: 'deck.txt' });
    expect(cgats.origins.map(({ source }) => source)).toEqual(['1 Weld 80 -2 60', '2 Silt, wet 58 2 12']);
  });
});
