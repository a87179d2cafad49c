/** What paints and pictures look like under a lamp, and how surely that is known. Reckoned once for each and kept. */
import type { LabD65 } from '@enfilade/colour/lab';
import type { Light } from '@enfilade/colour/lights';
import { CONFIDENCE, type Surface, seenUnder, surfaceFromLab, surfaceOf } from '@enfilade/colour/seen';
import { measuredPaintOf } from './paint-records.ts';
import type { Paint } from './schema.ts';

const paints = new WeakMap<Paint, Surface>();
const colours = new Map<string, Surface>();
/** More colours than a large checklist has; beyond it they are reckoned anew. */
const MOST_COLOURS = 40_000;

/** The surface of a paint of the deck: by its reflectance where that was measured. */
export function paintSurfaceOf(paint: Paint): Surface {
  const known = paints.get(paint);
  if (known !== undefined) return known;
  const measured = measuredPaintOf(paint);
  const surface = measured.reflectance === undefined ? colourSurfaceOf(paint.lab) : surfaceOf(measured);
  paints.set(paint, surface);
  return surface;
}

/** Whether a colour's surface is known already, so that asking for it takes no time. */
export function isColourReady({ L, a, b }: LabD65): boolean {
  return colours.has(`${L} ${a} ${b}`);
}

/** The surface of a colour of which no more is known, as of a picture. */
export function colourSurfaceOf({ L, a, b }: LabD65): Surface {
  const key = `${L} ${a} ${b}`;
  const known = colours.get(key);
  if (known !== undefined) return known;
  if (colours.size >= MOST_COLOURS) colours.clear();
  const surface = surfaceFromLab({ L, a, b });
  colours.set(key, surface);
  return surface;
}

/** A paint as an eye settled to the light sees it; `light` null is the daylight it was recorded for. */
export function paintUnder(paint: Paint, light: Light | null): LabD65 {
  return light === null ? paint.lab : seenUnder(paintSurfaceOf(paint), light);
}

/** The same of a colour of which no more is known. */
export function colourUnder(lab: LabD65, light: Light | null): LabD65 {
  return light === null ? lab : seenUnder(colourSurfaceOf(lab), light);
}

/** How surely a paint is known under another lamp, as a sentence. */
export function paintConfidence(paint: Paint): string {
  return CONFIDENCE[paintSurfaceOf(paint).basis].words;
}

/** The same of pictures, of which no photograph says more than colours. */
export const PICTURE_CONFIDENCE = `No reflectance of the works is known: as a rule they are within ${Math.ceil(CONFIDENCE.likely.usual)}, at worst within ${CONFIDENCE.likely.worst}.`;
