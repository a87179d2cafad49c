import { iiifTableFrom, pictureAddressOf } from '@enfilade/records/iiif-manifest';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const image = (id: string, width: number, height: number, more: object = {}) => ({
  id: `https://pictures.example/${id}/full/max/0/default.jpg`,
  type: 'Image',
  width,
  height,
  service: [{ id: `https://pictures.example/${id}/`, type: 'ImageService3', profile: 'level1' }],
  ...more,
});
const canvas = (body: unknown, more: object = {}) => ({
  type: 'Canvas',
  width: 4000,
  height: 3000,
  items: [{ type: 'AnnotationPage', items: [{ type: 'Annotation', motivation: 'painting', body }] }],
  ...more,
});
const CLOTH = {
  '@context': 'http://iiif.io/api/presentation/3/context.json',
  id: 'https://pictures.example/cloth/manifest',
  type: 'Manifest',
  label: { en: ['Dyer’s cloth'], de: ['Färbertuch'] },
  metadata: [
    { label: { en: ['Object number'] }, value: { none: ['OM 1931.4'] } },
    { label: { en: ['Maker'] }, value: { en: ['Attributed to <b>Jona Lind</b>', 'Cora Aho'] } },
  ],
  requiredStatement: { label: { en: ['Credit'] }, value: { en: ['Gift of the dyers'] } },
  items: [
    canvas(image('cloth', 4000, 3000), {
      service: [{ profile: 'http://iiif.io/api/annex/services/physdim', physicalScale: 0.05, physicalUnits: 'cm' }],
    }),
  ],
};

describe('a IIIF manifest', () => {
  // Shapes by IIIF Presentation API 3.0 and 2.1 and the physical dimension annex; the objects are invented.
  test('reference: Presentation 3: label, metadata, credit, physical size and picture', () => {
    const { cells, places, pictures, issues } = iiifTableFrom(CLOTH);
    expect(cells).toEqual([
      ['Title', 'Object number', 'Maker', 'Credit line', 'IIIF', 'Image size'],
      [
        'Dyer’s cloth',
        'OM 1931.4',
        'Attributed to Jona Lind; Cora Aho',
        'Gift of the dyers',
        'https://pictures.example/cloth/manifest',
        'Image: 150 x 200 cm',
      ],
    ]);
    expect(places).toEqual(['manifest']);
    expect(issues).toEqual([]);
    expect(pictures[0]).toMatchObject([{ widthPx: 4000, service: 'https://pictures.example/cloth' }]);
    expect(iiifTableFrom(CLOTH, 'de').cells[1]?.[0]).toBe('Färbertuch');
  });

  test('reference: Presentation 2.1: sequences, resources and values with languages', () => {
    const resource = {
      '@id': 'https://pictures.example/old.jpg',
      '@type': 'dctypes:Image',
      width: 800,
      height: 1200,
      service: { '@id': 'https://pictures.example/old', profile: ['http://iiif.io/api/image/2/level2.json', {}] },
    };
    const manifest = {
      '@id': 'https://pictures.example/old/manifest',
      '@type': 'sc:Manifest',
      label: [
        { '@value': 'Alter Krug', '@language': 'de' },
        { '@value': 'Old jug', '@language': 'en' },
      ],
      metadata: [{ label: 'Date', value: 'c. 1880' }],
      attribution: 'Lent by a dyer',
      sequences: [{ canvases: [{ '@type': 'sc:Canvas', images: [{ resource }] }] }],
    };
    const { cells, pictures } = iiifTableFrom(manifest);
    expect(cells).toEqual([
      ['Title', 'Date', 'Credit line', 'IIIF'],
      ['Old jug', 'c. 1880', 'Lent by a dyer', 'https://pictures.example/old/manifest'],
    ]);
    expect(pictures[0]?.map((picture) => pictureAddressOf(picture, 600))).toEqual([
      'https://pictures.example/old/full/400,/0/default.jpg',
    ]);
  });

  test('story: canvases with words of their own are objects, else they are views of one', () => {
    const named = (number: string) => ({
      label: { none: [`Jug ${number}`] },
      metadata: [{ label: { en: ['Object number'] }, value: { none: [number] } }],
    });
    const show = {
      type: 'Manifest',
      label: { none: ['A show'] },
      items: [canvas(image('a', 10, 10), named('1')), canvas(image('b', 10, 10), named('2'))],
    };
    expect(iiifTableFrom(show)).toMatchObject({
      places: ['canvas 1', 'canvas 2'],
      pictures: [{ length: 1 }, { length: 1 }],
    });
    const views = { ...CLOTH, items: [canvas(image('front', 10, 10)), canvas(image('back', 10, 10))] };
    expect(iiifTableFrom(views)).toMatchObject({ places: ['manifest'], pictures: [{ length: 2 }] });
  });

  test('story: a picture is asked for at the size needed, and only where its service can', () => {
    const picture = {
      address: 'https://p.example/a.jpg',
      widthPx: 4000,
      heightPx: 3000,
      service: 'https://p.example/a',
    };
    expect(pictureAddressOf(picture, 1000)).toBe('https://p.example/a/full/1000,/0/default.jpg');
    expect(pictureAddressOf(picture, 5000)).toBe('https://p.example/a.jpg');
    expect(pictureAddressOf({ ...picture, service: null }, 1000)).toBe('https://p.example/a.jpg');
    expect(() => pictureAddressOf(picture, 0)).toThrow(RangeError);
    const levelNought = image('a', 10, 10, { service: [{ id: 'https://p.example/a', profile: 'level0' }] });
    expect(iiifTableFrom({ ...CLOTH, items: [canvas(levelNought)] }).pictures[0]?.[0]?.service).toBeNull();
  });

  test('story: what is no manifest, or names no address of the web, is told', () => {
    for (const json of [null, 7, 'Manifest', [], {}, { type: 'Collection' }, { type: 'Canvas' }]) {
      expect(iiifTableFrom(json)).toMatchObject({ cells: [], issues: [{ where: 'file' }] });
    }
    const local = iiifTableFrom({ ...CLOTH, items: [canvas(image('a', 10, 10, { id: 'file:///etc/passwd' }))] });
    expect(local.pictures).toEqual([[]]);
    expect(local.issues.map(({ where }) => where)).toEqual(['canvas 1, picture 1', 'manifest']);
  });

  test('law: whatever JSON stands in a manifest’s places, nothing throws and rows have the headings’ length', () => {
    const any = fc.jsonValue({ maxDepth: 4 });
    const manifests = fc.record({
      type: fc.constant('Manifest'),
      label: any,
      metadata: any,
      items: any,
      sequences: any,
      summary: any,
      rights: any,
    });
    const broken = fc.tuple(any, any).map(([body, metadata]) => ({ ...CLOTH, metadata, items: [canvas(body), body] }));
    fc.assert(
      fc.property(fc.oneof(manifests, broken), (json) => {
        const { cells, places, pictures } = iiifTableFrom(json);
        expect(places.length).toBe(Math.max(0, cells.length - 1));
        expect(pictures.length).toBe(places.length);
        for (const row of cells) expect(row.length).toBe(cells[0]?.length);
      }),
      { seed: 41, numRuns: 1000 },
    );
  });
});
