/**
 * The deck of paints: invented, with measured-looking CIELAB (D65/2°), some with a reflectance, some read under D50/2°.
 * Darkest first within each family.
 */
import type { LabD65 } from '@enfilade/colour/lab';
import type { MeasuredPaint } from '@enfilade/colour/paints';
import { lrvOf } from '@enfilade/colour/spaces';
import { paintFrom } from '@enfilade/shared/paint-records';
import type { Paint } from '@enfilade/shared/schema';
import { inventedReflectance, type Pigment } from './reflectances.ts';

type Row = readonly [id: string, name: string, L: number, a: number, b: number, sheen?: string];

const MATT = 'flat matt';
const EGG = 'low eggshell';

const ROWS: readonly Row[] = [
  // Darks
  ['iron-liquor', 'Iron liquor', 20, 1, 1],
  ['indigo-vat', 'Indigo vat', 24, 6, -30],
  ['logwood', 'Logwood', 27, 15, -13],
  ['alder-bark', 'Alder bark', 30, 12, 14],
  ['verdigris-deep', 'Verdigris, deep', 33, -25, -4],
  ['walnut-husk', 'Walnut husk', 36, 12, 20],
  ['madder-root', 'Madder root', 37, 42, 24],
  ['eel-skin', 'Eel skin', 26, -3, 5],
  ['sluice-black', 'Sluice black', 14, 0, -1, EGG],
  ['flood-night', 'Flood by night', 18, -1, -12],
  ['bottle', 'Bottle end', 28, -18, 8],
  ['oxgall', 'Oxgall', 31, 24, 16],
  ['sloe', 'Sloe', 23, 12, -18],
  ['tannery', 'Tan pit', 29, 14, 20],
  // Middles
  ['slate-blue', 'Slate blue', 43, -5, -17],
  ['weir-moss', 'Weir moss', 45, -18, 30],
  ['lock-gate-rust', 'Lock-gate rust', 47, 38, 42],
  ['woad', 'Woad', 48, -8, -26],
  ['verdigris', 'Verdigris', 50, -28, 2],
  ['brick-dust', 'Brick dust', 52, 30, 28],
  ['silt', 'Silt', 58, 2, 12],
  ['sedge', 'Sedge', 54, -8, 34],
  ['cochineal', 'Cochineal', 44, 52, 10],
  ['orpiment', 'Dull orpiment', 66, 10, 50],
  ['lead-pipe', 'Lead pipe', 50, -1, -4],
  ['wet-slate', 'Wet slate', 38, -2, -8],
  ['teasel', 'Teasel', 48, 16, -10],
  ['fern-shade', 'Fern shade', 40, -16, 18],
  ['copper-still', 'Copper still', 56, 26, 34],
  ['mallow', 'Mallow', 55, 28, -14],
  ['estuary', 'Estuary', 47, -12, -8],
  ['old-rope', 'Old rope', 60, 6, 24],
  ['poppyhead', 'Poppyhead', 50, 54, 38],
  // Lights
  ['fulled-rose', 'Fulled rose', 66, 26, 12],
  ['lichen', 'Lichen', 70, -9, 26],
  ['saffron', 'Saffron', 73, 14, 58],
  ['weld', 'Weld', 80, -2, 60],
  ['drab', 'Drab, the paper’s ground', 66, 2, 14],
  ['first-ice', 'First ice', 84, -7, -6],
  ['river-chalk', 'River chalk', 91, 0, 7],
  ['bleach-green', 'Bleaching green', 78, -14, 14],
  ['mist', 'Mist on the cut', 80, -1, -3],
  ['whey', 'Whey', 89, -2, 11],
  ['cloth-hall', 'Cloth hall', 75, 3, 18],
  ['thistledown', 'Thistledown', 82, 6, -4],
  ['reed-bed', 'Reed bed', 72, 0, 32],
  ['shell', 'River shell', 85, 6, 9],
  ['bone', 'Boiled bone', 86, 1, 14],
  ['limewash', 'Limewash', 95, 0, 3],
  ['plain-grey', 'Plain grey', 65, 0, 0],
  ['willow', 'Willow', 68, -12, 24],
  ['kingcup', 'Kingcup', 82, 4, 74],
  ['sky-washed', 'Washed sky', 76, -8, -12],
  ['apricot', 'Apricot kernel', 78, 14, 30],
  // Lead pipe again by eye, mixed of colours and not of black and white: they part under a warm lamp.
  ['pewter', 'Pewter', 50, -1, -4],
];

