/** What a person does with a proposal as a whole. Each is one act and one step of undo. */
import type { Act } from '@enfilade/shared/acts';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { leaveMoves, movesOf } from '@enfilade/shared/proposal-moves';
import { endProposal } from '@enfilade/shared/proposals';
import type { ProposalId, Word } from '@enfilade/shared/talk';

/**
 * Ends a proposal as declined or withdrawn. Where part of it was taken before, the rest is marked as left, so that the
 * record tells the two apart, and the whole reads as taken in part.
 */
export function endRest(
  live: ShowDocuments,
  id: ProposalId,
  how: 'declined' | 'withdrawn',
  why: string,
  word: Word,
): Act {
  const moves = movesOf(live, id);
  const inPart = moves.some(({ standing }) => standing === 'stands');
  const outcome = inPart ? 'taken in part' : how;
  const ending = endProposal(id, { ...word, outcome, why });
  const title = live.get('proposals', id)?.title ?? 'a proposal';
  const name = `${how === 'declined' ? 'decline' : 'withdraw'} ${inPart ? 'the rest of ' : ''}${title}`;
  if (!inPart) return { name, changes: ending.changes };
  const rest = new Set(moves.filter(({ standing }) => standing === 'open' || standing === 'clash').map((m) => m.id));
  return { name, changes: [...leaveMoves(live, id, rest).changes, ...ending.changes] };
}
