/** The deck of paints: invented, with measured-looking CIELAB (D65/2°). Darkest first within each family. */
import type { Paint } from '@enfilade/shared/schema';

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
];

/** Paints by id, without their place in the deck: the show adds them in this order. */
export const DECK: Readonly<Record<string, Omit<Paint, 'order'>>> = Object.fromEntries(
  ROWS.map(([id, name, L, a, b, sheen], index) => [
    id,
    { name, code: `TP ${String(101 + index * 3)}`, lab: { L, a, b }, sheen: sheen ?? MATT },
  ]),
);

const allWalls = (room: string, paint: string): [string, string][] =>
  ['head', 'right', 'foot', 'left'].map((side) => [`${room}:${side}`, paint]);

/** What each wall is painted at the start; the papered wall stands as its paper's ground. */
export const WALL_PAINTS: ReadonlyMap<string, string> = new Map([
  ...allWalls('wheel', 'saffron'),
  ...allWalls('dye', 'verdigris-deep'),
  ...allWalls('counting', 'slate-blue'),
  ['counting:right', 'drab'],
]);
