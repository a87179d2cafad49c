/** What a thing is made of and how, out of its medium line: `Beaten copper, tinned inside` is copper, beaten and tinned. */

export interface MaterialReading {
  readonly written: string;
  /** Materials as named, in lower case, each once, without how they were worked: `pear wood`, `copper`. */
  readonly materials: readonly string[];
  /** How they were worked: `beaten`, `carved`, `hand-coloured`. */
  readonly worked: readonly string[];
}

/** A longer text is no medium line. */
const MAX_MEDIUM_TEXT = 1000;
const PARTS = /[,;/&+()\n]|\b(?:on|and|with|over|under|in|bound in|laid on|mounted on|sur|et|auf|und|mit)\b/;
/** Words that say how much or where, and not what. */
const ASIDE =
  /^(?:some|partly|mostly|traces? of|remains of|possibly|probably|inside|outside|later|original|half|full)(?:\s+|$)/;
/** A part that is not the thing itself, or is nothing that lasts of it. */
const NOT_ITS_OWN = /\b(?:frame|mount|mat|backing|traces?|stains?|dyes? stains?)$|^dye$/;
const OF_A_PART = / (?:strips?|hoops?|rods?|bindings?|swatches|inlay|fittings?|feet|handles?)$/;
/** `beaten`, `hand-coloured`: an English participle that leads. Those that name the stuff itself are no work done to it. */
const WORKED = /^(?:hand-?)?(?:[a-z]{2,}(?:ed|wn|ten|ven)|cast|cut|spun|wrought|inlaid)$/;
const NAMES_ITSELF = new Set(['linden', 'wooden', 'golden', 'oaken', 'woollen', 'linen', 'red', 'reed', 'brown']);

/** Reads English lines, and others as far as commas and their words for `on` and `with` part them. Never throws. */
export function materialsFrom(text: string): MaterialReading {
  const materials = new Set<string>();
  const worked = new Set<string>();
  for (const part of text.slice(0, MAX_MEDIUM_TEXT).normalize('NFC').toLowerCase().split(PARTS)) {
    let words = part
      .replace(/[^\p{L}\p{N}\s'’-]/gu, ' ')
      .replace(/\s+/g, ' ')
      .trim();
    const aside = /^traces? of /.test(words);
    while (ASIDE.test(words)) words = words.replace(ASIDE, '');
    const left: string[] = [];
    for (const word of words.replace(/ (?:inside|outside)$/, '').split(' '))
      if (left.length === 0 && WORKED.test(word) && !NAMES_ITSELF.has(word)) worked.add(word);
      else left.push(word);
    // What is said after the stuff of how it was worked: `coloured by hand`, `tinned inside`.
    const stuff = left.join(' ').replace(/^by hand$/, '');
    if (stuff === '' || aside || NOT_ITS_OWN.test(stuff)) continue;
    materials.add(stuff.replace(OF_A_PART, ''));
  }
  return { written: text, materials: [...materials], worked: [...worked] };
}
