/** The outer size a thing is drawn at: framed before unframed, the whole before a part. */
import type { DimensionPart, DimensionReading, Measure } from './dimension-reading.ts';
import { EXTENT_RANK } from './dimension-words.ts';

export interface OuterSize {
  readonly heightMm: number;
  readonly widthMm: number;
  readonly depthMm: number | null;
  /** Which stated extent this is: 'framed', 'overall', 'support', 'sheet', 'sight' … */
  readonly basis: string;
  /** False: not an outer size, approximate, irregular, a range or only one measure. */
  readonly certain: boolean;
  readonly note?: string;
}

const NOT_OUTER = new Set(['plate', 'image', 'sight']);

/**
 * @returns height, width and depth in mm, or null when height or width is not stated, has no unit, or two systems
 * disagree and nobody has answered yet.
 */
export function outerSizeOf(readings: {
  readonly dimensions?: DimensionReading;
  readonly framed?: DimensionReading;
}): OuterSize | null {
  const candidates: { part: DimensionPart; reading: DimensionReading; basis: string }[] = [];
  for (const part of readings.framed?.parts ?? []) {
    const basis = part.extent === 'overall' ? 'framed' : part.extent;
    candidates.push({ part, reading: readings.framed as DimensionReading, basis });
  }
  for (const part of readings.dimensions?.parts ?? []) {
    candidates.push({ part, reading: readings.dimensions as DimensionReading, basis: part.extent });
  }
  let framedOpen = false;
  for (const extent of EXTENT_RANK) {
    const sized = candidates
      .filter(({ basis }) => basis === extent)
      .map(({ part, reading }) => ({ size: sizeOf(part), reading }));
    if (sized.some(({ size }) => size === 'in conflict')) return null;
    const known = sized.flatMap(({ size, reading }) =>
      size === null || size === 'in conflict' ? [] : [{ size, reading }],
    );
    const [largest] = known.toSorted((a, b) => areaOf(b.size) - areaOf(a.size));
    if (largest === undefined) {
      framedOpen ||= sized.length > 0 && extent === 'framed';
      continue;
    }
    const { size, reading } = largest;
    const vague = reading.approximate || reading.irregular || reading.variable || size.range;
    const single = reading.issues.some(({ kind }) => kind === 'one measure only');
    const several = known.some((other) => areaOf(other.size) !== areaOf(size)) || sized.length > known.length;
    const note = NOT_OUTER.has(extent)
      ? `${extent} size, not the outer edge`
      : framedOpen
        ? 'the framed size cannot be read'
        : several
          ? 'more than one size is stated'
          : vague || single
            ? 'approximate'
            : null;
    const { heightMm, widthMm, depthMm } = size;
    return { heightMm, widthMm, depthMm, basis: extent, certain: note === null, ...(note === null ? {} : { note }) };
  }
  return null;
}

interface Size {
  readonly heightMm: number;
  readonly widthMm: number;
  readonly depthMm: number | null;
  readonly range: boolean;
}

function areaOf({ heightMm, widthMm }: Size): number {
  return heightMm * widthMm;
}

function sizeOf(part: DimensionPart): Size | 'in conflict' | null {
  const { height, width, depth, diameter, length } = part;
  const stated = [height, width, depth, diameter, length].filter((measure) => measure !== undefined);
  if (stated.some(({ conflictMm }) => conflictMm !== undefined)) return 'in conflict';
  const range = stated.some(({ maxMm }) => maxMm !== undefined);
  const mm = (measure: Measure | undefined): number | null => measure?.maxMm ?? measure?.mm ?? null;
  // Round things: a diameter alone lies flat on the wall; with a height it is the footprint.
  if (diameter !== undefined && width === undefined) {
    const across = mm(diameter);
    if (across === null) return null;
    return { heightMm: mm(height) ?? across, widthMm: across, depthMm: mm(depth) ?? (height ? across : null), range };
  }
  // Furniture gives height, length and width; a cloth gives length and width.
  const up = mm(height) ?? (length !== undefined && width !== undefined ? mm(length) : null);
  const along = height !== undefined && length !== undefined ? mm(length) : mm(width);
  const deep = height !== undefined && length !== undefined ? (mm(depth) ?? mm(width)) : mm(depth);
  if (up === null || along === null) return null;
  return { heightMm: up, widthMm: along, depthMm: deep, range };
}
