/** The light on a whole surface: what each sensitive thing there gets against what it may, and what governs them all. */
import { governingClassOf, highestLuxOf, type LightClass } from '@enfilade/practice/light-dose';
import { type LightOfPiece, type LightThere, lightOf, lightOn, lightOnSurface, openDaysOf } from './light-plan.ts';
import { practiceProfileOf } from './practice-limits.ts';
import { objectOfPiece, type PieceId, type SurfaceId } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

/** Pieces of one record that get the same light. */
export interface LitRow {
  readonly pieces: readonly PieceId[];
  readonly light: LightOfPiece;
  /** Null where no light is read or planned. */
  readonly there: LightThere | null;
}

export interface WallLight {
  readonly there: LightThere | null;
  /** The show's open days; null while its first or last is not set. */
  readonly days: number | null;
  /** What light hurts, or may hurt, there: what is over its limit or budget first, then by the share of its budget it takes. */
  readonly rows: readonly LitRow[];
  /** How many things no light hurts, as far as their records say. */
  readonly unhurt: number;
  /** The most sensitive class there; null where none is known. */
  readonly governing: LightClass | null;
  /** What that class allows over the open days (lux): by its yearly dose, and capped at its highest. */
  readonly allows: { readonly byDoseLux: number; readonly lux: number } | null;
}

/** Source: CIE 157:2004, limits as the show's profile has them; the lender's terms and a conservator go before. */
export function wallLightOf(reader: ShowReader, surface: SurfaceId): WallLight {
  const rows = new Map<string, { pieces: PieceId[]; light: LightOfPiece; there: LightThere | null }>();
  let unhurt = 0;
  for (const direct of reader.where.directlyOn(surface)) {
    for (const pieceId of [direct, ...reader.where.loadOf(direct)]) {
      const light = lightOf(reader, pieceId);
      if (light === null) {
        unhurt += 1;
        continue;
      }
      const there = lightOn(reader, pieceId);
      const key = `${objectOfPiece(pieceId)} ${there?.lux}`;
      const known = rows.get(key);
      if (known === undefined) rows.set(key, { pieces: [pieceId], light, there });
      else known.pieces.push(pieceId);
    }
  }
  const classes = [...rows.values()].flatMap(({ light: { read } }) => read.lightClass ?? []);
  const governing = governingClassOf(classes);
  const days = openDaysOf(reader);
  const hoursPerDay = reader.setting('hoursPerDay');
  const reckoned = governing !== null && days !== null && hoursPerDay > 0 && hoursPerDay <= 24;
  return {
    there: lightOnSurface(reader, surface),
    days,
    rows: [...rows.values()].sort((a, b) => worry(b) - worry(a) || (idOf(a) < idOf(b) ? -1 : 1)),
    unhurt,
    governing,
    allows: reckoned
      ? highestLuxOf({ lightClass: governing, days, hoursPerDay }, practiceProfileOf(reader.documents))
      : null,
  };
}

/** Too bright goes before a dose, a dose by its share; what has no known class is asked about before what is sound. */
function worry({ light: { budget, read } }: LitRow): number {
  if (budget !== null) return budget.years + (budget.tooBright ? 1e6 : 0);
  return read.lightClass === null ? 0.5 : 0;
}

function idOf({ pieces }: LitRow): string {
  return pieces[0] ?? '';
}
