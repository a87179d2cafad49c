/** LIDO 1.0 and 1.1 records as a table of objects with their pictures. Source: lido-schema.org, as real files use it. */
import {
  type ImportedObject,
  type ImportedTable,
  type ImportIssue,
  type PictureSource,
  tableFrom,
} from './imported-table.ts';
import { elementsAt, ownText, textsOf, type XmlElement } from './xml-elements.ts';

const IDENTIFIED = 'descriptiveMetadata/objectIdentificationWrap';
const MADE = /lido00007|E12_Production/;
const MADE_WORDS =
  /^(?:production|creation|manufacture|herstellung|entstehung|fertigung|gezeichnet|gemalt|production \(event\))/i;
const THUMBNAIL = /thumb/i;
const LARGEST = /master|original|full|large/i;

/**
 * `root` is a parsed file: `lidoWrap` with its records, or one `lido`. Words come in `language` where they can; each set of
 * measurements is a text of its own, with what it measures before it. Never throws: what is no LIDO has no rows.
 */
export function lidoTableFrom(root: XmlElement, language = 'en'): ImportedTable {
  const records = root.name === 'lido' ? [root] : root.name === 'lidoWrap' ? elementsAt(root, 'lido') : [];
  const issues: ImportIssue[] = [];
  if (records.length === 0) issues.push({ where: 'file', what: 'It holds no LIDO records.', value: root.name });
  return tableFrom(
    records.map((record, i) => objectFrom(record, `lido ${i + 1}`, language, issues)),
    issues,
  );
}

function objectFrom(record: XmlElement, place: string, language: string, issues: ImportIssue[]): ImportedObject {
  const at = (path: string) => elementsAt(record, path);
  const one = (path: string) => textsOf(at(path), language)[0] ?? '';
  const all = (path: string) => textsOf(at(path), language).join('; ');
  const event = madeOf(at('descriptiveMetadata/eventWrap/eventSet/event'), language);
  const number = one(`${IDENTIFIED}/repositoryWrap/repositorySet/workID`);
  if (number === '') issues.push({ where: place, what: 'It has no object number (workID).', value: one('lidoRecID') });
  const materials =
    one(`${IDENTIFIED}/objectMaterialsTechWrap/objectMaterialsTechSet/displayMaterialsTech`) ||
    materialsOf(event, language);
  const said: (readonly [heading: string, text: string, path: string])[] = [
    ['Object number', number, 'repositorySet/workID'],
    ['Title', one(`${IDENTIFIED}/titleWrap/titleSet/appellationValue`), 'titleSet/appellationValue'],
    [
      'Object name',
      one('descriptiveMetadata/objectClassificationWrap/objectWorkTypeWrap/objectWorkType'),
      'objectWorkTypeWrap/objectWorkType',
    ],
    ['Maker', makersOf(event, language), 'event/eventActor'],
    ['Date', dateOf(event, language), 'event/eventDate'],
    ['Materials', materials, 'materialsTech'],
    [
      'Dimensions',
      measurementsOf(at(`${IDENTIFIED}/objectMeasurementsWrap/objectMeasurementsSet`), language),
      'objectMeasurementsSet',
    ],
    ['Credit line', all('administrativeMetadata/rightsWorkWrap/rightsWorkSet/creditLine'), 'rightsWorkSet/creditLine'],
    [
      'Notes',
      all(`${IDENTIFIED}/objectDescriptionWrap/objectDescriptionSet/descriptiveNoteValue`),
      'objectDescriptionSet/descriptiveNoteValue',
    ],
  ];
  const sets = at('administrativeMetadata/resourceWrap/resourceSet');
  return { place, said: said.filter(([, text]) => text !== ''), pictures: sets.flatMap((set) => pictureOf(set)) };
}

