/** Which vignettes are where, and what is agreed of them. */
import { focalOf, membersOf } from '@enfilade/shared/commands';
import type { Judgements } from '@enfilade/shared/judgements';
import { type PieceId, type SurfaceId, surfaceParts, type Vignette, type VignetteId } from '@enfilade/shared/schema';
import { surfacesOf } from '@enfilade/shared/vignette-list';

export interface VignetteHere {
  readonly id: VignetteId;
  /** With its focal work as shown: a member, or none. */
  readonly vignette: Vignette;
  readonly members: readonly PieceId[];
  /** Null while none of it is placed. */
  readonly surface: SurfaceId | null;
}

const known = new WeakMap<Judgements, { key: string; all: readonly VignetteHere[] }>();

/** All vignettes in their order, with where they are. */
export function vignettesOf(judgements: Judgements): readonly VignetteHere[] {
  const { documents } = judgements;
  const key = (['vignettes', 'memberOf', 'places', 'objects'] as const).map((root) => documents.version(root)).join();
  const before = known.get(judgements);
  if (before?.key === key) return before.all;
  const all = [...documents.all('vignettes')]
    .sort(([idA, a], [idB, b]) => (a.order < b.order ? -1 : a.order > b.order ? 1 : idA < idB ? -1 : 1))
    .map(([id, vignette]) => {
      const members = membersOf(documents, id);
      const focal = focalOf(documents, id);
      return {
        id,
        vignette: { ...vignette, focal },
        members,
        surface: surfacesOf(judgements, focal, members)[0] ?? null,
      };
    });
  known.set(judgements, { key, all });
  return all;
}

export function vignettesOn(judgements: Judgements, surface: SurfaceId): readonly VignetteHere[] {
  return vignettesOf(judgements).filter((here) => here.surface === surface);
}

/** Those on any surface of a room, and how many of them everyone has agreed to. */
export function agreementIn(judgements: Judgements, roomId: string): { readonly agreed: number; readonly of: number } {
  const here = vignettesOf(judgements).filter(({ surface }) => surfaceParts(surface ?? '')?.roomId === roomId);
  const agreed = here.filter(({ id }) => judgements.standingOf(id)?.state === 'agreed').length;
  return { agreed, of: here.length };
}
