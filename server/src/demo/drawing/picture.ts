/** The one place that turns what a record says it shows into a picture: SVG at true proportion, cut out, no cast shadow. */
import { clockDial } from './clock-dial.ts';
import { copperFace, copperStanding } from './copper.ts';
import { eelTrap } from './eel-trap.ts';
import { enamelMark } from './enamel-mark.ts';
import { longBench, plinth, shelfUnit } from './furniture.ts';
import { hanging } from './hanging.ts';
import { type Drawing, n } from './ink.ts';
import { lanternSlide } from './lantern-slide.ts';
import { level } from './level.ts';
import { dyeVat, mangle, sluiceGear } from './machines.ts';
import { type OilFrame, oilView } from './oil-view.ts';
import { patternBook } from './pattern-book.ts';
import { printingBlock } from './printing-block.ts';
import { type MapFrame, riverMap } from './river-map.ts';
import { tilePanel } from './tile-panel.ts';

/** What is drawn for one piece. `variant` picks among a kind's drawings and seeds its chance. */
export type Subject =
  | {
      readonly kind: 'block' | 'level' | 'slide' | 'book' | 'trap' | 'dial' | 'vat' | 'hanging';
      readonly variant: number;
    }
  | { readonly kind: 'mould face' | 'mould standing'; readonly variant: number; readonly tinned: boolean }
  | { readonly kind: 'map'; readonly variant: number; readonly frame: MapFrame }
  | { readonly kind: 'oil'; readonly variant: number; readonly frame: OilFrame }
  | { readonly kind: 'mark'; readonly variant: number; readonly year: string }
  | { readonly kind: 'tiles'; readonly variant: number; readonly columns: number; readonly rows: number }
  | { readonly kind: 'shelf'; readonly levels: readonly number[] }
  | { readonly kind: 'bench' | 'plinth' | 'mangle' | 'sluice' };

/** What the drawing of a record needs to know: what it shows, and its outer size in millimetres. */
export interface Pictured {
  readonly subject: Subject;
  readonly heightMm: number;
  readonly widthMm: number;
}

export interface Picture {
  readonly svg: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Longest sides, in pixels, of large and of small things. */
const LARGE_PX = 900;
const SMALL_PX = 500;
const SMALL_BELOW_MM = 420;

function drawingOf(subject: Subject, w: number, h: number, seed: number): Drawing {
  const variant = ('variant' in subject ? subject.variant : 0) + seed;
  switch (subject.kind) {
    case 'block':
      return printingBlock(w, h, variant);
    case 'mould face':
      return copperFace(w, h, variant, subject.tinned);
    case 'mould standing':
      return copperStanding(w, h, variant, subject.tinned);
    case 'level':
      return level(w, h, variant);
    case 'slide':
      return lanternSlide(w, h, variant);
    case 'book':
      return patternBook(w, h, variant);
    case 'map':
      return riverMap(w, h, variant, subject.frame);
    case 'oil':
      return oilView(w, h, variant, subject.frame);
    case 'mark':
      return enamelMark(w, h, variant, subject.year);
    case 'trap':
      return eelTrap(w, h, variant);
    case 'dial':
      return clockDial(w, variant);
    case 'hanging':
      return hanging(w, h, variant);
    case 'tiles':
      return tilePanel(w, h, subject.columns, subject.rows, variant);
    case 'mangle':
      return mangle(w, h);
    case 'vat':
      return dyeVat(w, h, variant);
    case 'shelf':
      return shelfUnit(w, h, subject.levels);
    case 'bench':
      return longBench(w, h);
    case 'plinth':
      return plinth(w, h);
    case 'sluice':
      return sluiceGear(w, h);
  }
}

/**
 * The picture of a record as SVG with a transparent ground and the pixels to render it at. Equal input, equal text.
 * `seed` 0 is the show's own; another shifts every kind to another of its variants. `longestPx` overrides the size.
 */
export function pictureOf(record: Pictured, seed = 0, longestPx?: number): Picture {
  const longestMm = Math.max(record.heightMm, record.widthMm);
  if (!(longestMm > 0) || !(Math.min(record.heightMm, record.widthMm) > 0)) {
    throw new RangeError(`A picture needs a size above 0 mm, not ${record.heightMm} × ${record.widthMm}.`);
  }
  const longest = longestPx ?? (longestMm < SMALL_BELOW_MM ? SMALL_PX : LARGE_PX);
  const w = record.widthMm / 10;
  const h = record.heightMm / 10;
  const widthPx = Math.max(8, Math.round((longest * record.widthMm) / longestMm));
  const heightPx = Math.max(8, Math.round((longest * record.heightMm) / longestMm));
  const { defs, body } = drawingOf(record.subject, w, h, seed);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}" viewBox="0 0 ${n(w)} ${n(h)}" preserveAspectRatio="none"><defs>${defs}</defs>${body}</svg>`;
  return { svg, widthPx, heightPx };
}
