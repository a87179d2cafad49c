/** What each paint of the show takes, wall by wall: area, coats, primer, litres, when the last coat is on, and paper or cloth to order. */
import { wallpaperOf } from '@enfilade/practice/cloth';
import { type CoatPlan, coatsOf, paintToBuyOf } from '@enfilade/practice/paint-quantities';
import { limitOf } from '@enfilade/practice/practice-profile';
import type { Act } from './acts.ts';
import { dryingOf } from './drying.ts';
import type { Judgements } from './judgements.ts';
import { practiceProfileOf } from './practice-limits.ts';
import { paintsInOrder, surfacesByPaint } from './samples.ts';
import { type Covering, type Finish, type Paint, type PaintId, type SurfaceId, surfaceParts } from './schema.ts';

export interface PaintedSurface {
  readonly surface: SurfaceId;
  /** Less its doorways and windows. */
  readonly areaM2: number;
  /** ISO date; null where it is not painted yet. */
  readonly lastCoat: string | null;
  /** ISO dates from which one may hang, and had better; null while it is not painted. */
  readonly hangFrom: { readonly earliest: string; readonly preferred: string } | null;
  /** The hang begins before it is dry. */
  readonly tooSoon: boolean;
  readonly covering: CoveringOrder | null;
}

/** Paper or cloth for one wall. */
export interface CoveringOrder {
  readonly covering: Covering;
  readonly strips: number;
  readonly stripMm: number;
  /** Rolls of paper; 0 for cloth off a bolt. */
  readonly rolls: number;
  /** Cloth off a bolt; 0 for rolls. */
  readonly clothMm: number;
  /** What cannot be, in words; the figures are 0 then. */
  readonly trouble: string | null;
}

export interface PaintRow {
  readonly paintId: PaintId;
  readonly paint: Paint;
  readonly surfaces: readonly PaintedSurface[];
  /** Of what is painted: a papered wall takes none. */
  readonly areaM2: number;
  readonly plan: CoatPlan;
  readonly paintLitres: number;
  readonly primerLitres: number;
  readonly touchUpLitres: number;
}

export interface PaintSchedule {
  readonly rows: readonly PaintRow[];
  /** ISO dates by which the last coat is on, better and at the latest; null while the hang has no day. */
  readonly lastCoatBy: { readonly preferred: string; readonly latest: string } | null;
}

/** Sets what is done to a wall: the day of its last coat, or its paper or cloth; null takes the covering off. */
export function finishSurface(surface: SurfaceId, fields: Partial<Finish>): Act {
  const changes = Object.entries(fields).map(([field, value]) => ({
    root: 'finishes' as const,
    key: `${surface}/${field}`,
    value: value as never,
  }));
  return { name: 'write down what is done to the wall', changes };
}

/** Paints in the order of the deck, those on no surface left out. */
export function paintScheduleOf(judgements: Judgements): PaintSchedule {
  const { documents } = judgements;
  const profile = practiceProfileOf(documents);
  const surfaces = surfacesByPaint(documents);
  const rows = paintsInOrder(documents).flatMap((paintId): PaintRow[] => {
    const paint = documents.get('deck', paintId);
    const on = surfaces.get(paintId);
    if (paint === undefined || on === undefined) return [];
    const own = on.map((surface) => surfaceOf(judgements, surface));
    const areaM2 = own.reduce((sum, one) => sum + (one.covering === null ? one.areaM2 : 0), 0);
    // What is under it now is on no record: a pale paint over a strong one is the painter's to see.
    const plan = coatsOf(paint.lab, null);
    return [{ paintId, paint, surfaces: own, areaM2, plan, ...paintToBuyOf({ areaM2, plan }, profile) }];
  });
  const hang = judgements.setting('hangBegins');
  const before = (name: 'wallCureDays' | 'wallCurePreferredDays'): string => dayBefore(hang, limitOf(profile, name));
  const dated = isDay(hang);
  return {
    rows,
    lastCoatBy: dated ? { preferred: before('wallCurePreferredDays'), latest: before('wallCureDays') } : null,
  };
}

function surfaceOf(judgements: Judgements, surface: SurfaceId): PaintedSurface {
  const { documents } = judgements;
  const finish = documents.get('finishes', surface);
  const drying = dryingOf(judgements, surface);
  return {
    surface,
    areaM2: areaOf(judgements, surface),
    lastCoat: drying?.lastCoat ?? null,
    hangFrom: drying,
    tooSoon: drying?.tooSoon ?? false,
    covering: finish?.covering ? orderOf(judgements, surface, finish.covering) : null,
  };
}

/** m², less openings on a wall; whole for a floor or ceiling. */
function areaOf(judgements: Judgements, surface: SurfaceId): number {
  const wall = judgements.where.wallOf(surface);
  if (wall === null) {
    const room = judgements.documents.get('rooms', surfaceParts(surface)?.roomId ?? '');
    return room === undefined ? 0 : (room.widthMm * room.depthMm) / 1e6;
  }
  const open = judgements
    .openingsOn(surface)
    .reduce((sum, { widthMm, heightMm }) => sum + widthMm * Math.min(heightMm, wall.heightMm), 0);
  return Math.max(0, wall.lengthMm * wall.heightMm - open) / 1e6;
}

/** Trimmed at the head and foot of each strip. Common practice, no source. */
const TRIM_MM = 100;
/** A bolt is cut to any length; so long that no wall's strip is longer. */
const BOLT_MM = 1e6;

function orderOf(judgements: Judgements, surface: SurfaceId, covering: Covering): CoveringOrder | null {
  const wall = judgements.where.wallOf(surface);
  if (wall === null) return null;
  const none = { covering, strips: 0, stripMm: 0, rolls: 0, clothMm: 0 };
  const figures = [covering.widthMm, covering.repeatMm, covering.rollMm];
  if (!figures.every((figure) => Number.isFinite(figure) && figure >= 0 && figure < 1e5) || covering.widthMm < 1) {
    return { ...none, trouble: 'its width, repeat and roll are lengths of 0 or more' };
  }
  const order = wallpaperOf({
    widthMm: wall.lengthMm,
    heightMm: wall.heightMm,
    trimMm: TRIM_MM,
    repeatMm: covering.repeatMm,
    rollWidthMm: covering.widthMm,
    rollLengthMm: covering.rollMm > 0 ? covering.rollMm : BOLT_MM,
    halfDrop: covering.halfDrop === true,
  });
  if ('what' in order) return { ...none, trouble: `its ${order.where} ${order.what}` };
  const { strips, stripMm, rolls } = order;
  const bolt = covering.rollMm <= 0;
  return { covering, strips, stripMm, rolls: bolt ? 0 : rolls, clothMm: bolt ? strips * stripMm : 0, trouble: null };
}

/** 31 June is no day, though some readers of dates take it for 1 July: so it is written out again and compared. */
function isDay(text: string): boolean {
  const time = /^\d{4}-\d\d-\d\d$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

function dayBefore(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) - Math.ceil(days) * 86_400_000).toISOString().slice(0, 10);
}
