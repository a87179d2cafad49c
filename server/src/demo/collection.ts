/**
 * The Overwick Museum's whole collection, generated: what is its own on the checklist, and so many further records that
 * there are as many as asked for. A small part of these is photographed; two records at most share a drawing.
 */
import type { CollectionIn } from '../collection.ts';
import { CHECKLIST, type DemoPiece } from './checklist.ts';
import { COLLECTION_KINDS, type CollectionKind } from './collection-kinds.ts';
import { between, type Dice, diceFrom, pick } from './drawing/ink.ts';
import { across, inCm, inCommaCm, inInches, type WrittenSize } from './sizes.ts';

export const COLLECTION_COUNT = 5600;
export const LARGE_COLLECTION_COUNT = 100_000;
/** Longest side of a drawing of the collection. */
export const COLLECTION_PX = 320;

const SHARED_BY = 2;
/** Variants that the checklist's own drawings do not use. */
const VARIANTS_FROM = 211;
const SHOWN_SHARE = 0.22;

export interface CollectionDrawing extends DemoPiece {
  readonly key: string;
  readonly type: string;
  readonly size: WrittenSize;
}

/** The drawings there are, seeded; the same every time. */
export function collectionDrawings(): readonly CollectionDrawing[] {
  return COLLECTION_KINDS.flatMap((kind) =>
    Array.from({ length: kind.drawings ?? 0 }, (_, i): CollectionDrawing => {
      const variant = VARIANTS_FROM + i;
      const size = sizeOf(kind, diceFrom(variant * 31 + kind.type.length));
      return {
        key: `collection ${kind.type} ${i + 1}`,
        type: kind.type,
        size,
        heightMm: size.heightMm,
        widthMm: size.widthMm,
        depthMm: size.depthMm,
        subject: (kind.subject as NonNullable<CollectionKind['subject']>)(variant),
      };
    }),
  );
}

/** Every record of the collection; `pictureOf` answers the SHA-256 a drawing, or a record of the checklist, was kept under. */
export function collectionRecords(pictureOf: (key: string) => string | null, total = COLLECTION_COUNT): CollectionIn[] {
  const own = CHECKLIST.filter(({ source, id }) => source === 'collection' && !id.startsWith('plinth'));
  const onChecklist = own.map(
    (record, i): CollectionIn => ({
      number: record.number,
      title: record.title,
      maker: record.maker,
      date: record.dateText,
      medium: record.medium,
      type: record.type,
      dimensions: record.dimensionsText,
      credit: record.creditLine,
      shown: i % 5 === 2 ? dayAfter(1955, diceFrom(i)) : null,
      picture: pictureOf(record.id) ?? pictureOf(`${record.id}#1`),
      storage: record.private.storage,
    }),
  );
  const records: CollectionIn[] = [];
  const drawings = new Map<string, CollectionDrawing[]>();
  for (const drawing of collectionDrawings()) {
    const twice = Array.from({ length: SHARED_BY }, () => drawing);
    drawings.set(drawing.type, [...(drawings.get(drawing.type) ?? []), ...twice]);
  }
  const lots = new Map<string, number>();
  for (let i = 0; records.length < total - onChecklist.length; i++) {
    const dice = diceFrom(i * 7 + 1);
    const kind = kindBy(dice() * 100);
    // Things of one kind came in together, a lot at a time.
    const of = lots.get(kind.type) ?? 0;
    lots.set(kind.type, of + 1);
    records.push(recordOf(kind, of, dice, drawings.get(kind.type)?.[of], pictureOf));
  }
  // Last, so that who browses meets first what the show has not yet.
  return [...records, ...onChecklist].slice(0, total);
}

const LOT = 24;

function recordOf(
  kind: CollectionKind,
  of: number,
  dice: Dice,
  drawing: CollectionDrawing | undefined,
  pictureOf: (key: string) => string | null,
): CollectionIn {
  const lot = Math.floor(of / LOT);
  const place = COLLECTION_KINDS.indexOf(kind);
  const year = 1879 + ((lot * 13 + place * 29) % 137);
  return {
    // Lots of a hundred and more, so that no number is one of the checklist's.
    number: `OM ${year}.${100 + place + Math.floor(lot / 137) * COLLECTION_KINDS.length}.${(of % LOT) + 1}`,
    title: `${pick(dice, kind.heads)}, ${pick(dice, kind.tails)}`,
    maker: pick(dice, kind.makers),
    date: dateOf(kind, year, dice),
    medium: pick(dice, kind.media),
    type: kind.type,
    dimensions: drawing?.size.text ?? (dice() < 0.08 ? '' : sizeOf(kind, dice).text),
    credit: dice() < 0.3 ? 'Overwick Museum, given by the Tollgate Printworks Trust' : 'Overwick Museum',
    shown: dice() < SHOWN_SHARE ? dayAfter(year, dice) : null,
    picture: drawing === undefined ? null : pictureOf(drawing.key),
    storage: storageOf(kind, lot, of),
  };
}

function kindBy(percent: number): CollectionKind {
  let up = 0;
  for (const kind of COLLECTION_KINDS) {
    up += kind.share;
    if (percent < up) return kind;
  }
  return COLLECTION_KINDS[0] as CollectionKind;
}

function sizeOf({ cm: [low, high], aspect: [narrow, wide], depthCm }: CollectionKind, dice: Dice): WrittenSize {
  const half = (value: number): number => Math.max(0.5, Math.round(value * 2) / 2);
  const height = low === high ? low : half(between(dice, low, high));
  const width = narrow === wide ? height * narrow : half(height * between(dice, narrow, wide));
  if (narrow === 1 && wide === 1 && low !== high) return across(height);
  return pick(dice, [inCm, inCommaCm, inInches])(height, width, depthCm);
}

function dateOf({ years: [first, last] }: CollectionKind, cameIn: number, dice: Dice): string {
  const year = Math.floor(between(dice, first, Math.min(last, cameIn - 8) + 1));
  const lot = dice();
  if (lot < 0.4) return `c. ${year}`;
  if (lot < 0.65) return String(year);
  if (lot < 0.8) return `${Math.floor(year / 10) * 10}s`;
  if (lot < 0.92) return `${year}–${String((year + 6) % 100).padStart(2, '0')}`;
  return '';
}

function dayAfter(year: number, dice: Dice): string {
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  return `${Math.floor(between(dice, Math.max(1931, year + 1), 2025))}-${two(between(dice, 1, 13))}-${two(between(dice, 1, 29))}`;
}

function storageOf({ type }: CollectionKind, lot: number, of: number): string {
  if (type === 'paper' || type === 'river map') return `Paper store, cabinet ${(lot % 14) + 1}, drawer ${(of % 9) + 1}`;
  if (type === 'cloth sample') return `Cloth store, box ${lot + 1}`;
  return `Store ${'ABCD'[lot % 4]}, bay ${(lot % 19) + 1}, shelf ${(of % 5) + 1}`;
}
