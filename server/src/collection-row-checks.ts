/** Whether what was sent as a row for the collection is one: nothing but known fields goes on, each within its length. */
import { objectNumberKey } from '@enfilade/records/object-number';
import type { CollectionHeld, CollectionMore } from '@enfilade/shared/collection';
import type { CollectionRowIn } from '@enfilade/shared/collection-in';
import { FRAME_KINDS } from '@enfilade/shared/schema';

/** The row, or why it stays out. */
export type RowAsSent = CollectionRowIn | { readonly what: string };

export const NUMBER_LONG = 200;
const TEXT_LONG = 20_000;
const TEXTS = ['title', 'maker', 'date', 'medium', 'type', 'dimensions', 'credit', 'storage'] as const;
const MORE_TEXTS = ['framedText', 'hardwareText', 'notes'] as const;
const HELD = ['value', 'contact', 'price'] as const;

export function rowFrom(sent: unknown, hasPicture: (sha256: string) => boolean): RowAsSent {
  const fields = fieldsOf(sent);
  const { number, shown, picture, known } = fields;
  if (typeof number !== 'string' || objectNumberKey(number) === '') {
    return { what: 'It has no object number: it could not be found again.' };
  }
  if (number.length > NUMBER_LONG) return { what: `Its number is longer than ${NUMBER_LONG} letters.` };
  const told = [
    ...Object.values(fields),
    ...Object.values(fieldsOf(fields.more)),
    ...Object.values(fieldsOf(fields.held)),
  ];
  if (told.some((one) => typeof one === 'string' && one.length > TEXT_LONG)) {
    return { what: `${number} holds a text of more than ${TEXT_LONG.toLocaleString('en-GB')} letters.` };
  }
  if (shown !== undefined && shown !== null && !(typeof shown === 'string' && /^-?\d{4,6}-\d\d-\d\d$/.test(shown))) {
    return { what: `${number}: the day it was last shown is no date.` };
  }
  if (picture !== undefined && !(typeof picture === 'string' && hasPicture(picture))) {
    return { what: `${number}: its picture is not on the server.` };
  }
  return {
    number: number.trim(),
    ...textsOf(fields, TEXTS),
    ...(shown === undefined ? {} : { shown: shown as string | null }),
    ...(picture === undefined ? {} : { picture: picture as string }),
    ...given('more', moreOf(fieldsOf(fields.more))),
    ...given('held', textsOf(fieldsOf(fields.held), HELD) as CollectionHeld),
    ...(known === true ? { known } : {}),
  };
}

function fieldsOf(sent: unknown): Readonly<Record<string, unknown>> {
  return typeof sent === 'object' && sent !== null && !Array.isArray(sent) ? (sent as Record<string, unknown>) : {};
}

function textsOf<Name extends string>(
  fields: Readonly<Record<string, unknown>>,
  names: readonly Name[],
): { [name in Name]?: string } {
  const texts = names.flatMap((name) => {
    const text = fields[name];
    return typeof text === 'string' && text.trim() !== '' ? [[name, text]] : [];
  });
  return Object.fromEntries(texts) as { [name in Name]?: string };
}

function moreOf(fields: Readonly<Record<string, unknown>>): CollectionMore {
  const { weightKg, count } = fields;
  const { kind, widthMm } = fieldsOf(fields.frame);
  const frame = FRAME_KINDS.find((one) => one === kind);
  return {
    ...textsOf(fields, MORE_TEXTS),
    ...(isWithin(weightKg, 0, 1e6) ? { weightKg } : {}),
    ...(isWithin(count, 1, 5000) && Number.isInteger(count) ? { count } : {}),
    ...(frame !== undefined && isWithin(widthMm, 0, 10_000) ? { frame: { kind: frame, widthMm } } : {}),
  };
}

function isWithin(value: unknown, least: number, most: number): value is number {
  return typeof value === 'number' && value >= least && value <= most;
}

function given<Name extends string, Facts extends object>(name: Name, facts: Facts): { [name in Name]?: Facts } {
  return Object.keys(facts).length === 0 ? {} : ({ [name]: facts } as { [name in Name]: Facts });
}
