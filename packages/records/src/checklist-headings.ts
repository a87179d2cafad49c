/** Which record field each heading of a checklist means. What is private or not known never lands in a public field. */

export type ChecklistField =
  | 'number'
  | 'title'
  | 'maker'
  | 'date'
  | 'medium'
  | 'type'
  | 'dimensions'
  | 'framedDimensions'
  | 'weight'
  | 'count'
  | 'lender'
  | 'creditLine'
  | 'source'
  | 'hardware'
  | 'pictureFile'
  | 'frame'
  | 'shown'
  | 'notes'
  | PrivateField;

export type PrivateField = 'value' | 'storage' | 'contact' | 'price';

export const PRIVATE_FIELDS: readonly PrivateField[] = ['value', 'storage', 'contact', 'price'];

export interface FieldWords {
  readonly field: ChecklistField;
  /** On screen. */
  readonly label: string;
  /** Headings that mean it, the surest first; as `plainHeading` leaves them. */
  readonly headings: readonly string[];
}

const FIELD_WORDS: readonly (readonly [field: ChecklistField, label: string, headings: string])[] = [
  [
    'number',
    'object number',
    'accession no|accession number|accession|accession nr|acc no|acc number|object number|object no|object nr|inventory number|inventory no|inventory nr|inv no|inv nr|catalogue number|catalogue no|catalog number|catalog no|cat no|registration number|registration no|reg no|museum number|loan number|loan no|loan in number|object id|work id|number|no|nr|id|checklist number|checklist no|identifier|local identifier|reference number|inventarnummer|inventar nr|numero d inventaire|reference',
  ],
  [
    'title',
    'title',
    'title|object title|title of work|work title|title or description|object title or name|work|description|brief description',
  ],
  [
    'maker',
    'maker',
    'artist maker|maker|artist|artist or maker|artists|makers|maker artist|artist name|maker name|creator|author|production person|made by',
  ],
  [
    'date',
    'date',
    'date|date made|date of work|object date|date of production|production date|date created|creation date|display date|dated|year|year made|period',
  ],
  [
    'medium',
    'material',
    'medium|materials|material|medium support|materials and techniques|materials techniques|material technique|material and technique|media|technique|medium and support',
  ],
  [
    'type',
    'kind of thing',
    'object name|object type|type|type of object|classification|work type|category|kind|kind of thing',
  ],
  [
    'dimensions',
    'dimensions',
    'dimensions|dimension|dims|dim|size|sizes|measurements|measurement|object dimensions|object size|dimensions text|display dimensions|dimensions unframed|unframed dimensions|unframed size|unframed|image size|sheet size',
  ],
  [
    'framedDimensions',
    'framed size',
    'framed dimensions|dimensions framed|framed size|size framed|framed dims|framed|frame dimensions|frame size|framed measurements|outer dimensions|outer size|overall framed dimensions',
  ],
  ['weight', 'weight', 'weight|object weight|wt|mass|weight framed|framed weight'],
  [
    'count',
    'count',
    'count|quantity|qty|number of objects|no of objects|number of pieces|no of pieces|number of items|no of items|pieces|pcs|item count|piece count|object count',
  ],
  [
    'lender',
    'lender',
    'lender|lender name|lent by|owner|current owner|owner name|lending institution|loan from|on loan from|lender institution',
  ],
  ['creditLine', 'credit line', 'credit line|credit|credits|courtesy line|courtesy of|courtesy|acknowledgement'],
  ['source', 'from where', 'source|where from|from where|ownership|owned loan bought|owned or loan|collection or loan'],
  [
    'hardware',
    'hardware',
    'hardware|hanging hardware|hanging|fixings|fixing|hanging method|hanging device|hanging system|mount hardware',
  ],
  [
    'pictureFile',
    'picture',
    'image file|image|picture|picture file|image filename|image file name|picture file name|file name|filename|photo|photograph|photo file|image name|media file|images|digital image',
  ],
  ['frame', 'frame', 'frame|frame type|frame kind|frame description|frame finish|moulding|frame moulding|framing'],
  [
    'shown',
    'last shown',
    'last shown|last exhibited|last displayed|last on display|last exhibition|last exhibition date|date last shown|date last exhibited|last exhibition year|exhibited',
  ],
  ['notes', 'notes', 'notes|note|remarks|remark|comments|comment|object notes|installation notes|display notes'],
  [
    'value',
    'value',
    'insurance value|value|valuation|insured value|insurance|insurance valuation|value currency|insurance amount|agreed value|current value|market value|appraised value|appraisal|object value|value for insurance|indemnity value',
  ],
  [
    'storage',
    'storage place',
    'location|current location|storage location|storage|store|storage place|home location|permanent location|normal location|usual location|store location|shelf|shelf mark location|location code',
  ],
  [
    'contact',
    'contact',
    'contact|lender contact|contact details|contact name|contact person|lender address|owner contact|email|e mail|lender email|phone|telephone|contact email|address',
  ],
  [
    'price',
    'price',
    'price|purchase price|cost|price paid|acquisition price|acquisition cost|asking price|sale price|purchase cost|estimate',
  ],
];

