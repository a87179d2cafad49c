/**
 * The checklist of Slow Water: 160 records, one of which counts 60. All invented. What is private (value, storage,
 * contact) stands in `private` and nowhere else.
 */
import type { FrameFact } from '@enfilade/shared/schema';
import { between, diceFrom, nth } from './drawing/ink.ts';
import type { Pictured, Subject } from './drawing/picture.ts';
import { across, damaged, inCm, inCommaCm, inInches, inMetres, inMm, labelled, type WrittenSize } from './sizes.ts';
import type { StudioGround } from './studio-ground.ts';

export interface DemoPrivate {
  readonly value: string;
  readonly storage: string;
  readonly contact?: string;
}

export interface DemoPiece extends Pictured {
  readonly depthMm: number;
}

export interface DemoRecord extends DemoPiece {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly maker: string;
  readonly dateText: string;
  readonly medium: string;
  readonly type: string;
  readonly dimensionsText: string;
  readonly framedText: string;
  /** As written; null where no weight is recorded. */
  readonly weightKg: number | null;
  readonly count: number;
  /** Empty: held by the museum. */
  readonly lender: string;
  readonly creditLine: string;
  readonly source: 'collection' | 'loan' | 'artist';
  readonly hardwareText: string;
  readonly notes: string;
  readonly frame: FrameFact | null;
  /** What it was photographed on; null for what came cut out. */
  readonly ground: StudioGround | null;
  /** Heights above its own foot of the levels things can stand on, the top first. */
  readonly levelsMm: readonly number[] | null;
  readonly private: DemoPrivate;
  /** Every piece of a record that counts several; absent where there is one. */
  readonly pieces?: readonly DemoPiece[];
}

export const WEIR = 'Lower Weir Conservancy';
export const PARISH = 'Parish of Saint Osk';
export const PRINTWORKS = 'Tollgate Printworks Trust';
export const PRIVATE_LENDERS = [
  'Private collection, Hithe Street',
  'Private collection, the pilot’s family',
  'Private collection, Overwick Quay',
] as const;
const ARTIST = 'Isolde Fennimarsh';

const CONTACTS: Readonly<Record<string, string>> = {
  [WEIR]: 'keeper of gear, weir house',
  [PARISH]: 'the churchwardens, vestry',
  [PRINTWORKS]: 'trust secretary, counting house',
  [PRIVATE_LENDERS[0]]: 'by letter only, through the registrar',
  [PRIVATE_LENDERS[1]]: 'the daughter, evenings',
  [PRIVATE_LENDERS[2]]: 'through their solicitor',
};

interface Draft {
  readonly size: WrittenSize;
  readonly subject: Subject;
  readonly number: string;
  readonly title: string;
  readonly date: string;
  readonly medium: string;
  readonly type: string;
  readonly value: number;
  readonly maker?: string;
  readonly framed?: WrittenSize;
  readonly kg?: number;
  readonly lender?: string;
  readonly hardware?: string;
  readonly notes?: string;
  readonly frame?: FrameFact;
  readonly ground?: StudioGround;
  readonly levels?: readonly number[];
  readonly pieces?: readonly DemoPiece[];
}

/** Its photograph shows the frame it hangs in. */
const FRAMED: FrameFact = { kind: 'from the picture', widthMm: 0 };

function storageOf(id: string, index: number): string {
  return `Store ${nth(['A', 'B', 'C'], id.length + index)}, bay ${1 + ((index * 7) % 19)}, shelf ${1 + (index % 5)}`;
}

