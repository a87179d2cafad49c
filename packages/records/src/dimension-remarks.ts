/** What a dimension text says of the whole: set of 12, each, approx., irregular, variable, how long a film runs. */

export interface Remarks {
  /** The text with these words blanked, so that every place in it stays. */
  readonly rest: string;
  readonly quantity?: number;
  readonly partCount?: number;
  readonly perItem?: true;
  readonly approximate?: true;
  readonly irregular?: true;
  readonly variable?: true;
  readonly duration?: string;
}

const NUMBERS = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const COUNT = `(\\d{1,4}|${NUMBERS.join('|')})`;
const THINGS =
  'blatt|blätter|bl\\.|pieces|objects|items|parts|sheets|panels|prints|works|elements|teile|panneaux|éléments';
const SET = new RegExp(
  `\\b(?:set|group|series|suite|lot|box|portfolio) of ${COUNT}\\b(?! ?(?:[x×"']|cm|mm|in\\b))(?: (?:${THINGS}))?|\\b${COUNT} (?:${THINGS})(?![\\p{L}])`,
  'giu',
);
const DURATION =
  /(?:^|(?<=;))[^\n;]*\b(?:duration|running time|dauer|durée)\b[^\n;]*|\b\d{1,4} ?(?:hours?|hrs?|min(?:utes?)?|sec(?:onds?)?)\b\.?,?/gim;
const APPROXIMATE =
  /\b(?:approx(?:imately|imate)?|about|circa|etwa|ungefähr|environ|env)\b\.?|\b(?:ca|c)\.(?= ?\d)|\b(?:ca|c)(?= \d)|~(?= ?\d)/gi;
const VARIABLE =
  /\b(?:(?:overall|installation|installed|displayed|display) ){0,3}(?:(?:dimensions?|sizes?|height|width|length|depth|duration) )?(?:(?:is|are) )?(?:variable|var(?:y|ies)|various)\b|\b(?:maße|größe) variabel\b/gi;

/** Finds the remarks in a text made plain (plain-measure-text.ts). */
export function remarksIn(text: string): Remarks {
  let rest = text;
  const take = (pattern: RegExp): readonly (string | undefined)[] | null => {
    let first: readonly (string | undefined)[] | null = null;
    rest = rest.replace(pattern, (run: string, ...found: (string | undefined)[]) => {
      first ??= [run, ...found];
      return ' '.repeat(run.length);
    });
    return first;
  };
  const variable = take(VARIABLE) !== null;
  const duration = take(DURATION)?.[0]?.trim();
  const numberOf = (word: string) => NUMBERS.indexOf(word.toLowerCase()) + 1 || Number(word);
  const counted = take(SET);
  const pair = take(/\b(?:a )?pair\b(?: of\b)?/gi) !== null;
  const perItem = take(/\b(?:each|ea\b\.?|per item|je|chaque|chacun|chacune)\b/gi) !== null;
  const [set, parts] = [counted?.[1], counted?.[2]];
  // An album of 24 sheets is one thing; two panels, each so large, are two.
  const several = set ?? (perItem ? parts : undefined);
  const quantity = several === undefined ? (pair ? 2 : undefined) : numberOf(several);
  const unconfirmed = /\bunconfirmed\b/i.test(rest);
  const approximate = take(APPROXIMATE) !== null;
  const irregular = take(/\birreg(?:ular|ularly)?\b\.?(?: shaped?\b)?|\bunregelmäßig\b/gi) !== null;
  return {
    rest,
    ...(quantity === undefined ? {} : { quantity }),
    ...(parts === undefined || quantity !== undefined ? {} : { partCount: numberOf(parts) }),
    ...(perItem ? { perItem } : {}),
    ...(approximate || unconfirmed ? { approximate: true } : {}),
    ...(irregular ? { irregular } : {}),
    ...(variable ? { variable } : {}),
    ...(duration === undefined ? {} : { duration }),
  };
}
