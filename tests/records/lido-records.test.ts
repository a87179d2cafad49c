import { lidoTableFrom } from '@enfilade/records/lido-records';
import type { XmlElement } from '@enfilade/records/xml-elements';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

type Content = XmlElement | string;
const el = (path: string, ...children: Content[]): XmlElement => {
  const [name = '', ...rest] = path.split('/');
  return { name, attributes: {}, children: rest.length === 0 ? children : [el(rest.join('/'), ...children)] };
};
const said = (element: XmlElement, attributes: Record<string, string>): XmlElement => ({ ...element, attributes });

const identified = 'descriptiveMetadata/objectIdentificationWrap';
const measurement = (type: Content, value: string, unit: Content) =>
  el('measurementsSet', el('measurementType', type), el('measurementUnit', unit), el('measurementValue', value));

// Paths by the LIDO 1.0 and 1.1 schemas; the objects are invented.
const OLD = el(
  'lido',
  el(`${identified}/repositoryWrap/repositorySet/workID`, 'OM 1931.4'),
  el(`${identified}/titleWrap/titleSet`, said(el('appellationValue', 'Färbertuch'), { lang: 'de' })),
  el(`${identified}/titleWrap/titleSet`, said(el('appellationValue', 'Dyer’s cloth'), { lang: 'en' })),
  el(
    `${identified}/objectMeasurementsWrap`,
    el(
      'objectMeasurementsSet',
      el('displayObjectMeasurements', '40 x 30 cm'),
      el('objectMeasurements/extentMeasurements', 'Rahmen'),
    ),
    el(
      'objectMeasurementsSet/objectMeasurements',
      measurement('Höhe', '36', ' cm'),
      measurement('Breite', '26', ' cm'),
    ),
  ),
  el(
    'descriptiveMetadata/eventWrap/eventSet/event',
    el('eventType/term', 'Erwerbung'),
    el('eventDate/displayDate', '1931'),
  ),
  el(
    'descriptiveMetadata/eventWrap/eventSet/event',
    el('eventType/conceptID', 'http://terminology.lido-schema.org/lido00007'),
    el(
      'eventActor/actorInRole',
      el('attributionQualifierActor', 'attributed to'),
      el('actor/nameActorSet/appellationValue', 'Lind, Jona'),
    ),
    el('eventDate/date', el('earliestDate', '1870'), el('latestDate', '1880')),
    el('eventMaterialsTech/materialsTech', el('termMaterialsTech/term', 'Seide')),
  ),
  el('administrativeMetadata/rightsWorkWrap/rightsWorkSet/creditLine', 'Gift of the dyers'),
  el(
    'administrativeMetadata/resourceWrap/resourceSet',
    said(el('resourceRepresentation/linkResource', 'https://p.example/t.jpg'), { type: 'image_thumb' }),
    said(el('resourceRepresentation/linkResource', 'https://p.example/m.jpg'), { type: 'image_master' }),
  ),
);

describe('LIDO records', () => {
  test('reference: 1.0 with plain texts, several languages and repeated measurements', () => {
    const { cells, places, pictures, issues } = lidoTableFrom(OLD);
    expect(Object.fromEntries((cells[0] ?? []).map((heading, i) => [heading, cells[1]?.[i]]))).toEqual({
      'Object number': 'OM 1931.4',
      Title: 'Dyer’s cloth',
      Maker: 'attributed to Lind, Jona',
      Date: '1870–1880',
      Materials: 'Seide',
      Dimensions: 'Rahmen: 40 x 30 cm\nHöhe 36 cm, Breite 26 cm',
      'Credit line': 'Gift of the dyers',
    });
    expect(places).toEqual(['lido 1']);
    expect(pictures[0]?.map(({ address }) => address)).toEqual(['https://p.example/m.jpg']);
    expect(issues).toEqual([]);
    expect(lidoTableFrom(OLD, 'de').cells[1]).toContain('Färbertuch');
  });

  test('reference: 1.1 with concepts where 1.0 has texts', () => {
    const concept = (...labels: (readonly [string, string])[]) =>
      el('Concept', ...labels.map(([lang, text]) => said(el('prefLabel', text), { lang })));
    const record = el(
      'lido',
      el(`${identified}/repositoryWrap/repositorySet/workID`, 'OM 2'),
      el(
        `${identified}/objectMeasurementsWrap/objectMeasurementsSet/objectMeasurements`,
        measurement(concept(['de', 'Höhe'], ['en', 'height']), '36', concept(['en', 'cm'])),
      ),
      el(`${identified}/objectMaterialsTechWrap/objectMaterialsTechSet/displayMaterialsTech`, 'Silk'),
    );
    expect(lidoTableFrom(el('lidoWrap', record, record))).toMatchObject({
      cells: [['Object number', 'Materials', 'Dimensions'], ['OM 2', 'Silk', 'height 36 cm'], { length: 3 }],
      places: ['lido 1', 'lido 2'],
    });
  });

  test('story: a record without a number is told and kept; what is no LIDO is told', () => {
    const record = el('lido', el(`${identified}/titleWrap/titleSet/appellationValue`, 'Jug'));
    expect(lidoTableFrom(record)).toMatchObject({ cells: [['Title'], ['Jug']], issues: [{ where: 'lido 1' }] });
    expect(lidoTableFrom(el('html', 'hello'))).toMatchObject({ cells: [], issues: [{ where: 'file' }] });
  });

  test('law: any tree of LIDO’s own names throws nowhere', () => {
    const names =
      'lido lidoWrap descriptiveMetadata eventWrap eventSet event eventType eventDate term Concept titleSet resourceSet'.split(
        ' ',
      );
    const { tree } = fc.letrec<{ tree: XmlElement }>((tie) => ({
      tree: fc.record({
        name: fc.constantFrom(...names),
        attributes: fc.constant({}),
        children: fc.array(fc.oneof({ depthSize: 'small' }, fc.string(), tie('tree')), { maxLength: 4 }),
      }),
    }));
    fc.assert(
      fc.property(tree, (root) => {
        const { cells, places } = lidoTableFrom(root);
        expect(places.length).toBe(Math.max(0, cells.length - 1));
      }),
      { seed: 43, numRuns: 500 },
    );
  });
});
