/** What the Overwick Museum holds, kind by kind: most of it tools, samples and papers of a town that printed cloth. */
import type { Subject } from './drawing/picture.ts';

export interface CollectionKind {
  readonly type: string;
  /** How many of a hundred. */
  readonly share: number;
  /** Every title is a head and a tail. */
  readonly heads: readonly string[];
  readonly tails: readonly string[];
  readonly makers: readonly string[];
  readonly media: readonly string[];
  /** Years of making, first and last. */
  readonly years: readonly [number, number];
  /** Heights in centimetres, least and most; width over height, least and most; depth in centimetres where it has one. */
  readonly cm: readonly [low: number, high: number];
  readonly aspect: readonly [low: number, high: number];
  readonly depthCm?: number;
  /** How many drawings of it there are, and what is drawn; absent: nothing of its kind has been photographed. */
  readonly drawings?: number;
  readonly subject?: (variant: number) => Subject;
}

const PRINTWORKS = 'Tollgate printworks';
const UNKNOWN = 'Unknown';

export const COLLECTION_KINDS: readonly CollectionKind[] = [
  {
    type: 'cloth sample',
    share: 26,
    heads: ['Printed cotton', 'Madder trial', 'Indigo trial', 'Furnishing chintz', 'Handkerchief corner', 'Lining'],
    tails: ['sprig', 'willow leaf', 'ripple', 'pin dot', 'stripe and vine', 'shell', 'rush border', 'weir and reeds'],
    makers: [PRINTWORKS, PRINTWORKS, UNKNOWN],
    media: ['Cotton, madder', 'Cotton, indigo discharge', 'Linen, weld and iron', 'Cotton, block printed'],
    years: [1790, 1890],
    cm: [6, 34],
    aspect: [0.6, 1.7],
  },
  {
    type: 'paper',
    share: 22,
    heads: [
      'Day book',
      'Wage slip',
      'Bill for madder',
      'Letter to the printworks',
      'Drawing for a block',
      'Toll receipt',
    ],
    tails: ['spring', 'Michaelmas', 'of the flood year', 'unsigned', 'second copy', 'with stains', 'Lower Weir'],
    makers: [PRINTWORKS, 'Lower Weir Conservancy', UNKNOWN],
    media: ['Ink on paper', 'Letterpress on paper', 'Pencil on paper', 'Ink on ledger paper, half leather'],
    years: [1770, 1935],
    cm: [9, 42],
    aspect: [0.6, 1.5],
  },
  {
    type: 'tool',
    share: 20,
    heads: [
      'Block cutter’s gouge',
      'Printer’s mallet',
      'Tearing brush',
      'Colour sieve',
      'Tenter hook',
      'Cooper’s adze',
    ],
    tails: ['beech handle', 'small', 'large', 'worn', 'with owner’s mark', 'from the Dye House', 'pair to another'],
    makers: [UNKNOWN, 'A. Tarrowby & Sons', 'Ironwright & Hale'],
    media: ['Iron, beech', 'Steel, boxwood', 'Hair, lime wood', 'Horsehair, ash'],
    years: [1780, 1930],
    cm: [8, 62],
    aspect: [0.15, 0.6],
    depthCm: 5,
  },
  {
    type: 'printing block',
    share: 9,
    heads: ['Cloth-printing block', 'Border block', 'Pitch-pin block', 'Ground block'],
    tails: ['sprig', 'ripple', 'star', 'fern', 'shell', 'honeycomb', 'bud and stem', 'rush'],
    makers: ['Block cutters of the Tollgate printworks', UNKNOWN],
    media: ['Carved pear wood', 'Carved pear wood, copper strip', 'Sycamore and felt'],
    years: [1785, 1875],
    cm: [15, 38],
    aspect: [0.8, 1.25],
    depthCm: 4.5,
    drawings: 14,
    subject: (variant) => ({ kind: 'block', variant }),
  },
  {
    type: 'lantern slide',
    share: 7,
    heads: ['Water avens', 'Marsh marigold', 'Flowering rush', 'Angelica', 'Frogbit', 'Meadow rue', 'Comfrey'],
    tails: ['in flower', 'in seed', 'root', 'second plate', 'at Lower Weir', 'cracked'],
    makers: ['E. Quillfeather', UNKNOWN],
    media: ['Hand-coloured photograph on glass, paper binding', 'Photograph on glass, paper binding'],
    years: [1896, 1926],
    cm: [8.3, 8.3],
    aspect: [1, 1],
    drawings: 10,
    subject: (variant) => ({ kind: 'slide', variant }),
  },
  {
    type: 'mould',
    share: 4,
    heads: ['Copper mould', 'Tinned mould', 'Small mould'],
    tails: ['fluted', 'rose', 'ringed', 'star', 'target', 'turban', 'domed'],
    makers: [UNKNOWN],
    media: ['Beaten copper', 'Beaten copper, tinned inside'],
    years: [1830, 1900],
    cm: [12, 28],
    aspect: [1, 1],
    depthCm: 9,
    drawings: 8,
    subject: (variant) => ({ kind: 'mould face', variant, tinned: variant % 5 === 4 }),
  },
  {
    type: 'pattern book',
    share: 3,
    heads: ['Pattern book', 'Colour receipts', 'Swatch book'],
    tails: ['madder styles', 'blue styles', 'mourning goods', 'export', 'trials', 'furnishings', 'spring'],
    makers: [PRINTWORKS],
    media: ['Printed cotton swatches on paper, half leather', 'Ink and dyed yarn on paper'],
    years: [1812, 1872],
    cm: [24, 34],
    aspect: [1.4, 1.5],
    depthCm: 5,
    drawings: 6,
    subject: (variant) => ({ kind: 'book', variant }),
  },
  {
    type: 'river map',
    share: 2,
    heads: ['The river in flood', 'Reach of the water', 'Plan of the cut', 'Soundings'],
    tails: ['Overwick', 'Lower Weir', 'Saint Osk', 'from Tallow Hill', 'copied'],
    makers: ['Lower Weir Conservancy', UNKNOWN],
    media: ['Ink and wash on paper', 'Engraving, hand-coloured'],
    years: [1760, 1905],
    cm: [42, 72],
    aspect: [1.2, 1.5],
    drawings: 8,
    subject: (variant) => ({ kind: 'map', variant, frame: 'none' }),
  },
  {
    type: 'flood mark',
    share: 2,
    heads: ['Enamel flood mark', 'Flood mark from a doorpost'],
    tails: ['Hithe Street', 'the quay', 'Counting House', 'mill race', 'chapel'],
    makers: ['Lower Weir Conservancy'],
    media: ['Enamel on iron'],
    years: [1868, 1947],
    cm: [18, 26],
    aspect: [1.2, 1.5],
    drawings: 6,
    subject: (variant) => ({ kind: 'mark', variant, year: String(1868 + ((variant * 7) % 80)) }),
  },
  {
    type: 'level',
    share: 2,
    heads: ['Spirit level', 'Mason’s level', 'Boat builder’s level'],
    tails: ['rosewood', 'mahogany', 'ebony', 'beech'],
    makers: [UNKNOWN, 'A. Tarrowby & Sons'],
    media: ['Hardwood, brass, glass, spirit'],
    years: [1850, 1925],
    cm: [5, 8],
    aspect: [6.5, 9.5],
    depthCm: 3.5,
    drawings: 4,
    subject: (variant) => ({ kind: 'level', variant }),
  },
  {
    type: 'eel trap',
    share: 1,
    heads: ['Eel trap', 'Fry trap'],
    tails: ['willow', 'mended', 'narrow mouth', 'from the mill race'],
    makers: [UNKNOWN],
    media: ['Willow'],
    years: [1880, 1960],
    cm: [50, 90],
    aspect: [0.4, 0.48],
    depthCm: 30,
    drawings: 4,
    subject: (variant) => ({ kind: 'trap', variant }),
  },
  {
    type: 'clock dial',
    share: 1,
    heads: ['Clock dial', 'Watchman’s dial'],
    tails: ['painted', 'brass', 'from the printworks', 'hands wanting'],
    makers: [UNKNOWN, 'A. Tarrowby & Sons'],
    media: ['Painted iron', 'Engraved brass'],
    years: [1790, 1910],
    cm: [24, 46],
    aspect: [1, 1],
    drawings: 5,
    subject: (variant) => ({ kind: 'dial', variant }),
  },
  {
    type: 'oil view',
    share: 1,
    heads: ['The valley', 'Barges', 'The weir', 'Evening'],
    tails: ['from Tallow Hill', 'at Lower Weir', 'after rain', 'low water'],
    makers: [UNKNOWN],
    media: ['Oil on canvas', 'Oil on board'],
    years: [1800, 1890],
    cm: [28, 60],
    aspect: [1.25, 1.5],
    drawings: 7,
    subject: (variant) => ({ kind: 'oil', variant, frame: variant % 2 ? 'gilt' : 'dark' }),
  },
];
