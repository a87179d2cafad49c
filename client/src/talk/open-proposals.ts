/** Which proposals there are, and where each touches the show. */
import type { ShowDocuments } from '@enfilade/shared/documents';
import type { Judgements } from '@enfilade/shared/judgements';
import { movesOf, type ProposedMove } from '@enfilade/shared/proposal-moves';
import { carrierOf, openingOf, type SurfaceId } from '@enfilade/shared/schema';
import type { Proposal, ProposalId } from '@enfilade/shared/talk';
import { useHang, useRoots } from '../sync/hooks.ts';
import { surfacesOfMove } from './move-sentences.ts';

export type ProposalState = 'open' | 'taken' | 'taken in part' | 'declined' | 'withdrawn';

export function stateOf(proposal: Proposal): ProposalState {
  return proposal.outcome?.outcome ?? 'open';
}

/** How many proposals wait for an answer. */
export function useOpenProposals(): number {
  useRoots('proposals');
  const { documents } = useHang();
  let open = 0;
  for (const proposal of documents.all('proposals').values()) if (stateOf(proposal) === 'open') open += 1;
  return open;
}

/** Every proposal, those that are open first, the newest first among each. */
export function proposalsOf(documents: ShowDocuments): (readonly [ProposalId, Proposal])[] {
  const rank = (proposal: Proposal): number => (stateOf(proposal) === 'open' ? 0 : 1);
  return [...documents.all('proposals')].sort(
    ([idA, a], [idB, b]) => rank(a) - rank(b) || (a.at < b.at ? 1 : a.at > b.at ? -1 : idA < idB ? -1 : 1),
  );
}

/** The surface a place is on, followed through carriers; a carrier that the proposal itself moves counts where it is put. */
export function surfaceFinder(
  judgements: Judgements,
  moves: readonly ProposedMove[],
): (on: string) => SurfaceId | null {
  const put = new Map<string, string>();
  for (const { facts } of moves) {
    for (const { root, key, to } of facts) if (root === 'places' && Array.isArray(to)) put.set(key, String(to[0]));
  }
  const find = (on: string, deep: number): SurfaceId | null => {
    const carrier = carrierOf(on);
    if (carrier === null || deep > 32) {
      const opening = openingOf(on);
      return opening === null ? on : (judgements.documents.get('openings', opening)?.sides[0]?.surface ?? null);
    }
    const under = put.get(carrier.pieceId) ?? judgements.documents.get('places', carrier.pieceId)?.[0];
    return under === undefined ? null : find(under, deep + 1);
  };
  return (on) => find(on, 0);
}

/** Every surface a proposal's moves touch: where most of them are first. */
export function surfacesTouched(judgements: Judgements, moves: readonly ProposedMove[]): SurfaceId[] {
  const find = surfaceFinder(judgements, moves);
  const counts = new Map<SurfaceId, number>();
  for (const move of moves) {
    for (const surface of surfacesOfMove(move, find)) counts.set(surface, (counts.get(surface) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([surface]) => surface);
}

/** Open proposals that touch any of these surfaces. */
export function proposalsOn(
  judgements: Judgements,
  surfaces: readonly SurfaceId[],
): (readonly [ProposalId, Proposal])[] {
  const { documents } = judgements;
  return proposalsOf(documents).filter(([id, proposal]) => {
    if (stateOf(proposal) !== 'open') return false;
    return surfacesTouched(judgements, movesOf(documents, id)).some((surface) => surfaces.includes(surface));
  });
}
