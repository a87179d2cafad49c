import { DAYLIGHT_COMPONENTS, F11, LED_LAMPS } from './light-tables.ts';
import { GRID, powerOnGrid, type Spectrum } from './spectrum.ts';

/** A light by its relative power over the grid (380–780 nm, 81 values), and its name as it stands in a sentence. */
export interface Light {
  readonly name: string;
  readonly power: Float64Array;
}

/** A lamp's own name in CIE 15:2018. */
export type LightId = 'A' | 'D50' | 'D55' | 'D65' | 'D75' | 'F11' | keyof typeof LED_LAMPS;

// Named daylights by their temperature on today's scale: nominal × 1.4388 / 1.438 (CIE 15:2018).
const DAYLIGHTS = { D50: 5000, D55: 5500, D65: 6500, D75: 7500 } as const;
const DAYLIGHT_SCALE = 1.4388 / 1.438;

/** Correlated colour temperatures of the LED illuminants, in kelvin (CIE 15:2018, table 12). */
export const LED_KELVIN: Readonly<Record<keyof typeof LED_LAMPS, number>> = {
  'LED-B1': 2733,
  'LED-B2': 2998,
  'LED-B3': 4103,
  'LED-B4': 5109,
  'LED-B5': 6598,
  'LED-BH1': 2851,
  'LED-RGB1': 2840,
  'LED-V1': 2724,
  'LED-V2': 4070,
};

/** Every lamp that can be asked for by name, warm to cool within its kind. */
export const LIGHT_IDS: readonly LightId[] = [
  'D50',
  'D55',
  'D65',
  'D75',
  'A',
  'F11',
  ...(Object.keys(LED_LAMPS) as (keyof typeof LED_LAMPS)[]),
];

/** The light of a CIE illuminant, from its formula or table (CIE 15:2018). */
export function lightOf(id: LightId): Light {
  // CIE defined A on an older scale: 2848 K with c2 = 1.435e7 nm K, which is 2856 K today.
  if (id === 'A') return { name: 'tungsten light (A, 2856 K)', power: planck(2848, 1.435e7) };
  if (id === 'F11') return { name: 'fluorescent light (F11, 4000 K)', power: Float64Array.from(F11) };
  if (id === 'D50' || id === 'D55' || id === 'D65' || id === 'D75') {
    return { ...daylightOf(DAYLIGHTS[id] * DAYLIGHT_SCALE), name: `daylight (${id})` };
  }
  return { name: `LED light (${id.slice(4)}, ${LED_KELVIN[id]} K)`, power: Float64Array.from(LED_LAMPS[id]) };
}

/** Daylight of a correlated colour temperature in kelvin, 4000 to 25000, else RangeError (CIE 15:2018). */
export function daylightOf(kelvin: number): Light {
  if (!(kelvin >= 4000 && kelvin <= 25_000))
    throw new RangeError(`daylightOf: ${kelvin} K is not within 4000 to 25000`);
  const t = 1000 / kelvin;
  const x =
    kelvin <= 7000
      ? 0.244063 + 0.09911 * t + 2.9678 * t ** 2 - 4.607 * t ** 3
      : 0.23704 + 0.24748 * t + 1.9018 * t ** 2 - 2.0064 * t ** 3;
  const y = -3 * x * x + 2.87 * x - 0.275;
  const m = 0.0241 + 0.2562 * x - 0.7341 * y;
  // The published tables come of factors rounded to three decimals.
  const m1 = Number(((-1.3515 - 1.7703 * x + 5.9114 * y) / m).toFixed(3));
  const m2 = Number(((0.03 - 31.4424 * x + 30.0717 * y) / m).toFixed(3));
  const [s0, s1, s2] = DAYLIGHT_COMPONENTS;
  return {
    name: `daylight (${Math.round(kelvin)} K)`,
    power: Float64Array.from(s0, (mean, i) => mean + m1 * s1[i]! + m2 * s2[i]!),
  };
}

/** A tungsten lamp of a temperature in kelvin, 1000 to 4000, else RangeError, by Planck's law with c2 = 1.4388e7 nm K. */
export function tungstenOf(kelvin: number): Light {
  if (!(kelvin >= 1000 && kelvin <= 4000)) throw new RangeError(`tungstenOf: ${kelvin} K is not within 1000 to 4000`);
  return { name: `tungsten light (${Math.round(kelvin)} K)`, power: planck(kelvin, 1.4388e7) };
}

function planck(kelvin: number, c2: number): Float64Array {
  const at = (nm: number): number => nm ** -5 / Math.expm1(c2 / (kelvin * nm));
  return Float64Array.from({ length: GRID.count }, (_, i) => (100 * at(GRID.startNm + i * GRID.stepNm)) / at(560));
}

/** A measured lamp under the name given; RangeError when it gives no light within 380–780 nm. */
export function lightFrom(name: string, spectrum: Spectrum): Light {
  const power = powerOnGrid(spectrum);
  if (!power.some((value) => value > 0)) throw new RangeError(`lightFrom: "${name}" has no power within 380 to 780 nm`);
  return { name, power };
}