function recordOf(kind: string, index: number, draft: Draft): DemoRecord {
  const id = `${kind}-${index + 1}`;
  const outer = draft.framed ?? draft.size;
  const lender = draft.lender ?? '';
  const artist = draft.maker === ARTIST;
  const contact = CONTACTS[lender];
  return {
    id,
    number: draft.number,
    title: draft.title,
    maker: draft.maker ?? 'Unknown',
    dateText: draft.date,
    medium: draft.medium,
    type: draft.type,
    dimensionsText: draft.size.text,
    framedText: draft.framed?.text ?? '',
    weightKg: draft.kg ?? null,
    count: draft.pieces?.length ?? 1,
    lender: artist ? ARTIST : lender,
    creditLine: artist
      ? 'Courtesy of the artist'
      : lender === ''
        ? 'Overwick Museum'
        : lender.startsWith('Private')
          ? 'Private collection'
          : `Lent by the ${lender}`,
    source: artist ? 'artist' : lender === '' ? 'collection' : 'loan',
    hardwareText: draft.hardware ?? '',
    notes: draft.notes ?? '',
    frame: draft.frame ?? null,
    ground: draft.ground ?? null,
    levelsMm: draft.levels ?? null,
    private: {
      value: `EUR ${draft.value.toLocaleString('en-GB')}`,
      storage: artist ? 'in the artist’s studio' : lender === '' ? storageOf(kind, index) : 'with the lender',
      ...(contact === undefined ? {} : { contact }),
    },
    heightMm: outer.heightMm,
    widthMm: outer.widthMm,
    depthMm: outer.depthMm,
    subject: draft.subject,
    ...(draft.pieces === undefined ? {} : { pieces: draft.pieces }),
  };
}

function list(kind: string, drafts: readonly Draft[]): DemoRecord[] {
  return drafts.map((draft, index) => recordOf(kind, index, draft));
}

function times<T>(count: number, make: (index: number) => T): T[] {
  return Array.from({ length: count }, (_, index) => make(index));
}

// Blocks

export const BLOCK_COUNT = 60;
/** So many are hung round the hanging; the rest wait. */
export const BLOCKS_HUNG = 41;

const blockPieces: DemoPiece[] = times(BLOCK_COUNT, (i) => {
  const dice = diceFrom(i * 97 + 11);
  const class_ = i % 6 === 0 ? 0 : i % 6 === 1 || i % 6 === 3 ? 1 : 2;
  const width = Math.round(nth([between(dice, 31, 37), between(dice, 22, 29), between(dice, 15, 21)], class_));
  const height = Math.min(38, Math.round(width * between(dice, 0.76, 1.24)));
  return { subject: { kind: 'block', variant: i }, heightMm: height * 10, widthMm: width * 10, depthMm: 45 };
});

const blocks = list('block', [
  {
    size: damaged('Set of 60, each 15–37 × 12–38 × 4.5 cm', 20, 20, 4.5),
    subject: { kind: 'block', variant: 0 },
    number: 'OM 1902.7.1–60',
    title: 'Cloth-printing blocks',
    maker: 'Block cutters of the Tollgate printworks',
    date: 'c. 1790–1870',
    medium: 'Carved pear wood, some with copper strip, traces of dye',
    type: 'printing block',
    hardware: '1 brass hook, drop 2 cm',
    notes: 'Light: 200 lux. Traces of dye: gloves.',
    value: 18600,
    kg: 84,
    pieces: blockPieces,
  },
]);

// Moulds: 20 that stand, 12 that hang.

const MOULD_WORDS = ['fluted', 'stepped', 'domed', 'castellated', 'rose', 'ringed', 'star', 'target', 'turban'];
export const MOULDS_STANDING = 20;

