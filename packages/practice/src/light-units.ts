/** Foot-candles, distance and ultraviolet. */
import { within } from './bounds.ts';

/** Lux in a foot-candle: square feet in a square metre. */
export const LUX_PER_FOOT_CANDLE = 10.7639104;

/** Lux of foot-candles. RangeError below 0. Source: definition of the units. */
export function luxFrom(footCandles: number): number {
  return within('footCandles', footCandles, 0) * LUX_PER_FOOT_CANDLE;
}

/** Foot-candles of lux. RangeError below 0. Source: definition of the units. */
export function footCandlesFrom(lux: number): number {
  return within('lux', lux, 0) / LUX_PER_FOOT_CANDLE;
}

/**
 * Lux at another distance (mm) from a small lamp, by the inverse square; never for wall-washers. RangeError on a distance
 * under 1 mm. Source: photometry of a point.
 */
export function luxAt(lamp: { readonly lux: number; readonly atMm: number; readonly toMm: number }): number {
  const { lux, atMm, toMm } = lamp;
  return within('lux', lux, 0) * (within('atMm', atMm, 1, 1e6) / within('toMm', toMm, 1, 1e6)) ** 2;
}

/** Ultraviolet (mW/m²) of a light of so many µW per lumen. RangeError below 0. Source: product of the units. */
export function ultravioletOf(light: { readonly lux: number; readonly microwattsPerLumen: number }): number {
  return (within('microwattsPerLumen', light.microwattsPerLumen, 0) * within('lux', light.lux, 0)) / 1000;
}
