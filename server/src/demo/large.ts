/**
 * The generated large show: the ordinary one, and so many further records that there are 3,000. The further ones share
 * a pool of pictures, each drawn small and used by several records of its size; two in three lie on the layout floor.
 */
import { LAYOUT_FLOOR, type Place } from '@enfilade/shared/schema';
import { CHECKLIST, type DemoPiece, type DemoRecord, pieceNamed } from './checklist.ts';
import { between, diceFrom, nth } from './drawing/ink.ts';
import type { Subject } from './drawing/picture.ts';
import { inCm, inInches } from './sizes.ts';

export const LARGE_COUNT = 3000;
/** Distinct pictures that the further records share. */
export const POOL_COUNT = 360;
/** Longest side of a shared picture. */
export const POOL_PX = 320;

export interface LargeRecord extends DemoRecord {
  /** Which of the shared pictures is its own. */
  readonly pool: number;
}

const KINDS = [
  'block',
  'mould-1',
  'mould-22',
  'slide',
  'book-1',
  'map-2',
  'oil-3',
  'mark-1',
  'trap',
  'dial',
  'hanging',
  'tile-4',
];

function pieceOf(k: number): DemoPiece {
  const kind = nth(KINDS, k);
  const base = pieceNamed(kind.includes('-') ? kind : `${kind}-1`);
  const dice = diceFrom(k * 7 + 3);
  const grow = between(dice, 0.75, 1.3);
  const cm = (mm: number) => Math.max(20, Math.round((mm * grow) / 5) * 5);
  const subject: Subject = 'variant' in base.subject ? { ...base.subject, variant: k } : base.subject;
  return { subject, heightMm: cm(base.heightMm), widthMm: cm(base.widthMm), depthMm: base.depthMm };
}

/** The shared pictures, seeded; the same every time. */
export function picturePool(count = POOL_COUNT): readonly DemoPiece[] {
  return Array.from({ length: count }, (_, k) => pieceOf(k));
}

/** The further records that make up `total`, in order. */
export function furtherRecords(total = LARGE_COUNT): readonly LargeRecord[] {
  const pool = picturePool();
  const count = Math.max(0, total - CHECKLIST.length);
  return Array.from({ length: count }, (_, i) => {
    const k = i % pool.length;
    const piece = pool[k] as DemoPiece;
    const kind = nth(KINDS, k);
    const base = CHECKLIST.find(({ id }) => id === (kind.includes('-') ? kind : `${kind}-1`)) as DemoRecord;
    const [h, w] = [piece.heightMm / 10, piece.widthMm / 10];
    const size = i % 3 ? inCm(h, w) : inInches(h, w);
    const { pieces: _pieces, ...plain } = base;
    return {
      ...plain,
      ...piece,
      heightMm: size.heightMm,
      widthMm: size.widthMm,
      id: `further-${i + 1}`,
      number: `OM 1700.${i + 1}`,
      title: `${base.title.replace(/^Cloth-printing blocks$/, 'Cloth-printing block')}, ${i + 1}`,
      dimensionsText: size.text,
      framedText: '',
      count: 1,
      notes: '',
      private: {
        value: `EUR ${((i * 37) % 900) + 20}.00`,
        storage: `Store D, bay ${(i % 40) + 1}, tray ${(i % 9) + 1}`,
      },
      pool: k,
    };
  });
}

const ROW_MM = 40000;
const GAP_MM = 150;

/** Two in three of the further records on the layout floor, in rows of 40 m, none overlapping. */
export function furtherPlaces(records: readonly LargeRecord[]): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>();
  let x = 0;
  let y = 0;
  let tallest = 0;
  for (const [i, { id, widthMm, heightMm }] of records.entries()) {
    if (i % 3 === 2) continue;
    if (x + widthMm > ROW_MM) {
      x = 0;
      y += tallest + GAP_MM;
      tallest = 0;
    }
    places.set(`${id}#1`, [LAYOUT_FLOOR, Math.round(x + widthMm / 2), Math.round(y + heightMm / 2), 0, 0]);
    x += widthMm + GAP_MM;
    tallest = Math.max(tallest, heightMm);
  }
  return places;
}