const moulds = list(
  'mould',
  times(32, (i): Draft => {
    const dice = diceFrom(i * 41 + 5);
    const stands = i < MOULDS_STANDING;
    const tinned = i === 14 || i === 29;
    const loan = i >= 28 ? nth([PRIVATE_LENDERS[0], PRIVATE_LENDERS[1]], i) : undefined;
    const withdrawn = i === 30 || i === 31;
    const diameter = Math.round(between(dice, 17, 29) * 2) / 2;
    const height = Math.round(between(dice, 16, 27) * 2) / 2;
    const written = stands
      ? nth([inCm, inInches, inCommaCm], i)(
          height,
          Math.round(diameter * 0.82 * 2) / 2,
          Math.round(diameter * 0.82 * 2) / 2,
        )
      : i % 2
        ? across(diameter)
        : inInches(diameter, diameter, 8.5);
    return {
      size: i === 28 ? damaged('', 26, 26) : i === 19 ? damaged('23.5 × cm', 23.5, 19, 19) : written,
      subject: stands ? { kind: 'mould standing', variant: i, tinned } : { kind: 'mould face', variant: i, tinned },
      number: loan ? `L.2026.${11 + i - 28}` : `OM 1919.22.${i + 1}`,
      title: `Copper mould, ${nth(MOULD_WORDS, stands ? i % 4 : 4 + (i % 5))}`,
      date: nth(['c. 1840', 'mid-19th century', '1860s', 'c. 1880', 'late 19th century'], i),
      medium: tinned ? 'Beaten copper, tinned inside' : 'Beaten copper',
      type: 'mould',
      value: 140 + ((i * 37) % 190),
      ...(loan ? { lender: loan } : {}),
      ...(i % 3 ? { kg: Math.round(between(dice, 0.6, 1.8) * 10) / 10 } : {}),
      ...(stands ? {} : { hardware: 'ring, 1 hook, drop 1 cm', ground: 'grey' }),
      ...(withdrawn ? { notes: 'Withdrawn by the lender, 4 May.' } : {}),
    };
  }),
);

// Levels

const levels = list(
  'level',
  times(12, (i): Draft => {
    const length = [62, 45.5, 71, 30.5, 68.5, 54, 76, 48, 60.5, 35, 66, 40][i] as number;
    const height = [7, 6, 7.5, 5, 7, 6.5, 8, 6, 7, 5.5, 6.5, 5][i] as number;
    return {
      size: i === 9 ? damaged('[label torn] 35 ×', height, length, 3.5) : nth([inCm, inInches], i)(height, length, 3.5),
      subject: { kind: 'level', variant: i },
      number: i === 0 ? 'OM 1948.2' : `OM 1948.3.${i}`,
      title: `Spirit level, ${nth(['rosewood', 'mahogany', 'ebony', 'beech', 'padauk'], i)}`,
      maker: nth(['Unknown', 'A. Tarrowby & Sons', 'Unknown', 'attributed to the lock-keeper’s shop'], i),
      date: nth(['c. 1870', '1880s', 'early 20th c.', '1891'], i),
      medium: 'Hardwood, brass, glass, spirit',
      type: 'level',
      hardware: '2 screws, drop 1 cm',
      value: 60 + i * 9,
      ...(i % 2 ? { kg: Math.round((length / 62) * 9) / 10 } : {}),
    };
  }),
);

// Lantern slides

const PLANTS = [
  'Marsh marigold',
  'Ragged robin',
  'Water dropwort',
  'Hemlock water-parsnip',
  'Comfrey',
  'Bog pimpernel',
  'Purple loosestrife',
  'Meadow rue',
  'Water avens',
  'Flowering rush',
  'Fen violet',
  'Angelica',
  'Wild celery',
  'Snake’s head',
  'Skullcap',
  'Woundwort',
  'Water plantain',
  'Frogbit',
  'Cowbane',
  'Burnet',
  'Bell heather',
  'Water forget-me-not',
  'Arrowhead',
  'Valerian',
];

const slides = list(
  'slide',
  times(
    24,
    (i): Draft => ({
      size: i % 3 === 1 ? inInches(8.3, 8.3) : i % 3 === 2 ? inCommaCm(8.3, 8.3) : inCm(8.3, 8.3),
      subject: { kind: 'slide', variant: i },
      number: `OM 1911.5.${i + 1}`,
      title: PLANTS[i] as string,
      maker: 'E. Quillfeather',
      date: i % 4 === 3 ? '1904?' : 'c. 1904',
      medium: 'Hand-coloured photograph on glass, paper binding',
      type: 'lantern slide',
      hardware: 'sleeve, drop 0.5 cm',
      notes: 'Light: 50 lux at most, 120 days.',
      value: 25,
      kg: 0.1,
    }),
  ),
);

