/**
 * The true size of a piece: a person's measure first, else what its record's texts say, framed before unframed. A frame
 * somebody chose lies within a framed size and one that was measured, unless that was without it; and round any other.
 */
import { dimensionsFrom } from '@enfilade/records/dimensions';
import { type OuterSize, outerSizeOf } from '@enfilade/records/outer-size';
import { chosenFrameOf } from './frames.ts';
import type { MeasuredSize, MuseumObject, PieceFacts } from './schema.ts';

export interface TrueSize {
  readonly heightMm: number;
  readonly widthMm: number;
  /** 0 when no depth is recorded: taken as flat. */
  readonly depthMm: number;
  /** False: nothing is recorded that can be drawn true; it is drawn at a stand-in size, hatched. */
  readonly known: boolean;
  /** False: estimated, sight size, approximate: drawn at this size, hatched. */
  readonly certain: boolean;
  /** 'measured', 'framed', 'overall', 'with its frame' … : which of the record's sizes this is. */
  readonly basis: string;
  readonly note: string | null;
}

/** What an unsized thing is drawn as, so that it can be seen and taken hold of. Common practice, no source. */
export const STAND_IN_MM = 300;

const UNSIZED: TrueSize = {
  heightMm: STAND_IN_MM,
  widthMm: STAND_IN_MM,
  depthMm: 0,
  known: false,
  certain: false,
  basis: 'not known',
  note: null,
};

const parsed = new WeakMap<MuseumObject, TrueSize>();

export function trueSizeOf(object: MuseumObject, piece?: PieceFacts): TrueSize {
  if (piece?.measured) return fromMeasured(piece.measured, object);
  const known = parsed.get(object);
  if (known !== undefined) return known;
  const size = object.measured ? fromMeasured(object.measured, object) : fromTexts(object);
  parsed.set(object, size);
  return size;
}

function fromMeasured(measured: MeasuredSize, { frame }: MuseumObject): TrueSize {
  const round = measured.as === 'unframed' ? 2 * (chosenFrameOf(frame)?.widthMm ?? 0) : 0;
  return {
    heightMm: measured.heightMm + round,
    widthMm: measured.widthMm + round,
    depthMm: measured.depthMm ?? 0,
    known: true,
    certain: !measured.estimated,
    basis: measured.estimated ? 'estimated' : round > 0 ? 'with its frame' : 'measured',
    note: null,
  };
}

function fromTexts(object: MuseumObject): TrueSize {
  const outer = outerSizeOf({
    ...(object.dimensionsText ? { dimensions: dimensionsFrom(object.dimensionsText) } : {}),
    ...(object.framedText ? { framed: dimensionsFrom(object.framedText) } : {}),
  });
  if (outer === null) return UNSIZED;
  const frameMm = outer.basis === 'framed' ? 0 : (chosenFrameOf(object.frame)?.widthMm ?? 0);
  if (frameMm > 0) return withFrame(outer, frameMm);
  return {
    heightMm: outer.heightMm,
    widthMm: outer.widthMm,
    depthMm: outer.depthMm ?? 0,
    known: true,
    certain: outer.certain,
    basis: outer.basis,
    note: outer.note ?? null,
  };
}

/** What is seen within a frame, and the moulding as faced on every side, is the whole of it: then it is certain. */
function withFrame(outer: OuterSize, frameMm: number): TrueSize {
  const whole = outer.basis === 'sight';
  return {
    heightMm: outer.heightMm + 2 * frameMm,
    widthMm: outer.widthMm + 2 * frameMm,
    depthMm: outer.depthMm ?? 0,
    known: true,
    certain: outer.certain || whole,
    basis: 'with its frame',
    note: whole ? null : (outer.note ?? null),
  };
}
