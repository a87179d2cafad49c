/** The checklist as a table that goes out, and comes in again under the same headings. */
import type { ShowDocuments } from './documents.ts';
import type { MuseumObject, ObjectId, PrivateFacts } from './schema.ts';

type Column = readonly [heading: string, cell: (object: MuseumObject) => string];

const COLUMNS: readonly Column[] = [
  ['Accession No', ({ number }) => number],
  ['Object Name', ({ type = '' }) => type],
  ['Title', ({ title }) => title],
  ['Maker', ({ maker = '' }) => maker],
  ['Date', ({ dateText = '' }) => dateText],
  ['Medium', ({ medium = '' }) => medium],
  ['Dimensions', ({ dimensionsText = '' }) => dimensionsText],
  ['Framed Dimensions', ({ framedText = '' }) => framedText],
  ['Outer size as measured', ({ measured }) => measuredText(measured)],
  ['Weight', ({ weightKg }) => (weightKg == null ? '' : `${weightKg} kg`)],
  ['Count', ({ count }) => String(count)],
  ['Lender', ({ lender }) => lender],
  ['Credit Line', ({ creditLine = '' }) => creditLine],
  ['Source', ({ source }) => source],
  ['Hardware', ({ hardwareText = '' }) => hardwareText],
  ['Frame', ({ frame }) => frameText(frame)],
  ['Notes', ({ notes = '' }) => notes],
];
const PRIVATE_COLUMNS: readonly (readonly [heading: string, field: 'value' | 'price' | 'storage' | 'contact'])[] = [
  ['Insurance Value', 'value'],
  ['Price', 'price'],
  ['Storage Place', 'storage'],
  ['Contact', 'contact'],
];

function measuredText(measured: MuseumObject['measured']): string {
  if (measured == null) return '';
  const { heightMm, widthMm, depthMm, estimated } = measured;
  const size = [`H ${heightMm}`, `W ${widthMm}`, ...(depthMm === null ? [] : [`D ${depthMm}`])].join(' × ');
  return `${estimated ? 'approx. ' : ''}${size} mm`;
}

/** As it is read again (frame-words.ts). */
function frameText(frame: MuseumObject['frame']): string {
  if (frame == null) return '';
  return frame.widthMm > 0 ? `${frame.kind}, ${frame.widthMm} mm` : frame.kind;
}

/**
 * Headings, then a row for each record in the order of their numbers. `withPrivate`: with values, prices, storage places and
 * contacts, for whoever may read them; without, their columns are not there at all.
 */
export function checklistTable(
  documents: ShowDocuments,
  { withPrivate }: { readonly withPrivate: boolean },
): string[][] {
  const compare = new Intl.Collator('en', { numeric: true }).compare;
  const objects = [...documents.all('objects')].sort(
    ([idA, a], [idB, b]) => compare(a.number, b.number) || (idA < idB ? -1 : 1),
  );
  const factsOf = (id: ObjectId): PrivateFacts => (withPrivate ? (documents.get('values', id) ?? {}) : {});
  const kept = withPrivate ? PRIVATE_COLUMNS : [];
  return [
    [...COLUMNS.map(([heading]) => heading), ...kept.map(([heading]) => heading)],
    ...objects.map(([id, object]) => {
      const facts = factsOf(id);
      return [...COLUMNS.map(([, cell]) => cell(object)), ...kept.map(([, field]) => facts[field] ?? '')];
    }),
  ];
}