// Pattern books

const books = list(
  'book',
  times(8, (i): Draft => {
    const shut = i % 4 === 3;
    const [h, w] = shut
      ? [33, 25]
      : ([
          [31, 46],
          [28, 42],
          [34, 48],
        ][i % 3] as [number, number]);
    return {
      size: nth([inCm, inCommaCm, inInches], i)(h, w, shut ? 6 : 4.5),
      subject: { kind: 'book', variant: i },
      number: i < 5 ? `OM 1888.12.${i + 1}` : `L.2026.${21 + i - 5}`,
      title: `Pattern book, ${nth(['madder styles', 'blue styles', 'furnishings', 'handkerchiefs', 'mourning goods', 'spring 1838', 'export', 'trials'], i)}`,
      maker: 'Tollgate printworks',
      date: nth(['1822–31', 'c. 1835', '1838', '1841–44', '1850s', '1838', 'c. 1846', '1861'], i),
      medium: 'Printed cotton swatches on paper, half leather',
      type: 'pattern book',
      notes:
        i === 5
          ? 'Light: 50 lux at most, 90 days.\nLender asks for a page to be turned each month.'
          : 'Light: 50 lux at most, 90 days.',
      value: 900 + i * 140,
      hardware: shut ? '' : 'cradle on 2 screws, drop 12 cm',
      ...(i >= 5 ? { lender: PRINTWORKS } : {}),
      ...(i % 2 ? { kg: 2.8 + i / 10 } : {}),
    };
  }),
);

// Maps

const MAP_ROWS: readonly (readonly [
  number: string,
  title: string,
  date: string,
  framed: WrittenSize,
  unframed: string,
])[] = [
  ['OM 1888.3', 'The river at Overwick in flood', '1823', inCm(72, 96, 3), '60.5 × 84.0 cm'],
  ['OM 1888.4', 'Reach of the water, Lower Weir to Saint Osk', '1847', inCm(66, 88, 3), '54.5 × 76.0 cm'],
  ['OM 1950.010', 'Height of floods, taken at nine doors', '1868', inInches(62, 84, 3), '20 × 28 1/2 in.'],
  ['OM 1888.6', 'The cut and its locks', 'c. 1830', inCommaCm(96, 62, 2.5), ''],
  ['OM 1905.1', 'Survey of the printfields', '1811 or 1812', inCm(58, 80, 2.5), '49.0 × 70.5 cm'],
  ['OM 1905.2', 'Course of the river before the weir', 'late 18th century', inInches(64, 92, 2.5), ''],
  ['L.2026.61', 'Parish of Saint Osk, water rates', '1886', inCm(70, 100, 3), '58.0 × 88.0 cm'],
  ['OM 1905.4', 'Mill lades, a fair copy', 'n.d.', damaged('30 x 40', 76, 101, 2), ''],
  ['L.2026.62', 'The great flood, engraved', 'after 1901', damaged('24 × 36 in. (61 × 81.4 cm)', 60.96, 91.44), ''],
];

