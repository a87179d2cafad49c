/** How surely, and in what way, a name made a thing. Qualifiers by CDWA (4.1.8, qualifier lists); German and French from memory. */

export type MakerQualifier =
  | 'attributed to'
  | 'formerly attributed to'
  | 'probably by'
  | 'possibly by'
  | 'workshop of'
  | 'with workshop'
  | 'circle of'
  | 'follower of'
  | 'school of'
  | 'pupil of'
  | 'assistant of'
  | 'manner of'
  | 'style of'
  | 'after'
  | 'copy after'
  | 'manufactory of'
  | 'retailed by';

const QUALIFIERS: readonly (readonly [MakerQualifier, string])[] = [
  [
    'formerly attributed to',
    'formerly attributed to|previously attributed to|formerly|früher zugeschrieben|anciennement attribué à',
  ],
  [
    'attributed to',
    'attributed to|attrib. to|attrib to|attr. to|attributed|attrib.|attr.|ascribed to|given to|zugeschrieben|attribué à|attribuée à|attribué',
  ],
  ['probably by', 'probably by|probably|likely by|wahrscheinlich von|wohl von|probablement de'],
  ['possibly by', 'possibly by|possibly|perhaps by|vielleicht von|peut-être de'],
  [
    'workshop of',
    'workshop of|studio of|atelier of|office of|workshop|studio|werkstatt von|werkstatt des|werkstatt|atelier de|atelier',
  ],
  ['circle of', 'circle of|close to|circle|umkreis von|umkreis|entourage de|cercle de'],
  ['follower of', 'follower of|followers of|follower|nachfolger von|nachfolger|suiveur de|suiveur'],
  ['school of', 'school of|schule von|schule des|école de'],
  ['pupil of', 'pupil of|student of|schüler von|élève de'],
  ['assistant of', 'assistant of|assistant to'],
  ['manner of', 'manner of|in the manner of|nach art von|in der art von|manière de|à la manière de'],
  ['style of', 'style of|in the style of|im stil von|style de|dans le style de'],
  ['copy after', "copy after|copyist of|copy of|kopie nach|copie d’après|copie d'après"],
  ['after', "after a design by|after an original by|after|nach|d’après|d'après"],
  ['manufactory of', 'manufactory of|factory of|manufaktur'],
  ['retailed by', 'retailed by|sold by|retailer'],
];
const ROLES: readonly (readonly [string, string])[] = [
  ['designer', 'designed by|design by|designer|entworfen von|entwurf|entwerfer|inventor|erfinder|dessiné par'],
  [
    'maker',
    'made by|hersteller|manufactured by|produced by|fabricated by|executed by|manufacturer|fabricator|maker|hergestellt von|ausgeführt von|fabriqué par',
  ],
  ['printer', 'printed by|printer|printmaker|gedruckt von|imprimé par'],
  ['publisher', 'published by|publisher|verlegt von|publié par|édité par'],
  ['engraver', 'engraved by|engraver|graveur|stecher|gestochen von|gravé par'],
  ['photographer', 'photographed by|photograph by|photographer|fotograf|photographe'],
  ['painter', 'painted by|painter|maler|peintre|decorated by|decorator|gemalt von|peint par'],
  ['artist', 'by|artist|künstler|artiste'],
  ['sculptor', 'sculptor|sculpted by|carved by|bildhauer|sculpteur'],
  ['caster', 'cast by|founder|foundry|gegossen von'],
];

/** Longest words first, so that `attributed to` is not read as `attributed`. */
function longestFirst<Name>(words: readonly (readonly [Name, string])[]): readonly (readonly [string, Name])[] {
  return words
    .flatMap(([name, list]) => list.split('|').map((phrase) => [phrase, name] as const))
    .toSorted(([a], [b]) => b.length - a.length);
}

const QUALIFIER_PHRASES = longestFirst(QUALIFIERS);
const ROLE_PHRASES = longestFirst(ROLES);

export interface Led<Name> {
  readonly name: Name;
  readonly rest: string;
}

/** The qualifier that `text` begins with, and what follows it; null where it begins with none. */
export function qualifierBefore(text: string): Led<MakerQualifier> | null {
  return before(text, QUALIFIER_PHRASES);
}

/** The qualifier that is all of `text` (`Rembrandt, school of`), or null. */
export function qualifierNamed(text: string): MakerQualifier | null {
  return before(text, QUALIFIER_PHRASES, true)?.name ?? null;
}

export function roleBefore(text: string): Led<string> | null {
  return before(text, ROLE_PHRASES);
}

export function roleNamed(text: string): string | null {
  return before(text.replace(/\/-?in$/, ''), ROLE_PHRASES, true)?.name ?? null;
}

const OWN_NAMES =
  /^(?:workshop|studio|atelier|werkstatt|circle|umkreis|follower|nachfolger|suiveur|manufaktur|retailer|printer|publisher|maker|founder|foundry|artist|engraver|painter|designer|photographer|decorator|manufacturer|fabricator|entwurf|fotograf|photographe|printmaker|entwerfer|inventor|erfinder|hersteller|künstler|artiste|sculptor|bildhauer|sculpteur|maler|peintre|graveur|stecher)$/;

function before<Name>(text: string, phrases: readonly (readonly [string, Name])[], whole = false): Led<Name> | null {
  const plain = text.toLowerCase();
  for (const [phrase, name] of phrases) {
    if (!plain.startsWith(phrase)) continue;
    const rest = text.slice(phrase.length);
    // `Studio Low` is a name; `studio of Low` is not.
    if (!whole && OWN_NAMES.test(phrase) && !rest.startsWith(':')) continue;
    if (whole ? /^[\s.:?]*$/.test(rest) : /^[\s:]+\S/.test(rest)) return { name, rest: rest.replace(/^[\s:]+/, '') };
  }
  return null;
}

const UNKNOWN =
  /^(?:unknown|unidentified|unrecorded|unnamed|anonymous|anon|unbekannt(?:er|e)?|anonym|inconnue?|anonyme|maker unknown|artist unknown|no maker)(?![\p{L}])/iu;
const KINDS =
  /(?:^|\s)(?:artist|maker|makers|artists|photographer|designer|manufacturer|craftsman|weaver|painter|potter|sculptor|engraver|künstler|meister|hand|artiste|fabricant|school)(?=\s|$)/giu;
// Names of peoples and countries mostly end so; the rest by name.
const CULTURE =
  /^(?:north |south |east |west |central |possibly |probably )?(?:\p{Lu}[\p{L}-]*(?:an|ian|ish|ese|ic|al)|French|Dutch|Greek|Swiss|Czech|Welsh|Thai|Iraqi|Israeli|Pakistani|Flemish|Maya|Inca|Inuit|Navajo|Zulu|Yoruba|Asante|Hopi|Maori|Māori)(?:[ -](?:\p{Lu}[\p{L}-]*(?:an|ian|ish|ese|ic)|School|school))?$/u;

/** True where the words say that nobody knows; `rest` is what else they say, without the kind of maker. */
export function unknownNamed(text: string): { readonly rest: string } | null {
  const found = UNKNOWN.exec(text);
  if (found === null) return null;
  return {
    rest: text
      .slice(found[0].length)
      .replace(KINDS, ' ')
      .replace(/^[\s.,:;(]+|[\s.,;)]+$/g, ''),
  };
}

/** True for what names a people or a country and no person: `American`, `Possibly French`, `South German`. */
export function isCulture(text: string): boolean {
  return CULTURE.test(text);
}
