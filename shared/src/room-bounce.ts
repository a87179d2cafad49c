/** What the colours of a room throw on white mounts that hang on its walls, from its survey and its paints. */
import { FACES, type Face, faceAreas } from '@enfilade/colour/box-form-factors';
import type { LabD65 } from '@enfilade/colour/lab';
import type { Light } from '@enfilade/colour/lights';
import type { Surface } from '@enfilade/colour/seen';
import { BOUNCE_ASSUMPTIONS, type BounceFace, DIRECT_BY_SPOTS, wallBounceOf } from '@enfilade/colour/wall-bounce';
import { WALL_SIDES } from '@enfilade/space/room';
import type { Judgements } from './judgements.ts';
import { colourSurfaceOf, paintSurfaceOf } from './paints-under.ts';
import type { RoomId, SurfaceId } from './schema.ts';
import { shortSurfaceName } from './surface-names.ts';

/** What a face is taken for where no paint is recorded on it: common practice, no source. */
const UNPAINTED: Readonly<Record<'wall' | 'floor' | 'ceiling', { readonly lab: LabD65; readonly words: string }>> = {
  wall: { lab: { L: 92, a: 0, b: 3 }, words: 'white' },
  floor: { lab: { L: 55, a: 8, b: 22 }, words: 'oiled oak' },
  ceiling: { lab: { L: 94, a: 0, b: 2 }, words: 'white' },
};

export interface MountOnWall {
  readonly surface: SurfaceId;
  /** 'south wall'. */
  readonly wallName: string;
  /** The mount as an eye settled to the lamp sees it. */
  readonly mount: LabD65;
  /** ΔE00 from the same mount in the lamp's light alone. */
  readonly deltaE: number;
  /** Share of the light on it that comes off other faces, 0..1. */
  readonly share: number;
  /** Follows "a white mount here": "takes some green, most of it from the north wall". */
  readonly words: string;
}

export interface RoomBounce {
  /** Clockwise from the head wall. */
  readonly mounts: readonly MountOnWall[];
  /** What the figures take for granted, as sentences. */
  readonly assumptions: readonly string[];
}

/** A paint that is tried on one face of the room. */
export interface TriedPaint {
  readonly surface: SurfaceId;
  readonly paint: Surface;
}

/** Each wall's white mounts, under a lamp, with a paint tried or not; null for a room that is gone or has no size. */
export function roomBounceOf(
  judgements: Judgements,
  roomId: RoomId,
  { light, tried }: { readonly light: Light; readonly tried?: TriedPaint | null },
): RoomBounce | null {
  const { documents } = judgements;
  const room = documents.get('rooms', roomId);
  if (room === undefined) return null;
  const { widthMm, depthMm, heightMm } = room;
  if (![widthMm, depthMm, heightMm].every((size) => size > 0 && Number.isFinite(size))) return null;
  const areas = faceAreas({ widthMm, depthMm, heightMm });
  const taken: string[] = [];
  const faceOf = (face: Face, areaMm2: number): BounceFace => {
    const surface = `${roomId}:${face}`;
    const painted = documents.get('deck', documents.get('paints', surface) ?? '');
    const kind = face === 'floor' || face === 'ceiling' ? face : 'wall';
    const own = tried?.surface === surface ? tried.paint : painted === undefined ? null : paintSurfaceOf(painted);
    if (own === null) taken.push(`the ${shortSurfaceName(documents, surface)} as ${UNPAINTED[kind].words}`);
    const open = judgements.openingsOn(surface).reduce((sum, box) => sum + box.widthMm * box.heightMm, 0);
    return {
      surface: own ?? colourSurfaceOf(UNPAINTED[kind].lab),
      // Openings that overlap, or reach beyond the wall, take no more than there is of it.
      parts: [{ areaMm2: Math.min(open, areaMm2) }],
      direct: DIRECT_BY_SPOTS[face],
    };
  };
  const faces = Object.fromEntries(FACES.map((face, i) => [face, faceOf(face, areas[i] ?? 0)])) as Record<
    Face,
    BounceFace
  >;
  const bounces = wallBounceOf({ widthMm, depthMm, heightMm, ...faces }, light, (face) =>
    shortSurfaceName(documents, `${roomId}:${face}`),
  );
  const mounts = WALL_SIDES.flatMap((side): MountOnWall[] => {
    const bounce = bounces.find(({ face }) => face === side);
    if (bounce === undefined) return [];
    const surface = `${roomId}:${side}`;
    const { mount, deltaE, share, words } = bounce;
    return [{ surface, wallName: shortSurfaceName(documents, surface), mount, deltaE, share, words }];
  });
  const said = taken.length === 0 ? [] : [`Nothing is recorded of some faces: ${listOf(taken)} is taken for granted.`];
  return {
    mounts,
    assumptions: [
      ...said,
      ...BOUNCE_ASSUMPTIONS,
      'Doorways and windows give no light back; lamps are aimed at the walls.',
    ],
  };
}

function listOf(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
