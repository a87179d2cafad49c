import { type ColourMatrix, throughMatrix } from './colour-matrix.ts';
import type { LabD65 } from './lab.ts';
import { DEFICIENCIES, type Deficiency } from './vision-tables.ts';

/** An eye: which cones, and how far, from 0 (as most people's) to 1 (missing altogether). */
export interface Eye {
  readonly kind: Deficiency;
  readonly severity: number;
}

/**
 * What linear sRGB light turns into for such an eye: Machado et al. 2009, between its tabled severities by straight lines.
 * RangeError for a severity outside 0..1.
 */
export function eyeMatrixOf({ kind, severity }: Eye): ColourMatrix {
  if (!(severity >= 0 && severity <= 1)) throw new RangeError(`eyeMatrixOf: severity ${severity} is not within 0 to 1`);
  const tables = DEFICIENCIES[kind];
  const step = Math.min(tables.length - 2, Math.floor(severity * 10));
  const along = severity * 10 - step;
  return tables[step]!.map((weight, i) => weight * (1 - along) + tables[step + 1]![i]! * along);
}

/** What a CIELAB D65 colour looks like to such an eye, as the colour that looks so to most people's (see `eyeMatrixOf`). */
export function seenByEye(lab: LabD65, eye: Eye): LabD65 {
  return throughMatrix(lab, eyeMatrixOf(eye));
}
