/**
 * What comes into the museum's collection from a file, and the way back. A bringing-in is begun, its rows follow in parts,
 * and all of it can be taken back as long as it is among the last.
 *
 *   GET  /seat/<id>/collection/imports                      → CollectionImport[], the latest first
 *   POST /seat/<id>/collection/imports {file, rows}         → CollectionImport
 *   POST /seat/<id>/collection/imports/<import> {rows}      → CollectionTaken; the same part again changes nothing
 *   POST /seat/<id>/collection/imports/<import>/back        → CollectionBack; asked again until nothing is left
 *   POST /seat/<id>/collection/photograph {number, picture} → CollectionRecord
 *   GET  /seat/<id>/collection/numbers?after=<n>            → CollectionNumbers
 */
import { objectNumberKey } from '@enfilade/records/object-number';
import type { ChecklistRow } from './checklist-reading.ts';
import type { CollectionHeld, CollectionMore } from './collection.ts';

/** A record as it comes in. What is absent or empty is not said: a record that is there keeps what it has. */
export interface CollectionRowIn {
  readonly number: string;
  readonly title?: string;
  readonly maker?: string;
  readonly date?: string;
  readonly medium?: string;
  readonly type?: string;
  readonly dimensions?: string;
  readonly credit?: string;
  /** ISO date it was last shown; null: never; absent: not said. */
  readonly shown?: string | null;
  /** SHA-256 of a picture that the server has. */
  readonly picture?: string;
  readonly storage?: string;
  readonly more?: CollectionMore;
  readonly held?: CollectionHeld;
  /** Only a record that is there already is changed: a picture makes no record. */
  readonly known?: boolean;
}

export interface CollectionImport {
  readonly id: string;
  /** ISO 8601, the server's clock. */
  readonly at: string;
  readonly by: string;
  readonly file: string;
  /** How many rows were announced. */
  readonly rows: number;
  readonly added: number;
  readonly updated: number;
  /** Rows that said nothing new. */
  readonly same: number;
  /** ISO 8601 since when it is taken back; null: it stands. */
  readonly back: string | null;
  /** It is among those of which it is kept what was there before. */
  readonly mayGoBack: boolean;
}

/** `refused`: rows of the part, from 0, that stay out, each with a sentence. */
export interface CollectionTaken {
  readonly added: number;
  readonly updated: number;
  readonly same: number;
  readonly refused: readonly { readonly row: number; readonly what: string }[];
}

export interface CollectionBack {
  /** Records that are again as they were, and gone where they were not there. */
  readonly back: number;
  /** Records that stay: something else has changed them since. */
  readonly stay: number;
  readonly left: number;
}

export interface CollectionNumbers {
  readonly numbers: readonly string[];
  /** What to ask for next; null: these were the last. */
  readonly next: number | null;
}

/** Rows, and bytes of JSON, that come in at once. */
export const COLLECTION_ROWS_AT_ONCE = 400;
export const COLLECTION_PART_BYTES = 4 << 20;
/** Rows of one bringing-in. */
export const COLLECTION_ROWS = 200_000;
/** Bringings-in of which it is kept what was there before. */
export const COLLECTION_IMPORTS_KEPT = 12;

/** A row of a file as the collection takes it; `shownSaid`: a column of the file says when things were last shown. */
export function collectionRowFrom(
  { object, private: { storage = '', ...held }, shown }: ChecklistRow,
  shownSaid: boolean,
): CollectionRowIn {
  const { framedText = '', weightKg = null, count, hardwareText = '', notes = '', frame = null } = object;
  const said = {
    title: object.title,
    maker: object.maker ?? '',
    date: object.dateText ?? '',
    medium: object.medium ?? '',
    type: object.type ?? '',
    dimensions: object.dimensionsText ?? '',
    credit: object.creditLine ?? '',
    storage,
  };
  const more: CollectionMore = {
    ...(framedText === '' ? {} : { framedText }),
    ...(weightKg === null ? {} : { weightKg }),
    ...(count === 1 ? {} : { count }),
    ...(hardwareText === '' ? {} : { hardwareText }),
    ...(notes === '' ? {} : { notes }),
    ...(frame === null ? {} : { frame }),
  };
  return {
    number: object.number,
    ...Object.fromEntries(Object.entries(said).filter(([, text]) => text !== '')),
    ...(shownSaid && shown !== '' ? { shown } : {}),
    ...(Object.keys(more).length === 0 ? {} : { more }),
    ...(Object.keys(held).length === 0 ? {} : { held }),
  };
}

/** Why a row of a file does not go into the collection, as a sentence; null where it does. `museum`: its own name. */
export function outOfCollection({ object: { lender, number } }: ChecklistRow, museum: string): string | null {
  if (lender === '' || objectNumberKey(lender) === objectNumberKey(museum)) return null;
  return `${number} is lent by ${lender}: the collection is the museum’s own. Bring it into the checklist, or take the column of lenders as nothing.`;
}
