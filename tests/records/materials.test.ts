import { materialsFrom } from '@enfilade/records/materials';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

describe('materials out of a medium line', () => {
  // Lines in the manner of CCO's chapter on materials and techniques (from memory); the things are invented.
  test.each([
    ['Beaten copper, tinned inside', ['copper'], ['beaten', 'tinned']],
    ['Carved pear wood, some with copper strip, traces of dye', ['pear wood', 'copper'], ['carved']],
    ['Oil on canvas, gilt frame', ['oil', 'canvas'], []],
    ['Dyed wool, oak rod', ['wool', 'oak'], ['dyed']],
    ['Engraving, coloured by hand', ['engraving'], ['coloured']],
    ['Hand-coloured photograph on glass, paper binding', ['photograph', 'glass', 'paper'], ['hand-coloured']],
    ['Cast iron, sycamore', ['iron', 'sycamore'], ['cast']],
    ['Painted iron, gilding', ['iron', 'gilding'], ['painted']],
    ['Glazed earthenware tiles on board', ['earthenware tiles', 'board'], ['glazed']],
    ['Oak, iron hoops, traces of dye', ['oak', 'iron'], []],
    ['Linen and red chalk', ['linen', 'red chalk'], []],
    ['Öl auf Leinwand', ['öl', 'leinwand'], []],
    ['Woven willow', ['willow'], ['woven']],
  ])('reference: %s', (text, materials, worked) => {
    expect(materialsFrom(text)).toEqual({ written: text, materials, worked });
  });

  test('law: whatever is written, nothing throws and no material is empty or said twice', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200, unit: 'grapheme' }), (text) => {
        const { materials, worked } = materialsFrom(text);
        for (const list of [materials, worked]) {
          expect(list.every((word) => word.trim() !== '')).toBe(true);
          expect(new Set(list).size).toBe(list.length);
        }
      }),
    );
  });
});
