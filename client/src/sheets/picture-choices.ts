/** Which picture goes to which record: by the number in its name, by the checklist's picture column, or by a person's word. Pure. */
import { picturesMatched } from '@enfilade/records/picture-matching';
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
import type { MuseumObject, ObjectId } from '@enfilade/shared/schema';

/** A record that pictures can go to: a row about to come in, or one that is on the checklist. */
export interface PictureTarget {
  readonly key: string;
  readonly line: number | null;
  readonly objectId: ObjectId | null;
  readonly number: string;
  readonly title: string;
}

export interface PictureChoice {
  readonly fileName: string;
  readonly target: PictureTarget | null;
  readonly order: number | null;
}

/** Rows first; then what is on the checklist and in no row. A number met twice is the first record's. */
export function targetsOf(
  rows: readonly ChecklistRow[],
  objects: ReadonlyMap<ObjectId, MuseumObject>,
): readonly PictureTarget[] {
  const targets: PictureTarget[] = rows.map(({ line, object }) => ({
    key: `row ${line}`,
    line,
    objectId: null,
    number: object.number,
    title: object.title,
  }));
  const numbers = new Set(targets.map(({ number }) => number));
  for (const [id, { number, title }] of objects) {
    if (!numbers.has(number)) targets.push({ key: id, line: null, objectId: id, number, title });
  }
  return targets;
}

/** `byHand`: file name → key of the target a person chose. */
export function pictureChoices(
  fileNames: readonly string[],
  targets: readonly PictureTarget[],
  rows: readonly ChecklistRow[],
  byHand: ReadonlyMap<string, string>,
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
  const { matched } = picturesMatched(fileNames, [...byNumber.keys()]);
  const found = new Map(matched.map((match) => [match.fileName, match]));
  return fileNames.map((fileName) => {
    const hand = byKey.get(byHand.get(fileName) ?? '');
    const match = found.get(fileName);
    const target = hand ?? named.get(plainName(fileName)) ?? byNumber.get(match?.number ?? '') ?? null;
    return { fileName, target, order: match?.order ?? null };
  });
}

/** Pictures that came up, by target and in the order of their pieces, then of their names. */
export function picturesByTarget(
  choices: readonly PictureChoice[],
  sha256Of: (fileName: string) => string | undefined,
): Map<string, string[]> {
  const inOrder = [...choices].sort(
    (a, b) => (a.order ?? 0) - (b.order ?? 0) || a.fileName.localeCompare(b.fileName, 'en', { numeric: true }),
  );
  const byTarget = new Map<string, string[]>();
  for (const { target, fileName } of inOrder) {
    const sha256 = sha256Of(fileName);
    if (target === null || sha256 === undefined) continue;
    byTarget.set(target.key, [...(byTarget.get(target.key) ?? []), sha256]);
  }
  return byTarget;
}

function plainName(name: string): string {
  return (name.trim().split(/[/\\]/).at(-1) ?? '').toLowerCase();
}
