/** Values at even wavelengths from `startNm`: a reflectance as a share 0..1, or a light's relative power. */
export interface Spectrum {
  readonly startNm: number;
  readonly stepNm: number;
  readonly values: readonly number[];
}

/** The wavelengths all sums run over: 380, 385 … 780 nm, as CIE 15:2018 allows for common work. */
export const GRID = { startNm: 380, stepNm: 5, count: 81 } as const;

/** RangeError when a spectrum has no even step or too few values for a curve through six of them. */
function assertSpectrum({ startNm, stepNm, values }: Spectrum): void {
  if (!(stepNm > 0) || !Number.isFinite(startNm))
    throw new RangeError(`spectrum: starts at ${startNm}, step ${stepNm}`);
  if (values.length < 6) throw new RangeError(`spectrum: ${values.length} values, needs at least 6`);
}

// Sprague's fifth-order curve and the two points it needs beyond each end (CIE 167:2005, tables 1 and 2).
const CURVE = [
  [2, -16, 0, 16, -2, 0],
  [-1, 16, -30, 16, -1, 0],
  [-9, 39, -70, 66, -33, 7],
  [13, -64, 126, -124, 61, -12],
  [-5, 25, -50, 50, -25, 5],
] as const;
const BEYOND = [
  [884, -1960, 3033, -2648, 1080, -180],
  [508, -540, 488, -367, 144, -24],
] as const;

function dot(weights: readonly number[], values: readonly number[], from: number, direction = 1): number {
  return weights.reduce((sum, weight, i) => sum + weight * values[from + direction * i]!, 0);
}

/**
 * Reflectance on the grid, 81 shares from 0 up: by Sprague's curve between the measured values (CIE 167:2005), and the
 * end values held beyond them (CIE 15:2018). RangeError for fewer than six values.
 */
export function reflectanceOnGrid(spectrum: Spectrum): Float64Array {
  assertSpectrum(spectrum);
  const { startNm, stepNm, values } = spectrum;
  const last = values.length - 1;
  const ends = (direction: 1 | -1): number[] =>
    BEYOND.map((weights) => dot(weights, values, direction === 1 ? 0 : last, direction) / 209);
  const extended = [...ends(1), ...values, ...ends(-1).reverse()];
  return Float64Array.from({ length: GRID.count }, (_, i) => {
    const at = (GRID.startNm + i * GRID.stepNm - startNm) / stepNm;
    if (at <= 0) return values[0]!;
    if (at >= last) return values[last]!;
    const left = Math.floor(at);
    const x = at - left;
    const a = CURVE.map((weights) => dot(weights, extended, left) / 24);
    const rise = x * (a[0]! + x * (a[1]! + x * (a[2]! + x * (a[3]! + x * a[4]!))));
    return Math.max(0, values[left]! + rise);
  });
}

/**
 * A light's power on the grid, 81 values from 0 up: nothing beyond what was measured, straight lines between values
 * further apart than the grid, and the mean round each wavelength of closer ones. RangeError for fewer than six values.
 */
export function powerOnGrid(spectrum: Spectrum): Float64Array {
  assertSpectrum(spectrum);
  const { startNm, stepNm, values } = spectrum;
  const reach = Math.max(GRID.stepNm, stepNm);
  return Float64Array.from({ length: GRID.count }, (_, i) => {
    const nm = GRID.startNm + i * GRID.stepNm;
    let sum = 0;
    let weights = 0;
    for (let k = Math.ceil((nm - reach - startNm) / stepNm); k <= (nm + reach - startNm) / stepNm; k++) {
      const weight = Math.max(0, 1 - Math.abs(startNm + k * stepNm - nm) / reach);
      weights += weight;
      sum += weight * Math.max(0, values[k] ?? 0);
    }
    return sum / weights;
  });
}