const maps = list(
  'map',
  MAP_ROWS.map(
    ([number, title, date, framed, unframed], i): Draft => ({
      size: unframed === '' ? framed : { ...framed, text: unframed },
      ...(unframed === '' ? {} : { framed }),
      subject: { kind: 'map', variant: i, frame: i === 5 || i === 8 ? 'none' : i % 2 ? 'black' : 'oak' },
      number,
      title,
      date,
      // One bare sheet gets a frame for the show; the parish photographed its own on the vestry's cloth.
      frame: i === 5 ? { kind: 'pale wood', widthMm: 25 } : i === 8 ? { kind: 'none', widthMm: 0 } : FRAMED,
      ...(i === 6 ? { ground: 'cloth' } : {}),
      maker: nth(['T. Harrowgate, surveyor', 'Unknown', 'attributed to T. Harrowgate'], i),
      medium: i % 2 ? 'Ink and wash on paper' : 'Engraving, coloured by hand',
      type: 'map',
      hardware: '2 D-rings, drop 8 cm, 40 cm apart',
      notes:
        i === 6 ? 'Light: 50 lux at most. Lender asks for glazing: acrylic, UV-filtering.' : 'Light: 50 lux at most.',
      value: 1200 + i * 260,
      ...(number.startsWith('L.') ? { lender: i === 6 ? PARISH : PRIVATE_LENDERS[2] } : {}),
      ...(i % 3 ? { kg: 5.5 + i / 2 } : {}),
    }),
  ),
);

// Oil views of the valley

type OilRow = readonly [
  number: string,
  title: string,
  date: string,
  frame: 'gilt' | 'dark' | 'black' | 'walnut',
  framed: WrittenSize,
  unframed: string,
];

const OIL_ROWS: readonly OilRow[] = [
  ['OM 1931.14.3', 'The valley from Tallow Hill', 'c. 1840', 'dark', inCm(66, 86, 6), '55.0 × 75.0 cm'],
  ['L.2026.31', 'Evening, Saint Osk', '1851', 'gilt', inInches(64, 78, 7), '18 1/2 × 24 in.'],
  ['OM 1931.14.1', 'The weir at dawn', '1849', 'gilt', inCm(72, 96, 8), '53.5 × 77.5 cm'],
  ['OM 1931.14.5', 'The flood of 1823, from the tower', 'after 1823', 'black', inInches(62, 118, 5), '21 × 43 in.'],
  ['OM 1931.14.9', 'Barges in the cut', 'c. 1855', 'gilt', damaged('Sight: 12 × 9 1/2 in.', 58, 74), ''],
  ['OM 1931.14.6', 'Snow on the printfield', '1860', 'walnut', inCm(84, 104, 6), ''],
  ['OM 1931.14.7', 'Harvest, from the south bank', '1862', 'gilt', inCommaCm(47, 58, 6), ''],
  ['L.2026.32', 'Storm over the lower weir', 'c. 1845', 'black', inCm(92, 122, 7), '78.0 × 108.0 cm'],
  ['OM 1931.14.2', 'The valley by moonlight', 'mid-19th century', 'gilt', inInches(54, 68, 6), ''],
  ['L.2026.33', 'The water meadows, after rain', '1853', 'gilt', inCm(92, 118, 8), '68.0 × 94.0 cm'],
  ['OM 1931.14.8', 'The dye works, Saint Osk’s day', '1858', 'walnut', labelled(98, 76, 6), ''],
];

const oils = list(
  'oil',
  OIL_ROWS.map(
    ([number, title, date, frame, framed, unframed], i): Draft => ({
      size: unframed === '' ? framed : { ...framed, text: unframed },
      ...(unframed === '' ? {} : { framed }),
      subject: { kind: 'oil', variant: i, frame },
      frame: FRAMED,
      number,
      title,
      date,
      maker: i === 0 ? 'Unknown' : nth(['J. Merrowell', 'J. Merrowell', 'circle of J. Merrowell', 'Unknown'], i),
      medium: `Oil on canvas, ${frame === 'gilt' ? 'gilt frame' : `${frame} frame`}`,
      type: 'painting',
      hardware: `2 D-rings, drop ${i === 0 ? '4.1' : '9.5'} cm, ${Math.round(framed.widthMm / 20)} cm apart`,
      notes: 'Light: 200 lux.',
      value: 3200 + i * 850,
      ...(number.startsWith('L.') ? { lender: [PARISH, PRIVATE_LENDERS[1], WEIR][i % 3] ?? PARISH } : {}),
      ...(i % 4 === 2 ? {} : { kg: Math.round(framed.heightMm * framed.widthMm * 0.000016 * 10) / 10 }),
    }),
  ),
);

