/** The words of date texts in English, German and French. Common practice, no source. */

const MONTH_WORDS = [
  'january jan januar jänner janvier janv',
  'february feb februar février févr fév',
  'march mar märz mrz mars',
  'april apr avril avr',
  'may mai',
  'june jun juni juin',
  'july jul juli juillet juil',
  'august aug août aout',
  'september sept sep septembre',
  'october oct oktober okt octobre',
  'november nov novembre',
  'december dec dezember dez décembre déc',
];
const MONTHS: ReadonlyMap<string, number> = new Map(
  MONTH_WORDS.flatMap((words, i) => words.split(' ').map((word): [string, number] => [word, i + 1])),
);
/** Seasons by their numbers in ISO 8601-2. */
const SEASONS: ReadonlyMap<string, number> = new Map([
  ['spring', 21],
  ['frühling', 21],
  ['frühjahr', 21],
  ['printemps', 21],
  ['summer', 22],
  ['sommer', 22],
  ['été', 22],
  ['autumn', 23],
  ['fall', 23],
  ['herbst', 23],
  ['automne', 23],
  ['winter', 24],
  ['hiver', 24],
]);

const ORDINAL_WORDS = [
  'first erste ersten erster erstes premier première',
  'second zweite zweiten zweites deuxième seconde',
  'third dritte dritten drittes troisième',
  'fourth vierte vierten viertes quatrième',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
  'eleventh',
  'twelfth',
  'thirteenth',
  'fourteenth',
  'fifteenth',
  'sixteenth',
  'seventeenth',
  'eighteenth',
  'nineteenth',
  'twentieth',
];
const ORDINALS: ReadonlyMap<string, number> = new Map(
  ORDINAL_WORDS.flatMap((words, i) => words.split(' ').map((word): [string, number] => [word, i + 1])),
);

export type DateWord =
  | 'approximate'
  | 'uncertain'
  | 'before'
  | 'until'
  | 'after'
  | 'since'
  | 'between'
  | 'or'
  | 'and'
  | 'to'
  | 'ongoing'
  | 'later'
  | 'earlier'
  | 'early'
  | 'mid'
  | 'late'
  | 'last'
  | 'half'
  | 'third'
  | 'quarter'
  | 'decade'
  | 'century'
  | 'millennium'
  | 'turn'
  | 'filler';

const WORDS: readonly (readonly [DateWord, string])[] = [
  ['approximate', 'c ca circa about around approximately approx um gegen etwa ungefähr vers env environ autour'],
  [
    'uncertain',
    'probably possibly perhaps likely presumably maybe uncertain wahrscheinlich vermutlich wohl vielleicht möglicherweise probablement peut-être possiblement',
  ],
  ['before', 'before vor avant pre prior ante'],
  ['until', "by until till bis jusqu'en jusque spätestens"],
  ['after', 'after nach après post'],
  ['since', 'since from seit ab depuis frühestens dès'],
  ['between', 'between zwischen entre'],
  ['or', 'or oder ou'],
  ['and', 'and & und et'],
  ['to', 'to through thru à au'],
  ['ongoing', 'ongoing present today heute laufend'],
  ['later', 'later newer thereafter'],
  ['earlier', 'earlier older'],
  ['early', 'early beginning anfang früh frühes frühe début start'],
  ['mid', 'mid middle mitte milieu'],
  ['late', 'late end ende spät spätes fin'],
  ['last', 'last letzte letzten letztes dernier dernière'],
  ['half', 'half hälfte moitié'],
  ['third', 'drittel tiers'],
  ['quarter', 'quarter viertel quart'],
  ['decade', 'jahre années decade jahrzehnt décennie'],
  ['century', 'century centuries cent jahrhundert jahrhunderts jahrhunderte jh jhd jhdt jhs siècle siècles siecle'],
  ['millennium', 'millennium jahrtausend millénaire'],
  ['turn', 'turn wende tournant'],
  [
    'filler',
    'the of in year years date dated datiert daté on im am des der das den dem die le la les du de den vom von en l d a an jahr an',
  ],
];
const BY_WORD: ReadonlyMap<string, DateWord> = new Map(
  WORDS.flatMap(([kind, words]) => words.split(' ').map((word): [string, DateWord] => [word, kind])),
);

const EVENTS: readonly (readonly [string, string])[] = [
  [
    'made',
    'made executed execution created painted drawn carved woven built constructed work entstanden ausgeführt gemalt réalisé exécuté peint',
  ],
  ['designed', 'designed design conceived patented entworfen entwurf conçu dessiné'],
  ['made', 'manufactured manufacture produced production fabricated fabrication hergestellt fabriqué'],
  ['photographed', 'negative photographed taken image aufnahme négatif'],
  ['printed', 'printed print reprinted gedruckt abzug imprimé tirage tiré'],
  ['cast', 'cast gegossen guss fonte fondu'],
  ['published', 'published issued edition veröffentlicht herausgegeben publié édité copyright registered'],
  ['exhibited', 'exhibited shown ausgestellt exposé'],
  ['begun', 'begun started begonnen commencé'],
  ['completed', 'completed finished vollendet achevé'],
  ['reworked', 'reworked altered revised restored overpainted recut überarbeitet retouché remanié'],
  ['copied', 'replica copy remade reconstructed reconstruction reproduced refabricated replik kopie réplique copie'],
  ['assembled', 'assembled compiled bound zusammengestellt assemblé'],
];
const EVENT_BY_WORD: ReadonlyMap<string, string> = new Map(
  EVENTS.flatMap(([kind, words]) => words.split(' ').map((word): [string, string] => [word, kind])),
);
const PARTS: ReadonlyMap<string, string> = new Map([
  ['frame', 'frame'],
  ['rahmen', 'frame'],
  ['cadre', 'frame'],
  ['base', 'base'],
  ['sockel', 'base'],
  ['socle', 'base'],
  ['mount', 'mount'],
  ['mounts', 'mount'],
  ['case', 'case'],
  ['lid', 'lid'],
  ['album', 'album'],
  ['setting', 'setting'],
  ['upholstery', 'upholstery'],
  ['glaze', 'glaze'],
  ['plate', 'plate'],
]);

export function monthNamed(word: string): number | null {
  return MONTHS.get(word) ?? null;
}

export function seasonNamed(word: string): number | null {
  return SEASONS.get(word) ?? null;
}

export function ordinalNamed(word: string): number | null {
  return ORDINALS.get(word) ?? null;
}

export function dateWordOf(word: string): DateWord | null {
  return BY_WORD.get(word) ?? null;
}

export function eventNamed(word: string): string | null {
  return EVENT_BY_WORD.get(word) ?? null;
}

export function partNamed(word: string): string | null {
  return PARTS.get(word) ?? null;
}
