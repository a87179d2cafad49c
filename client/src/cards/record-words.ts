/** The fields of a record in words, for what came in and what a person changed. */
import type { RecordChange } from '@enfilade/shared/record-changes';
import type { FrameFact, HardwareFact, Json, MeasuredSize, MuseumObject, PrivateFacts } from '@enfilade/shared/schema';
import { lengthText, sizeText } from '@enfilade/space/lengths';
import type { Unit } from '../preferences.ts';

type Field = (keyof MuseumObject | keyof PrivateFacts) & string;

const NAMES: Partial<Record<Field, string>> = {
  number: 'Number',
  title: 'Title',
  maker: 'Maker',
  dateText: 'Date',
  medium: 'Medium',
  type: 'Kind',
  dimensionsText: 'Unframed size',
  framedText: 'Framed size',
  measured: 'Measured size',
  weightKg: 'Weight',
  count: 'Counts',
  lender: 'Lender',
  creditLine: 'Credit line',
  source: 'From',
  hardwareText: 'Hardware, as written',
  hardware: 'Hardware',
  picture: 'Picture',
  photographedOn: 'Photographed',
  provisional: 'Provisional number',
  treatment: 'To be done',
  frame: 'Frame',
  levelsMm: 'Levels',
  notes: 'Notes',
  value: 'Value',
  storage: 'Storage',
  contact: 'Contact',
  price: 'Price',
};

export function fieldName(field: string): string {
  return NAMES[field as Field] ?? field;
}

/** 'as imported “Mangle”, now “Box mangle”'; of what cannot be read as words only that it was changed. */
export function changeWords({ field, imported, now }: RecordChange<string>, unit: Unit): string {
  if (field === 'picture') return now === undefined ? 'taken away' : imported === undefined ? 'added' : 'another one';
  const [was, is] = [valueWords(field, imported, unit), valueWords(field, now, unit)];
  if (was === null || is === null) return 'changed';
  return `as imported ${was}, now ${is}`;
}

function valueWords(field: string, value: Json | undefined, unit: Unit): string | null {
  if (value === undefined) return 'nothing';
  if (field === 'measured') return measuredWords(value as unknown as MeasuredSize, unit);
  if (field === 'weightKg') return `${value} kg`;
  if (field === 'hardware') return (value as unknown as HardwareFact).kind;
  if (field === 'frame') return (value as unknown as FrameFact).kind;
  if (field === 'levelsMm' && Array.isArray(value))
    return `${value.map((mm) => lengthText(Number(mm), unit)).join(', ')} ${unit}`;
  if (typeof value === 'string') return `“${value}”`;
  if (typeof value === 'number') return String(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return null;
}

function measuredWords({ heightMm, widthMm, depthMm, estimated }: MeasuredSize, unit: Unit): string {
  return `${sizeText(heightMm, widthMm, depthMm, unit)}${estimated ? ', estimated' : ''}`;
}
