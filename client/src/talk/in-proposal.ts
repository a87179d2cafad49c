/** The proposal one stands in: its moves as everybody sees and numbers them, and how this person looks at it. */
import type { ShowDocuments } from '@enfilade/shared/documents';
import { movesOf, type ProposedMove } from '@enfilade/shared/proposal-moves';
import type { Proposal, ProposalId } from '@enfilade/shared/talk';
import { Store } from '../selection.ts';
import { useHang, useRoots, useShow } from '../sync/hooks.ts';
import type { ShowSession } from '../sync/show-session.ts';
import { entriesOf, type MoveEntry } from './move-entries.ts';

export const PROPOSAL_VIEWS = ['laid over', 'as is', 'proposed', 'side by side'] as const;
export type ProposalView = (typeof PROPOSAL_VIEWS)[number];

export const proposalView = new Store<ProposalView>('laid over');

/** What lies along the foot while in a proposal. */
export const proposalFoot = new Store<'moves' | 'unplaced'>('moves');

/** Moves this person has marked to be taken, by their ids; theirs alone until they take them. */
export const chosenMoves = new Store<ReadonlySet<string>>(new Set());

export interface InProposal {
  readonly id: ProposalId;
  readonly proposal: Proposal;
  readonly moves: readonly ProposedMove[];
  readonly entries: readonly MoveEntry[];
  /** The show as it is, and with the proposal laid over. */
  readonly hang: ShowSession;
  readonly shown: ShowSession;
}

const MOVES_READ = ['proposals', 'proposed', 'places', 'paints', 'vignettes', 'memberOf', 'pinned'] as const;

const known = new WeakMap<ShowDocuments, { key: string; moves: readonly ProposedMove[]; entries: MoveEntry[] }>();

/** Null on the hang itself and in a kept state. */
export function useInProposal(): InProposal | null {
  const shown = useShow();
  const hang = useHang();
  const id = shown.layerId;
  // On the hang itself nothing is asked for: its page is not drawn again at every move.
  useRoots(...(id === null ? [] : MOVES_READ));
  const proposal = id === null ? undefined : hang.documents.get('proposals', id);
  if (id === null || proposal === undefined) return null;
  return { id, proposal, ...listed(hang.documents, id), hang, shown };
}

function listed(documents: ShowDocuments, id: ProposalId): { moves: readonly ProposedMove[]; entries: MoveEntry[] } {
  const key = `${id}|${MOVES_READ.map((root) => documents.version(root)).join()}`;
  const before = known.get(documents);
  if (before?.key === key) return before;
  const moves = movesOf(documents, id);
  const made = { key, moves, entries: entriesOf(moves) };
  known.set(documents, made);
  return made;
}

/** Whether a move is shown on the sheet that is laid over: not left, and, while open, not yet what the hang says. */
export function isLaid(move: ProposedMove, ended: boolean): boolean {
  return move.standing !== 'left' && (ended || move.standing !== 'stands');
}
