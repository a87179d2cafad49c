/** One spelling for the many ways in which breaks, fractions, quotes, dashes and times signs are written. */

/** A longer text is no size; what follows is not read. */
export const MAX_MEASURE_TEXT = 4000;

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';
const ENTITIES: Readonly<Record<string, string>> = {
  nbsp: ' ',
  quot: '"',
  amp: '&',
  times: '×',
  frac12: '½',
  frac14: '¼',
  frac34: '¾',
  ndash: '–',
  mdash: '–',
  prime: '′',
  Prime: '″',
  oslash: 'ø',
  Oslash: 'Ø',
  auml: 'ä',
  ouml: 'ö',
  Ouml: 'Ö',
  uuml: 'ü',
  eacute: 'é',
  egrave: 'è',
  '#39': "'",
  '#189': '½',
  '#188': '¼',
  '#190': '¾',
  '#215': '×',
};

/**
 * The first 4,000 characters with letters composed (NFC), line breaks as \n, tags gone, fractions as `n/d`, quotes
 * as " and ', dashes as -, times signs as ×, single spaces. Linear in the length: no pattern here can run on and come back.
 */
export function plainMeasureText(text: string): string {
  return text
    .slice(0, MAX_MEASURE_TEXT)
    .normalize('NFC')
    .replace(/<[ ]?(?:br|\/p|\/div|\/li)[ ]?\/?>/gi, '\n')
    .replace(/<\/?[a-z][^<>]{0,200}>/gi, ' ')
    .replace(/&(#?[a-z0-9]{1,8});/gi, (whole, name: string) => ENTITIES[name] ?? whole)
    .replace(/\r\n?|[\v\u2028\u2029]/g, '\n')
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, fraction)
    .replace(/[⁄∕]/g, '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[″“”„‟〃]|''|′′|’’/g, '"')
    .replace(/[′’‘´`]/g, "'")
    .replace(/[✕✖⨯╳*]/g, '×')
    .replace(/[⌀∅]/g, 'Ø')
    .replace(/[^\S\n]+/g, ' ');
}

/** A raised figure after a plain one begins a fraction: 24¹⁄₂ is 24 1/2. */
function fraction(sign: string, at: number, text: string): string {
  const whole = FRACTIONS[sign];
  if (whole !== undefined) return ` ${whole}`;
  const raised = RAISED.indexOf(sign);
  return raised < 0 ? `${LOWERED.indexOf(sign)}` : /\d/.test(text[at - 1] ?? '') ? ` ${raised}` : `${raised}`;
}
