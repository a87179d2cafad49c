/** The light read or planned on a piece over the show's open days, and how much of its year's budget that is. */
import { type Exposure, type LightClass, type LightLimits, lightBudgetOf } from '@enfilade/practice/light-dose';
import { type LightByMaterial, lightClassOf } from '@enfilade/practice/light-materials';
import type { Act } from './acts.ts';
import type { ShowDocuments } from './documents.ts';
import { practiceProfileOf } from './practice-limits.ts';
import type { Change } from './root-snapshot.ts';
import type { PieceId, PlannedLight, SurfaceId } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

/** Plans a light (lux) on a surface, or on one piece that is lit by itself; null: as where it is, or as in the show. */
export function planLight(documents: ShowDocuments, on: SurfaceId | PieceId, lux: number | null): Act {
  const { lux: _, ...rest } = documents.get('lights', on) ?? {};
  return { name: 'plan the light', changes: [changed(on, lux === null ? rest : { ...rest, lux })] };
}

/** What a meter read on a surface or a piece, by whom and when (ISO date); null: what was read there holds no longer. */
export function readLight(documents: ShowDocuments, on: SurfaceId | PieceId, read: PlannedLight['read'] | null): Act {
  const { read: _, ...rest } = documents.get('lights', on) ?? {};
  return { name: 'write down the light read', changes: [changed(on, read ? { ...rest, read } : rest)] };
}

function changed(on: SurfaceId | PieceId, light: PlannedLight): Change {
  const bare = light.lux === undefined && light.read === undefined;
  return { root: 'lights', key: on, value: bare ? undefined : { ...light } };
}

/** A light that is reckoned with, and whether it was read by a meter or is planned. */
export interface LightThere {
  readonly lux: number;
  readonly from: 'read' | 'planned';
}

/** The light on a piece: its own, else its surface's, else the show's; what was read before what is planned. Null: none, or no place. */
export function lightOn(reader: ShowReader, pieceId: PieceId): LightThere | null {
  const surface = reader.where.surfaceOf(pieceId);
  if (surface === null) return null;
  return own(reader, pieceId) ?? lightOnSurface(reader, surface);
}

/** The light on a surface where a piece has none of its own; null where none is read or planned. */
export function lightOnSurface(reader: ShowReader, surface: SurfaceId): LightThere | null {
  const planned = soundLux(reader.setting('plannedLux'));
  return own(reader, surface) ?? (planned === null ? null : { lux: planned, from: 'planned' });
}

function own({ documents }: ShowReader, on: string): LightThere | null {
  const light = documents.get('lights', on);
  const [read, planned] = [soundLux(light?.read?.lux), soundLux(light?.lux)];
  if (read !== null) return { lux: read, from: 'read' };
  return planned === null ? null : { lux: planned, from: 'planned' };
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
  const [lux, days] = [lightOn(reader, pieceId)?.lux ?? null, openDaysOf(reader)];
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
