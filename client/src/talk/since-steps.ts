/** What changed while someone was away, as steps of a walk: one wall, one person, one kind of thing at a time. Pure. */
import type { DeedChange, NetChange } from '@enfilade/shared/deeds';
import type { Judgements } from '@enfilade/shared/judgements';
import type { PieceId, Place, RootName, SurfaceId } from '@enfilade/shared/schema';

export interface SinceStep {
  readonly id: string;
  readonly personId: string;
  readonly name: string;
  /** The newest of its changes. */
  readonly at: string;
  readonly changes: readonly DeedChange[];
  /** Where it is seen; null where it is on no surface. */
  readonly surface: SurfaceId | null;
  readonly pieces: readonly PieceId[];
}

/** Facts that can be walked to: on a wall or floor, or about something that is. */
const WALKED: readonly RootName[] = ['places', 'paints', 'memberOf', 'vignettes'];

/** In the order of surfaces (as given), then of time. */
export function stepsOf(
  net: readonly NetChange[],
  judgements: Judgements,
  surfaces: readonly SurfaceId[],
): SinceStep[] {
  const steps = new Map<string, SinceStep>();
  for (const change of net) {
    if (!WALKED.includes(change.root)) continue;
    const surface = surfaceOf(change, judgements);
    const kind = change.root === 'places' ? (change.to === undefined ? 'put back' : 'places') : change.root;
    const about = change.root === 'vignettes' ? change.key.split('/')[0] : '';
    const id = [change.personId, kind, surface ?? '', about].join('|');
    const step = steps.get(id);
    const piece = change.root === 'places' || change.root === 'memberOf' ? [change.key] : [];
    const { root, key, from, to } = change;
    const plain: DeedChange = {
      root,
      key,
      ...(from === undefined ? {} : { from }),
      ...(to === undefined ? {} : { to }),
    };
    steps.set(id, {
      id,
      personId: change.personId,
      name: change.name,
      at: step === undefined || change.at > step.at ? change.at : step.at,
      changes: [...(step?.changes ?? []), plain],
      surface,
      pieces: [...(step?.pieces ?? []), ...piece],
    });
  }
  const place = (surface: SurfaceId | null): number => {
    const index = surface === null ? -1 : surfaces.indexOf(surface);
    return index < 0 ? surfaces.length : index;
  };
  return [...steps.values()].sort((a, b) => place(a.surface) - place(b.surface) || (a.at < b.at ? -1 : 1));
}

function surfaceOf({ root, key, from }: NetChange, judgements: Judgements): SurfaceId | null {
  if (root === 'paints') return key;
  if (root === 'places' || root === 'memberOf') {
    const was = root === 'places' ? ((from as Place | undefined)?.[0] ?? null) : null;
    return judgements.where.surfaceOf(key) ?? (was !== null && !was.includes('carrier:') ? was : null);
  }
  const id = key.split('/')[0];
  for (const [pieceId, vignetteId] of judgements.documents.all('memberOf')) {
    const surface = vignetteId === id ? judgements.where.surfaceOf(pieceId) : null;
    if (surface !== null) return surface;
  }
  return null;
}