// Flood marks: height above the floor they recorded, for those that hang so.

export const FLOODS: readonly (readonly [year: string, heightCm: number])[] = [
  ['1868', 98],
  ['1823', 61],
  ['1901', 124],
  ['1847', 82],
  ['1879', 109],
  ['1812', 47],
  ['1886', 90],
  ['1923', 133],
  ['1857', 66],
  ['1894', 101],
  ['1910', 128],
  ['1834', 75],
  ['1876', 88],
  ['1930', 112],
];

const marks = list(
  'mark',
  FLOODS.map(([year, heightCm], i): Draft => {
    const tall = i >= 11;
    const [h, w] = tall ? [34, 24] : i === 4 ? [20, 26] : [22, 28];
    return {
      size: i === 12 ? damaged('about two hands high', h, w) : nth([inCm, inInches, inCommaCm], i)(h, w),
      subject: { kind: 'mark', variant: i, year },
      number: i < 10 ? `OM 1924.40.${i + 1}` : `L.2026.${41 + i - 10}`,
      title: `Flood mark, ${year}`,
      maker: nth(['Unknown', 'Weir House enamel shop'], i),
      date: `${year}, enamelled c. 1925`,
      medium: 'Vitreous enamel on iron',
      type: 'flood mark',
      hardware: '2 screws, drop 2.5 cm, 24 cm apart',
      notes: `The river stood ${heightCm} cm above the threshold.`,
      value: 120 + i * 15,
      ...(i >= 10 ? { lender: PARISH } : {}),
      ...(i % 2 ? { kg: 1.4 } : {}),
    };
  }),
);

// Eel traps

const traps = list(
  'trap',
  times(6, (i): Draft => {
    const [h, w] = [
      [52, 24],
      [78, 34],
      [64, 30],
      [95, 38],
      [70, 28],
      [58, 27],
    ][i] as [number, number];
    return {
      size: i === 5 ? damaged('the length of a forearm', h, w, w) : nth([inCm, inInches], i)(h, w, w),
      subject: { kind: 'trap', variant: i },
      number: i < 4 ? `OM 1960.9.${i + 1}` : `L.2026.${51 + i - 4}`,
      title: 'Willow eel trap',
      maker: nth(['Unknown', 'the Sallow family'], i),
      date: nth(['early 20th c.', 'c. 1910', 'before 1950'], i),
      medium: 'Woven willow',
      type: 'trap',
      hardware: 'stands',
      notes: 'Light: 50 lux at most. Freeze before entry.',
      value: 90 + i * 20,
      ...(i >= 4 ? { lender: PRIVATE_LENDERS[1] } : {}),
      ...(i % 2 ? { kg: 1.2 } : {}),
    };
  }),
);

// Clock dials

const dials = list(
  'dial',
  times(7, (i): Draft => {
    const d = [44, 62, 38, 90, 30, 52, 43.18][i] as number;
    return {
      size: i === 5 ? damaged('Diam. ??? cm', d, d) : i === 6 ? damaged('Diam. 17 in. (53.2 cm)', d, d) : across(d),
      subject: { kind: 'dial', variant: i },
      ground: 'grey',
      number: i < 5 ? `OM 1977.31.${i + 1}` : `L.2026.${71 + i - 5}`,
      title: `Clock dial, ${nth(['weir office', 'gatehouse', 'counting house', 'church tower', 'lock cottage', 'slate, no hands', 'brass'], i)}`,
      date: nth(['c. 1860', '1832', '1890s', '1780', 'c. 1900', 'n.d.', 'probably 1790s'], i),
      medium: nth(
        [
          'Enamel on iron',
          'Painted iron, gilding',
          'Painted wood',
          'Painted iron, gilding',
          'Enamel on copper',
          'Slate',
          'Brass',
        ],
        i,
      ),
      type: 'clock dial',
      hardware: '1 hook, drop 3 cm',
      value: 300 + i * 110,
      ...(i >= 5 ? { lender: PARISH } : {}),
      ...(i === 3 ? {} : { kg: Math.round(d / 9) }),
    };
  }),
);

