/** The words of dimension texts, English, German and French: which dimension, and which extent. Common practice, no source. */
import type { Axis } from './dimension-reading.ts';

const AXIS_WORDS: readonly (readonly [Axis, string])[] = [
  ['height', 'h ht hgt height high tall höhe hoehe hoch hauteur haut'],
  ['width', 'w wd width wide breite breit largeur larg'],
  [
    'depth',
    'd dp depth deep th thick thickness tiefe tief dicke dick stärke staerke profondeur prof épaisseur épais ép ep',
  ],
  ['diameter', 'diam dia diameter ø durchmesser dm diamètre diametre'],
  ['length', 'l lg length long länge laenge lang longueur'],
  ['circumference', 'circ circumference umfang circonférence circonference'],
  ['drop', 'drop'],
  ['repeat', 'repeat'],
];
const AXES: ReadonlyMap<string, Axis> = new Map(
  AXIS_WORDS.flatMap(([axis, words]) => words.split(' ').map((word): [string, Axis] => [word, axis])),
);
/** German and French letters that are part labels elsewhere (`b: 3 × 4 in.`). */
const OTHER_LETTERS: ReadonlyMap<string, Axis> = new Map([
  ['b', 'width'],
  ['t', 'depth'],
  ['p', 'depth'],
]);
/** They stand after their figure only. */
const AFTER = new Set('high tall wide deep long thick hoch breit tief lang dick haut épais'.split(' '));

/** Extents by how well they serve as the outer size; every other is a part and never the whole. */
export const EXTENT_RANK: readonly string[] = [
  'framed',
  'overall',
  'displayed',
  'unframed',
  'support',
  'block',
  'mount',
  'sheet',
  'plate',
  'image',
  'sight',
];
const EXTENT_WORDS: readonly (readonly [string, string])[] = [
  [
    'overall',
    'overall|object|objects|total|whole|confirmed|unconfirmed|gesamt|objekt|objektmaß|gesamtmaß|hors tout|dimensions hors tout|total size|complete',
  ],
  ['displayed', 'display|displayed|installed|installation'],
  [
    'framed',
    'framed|frame|frames|with frame|in frame|including frame|incl frame|framed permanently|gerahmt|rahmen|mit rahmen|inkl rahmen|rahmenmaß|außenmaß rahmen|encadré|encadrée|cadre|avec cadre|avec le cadre',
  ],
  ['unframed', 'unframed|without frame|excluding frame|excl frame|ungerahmt|ohne rahmen|sans cadre|non encadré'],
  ['image', 'image|images|picture|bild|bildmaß|motiv|composition|comp'],
  ['sheet', 'sheet|sheets|paper|page|leaf|blatt|blattmaß|papier|feuille'],
  ['sight', 'sight|sight size|à vue|sichtmaß|lichtmaß'],
  ['mount', 'mount|mounted|mat|matted|passepartout|montage'],
  ['plate', 'plate|platemark|plate mark|platte|plattenmaß|plattenrand|coup de planche|cuvette'],
  ['support', 'support|supports|canvas|panel|painting|stretcher|board|leinwand|tafel|bildträger|toile|panneau'],
  ['block', 'block|stone|druckstock'],
  ['base', 'base|sockel|socle'],
  ['lid', 'lid|cover|deckel|couvercle'],
  ['rim', 'rim'],
  ['shade', 'shade'],
  ['seat', 'seat'],
];
const EXTENTS: ReadonlyMap<string, string> = new Map(
  EXTENT_WORDS.flatMap(([extent, labels]) => labels.split('|').map((label): [string, string] => [label, extent])),
);
const PARTS = new Set(['base', 'lid', 'rim', 'shade', 'seat', 'plinth', 'pedestal', 'case', 'box', 'crate', 'stand']);
const FILLERS = new Set(
  'of the a an is are and or size sizes dimension dimensions dims measure measures measured measurement measurements max maximum mm cm in as at to each ea per maß maße größe der die das von'.split(
    ' ',
  ),
);
/** A frame that travels is not the frame that hangs. */
const PASSING =
  /transit|travel|carry|carri|transport|shipp|pack|stor|handling|temporary|crate|t\/f|inner|opening|rabbet|rebate|window|without|excl/;
const KINDS_OF_FRAME =
  /^(outer|gilt|gilded|gold|original|period|artist|artists|artist's|wood|wooden|oak|black|white|metal|glazed|antique|modern|new|old|current|circular|oval)$/;

/** The dimension a word in lower case names; `others` adds the letters of German and French. */
export function axisNamed(word: string, others = false): Axis | null {
  return AXES.get(word) ?? (others ? (OTHER_LETTERS.get(word) ?? null) : null);
}

export function standsAfter(word: string): boolean {
  return AFTER.has(word);
}

export interface Extent {
  /** One of the trade's own names, or the label as written, in lower case. */
  readonly extent: string;
  readonly known: boolean;
  /** What cannot be told of it, for a person. */
  readonly doubt?: string;
}

/** The extent that a label means: `Frame (Salon)` is 'framed', `Transit Frame` is itself; null for words that say nothing. */
export function extentNamed(label: string): Extent | null {
  const plain = trimmed(label.replaceAll('()', ' '));
  if (/^[a-z]$/.test(plain)) return { extent: plain, known: false };
  const words = plain.split(/[^\p{L}\p{N}'/]+/u).filter((word) => word !== '' && !FILLERS.has(word));
  if (words.length === 0) return null;
  const phrase = words.join(' ');
  const named = EXTENTS.get(phrase);
  if (named !== undefined) return { extent: named, known: true };
  const each = words.map((word) => EXTENTS.get(word));
  if (/\bframes?\b/.test(phrase) && PASSING.test(phrase)) return { extent: asWritten(plain), known: true };
  if (each.every((extent) => extent !== undefined)) {
    const outermost = EXTENT_RANK.find((extent) => extent !== 'overall' && each.includes(extent));
    return { extent: outermost ?? 'overall', known: true };
  }
  const last = words.at(-1) as string;
  if (/^frames?$/.test(last) && words.slice(0, -1).every((word) => KINDS_OF_FRAME.test(word))) {
    return { extent: 'framed', known: true };
  }
  // A frame of a named pattern is still the frame.
  if (/^frames?,? ?(\(|\b(?:circular|oval|round|square)\b)/.test(plain)) return { extent: 'framed', known: true };
  const doubt = /\bframed?\b/.test(phrase) ? { doubt: `“${plain}” may be the frame that hangs or another.` } : {};
  return { extent: asWritten(plain), known: PARTS.has(last), ...doubt };
}

function asWritten(label: string): string {
  const bare = /^\(([^()]*)\)$/.exec(label)?.[1] ?? label;
  return bare
    .replace(/ ?, ?/g, ' ')
    .replace(/ +/g, ' ')
    .replace(/^(?:of|dimensions?|sizes?) |(?: dimensions?| sizes?)$/g, '')
    .trim();
}

/** Without the marks and spaces at both ends. */
function trimmed(label: string): string {
  let [from, to] = [0, label.length];
  while (from < to && ' .,:-'.includes(label[from] as string)) from += 1;
  while (to > from && ' .,:-'.includes(label[to - 1] as string)) to -= 1;
  return label.slice(from, to);
}