/** The event in which the thing was made, else the first of any kind. */
function madeOf(events: readonly XmlElement[], language: string): XmlElement | null {
  const isMade = (event: XmlElement): boolean =>
    elementsAt(event, 'eventType').some((type) => {
      const ids = [
        ...elementsAt(type, 'conceptID').map(ownText),
        ...elementsAt(type, 'Concept').map((concept) => concept.attributes.about ?? ''),
      ];
      return ids.some((id) => MADE.test(id)) || textsOf([type], language).some((term) => MADE_WORDS.test(term));
    });
  return events.find(isMade) ?? events[0] ?? null;
}

function makersOf(event: XmlElement | null, language: string): string {
  const actors = event === null ? [] : elementsAt(event, 'eventActor');
  return actors
    .map((actor) => {
      const shown = textsOf(elementsAt(actor, 'displayActorInRole'), language)[0];
      if (shown !== undefined) return shown;
      const part = (path: string) => textsOf(elementsAt(actor, `actorInRole/${path}`), language)[0] ?? '';
      // The vocabulary's own note is no part of the role: `painters (artists)`.
      const role = part('roleActor').replace(/ ?\([^()]*\)$/, '');
      const name = part('actor/nameActorSet/appellationValue');
      const named = [part('attributionQualifierActor'), name].filter((text) => text !== '').join(' ');
      return named === '' || role === '' ? named : `${named} (${role})`;
    })
    .filter((text) => text !== '')
    .join('; ');
}

function dateOf(event: XmlElement | null, language: string): string {
  if (event === null) return '';
  const shown = textsOf(elementsAt(event, 'eventDate/displayDate'), language)[0];
  if (shown !== undefined) return shown;
  const [from, to] = ['earliestDate', 'latestDate'].map(
    (name) => textsOf(elementsAt(event, `eventDate/date/${name}`), language)[0] ?? '',
  );
  return from === to ? (from ?? '') : [from, to].filter((text) => text !== '').join('–');
}

function materialsOf(event: XmlElement | null, language: string): string {
  if (event === null) return '';
  const shown = textsOf(elementsAt(event, 'eventMaterialsTech/displayMaterialsTech'), language)[0];
  return shown ?? textsOf(elementsAt(event, 'eventMaterialsTech/materialsTech/termMaterialsTech'), language).join('; ');
}

/** `Rahmen: 50 x 60 cm`, or `Height 106 cm, Width 101,1 cm` from its single measurements. */
function measurementsOf(sets: readonly XmlElement[], language: string): string {
  const texts = sets
    .map((set) => {
      const extent = textsOf(elementsAt(set, 'objectMeasurements/extentMeasurements'), language)[0] ?? '';
      const shown = textsOf(elementsAt(set, 'displayObjectMeasurements'), language)[0];
      const single = elementsAt(set, 'objectMeasurements/measurementsSet').map((measurement) => {
        const [type, value, unit] = ['measurementType', 'measurementValue', 'measurementUnit'].map(
          (name) => textsOf(elementsAt(measurement, name), language)[0] ?? '',
        );
        return `${type} ${value} ${unit}`.trim();
      });
      const text = shown ?? single.join(', ');
      return extent === '' || text === '' || text.toLowerCase().includes(extent.toLowerCase())
        ? text
        : `${extent}: ${text}`;
    })
    .filter((text) => text !== '');
  return [...new Set(texts)].join('\n');
}

/** One picture of a resource: the largest by its type, else the first that is no thumbnail. */
function pictureOf(set: XmlElement): PictureSource[] {
  const kinds = textsOf(elementsAt(set, 'resourceType'), 'en').join(' ');
  if (/audio|video|text|3d/i.test(kinds)) return [];
  const found = elementsAt(set, 'resourceRepresentation').flatMap((representation) => {
    const address = elementsAt(representation, 'linkResource').map(ownText)[0] ?? '';
    return /^https?:\/\/[^\s/]+\S*$/i.test(address) ? [{ address, kind: representation.attributes.type ?? '' }] : [];
  });
  const chosen =
    found.find(({ kind }) => LARGEST.test(kind)) ??
    found.find(({ kind, address }) => !THUMBNAIL.test(kind) && !THUMBNAIL.test(address)) ??
    found[0];
  return chosen === undefined ? [] : [{ address: chosen.address, widthPx: null, heightPx: null, service: null }];
}
