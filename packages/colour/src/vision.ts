import type { LabD65 } from './lab.ts';
import { labD65FromLinear, linearLightOf } from './spaces.ts';
import { DEFICIENCIES, type Deficiency } from './vision-tables.ts';

/** An eye: which cones, and how far, from 0 (as most people's) to 1 (missing altogether). */
export interface Eye {
  readonly kind: Deficiency;
  readonly severity: number;
}

/**
 * What a CIELAB D65 colour looks like to such an eye, as the colour that looks so to most people's: Machado et al. 2009 on
 * linear light, between its tabled severities by straight lines. RangeError for a severity outside 0..1.
 */
export function seenByEye(lab: LabD65, { kind, severity }: Eye): LabD65 {
  if (!(severity >= 0 && severity <= 1)) throw new RangeError(`seenByEye: severity ${severity} is not within 0 to 1`);
  const tables = DEFICIENCIES[kind];
  const step = Math.min(tables.length - 2, Math.floor(severity * 10));
  const along = severity * 10 - step;
  const weight = (i: number): number => tables[step]![i]! * (1 - along) + tables[step + 1]![i]! * along;
  const [r, g, b] = linearLightOf(lab);
  const channel = (row: number): number => weight(row) * r + weight(row + 1) * g + weight(row + 2) * b;
  return labD65FromLinear(channel(0), channel(3), channel(6));
}
