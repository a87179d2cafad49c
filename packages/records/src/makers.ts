/** Who made a thing, as registrars write it: names with what qualifies them kept apart, and unknown makers as unknown. */
import { dateFrom } from './dates.ts';
import {
  isCulture,
  type MakerQualifier,
  qualifierBefore,
  qualifierNamed,
  roleBefore,
  roleNamed,
  unknownNamed,
} from './maker-words.ts';

export interface Maker {
  /** As written, without what is said of it; '' where nobody is named. */
  readonly name: string;
  readonly unknown: boolean;
  /** In the order said: `attributed to circle of` are two; none where the name is plainly the maker's. */
  readonly qualifiers: readonly MakerQualifier[];
  /** 'designer', 'printer', 'publisher' … where it is said. */
  readonly role?: string;
  /** `French`, `British, born Malta`. */
  readonly culture?: string;
  /** Years of life or work as written; dateFrom reads them. */
  readonly dates?: string;
  /** A question mark stands by the name. */
  readonly uncertain?: boolean;
}

export interface MakerReading {
  readonly written: string;
  readonly makers: readonly Maker[];
}

interface Said {
  qualifiers: MakerQualifier[];
  role?: string;
  culture?: string;
  dates?: string;
}

/** A longer text is no name. */
const MAX_MAKER_TEXT = 1000;
const PERIOD = /\b(?:dynasty|period|century|culture|epoch)$/i;
const WITH_WORKSHOP = / (?:and|&|und|et) (?:his |her |their )?(?:workshop|studio|assistants?|werkstatt|atelier)$/i;
const FIRM =
  /\b(?:co|company|sons?|brothers|bros|inc|ltd|gmbh|cie|frères|söhne|workshop|studio|press|works|associates)\b/i;

/** One maker for each name, in the order of the text; nothing but an empty text has none. Never throws. */
export function makerFrom(text: string): MakerReading {
  const plain = text
    .slice(0, MAX_MAKER_TEXT)
    .normalize('NFC')
    .replace(/<[a-z/][^<>]{0,100}>/gi, '\n');
  const makers = plain
    .split(/[;\n\r|]+/)
    .flatMap(parted)
    .map((one) => one.replace(/\s+/g, ' ').trim())
    .filter((one) => /[\p{L}\p{N}]/u.test(one))
    .map(makerOf);
  return { written: text, makers };
}

/** `Ada Low and Bea High`, `designed by A, made by B`, `A, after B`: several makers; `Low and Sons` is one. */
function parted(text: string): string[] {
  const joined = text.split(/\s+(?:and|und|et)\s+/);
  const names = joined.every(
    (name) => /\S+\s+\S+/.test(name.trim()) && !FIRM.test(name) && qualifierNamed(name) === null,
  );
  const split = joined.length > 1 && names ? joined : [text];
  return split.flatMap((one) => {
    const parts: string[] = [];
    for (const part of one.split(/,(?![^(]{0,200}\))/)) {
      const lead = roleBefore(part.trim()) ?? (parts.length > 0 ? qualifierBefore(part.trim()) : null);
      if (parts.length === 0 || (lead !== null && qualifierNamed(part.trim()) === null)) parts.push(part);
      else parts[parts.length - 1] = `${parts.at(-1)},${part}`;
    }
    return parts;
  });
}

function makerOf(text: string): Maker {
  const said: Said = { qualifiers: [] };
  const uncertain = text.includes('?');
  let rest = text.replaceAll('?', ' ').replace(/ +/g, ' ').trim();
  const shop = WITH_WORKSHOP.exec(rest);
  if (shop !== null) rest = rest.slice(0, shop.index);
  while (qualifierNamed(rest) === null) {
    const role = roleBefore(rest);
    const qualifier = qualifierBefore(rest);
    if (qualifier !== null && (role === null || qualifier.rest.length <= role.rest.length)) {
      said.qualifiers.push(qualifier.name);
      rest = qualifier.rest;
    } else if (role !== null && said.role === undefined) [said.role, rest] = [role.name, role.rest];
    else break;
  }
  if (shop !== null) said.qualifiers.push('with workshop');
  if (qualifierNamed(rest) !== null) {
    aside(rest, said);
    rest = '';
  }
  // `(British, 1840–1912)`, `(attributed to)`, `(designer)`, `(1840–1912)`.
  rest = rest.replace(/\(([^()]{0,200})\)/g, (_, inside: string) => {
    about(inside, said);
    return ' ';
  });
  const pieces = rest.split(',').map((piece) => piece.replace(/\s+/g, ' ').trim());
  while (pieces.length > 1 && aside(pieces.at(-1) as string, said)) pieces.pop();
  const name = pieces.filter((piece) => piece !== '').join(', ');
  const unknown = unknownNamed(name);
  if (unknown !== null) about(unknown.rest, said);
  // `American, 19th century` and `Possibly French` name nobody.
  const guessed = said.qualifiers.some((qualifier) => qualifier === 'possibly by' || qualifier === 'probably by');
  const people = unknown === null && isCulture(name) && (said.dates !== undefined || guessed);
  if (people && said.culture === undefined) said.culture = name;
  const nobody = unknown !== null || people || name === '';
  return { name: nobody ? '' : name, unknown: nobody, ...said, ...(uncertain ? { uncertain } : {}) };
}

/** What stands in brackets or after `Unknown`, piece by piece; what is neither a date nor known is of the culture. */
function about(text: string, said: Said): void {
  const cultures: string[] = [];
  for (const piece of text.split(/[,;]/).map((one) => one.trim())) {
    if (piece === '' || aside(piece, said)) continue;
    cultures.push(piece);
  }
  if (cultures.length > 0) said.culture = [said.culture, ...cultures].filter((one) => one !== undefined).join(', ');
}

/** True, and noted, where `piece` is a qualifier, a role, dates of life or a culture. */
function aside(piece: string, said: Said): boolean {
  const qualifier = qualifierNamed(piece);
  const role = qualifierBefore(piece) === null ? roleNamed(piece) : null;
  if (qualifier !== null) said.qualifiers.push(qualifier);
  else if (role !== null) said.role ??= role;
  else if (PERIOD.test(piece) || (/\d/.test(piece) && isDates(piece)))
    said.dates = said.dates === undefined ? piece : `${said.dates}, ${piece}`;
  else if (isCulture(piece)) said.culture = said.culture === undefined ? piece : `${piece}, ${said.culture}`;
  else return false;
  return true;
}

/** `1840–1912`, `born 1950`, `active 1880s`, `19th century`, `d. 1700`. */
function isDates(text: string): boolean {
  const plain = text.replace(
    /\b(?:born|died|active|b|d|fl|act|geboren|gestorben|tätig|né|née|mort|actif|est)\b\.?/gi,
    ' ',
  );
  const { earliest, latest, issues } = dateFrom(plain);
  return (earliest !== null || latest !== null) && issues.every(({ kind }) => kind !== 'not understood');
}
