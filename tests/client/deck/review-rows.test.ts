import { inOrder, matching } from '@enfilade/client/deck/deck-order';
import { kindOf, paintsFromText } from '@enfilade/client/deck/paint-file-reading';
import { lacksWhite, paintsIn, placeOf, reviewOf } from '@enfilade/client/deck/review-rows';
import { labFromTyped } from '@enfilade/client/deck/typed-lab';
import type { FileElement } from '@enfilade/colour/cxf';
import type { Paint } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';

const noXml = (): string => 'no XML here';
const csv = (text: string, assume?: { illuminant: 'D50'; observer: '2°' }) =>
  paintsFromText(text, assume ? { file: 'deck.csv', assume } : { file: 'deck.csv' }, noXml);
const HEAD = 'name,code,L*,a*,b*,illuminant,observer,LRV\n';
const DECK = new Map<string, Paint>([
  ['weld', { name: 'Weld', code: 'TP 1', lab: { L: 80, a: -2, b: 60 }, order: 'a0' }],
]);

describe('a colour file looked through', () => {
  test('story: good lines go in beside what was written, a torn one is told with line and field, a known one corrects', () => {
    const text = `${HEAD}Weld,TP 1,81,-2,60,D65,2°,57\nTorn,TP 2,81,x,60,D65,2°,57\nSilt,TP 3,58,2,12,D50,2°,170\n`;
    const review = reviewOf(csv(text), 'deck.csv', DECK);
    expect(review.rows.map(({ where, way, known }) => [where, way, known?.id ?? null])).toEqual([
      ['line 2', 'corrects', 'weld'],
      ['line 4', 'new', null],
    ]);
    expect(review.rows[0]?.source).toBe('Weld | TP 1 | 81 | -2 | 60 | D65 | 2° | 57');
    expect(review.rows[0]?.known?.deltaE).toBeGreaterThan(0.3);
    // The LRV alone is refused; its colour stands.
    expect(review.rows[1]?.issues.map(({ where, value }) => [where, value])).toEqual([
      ['deck.csv, line 4, LRV', '170'],
    ]);
    expect(review.leftOut.map((issue) => placeOf(issue, 'deck.csv'))).toEqual([
      { place: 'line 3', field: 'a*' },
      { place: 'line 3', field: 'measurement' },
    ]);
    const going = paintsIn(review.rows, new Map());
    expect(going.map(({ id, paint }) => [id, paint.name])).toEqual([
      ['weld', 'Weld'],
      [undefined, 'Silt'],
    ]);
    expect(
      paintsIn(
        review.rows,
        new Map([
          ['line 2', 'new'],
          ['line 4', 'out'],
        ]),
      ).map(({ id }) => id),
    ).toEqual([undefined]);
  });

  test('law: a paint named twice goes in once, and says where it was named before', () => {
    const text = `${HEAD}Silt,TP 3,58,2,12,D50,2°,\nSilt,TP 3,58,2,12,D50,2°,\nWeld,TP 1,81,-2,60,D65,2°,\nweld,TP 1,82,-2,60,D65,2°,\n`;
    const { rows } = reviewOf(csv(text), 'deck.csv', DECK);
    expect(rows.map(({ twice, way }) => [twice, way])).toEqual([
      [null, 'new'],
      ['line 2', 'out'],
      [null, 'corrects'],
      ['line 4', 'out'],
    ]);
  });

  test('story: a file without a white point is asked for one, and read once a person says it', () => {
    const text = 'name,L*,a*,b*\nSilt,58,2,12\n';
    expect([csv(text).paints.length, lacksWhite(csv(text))]).toEqual([0, true]);
    const said = csv(text, { illuminant: 'D50', observer: '2°' });
    expect([said.paints.length, lacksWhite(said)]).toEqual([1, false]);
    expect(reviewOf(said, 'deck.csv', DECK).rows[0]?.paint).toMatchObject({ adaptedBy: 'CAT16' });
  });

  test('law: the kind of a file is told by its text', () => {
    expect(kindOf('<?xml version="1.0"?><CxF/>')).toBe('CxF3');
    expect(kindOf('CGATS.17\nORIGINATOR "x"\n')).toBe('CGATS.17');
    expect(kindOf('ORIGINATOR "x"\nBEGIN_DATA\n1 2\nEND_DATA\n')).toBe('CGATS.17');
    expect(kindOf('name,L*,a*,b*\n')).toBe('CSV');
  });

  test('story: XML that is refused says why, and a tree of elements is read as CxF', () => {
    const refused = paintsFromText('<!DOCTYPE x><CxF/>', { file: 'deck.cxf' }, () => 'It has a document type.');
    expect(refused.issues).toEqual([
      { where: 'deck.cxf', what: 'It has a document type.', value: '<!DOCTYPE x><CxF/>' },
    ]);
    const element = (
      name: string,
      attributes: Record<string, string>,
      ...children: (FileElement | string)[]
    ): FileElement => ({
      name,
      attributes,
      children,
    });
    const tree = element(
      'CxF',
      {},
      element(
        'Object',
        { Name: 'Weld' },
        element(
          'ColorValues',
          {},
          element(
            'ColorCIELab',
            { ColorSpecification: 's' },
            element('L', {}, '80'),
            element('A', {}, '-2'),
            element('B', {}, '60'),
          ),
        ),
      ),
      element('ColorSpecification', { Id: 's' }, element('Illuminant', {}, 'D50'), element('Observer', {}, '2_Degree')),
    );
    const read = paintsFromText('<CxF/>', { file: 'deck.cxf' }, () => tree);
    expect(read.paints[0]?.lab).toMatchObject({ L: 80, illuminant: 'D50', observer: '2°' });
    expect(reviewOf(read, 'deck.cxf', new Map()).rows[0]?.where).toBe('object 1 "Weld"');
  });
});

describe('typed L*a*b*', () => {
  test('law: a comma, a true minus and the white point are understood; what is out of range is named', () => {
    expect(labFromTyped({ L: '58,5', a: '−2', b: '12', white: 'D50/10°' }).lab).toEqual({
      L: 58.5,
      a: -2,
      b: 12,
      illuminant: 'D50',
      observer: '10°',
    });
    const { lab, wrong } = labFromTyped({ L: '101', a: 'x', b: '', white: 'D65/2°' });
    expect([lab, wrong]).toEqual([
      null,
      { L: 'L* lies between 0 and 100', a: 'a* is to be a number', b: 'b* is to be a number' },
    ]);
  });
});

describe('the order of the deck', () => {
  test('law: darkest first, by name, on walls first; words of a search are all to be found', () => {
    const entry = (id: string, name: string, lrv: number, walls: string[]) => ({
      id,
      paint: { name, order: id, code: `TP ${lrv}`, sheen: 'flat matt' },
      lrv: { lrv },
      surfaces: walls,
    });
    const deck = [entry('b', 'Weld', 57, []), entry('a', 'Silt', 26, ['dye:head']), entry('c', 'Bone', 68, [])];
    const names = (order: Parameters<typeof inOrder>[1]) => inOrder(deck, order).map(({ paint }) => paint.name);
    expect(names('darkest first')).toEqual(['Silt', 'Weld', 'Bone']);
    expect(names('by name')).toEqual(['Bone', 'Silt', 'Weld']);
    expect(names('on walls first')).toEqual(['Silt', 'Weld', 'Bone']);
    expect(names('as in the deck')).toEqual(['Silt', 'Weld', 'Bone']);
    expect(deck.filter(({ paint }) => matching(paint, 'matt 57')).map(({ id }) => id)).toEqual(['b']);
  });
});
