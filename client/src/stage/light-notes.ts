/** The light each thing gets, said on the wall while it is asked for: a small plate at the foot of the thing. */
import type { PieceId } from '@enfilade/shared/schema';
import { Store } from '../selection.ts';
import type { SceneItem } from './scene-items.ts';
import { fontOf, px, py, type Sheet } from './sheet.ts';

export interface LightNote {
  /** '50 of 50 lux, 2.7 years'. */
  readonly text: string;
  /** Above its limit or its budget: in heavier letters. */
  readonly over: boolean;
}

/** Null while nobody asks for them. */
export const lightNotes = new Store<ReadonlyMap<PieceId, LightNote> | null>(null);

const SIZE_PX = 11;
const HEIGHT_PX = 16;
const PAD_PX = 4;

/** One plate a thing, none over another: what is graver is given first and keeps its place. */
export function drawLightNotes(
  sheet: Sheet,
  notes: ReadonlyMap<PieceId, LightNote>,
  itemOf: (pieceId: PieceId) => SceneItem | undefined,
): void {
  const { ctx, dpr, tones } = sheet;
  const taken: { x: number; y: number; w: number; h: number }[] = [];
  for (const [pieceId, { text, over }] of notes) {
    const item = itemOf(pieceId);
    if (item === undefined) continue;
    ctx.font = fontOf(sheet, SIZE_PX, { weight: over ? 600 : 400 });
    const w = Math.round(ctx.measureText(text).width + 2 * PAD_PX * dpr);
    const h = Math.round(HEIGHT_PX * dpr);
    const x = Math.round(px(sheet, item.X) - w / 2);
    const y = Math.round(py(sheet, item.maxY) - h / 2);
    if (taken.some((other) => x < other.x + other.w && other.x < x + w && y < other.y + other.h && other.y < y + h)) {
      continue;
    }
    taken.push({ x, y, w, h });
    ctx.fillStyle = tones.card;
    ctx.fillRect(x, y, w, h);
    ctx.strokeStyle = '#111';
    ctx.lineWidth = dpr;
    ctx.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
    ctx.fillStyle = '#111';
    ctx.textAlign = 'left';
    ctx.textBaseline = 'alphabetic';
    ctx.fillText(text, x + PAD_PX * dpr, y + Math.round(12 * dpr));
  }
}