/** Read under D50/2°, as print-trade readers give it; three of them are beyond an sRGB screen. */
const READ_UNDER_D50: readonly Row[] = [
  ['peat', 'Peat', 22, 4, 6],
  ['lapis', 'Lapis, coarse', 31, 16, -50],
  ['peacock', 'Peacock', 46, -36, -14],
  ['malachite', 'Malachite', 52, -48, 14],
  ['pollard', 'Pollard', 60, -10, 28],
  ['rainwater', 'Rainwater', 70, -4, -8],
  ['marigold', 'Marigold', 72, 28, 82],
  ['millrace', 'Mill race', 64, -34, -16],
  ['chalk-line', 'Chalk line', 93, -1, 5],
];

/** What those paints are coloured with whose reflectance the reader kept. */
const PIGMENT_OF: Readonly<Record<string, Pigment>> = {
  'iron-liquor': 'black',
  'indigo-vat': 'blue',
  logwood: 'blue',
  'verdigris-deep': 'green',
  'walnut-husk': 'earth',
  'madder-root': 'red',
  'slate-blue': 'blue',
  'weir-moss': 'green',
  'lock-gate-rust': 'earth',
  woad: 'blue',
  verdigris: 'green',
  'brick-dust': 'earth',
  silt: 'earth',
  cochineal: 'red',
  orpiment: 'yellow',
  'lead-pipe': 'white',
  pewter: 'mixed',
  'fulled-rose': 'red',
  saffron: 'yellow',
  weld: 'yellow',
  drab: 'earth',
  'first-ice': 'white',
  'river-chalk': 'white',
  'plain-grey': 'white',
};

const READ_ON = '2 March 2026';
const READER = 'handheld reader, 45°/0°';

/** Paints by id, without their place in the deck: the show adds them in this order. */
export const DECK: Readonly<Record<string, Omit<Paint, 'order'>>> = Object.fromEntries(
  [...ROWS, ...READ_UNDER_D50].map((row, index) => [row[0], paintOf(row, `TP ${101 + index * 3}`)]),
);

function paintOf(row: Row, code: string): Omit<Paint, 'order'> {
  const [id, name, L, a, b, sheen = MATT] = row;
  const lab: LabD65 = { L, a, b };
  const plain = { name, code, lab, sheen };
  const pigment = PIGMENT_OF[id];
  if (pigment !== undefined) {
    return { ...plain, reflectance: inventedReflectance(lab, pigment), measured: READ_ON, instrument: READER };
  }
  if (READ_UNDER_D50.includes(row)) {
    const read: MeasuredPaint = { ...plain, lab: { ...lab, illuminant: 'D50', observer: '2°' }, measured: READ_ON };
    return paintFrom(read);
  }
  // Of every third paint the maker states a light reflectance value.
  return L % 3 === 0 ? { ...plain, lrv: Math.round(lrvOf(lab)) } : plain;
}

const allWalls = (room: string, paint: string): [string, string][] =>
  ['head', 'right', 'foot', 'left'].map((side) => [`${room}:${side}`, paint]);

/** What each wall is painted at the start; the papered wall stands as its paper's ground. */
export const WALL_PAINTS: ReadonlyMap<string, string> = new Map([
  ...allWalls('wheel', 'saffron'),
  ...allWalls('dye', 'verdigris-deep'),
  ...allWalls('counting', 'slate-blue'),
  ['counting:right', 'drab'],
]);
