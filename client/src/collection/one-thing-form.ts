/** What is typed of one thing while it is brought in, and what is wrong with it. Kept while the page is open. */
import { objectNumberKey } from '@enfilade/records/object-number';
import type { RecordIn } from '@enfilade/shared/commands';
import type { ShowDocuments } from '@enfilade/shared/documents';
import type { MeasuredSize } from '@enfilade/shared/schema';
import { lengthFrom } from '@enfilade/space/lengths';
import type { Unit } from '../preferences.ts';

export interface Typed {
  readonly title: string;
  readonly number: string;
  readonly height: string;
  readonly width: string;
  readonly depth: string;
  readonly estimated: boolean;
  readonly source: 'collection' | 'bought';
  readonly price: string;
  readonly before: string;
  readonly after: string;
  readonly onLayout: boolean;
}

export const NOTHING_TYPED: Typed = {
  title: '',
  number: '',
  height: '',
  width: '',
  depth: '',
  estimated: true,
  source: 'collection',
  price: '',
  before: '',
  after: '',
  onLayout: true,
};

/** 'P.2026.4': the next of this year's provisional numbers that nothing has. */
export function nextProvisional(documents: ShowDocuments, year: number): string {
  const taken = new Set([...documents.all('objects').values()].map(({ number }) => objectNumberKey(number)));
  let n = 1;
  while (taken.has(objectNumberKey(`P.${year}.${n}`))) n += 1;
  return `P.${year}.${n}`;
}

export type Troubles = Partial<Record<keyof Typed, string>>;

/** By field, in sentences; empty when it can go in. */
export function troublesOf(typed: Typed, number: string, documents: ShowDocuments, unit: Unit): Troubles {
  const troubles: Troubles = {};
  if (typed.title.trim() === '') troubles.title = 'Say what it is.';
  const key = objectNumberKey(number);
  for (const object of documents.all('objects').values()) {
    if (object.lender === '' && objectNumberKey(object.number) === key) {
      troubles.number = `${object.title || object.number} has this number.`;
    }
  }
  for (const field of ['height', 'width', 'depth'] as const) {
    const text = typed[field].trim();
    if (text === '') continue;
    const read = lengthFrom(text, unit);
    if (read.mm === undefined) troubles[field] = `“${text}” ${read.issue.what}.`;
    else if (read.mm < 1) troubles[field] = 'A length is above nothing.';
  }
  const some = [typed.height, typed.width, typed.depth].some((text) => text.trim() !== '');
  if (some && typed.height.trim() === '') troubles.height = 'A size has a height too, if only estimated.';
  if (some && typed.width.trim() === '') troubles.width = 'A size has a width too, if only estimated.';
  return troubles;
}

/** The record as it goes in; its price into what is private and nowhere else. */
export function recordFrom(typed: Typed, { number, provisional, unit, by, on, picture }: Going): RecordIn {
  const mm = (text: string): number | null => (text.trim() === '' ? null : (lengthFrom(text, unit).mm ?? null));
  const [heightMm, widthMm] = [mm(typed.height), mm(typed.width)];
  const measured: MeasuredSize | null =
    heightMm === null || widthMm === null
      ? null
      : { heightMm, widthMm, depthMm: mm(typed.depth), estimated: typed.estimated, by, on };
  const [before, after] = [typed.before.trim(), typed.after.trim()];
  return {
    object: {
      number,
      title: typed.title.trim(),
      count: 1,
      lender: '',
      source: typed.source,
      ...(provisional ? { provisional } : {}),
      ...(measured === null ? {} : { measured }),
      ...(before === '' && after === '' ? {} : { treatment: { before, after } }),
      ...(picture === null ? {} : { photographedOn: on }),
    },
    ...(picture === null ? {} : { picture }),
    ...(typed.price.trim() === '' ? {} : { private: { price: typed.price.trim() } }),
  };
}

export interface Going {
  readonly number: string;
  /** It is the number offered, not one the museum gave. */
  readonly provisional: boolean;
  readonly unit: Unit;
  readonly by: string;
  /** ISO date. */
  readonly on: string;
  readonly picture: string | null;
}
