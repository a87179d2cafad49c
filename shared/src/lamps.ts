/** The lamps a show may be looked at under: by a short name that is stored, and as a light that can be summed. */
import { type Light, type LightId, lightOf, tungstenOf } from '@enfilade/colour/lights';

/** In the order they are offered. The gallery's are tungsten spots; LED, F11: CIE 15:2018. */
export const LAMP_IDS = [
  'D65',
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

/** The lamp of a stored word; null for one that is none. */
export function lampFrom(word: unknown): LampId | null {
  return LAMP_IDS.find((id) => id === word) ?? null;
}

const lights = new Map<LampId, Light>();

export function lampLightOf(id: LampId): Light {
  const known = lights.get(id) ?? (id === 'gallery 3000 K' ? tungstenOf(3000) : null);
  const light = known ?? (id === 'gallery 2700 K' ? tungstenOf(2700) : lightOf(id as LightId));
  lights.set(id, light);
  return light;
}

/** 'gallery, 3000 K (tungsten)', 'daylight (D65)': as it is chosen from a list. */
export function lampNameOf(id: LampId): string {
  const gallery = /^gallery (\d+ K)$/.exec(id);
  if (gallery !== null) return `gallery, ${gallery[1]} (tungsten)`;
  return id === 'F11' ? 'fluorescent (F11, 4000 K)' : lampLightOf(id).name.replace('LED light', 'LED');
}
