import type { Xyz } from './cielab.ts';
import type { Light } from './lights.ts';
import { OBSERVERS, type Observer } from './observers.ts';

const KEPT: Readonly<Record<Observer, WeakMap<Light, readonly Float64Array[]>>> = {
  '2°': new WeakMap(),
  '10°': new WeakMap(),
};

/** Rows X, Y, Z: what reflectance 1 at each step adds, the perfect diffuser at Y = 100. Kept by light and observer. */
function weightsOf(light: Light, observer: Observer): readonly Float64Array[] {
  const kept = KEPT[observer];
  const known = kept.get(light);
  if (known !== undefined) return known;
  const { x, y, z } = OBSERVERS[observer];
  const whole = light.power.reduce((sum, power, i) => sum + power * y[i]!, 0);
  const weights = [x, y, z].map((matching) =>
    Float64Array.from(light.power, (power, i) => (100 * power * matching[i]!) / whole),
  );
  kept.set(light, weights);
  return weights;
}

/**
 * Tristimulus values of a reflectance on the grid (81 shares) under a light, the perfect diffuser at Y = 100, by the
 * sum over 380–780 nm in steps of 5 nm (CIE 15:2018, 7.1). RangeError when the reflectance is not on the grid.
 */
export function xyzOf(reflectance: ArrayLike<number>, light: Light, observer: Observer): Xyz {
  const [x, y, z] = weightsOf(light, observer) as [Float64Array, Float64Array, Float64Array];
  if (reflectance.length !== y.length) {
    throw new RangeError(`xyzOf: ${reflectance.length} reflectances, the grid has ${y.length}`);
  }
  let [sumX, sumY, sumZ] = [0, 0, 0];
  for (let i = 0; i < y.length; i++) {
    const share = reflectance[i]!;
    sumX += share * x[i]!;
    sumY += share * y[i]!;
    sumZ += share * z[i]!;
  }
  return [sumX, sumY, sumZ];
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
