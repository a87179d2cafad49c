/** The light planned on a piece over the show's open days, and how much of its year's budget that is. */
import { type Exposure, type LightClass, type LightLimits, lightBudgetOf } from '@enfilade/practice/light-dose';
import { type LightByMaterial, lightClassOf } from '@enfilade/practice/light-materials';
import type { Act } from './acts.ts';

import { practiceProfileOf } from './practice-limits.ts';
import type { PieceId, SurfaceId } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

/** Plans a light (lux) on a surface, or on one piece that is lit by itself; null: as where it is, or as in the show. */
export function planLight(on: SurfaceId | PieceId, lux: number | null): Act {
  const value = lux === null ? undefined : { lux };
  return { name: 'plan the light', changes: [{ root: 'lights', key: on, value }] };
}

/** Lux planned on a piece: its own, else its surface's, else the show's; null where none is planned or it has no place. */
export function plannedLuxOf(reader: ShowReader, pieceId: PieceId): number | null {
  const surface = reader.where.surfaceOf(pieceId);
  if (surface === null) return null;
  return plannedLight(reader, pieceId) ?? plannedLuxOn(reader, surface);
}

/** Lux planned on a surface; null where none is. */
export function plannedLuxOn(reader: ShowReader, surface: SurfaceId): number | null {
  return plannedLight(reader, surface) ?? soundLux(reader.setting('plannedLux'));
}

function plannedLight({ documents }: ShowReader, on: string): number | null {
  return soundLux(documents.get('lights', on)?.lux);
}

/** A light that is no number, below nothing or beyond daylight is none. */
function soundLux(lux: unknown): number | null {
  return typeof lux === 'number' && lux > 0 && lux <= 200_000 ? lux : null;
}

const DAY_MS = 86_400_000;

/** Days the show is open: its span by its open days a week; null while its first or last day is not set. */
export function openDaysOf(reader: ShowReader): number | null {
  const [opens, closes] = [Date.parse(reader.setting('opens')), Date.parse(reader.setting('closes'))];
  const span = (closes - opens) / DAY_MS + 1;
  if (!(span >= 1 && span <= 36_600)) return null;
  const week = reader.setting('daysPerWeek');
  return Math.round((span * (week > 0 && week <= 7 ? week : 7)) / 7);
}

/** The open days' light on a piece as an exposure; null where light or days are not planned. Install is not counted in. */
export function exposureOf(reader: ShowReader, pieceId: PieceId): Exposure | null {
  const [lux, days] = [plannedLuxOf(reader, pieceId), openDaysOf(reader)];
  const hoursPerDay = reader.setting('hoursPerDay');
  if (lux === null || days === null || !(hoursPerDay > 0 && hoursPerDay <= 24)) return null;
  return { lux, hoursPerDay, days };
}

export interface LightOfPiece {
  readonly read: LightByMaterial;
  readonly exposure: Exposure | null;
  /** Null while the light is not planned, or its class not known. */
  readonly budget: {
    readonly luxHours: number;
    readonly years: number;
    readonly limits: LightLimits;
    readonly over: boolean;
    readonly tooBright: boolean;
    /** Open days after which the year's budget is spent. */
    readonly lastsDays: number;
  } | null;
}

/** What light a piece has and may have; null for what no light hurts, as far as its record says. */
export function lightOf(reader: ShowReader, pieceId: PieceId): LightOfPiece | null {
  const read = materialsRead(reader.objectOf(pieceId)?.medium ?? '');
  if (read.lightClass === 'R0' && !read.askConservator) return null;
  const exposure = exposureOf(reader, pieceId);
  const budget = exposure === null || read.lightClass === null ? null : budgetOf(reader, read.lightClass, exposure);
  return { read, exposure, budget };
}

function budgetOf(reader: ShowReader, lightClass: LightClass, exposure: Exposure): LightOfPiece['budget'] {
  const profile = practiceProfileOf(reader.documents);
  const { limits, luxHours, years, over, tooBright } = lightBudgetOf({ lightClass, exposures: [exposure] }, profile);
  if (limits === null) return null;
  const lastsDays = Math.floor(limits.luxHoursAYear / (exposure.lux * exposure.hoursPerDay));
  return { luxHours, years, limits, over, tooBright, lastsDays };
}

const readMaterials = new Map<string, LightByMaterial>();
/** Media of a collection repeat; beyond so many they are read again. */
const MEDIA_KEPT = 5000;

/** `lightClassOf`, once a text. */
export function materialsRead(medium: string): LightByMaterial {
  const known = readMaterials.get(medium);
  if (known !== undefined) return known;
  const read = lightClassOf(medium);
  if (readMaterials.size >= MEDIA_KEPT) readMaterials.clear();
  readMaterials.set(medium, read);
  return read;
}
