import type { Xyz } from './cielab.ts';
import type { Light } from './lights.ts';
import { OBSERVERS, type Observer } from './observers.ts';

/**
 * Tristimulus values of a reflectance on the grid (81 shares) under a light, the perfect diffuser at Y = 100, by the
 * sum over 380–780 nm in steps of 5 nm (CIE 15:2018, 7.1). RangeError when the reflectance is not on the grid.
 */
export function xyzOf(reflectance: ArrayLike<number>, light: Light, observer: Observer): Xyz {
  const { x, y, z } = OBSERVERS[observer];
  if (reflectance.length !== y.length) {
    throw new RangeError(`xyzOf: ${reflectance.length} reflectances, the grid has ${y.length}`);
  }
  let [sumX, sumY, sumZ, whole] = [0, 0, 0, 0];
  for (let i = 0; i < y.length; i++) {
    const power = light.power[i]!;
    const returned = power * reflectance[i]!;
    sumX += returned * x[i]!;
    sumY += returned * y[i]!;
    sumZ += returned * z[i]!;
    whole += power * y[i]!;
  }
  const k = 100 / whole;
  return [k * sumX, k * sumY, k * sumZ];
}

const ALL = new Float64Array(81).fill(1);

/** The white of a light: what a perfect diffuser looks like under it, Y = 100. */
export function whiteOf(light: Light, observer: Observer): Xyz {
  return xyzOf(ALL, light, observer);
}

/** Correlated colour temperature in kelvin of a white, good to some ten kelvin from 2500 to 9000 K (McCamy 1992). */
export function kelvinOf(white: Xyz): number {
  const sum = white[0] + white[1] + white[2];
  const n = (white[0] / sum - 0.332) / (0.1858 - white[1] / sum);
  return 449 * n ** 3 + 3525 * n ** 2 + 6823.3 * n + 5520.33;
}
