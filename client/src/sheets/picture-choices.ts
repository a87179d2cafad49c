/** Which picture goes to which record, and to which of its pieces: by the name, by the checklist's column, or by hand. Pure. */
import { numberRangeOf } from '@enfilade/records/object-number';
import { picturesMatched } from '@enfilade/records/picture-matching';
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
import type { RecordPictures } from '@enfilade/shared/records-in';
import type { MuseumObject, ObjectId } from '@enfilade/shared/schema';

/** A record that pictures can go to: a row about to come in, or one that is on the checklist. */
export interface PictureTarget {
  readonly key: string;
  readonly line: number | null;
  readonly objectId: ObjectId | null;
  readonly number: string;
  readonly title: string;
  readonly count: number;
}

/** The whole record, or one of its pieces from 1. */
export type PictureOf = 'whole' | number;

/** A person's word on one picture: its record (null: none of those it found), and which piece. */
export interface HandChoice {
  readonly target?: string | null;
  readonly of?: PictureOf;
}

export interface PictureChoice {
  readonly id: string;
  readonly fileName: string;
  readonly target: PictureTarget | null;
  /** What it shows of its record; null where another picture shows that, so that this one waits for a word. */
  readonly of: PictureOf | null;
}

/** Rows first; then what is on the checklist and in no row. A number met twice is the first record's. */
export function targetsOf(
  rows: readonly ChecklistRow[],
  objects: ReadonlyMap<ObjectId, MuseumObject>,
): readonly PictureTarget[] {
  const targets: PictureTarget[] = rows.map(({ line, object: { number, title, count } }) => ({
    key: `row ${line}`,
    line,
    objectId: null,
    number,
    title,
    count,
  }));
  const numbers = new Set(targets.map(({ number }) => number));
  for (const [id, { number, title, count }] of objects) {
    if (!numbers.has(number)) targets.push({ key: id, line: null, objectId: id, number, title, count });
  }
  return targets;
}

interface Found {
  readonly id: string;
  readonly fileName: string;
  readonly target: PictureTarget | null;
  /** As the file's name says, among the figures of its number. */
  readonly order: number | null;
  readonly byHand: PictureOf | undefined;
}

/** `byHand`: by picture id, in the order the words were given: the later stands. */
export function pictureChoices(
  pictures: readonly { readonly id: string; readonly fileName: string }[],
  targets: readonly PictureTarget[],
  rows: readonly ChecklistRow[],
  byHand: ReadonlyMap<string, HandChoice>,
): readonly PictureChoice[] {
  const byNumber = new Map<string, PictureTarget>();
  for (const target of targets) if (!byNumber.has(target.number)) byNumber.set(target.number, target);
  const byKey = new Map(targets.map((target) => [target.key, target]));
  const named = new Map<string, PictureTarget>();
  for (const { line, pictureFile } of rows) {
    const target = byKey.get(`row ${line}`);
    for (const name of pictureFile.split(/[;,|\n]+/)) {
      if (name.trim() !== '' && target !== undefined) named.set(plainName(name), target);
    }
  }
  const { matched } = picturesMatched(
    pictures.map(({ fileName }) => fileName),
    [...byNumber.keys()],
  );
  const byName = new Map(matched.map((match) => [match.fileName, match]));
  const given = new Map([...byHand.keys()].map((id, index) => [id, index]));
  const found: Found[] = pictures.map(({ id, fileName }) => {
    const hand = byHand.get(id);
    const match = byName.get(fileName);
    const own = named.get(plainName(fileName)) ?? byNumber.get(match?.number ?? '') ?? null;
    const target = hand?.target === undefined ? own : hand.target === null ? null : (byKey.get(hand.target) ?? null);
    const order = target?.number === match?.number ? (match?.order ?? null) : null;
    return { id, fileName, target, order, byHand: hand?.of };
  });
  const shows = new Map<string, PictureOf>();
  const byTarget = new Map<PictureTarget, Found[]>();
  for (const one of found) {
    if (one.target !== null) byTarget.set(one.target, [...(byTarget.get(one.target) ?? []), one]);
  }
  for (const [target, own] of byTarget) {
    own.sort((a, b) => (given.get(b.id) ?? -1) - (given.get(a.id) ?? -1));
    for (const [of, id] of placesIn(target, own)) shows.set(id, of);
  }
  return found.map(({ id, fileName, target }) => ({ id, fileName, target, of: shows.get(id) ?? null }));
}

/** One picture for each piece: a person's word, then the figure in the name; what has no figure shows the whole. */
function placesIn(target: PictureTarget, found: readonly Found[]): Map<PictureOf, string> {
  const { count, number } = target;
  const taken = new Map<PictureOf, string>();
  const take = (of: PictureOf, { id }: Found): void => {
    if (!taken.has(of)) taken.set(of, id);
  };
  for (const one of found) if (one.byHand !== undefined) take(count > 1 ? one.byHand : 'whole', one);
  const first = numberRangeOf(number)?.from ?? 1;
  const rest = found
    .filter(({ byHand }) => byHand === undefined)
    .sort((a, b) => (a.order ?? 0) - (b.order ?? 0) || compare(a.fileName, b.fileName));
  for (const one of rest) {
    const piece = one.order === null ? null : one.order - first + 1;
    if (count <= 1 || piece === null) take('whole', one);
    else if (piece >= 1 && piece <= count) take(piece, one);
  }
  return taken;
}

/** Without the ending: the plain name comes before its views. */
function compare(a: string, b: string): number {
  const [nameA, nameB] = [a, b].map((name) => name.replace(/\.[^.]*$/, '')) as [string, string];
  return nameA.localeCompare(nameB, 'en', { numeric: true });
}

/** Pictures that came up, by the key of their target. */
export function picturesByTarget(
  choices: readonly PictureChoice[],
  sha256Of: (id: string) => string | undefined,
): Map<string, RecordPictures> {
  const byTarget = new Map<string, { whole: string | null; byPiece: Map<number, string> }>();
  for (const { id, target, of } of choices) {
    const sha256 = sha256Of(id);
    if (target === null || of === null || sha256 === undefined) continue;
    const pictures = byTarget.get(target.key) ?? { whole: null, byPiece: new Map<number, string>() };
    if (of === 'whole') pictures.whole = sha256;
    else pictures.byPiece.set(of, sha256);
    byTarget.set(target.key, pictures);
  }
  return byTarget;
}

function plainName(name: string): string {
  return (name.trim().split(/[/\\]/).at(-1) ?? '').toLowerCase();
}