/** The fields a heading can be mapped to, with the label the review shows. */
export const CHECKLIST_FIELDS: readonly FieldWords[] = FIELD_WORDS.map(([field, label, headings]) => ({
  field,
  label,
  headings: headings.split('|'),
}));

// Parts of words, in the languages checklists come in; beyond English from memory.
const SMELLS =
  /valu|valo|apprais|apprecia|insur|assur|indemn|versicher|wert|price|pric|preis|prix|prezzo|precio|\bcosts?\b|kosten|estimat|worth|\bpaid\b|\bfees?\b|budget|currenc|amount|money|\b(usd|eur|gbp|chf)\b|storage|\bstor(e|es|ed|eroom)\b|locat|standort|lager|emplacement|ubica|shel(f|ves)|\bracks?\b|drawers?\b|\bbins?\b|\bvault|contact|kontakt|address|adresse|phone|\btel\b|mobile|\be ?mails?\b|\bfax\b|anschrift/;

/** A heading without case, accents, signs, stated unit and order of figures: `Dimensions (H × W, cm)` is `dimensions`. */
export function plainHeading(heading: string): string {
  return wordsIn(heading)
    .replace(/ (h|w|d|l|height|width|depth|length)( x | by | )(h|w|d|l|height|width|depth|length)\b.*$/, '')
    .replace(
      /( in)? (cm|mm|inches|kg|kgs|kilograms|lb|lbs|pounds|centimetres|centimeters|millimetres|millimeters)$/,
      '',
    )
    .replace(/^(.+) (in|m|g|ft)$/, (whole, before: string) =>
      /[([]\s*(in|m|g|ft)\.?\s*[)\]]\s*$/i.test(heading) ? before : whole,
    )
    .trim();
}

/** True when a heading may hold what only the museum may see: value, price, storage place, contact. */
export function smellsPrivate(heading: string): boolean {
  return SMELLS.test(wordsIn(heading));
}

/** True when `heading` may be mapped to `field`: never what smells private to a public field. */
export function mayMean(heading: string, field: ChecklistField): boolean {
  return !smellsPrivate(heading) || isPrivate(field);
}

export function isPrivate(field: ChecklistField): field is PrivateField {
  return (PRIVATE_FIELDS as readonly ChecklistField[]).includes(field);
}

/** The field of each heading, or null for 'not taken'; no field twice, the surest heading first. Source: practice of registrars. */
export function mappingFrom(headings: readonly string[]): (ChecklistField | null)[] {
  const plain = headings.map(plainHeading);
  const mapping = headings.map((): ChecklistField | null => null);
  for (const { field, headings: words } of CHECKLIST_FIELDS) {
    for (const word of words) {
      const column = plain.findIndex(
        (heading, i) => heading === word && mapping[i] === null && mayMean(headings[i] ?? '', field),
      );
      if (column === -1) continue;
      mapping[column] = field;
      break;
    }
  }
  return mapping;
}

function wordsIn(heading: string): string {
  return heading
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[×*]/g, ' x ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