// Heavy things and furniture

const heavy = [
  ...list('mangle', [
    {
      size: inMm(142, 118, 84),
      subject: { kind: 'mangle' },
      number: 'OM 1955.3',
      title: 'Mangle',
      maker: 'Ironwright & Hale',
      date: 'c. 1885',
      medium: 'Cast iron, sycamore',
      type: 'mangle',
      hardware: 'stands',
      value: 700,
      kg: 160,
    },
  ]),
  ...list(
    'vat',
    times(
      4,
      (i): Draft => ({
        size: i === 3 ? damaged('as the others', 92, 104, 104) : labelled(92, 104, 104),
        subject: { kind: 'vat', variant: i },
        number: `L.2026.${81 + i}`,
        title: `Dye vat, ${nth(['indigo', 'madder', 'weld', 'iron'], i)}`,
        date: 'c. 1850',
        medium: 'Oak, iron hoops, traces of dye',
        type: 'vat',
        hardware: 'stands',
        lender: PRINTWORKS,
        notes: 'Traces of dye: gloves, no public touch.',
        value: 400,
        ...(i === 1 ? {} : { kg: 120 }),
      }),
    ),
  ),
  ...list('shelf', [
    {
      size: labelled(190, 220, 40),
      subject: { kind: 'shelf', levels: [1, 1440 / 1900, 980 / 1900, 520 / 1900, 60 / 1900] },
      number: 'OM F.7',
      title: 'Shelf unit from the print store',
      date: 'c. 1870',
      medium: 'Oak',
      type: 'shelf unit',
      hardware: 'stands',
      notes: 'Fix to the wall: tip-over.',
      levels: [1900, 1440, 980, 520, 60],
      value: 450,
      kg: 95,
    },
  ]),
  ...list('bench', [
    {
      size: labelled(46, 140, 38),
      subject: { kind: 'bench' },
      number: 'OM F.9',
      title: 'Long bench from the dye house',
      date: 'c. 1880',
      medium: 'Oak, dye stains',
      type: 'bench',
      hardware: 'stands',
      levels: [460],
      value: 150,
      kg: 31,
    },
  ]),
  ...list('plinth', [
    {
      size: labelled(105, 50, 50),
      subject: { kind: 'plinth' },
      number: 'OM F.12.1–4',
      title: 'Plinths',
      maker: 'Museum workshop',
      date: '2019',
      medium: 'Painted board',
      type: 'plinth',
      hardware: 'stands',
      levels: [1050],
      value: 80,
      kg: 22,
      pieces: times(4, () => ({ subject: { kind: 'plinth' }, heightMm: 1050, widthMm: 500, depthMm: 500 })),
    },
  ]),
  ...list('sluice', [
    {
      size: labelled(148, 78, 62),
      subject: { kind: 'sluice' },
      number: 'L.2026.4',
      title: 'Sluice gear',
      maker: 'Ironwright & Hale',
      date: 'c. 1870',
      medium: 'Cast iron',
      type: 'sluice gear',
      hardware: 'stands',
      lender: WEIR,
      notes: 'No weight recorded: floor load to be judged before it comes in.',
      value: 5200,
    },
  ]),
];

// Fennimarsh

