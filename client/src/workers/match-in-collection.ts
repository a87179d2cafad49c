/** Which record of the collection, or row of the file at hand, each picture shows, by its file's name. */
import { objectNumberKey } from '@enfilade/records/object-number';
import { picturesMatched } from '@enfilade/records/picture-matching';
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
import type { CollectionNumbers } from '@enfilade/shared/collection-in';

export interface NamedPicture {
  readonly id: string;
  readonly fileName: string;
}

/** The number each picture's name answers to, by the picture's id; without one where it finds none. */
export function numbersByPicture(
  pictures: readonly NamedPicture[],
  rows: readonly ChecklistRow[],
  numbers: readonly string[],
): ReadonlyMap<string, string> {
  const named = new Map<string, string>();
  for (const { pictureFile, object } of rows) {
    for (const name of pictureFile.split(/[;,|\n]+/)) if (name.trim() !== '') named.set(plain(name), object.number);
  }
  // A number that the file has too, written otherwise, is one number.
  const all = new Map(numbers.map((number) => [objectNumberKey(number), number]));
  for (const { object } of rows) all.set(objectNumberKey(object.number), object.number);
  const { matched } = picturesMatched(
    pictures.map(({ fileName }) => fileName),
    [...all.values()],
  );
  const byName = new Map(matched.map(({ fileName, number }) => [fileName, number]));
  return new Map(
    pictures.flatMap(({ id, fileName }) => {
      const number = named.get(plain(fileName)) ?? byName.get(fileName);
      return number === undefined ? [] : [[id, number] as const];
    }),
  );
}

function plain(name: string): string {
  return (name.trim().split(/[/\\]/).at(-1) ?? '').toLowerCase();
}

/** Every number of the collection. @throws what fetching throws. */
export async function collectionNumbers(base: string): Promise<readonly string[]> {
  const all: string[] = [];
  for (let after: number | null = 0; after !== null; ) {
    const answer = await fetch(`${base}/collection/numbers?after=${after}`);
    if (!answer.ok) throw new Error(`numbers: ${answer.status}`);
    const { numbers, next } = (await answer.json()) as CollectionNumbers;
    all.push(...numbers);
    after = next;
  }
  return all;
}
