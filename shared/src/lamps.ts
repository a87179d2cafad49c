/** The lamps a show may be looked at under: by a short name that is stored, or as measured; and as a light that can be summed. */
import { type Light, type LightId, lightOf, tungstenOf } from '@enfilade/colour/lights';
import { GRID } from '@enfilade/colour/spectrum';

/** In the order they are offered. The gallery's are tungsten spots; daylights, LED, F11: CIE 15:2018. */
export const LAMP_IDS = [
  'D65',
  'D50',
  'gallery 3000 K',
  'gallery 2700 K',
  'LED-B1',
  'LED-B2',
  'LED-B3',
  'LED-B4',
  'LED-B5',
  'LED-BH1',
  'LED-RGB1',
  'LED-V1',
  'LED-V2',
  'F11',
] as const satisfies readonly (LightId | `gallery ${number} K`)[];

export type LampId = (typeof LAMP_IDS)[number];

/** A lamp as a meter wrote it down: relative power at 380, 385 … 780 nm, the greatest 1. */
export interface MeasuredLamp {
  readonly name: string;
  readonly power: readonly number[];
}

export type Lamp = LampId | MeasuredLamp;

const LONGEST_NAME = 60;

/** A measured light as it is stored, to four places of its greatest power. */
export function measuredLampOf({ name, power }: Light): MeasuredLamp {
  const most = Math.max(...power);
  return {
    name: name.slice(0, LONGEST_NAME),
    power: Array.from(power, (value) => Math.round((10_000 * value) / most) / 10_000),
  };
}

/** The lamp of a stored word, or of a stored measurement; null for what is neither. */
export function lampFrom(stored: unknown): Lamp | null {
  const named = LAMP_IDS.find((id) => id === stored);
  if (named !== undefined) return named;
  if (typeof stored !== 'object' || stored === null) return null;
  const { name, power } = stored as Partial<MeasuredLamp>;
  if (typeof name !== 'string' || !Array.isArray(power) || power.length !== GRID.count) return null;
  if (!power.every((value) => value >= 0 && value <= 1) || !power.some((value) => value > 0)) return null;
  return { name: name.slice(0, LONGEST_NAME), power };
}

const lights = new Map<string, Light>();

/** The same light for the same lamp, so that what is reckoned of it can be kept. */
export function lampLightOf(lamp: Lamp): Light {
  const key = typeof lamp === 'string' ? lamp : JSON.stringify(lamp);
  const known = lights.get(key);
  if (known !== undefined) return known;
  const light = typeof lamp === 'string' ? namedLight(lamp) : { name: lamp.name, power: Float64Array.from(lamp.power) };
  lights.set(key, light);
  return light;
}

function namedLight(id: LampId): Light {
  if (id === 'gallery 3000 K') return tungstenOf(3000);
  return id === 'gallery 2700 K' ? tungstenOf(2700) : lightOf(id);
}

/** 'gallery, 3000 K (tungsten)', 'daylight (D65)', 'measured: Dye House spots': as it is chosen from a list. */
export function lampNameOf(lamp: Lamp): string {
  if (typeof lamp !== 'string') return `measured: ${lamp.name}`;
  const gallery = /^gallery (\d+ K)$/.exec(lamp);
  if (gallery !== null) return `gallery, ${gallery[1]} (tungsten)`;
  return lamp === 'F11' ? 'fluorescent (F11, 4000 K)' : lampLightOf(lamp).name.replace('LED light', 'LED');
}