const HANGING_ROWS: readonly (readonly [title: string, year: string, size: WrittenSize, kg: number | null])[] = [
  ['Weir, rising', '2024', inMetres(146, 310), 14.5],
  ['Rain on the flats', '2025', inCm(132, 88), 4.2],
  ['Dry summer', '2022', inCm(180, 120), 6.8],
  ['Bank-full, March', '2023', inCommaCm(230, 150), 11],
  ['Two rivers, one bed', '2021', inCm(210, 160), null],
  ['Meadow under water', '2025', inCm(220, 140), 9.4],
  ['Night barge', '2020', inInches(160, 240), 12],
  ['Ice on the race', '2019', inCm(200, 110), null],
  ['Wind from Tallow Hill', '2026', inCm(150, 190), 8.8],
];

const hangings = list(
  'hanging',
  HANGING_ROWS.map(
    ([title, year, size, kg], i): Draft => ({
      size,
      subject: { kind: 'hanging', variant: i },
      number: `A.2026.${i + 1}`,
      title,
      maker: ARTIST,
      date: year,
      medium: 'Dyed wool, oak rod',
      type: 'hanging',
      hardware: `rod, 2 hooks, drop 1.5 cm, ${Math.round(size.widthMm / 10) - 30} cm apart`,
      notes: 'Light: 50 lux at most, 120 days.',
      value: 6000 + Math.round(size.widthMm * 2),
      ...(kg === null ? {} : { kg }),
    }),
  ),
);

const TILE_ROWS: readonly (readonly [title: string, columns: number, rows: number, tileCm: number])[] = [
  ['Noon, no wind', 8, 7, 17.5],
  ['The gate open', 4, 4, 16],
  ['Two hills', 5, 4, 16],
  ['Fall', 4, 5, 20],
  ['Whirl', 5, 5, 15],
  ['Thunder at six', 4, 6, 16],
  ['Confluence', 4, 6, 15],
  ['Terraces', 3, 4, 20],
  ['Moon over the cut', 6, 4, 15],
  ['Reeds, evening', 4, 4, 20],
  ['Noon, thin cloud', 5, 6, 15],
  ['The gate shut', 4, 4, 15],
  ['Two hills, heat', 4, 4, 18],
  ['Fall, in spate', 5, 5, 16],
  ['Whirl, seen from the bridge', 6, 6, 15],
  ['Thunder, far off', 3, 5, 18],
  ['Confluence, green', 5, 4, 18],
  ['Terraces, sundown', 6, 5, 15],
];

const tiles = list(
  'tile',
  TILE_ROWS.map(([title, columns, rows, tileCm], i): Draft => {
    const size = nth([inCm, inInches, inCommaCm], i)(rows * tileCm, columns * tileCm, 2.5);
    return {
      size: i === 4 ? damaged('see drawing 4', rows * tileCm, columns * tileCm, 2.5) : size,
      subject: { kind: 'tiles', variant: i, columns, rows },
      number: `A.2026.${i + 10}`,
      title,
      maker: ARTIST,
      date: `20${19 + (i % 7)}`,
      medium: 'Glazed earthenware tiles on board',
      type: 'tile panel',
      hardware: `cleat, drop 12 cm`,
      notes: '',
      value: 1400 + columns * rows * 40,
      ...(i % 5 === 3 ? {} : { kg: Math.round(columns * rows * tileCm * tileCm * 0.0024) }),
    };
  }),
);

/** Every record of the show, in the order of its checklist. */
export const CHECKLIST: readonly DemoRecord[] = [
  ...blocks,
  ...moulds,
  ...levels,
  ...slides,
  ...books,
  ...maps,
  ...oils,
  ...marks,
  ...traps,
  ...dials,
  ...heavy,
  ...hangings,
  ...tiles,
];

const byId = new Map(CHECKLIST.map((record) => [record.id, record]));

/** @throws RangeError when the show has no such record. */
export function recordNamed(id: string): DemoRecord {
  const record = byId.get(id);
  if (record === undefined) throw new RangeError(`no demo record '${id}'`);
  return record;
}

/** The n-th piece (from 1) of a record: its own size and picture. */
export function pieceNamed(id: string, n = 1): DemoPiece {
  const record = recordNamed(id);
  return record.pieces?.[n - 1] ?? record;
}
