import type { LabD65 } from './lab.ts';
import { labD65FromLinear, linearLightOf } from './spaces.ts';

/** Nine weights by row, from linear sRGB light to linear sRGB light: what can be done to a whole picture at once. */
export type ColourMatrix = readonly number[];

export const UNCHANGED: ColourMatrix = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Luminance in every channel, so that lightness alone is left (IEC 61966-2-1). */
export const LIGHTNESS_ALONE: ColourMatrix = [0, 1, 2].flatMap(() => [0.2126, 0.7152, 0.0722]);

/** The matrix of one after the other. */
export function oneAfterAnother(first: ColourMatrix, then: ColourMatrix): ColourMatrix {
  return Array.from({ length: 9 }, (_, i) => {
    const [row, column] = [Math.floor(i / 3) * 3, i % 3];
    return then[row]! * first[column]! + then[row + 1]! * first[column + 3]! + then[row + 2]! * first[column + 6]!;
  });
}

/** A CIELAB D65 colour put through a matrix. */
export function throughMatrix(lab: LabD65, matrix: ColourMatrix): LabD65 {
  const light = linearLightOf(lab);
  const channel = (row: number): number => {
    return matrix[row]! * light[0] + matrix[row + 1]! * light[1] + matrix[row + 2]! * light[2];
  };
  return labD65FromLinear(channel(0), channel(3), channel(6));
}
