/** Where a piece hangs from on its wall, as a preparator needs it: facts of the documents, planned by its hardware. */

import type { Caution } from '@enfilade/practice/caution';
import type { Hardware } from '@enfilade/practice/hardware';
import { hookPlanOf, type PlannedHook } from '@enfilade/practice/hook-plan';
import { tensionOf, wireOf } from '@enfilade/practice/wires';
import { practiceProfileOf } from './practice-limits.ts';
import type { HardwareFact, PieceId } from './schema.ts';
import type { ShowReader } from './show-reader.ts';

/** Heights in mm; nothing is invented where a figure is missing. */
export type HookPlan =
  | { readonly known: false; readonly hardware: Hardware | null; readonly missing: string }
  | {
      readonly known: true;
      readonly hardware: Hardware;
      readonly heightMm: number;
      readonly fromLaserMm: number;
      /** Empty where it hangs on several hooks whose spacing is not known: the height holds, the places do not. */
      readonly points: readonly {
        readonly xMm: number;
        readonly fromFloorMm: number;
        readonly loadKg: number | null;
      }[];
      /** What the hook that bears most bears, and is to be rated for (kg); null where it is not weighed. */
      readonly loadKg: number | null;
      readonly ratingKg: number | null;
      /** Of a wire with its lengths: how steep it stands, and how hard it pulls; null for other hardware. */
      readonly wire: { readonly angleDegrees: number; readonly pullKg: number | null } | null;
    };

/** Hook positions of a piece on a wall; null when it hangs on none. */
export function hookPlanFor(
  reader: ShowReader,
  pieceId: PieceId,
  hardware: Hardware | null,
  weightKg: number | null,
): HookPlan | null {
  const at = reader.where.placeOf(pieceId);
  const size = reader.sizeOf(pieceId);
  const object = reader.objectOf(pieceId);
  const wall = at === null ? null : reader.where.wallOf(at[0]);
  const room = at === null ? null : reader.where.roomOf(at[0]);
  if (at === null || size === null || object === undefined || wall === null || room === null) return null;
  const missing = (what: string): HookPlan => ({ known: false, hardware, missing: what });
  if (hardware === null) return missing('hardware not known');
  if (hardware.hooks === 0) return missing('no hooks');
  if (!size.known || size.widthMm <= 0 || size.heightMm <= 0) return missing('size not known');
  const wire = hardware.kind === 'wire' ? wholeWire(object.hardware?.wire) : null;
  if (hardware.dropMm === undefined && wire === null) return missing('drop not known');
  if (at[4] !== 0) return missing('it hangs turned: mark its hooks from a template');
  const planned = hookPlanOf(
    { centreXmm: at[1], centreMm: at[2], widthMm: size.widthMm, heightMm: size.heightMm, weightKg },
    hardware,
    {
      lengthMm: wall.lengthMm,
      laserMm: room.laserMm,
      floorLeftMm: wall.floorAt(0),
      floorRightMm: wall.floorAt(wall.lengthMm),
    },
    wire,
    practiceProfileOf(reader.documents),
  );
  if ('what' in planned) return missing(`${planned.where} ${planned.what}`);
  const [first] = planned;
  if (first === undefined) return missing('no hooks');
  const placesKnown = hardware.hooks === 1 || hardware.spacingMm !== undefined;
  return {
    known: true,
    hardware,
    heightMm: first.heightMm,
    fromLaserMm: first.fromLaserMm,
    points: placesKnown ? planned.map(({ xMm, fromFloorMm, loadKg }) => ({ xMm, fromFloorMm, loadKg })) : [],
    loadKg: mostOf(planned, 'loadKg'),
    ratingKg: mostOf(planned, 'ratingKg'),
    wire: wirePull(hardware, wire, weightKg),
  };
}

function mostOf(hooks: readonly PlannedHook[], figure: 'loadKg' | 'ratingKg'): number | null {
  return hooks.reduce<number | null>((most, hook) => {
    const own = hook[figure];
    return own === null ? most : Math.max(most ?? 0, own);
  }, null);
}

/** A wire that stands too flat over its hooks, where its lengths are recorded. */
export function wireCautions(reader: ShowReader, pieceId: PieceId, weightKg: number | null): readonly Caution[] {
  const hardware = reader.objectOf(pieceId)?.hardware;
  const at = reader.where.placeOf(pieceId);
  const hung = at !== null && reader.where.wallOf(at[0]) !== null;
  const wire = wholeWire(hardware?.wire);
  if (!hung || hardware?.kind !== 'wire' || wire === null || (hardware.hooks !== 1 && hardware.hooks !== 2)) return [];
  const angleDegrees = angleOf(hardware, wire);
  if (angleDegrees === null) return [];
  const { caution } = tensionOf({ weightKg: weightKg ?? 0, angleDegrees });
  return caution === null ? [] : [caution];
}

/** How steep a wire stands over its hooks; null where it cannot reach. */
function angleOf({ hooks, spacingMm }: Pick<HardwareFact, 'hooks' | 'spacingMm'>, wire: Wire): number | null {
  if (hooks !== 1 && hooks !== 2) return null;
  const taut = wireOf({ ...wire, hooks, ...(spacingMm === undefined ? {} : { hooksApartMm: spacingMm }) });
  return 'what' in taut || !(taut.angleDegrees > 0) ? null : taut.angleDegrees;
}

function wirePull(
  hardware: Hardware,
  wire: Wire | null,
  weightKg: number | null,
): { readonly angleDegrees: number; readonly pullKg: number | null } | null {
  const angleDegrees = wire === null ? null : angleOf(hardware, wire);
  if (angleDegrees === null) return null;
  return { angleDegrees, pullKg: weightKg === null ? null : tensionOf({ weightKg, angleDegrees }).tensionKg };
}

type Wire = NonNullable<HardwareFact['wire']>;

/** A wire with all its lengths; null while one is missing. */
function wholeWire(wire: HardwareFact['wire']): Wire | null {
  if (!wire) return null;
  const lengths = [wire.ringsApartMm, wire.wireMm, wire.ringsBelowTopMm];
  return lengths.every((mm) => Number.isFinite(mm) && mm > 0) ? wire : null;
}
