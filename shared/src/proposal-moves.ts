/** A proposal in moves a person can take or leave one by one: a piece, a vignette's words, a wall's paint. */
import type { Act } from './acts.ts';
import { type ShowDocuments, sameJson } from './documents.ts';
import type { ArrangedRoot } from './hang-layer.ts';
import { proposedFactsOf, proposedKey, proposedKeyParts } from './proposals.ts';
import type { Change } from './root-snapshot.ts';
import { carrierOf, type Json, type PieceId, type Place, type SurfaceId, type VignetteId } from './schema.ts';
import type { ProposalId, ProposalOutcome, ProposedFact, Word } from './talk.ts';

/** open: the hang is as it was when proposed. clash: the hang says something else by now. stands: the hang says so already. */
export type MoveStanding = 'open' | 'clash' | 'stands' | 'left';

export type MoveAbout =
  | { readonly kind: 'piece'; readonly pieceId: PieceId }
  | { readonly kind: 'vignette'; readonly vignetteId: VignetteId }
  | { readonly kind: 'wall'; readonly surface: SurfaceId };

export interface MoveFact extends ProposedFact {
  readonly root: ArrangedRoot;
  readonly key: string;
  /** What the hang says now. */
  readonly now?: Json;
}

export interface ProposedMove {
  /** `piece:<id>`, `vignette:<id>`, `wall:<id>`; the same on every screen. */
  readonly id: string;
  readonly about: MoveAbout;
  readonly facts: readonly MoveFact[];
  readonly standing: MoveStanding;
}

function aboutOf(root: ArrangedRoot, key: string): MoveAbout {
  if (root === 'paints') return { kind: 'wall', surface: key };
  if (root === 'vignettes') return { kind: 'vignette', vignetteId: key.split('/')[0] as string };
  return { kind: 'piece', pieceId: key };
}

function standingOf(facts: readonly MoveFact[]): MoveStanding {
  if (facts.every(({ left }) => left === true)) return 'left';
  if (facts.every(({ to, now }) => sameJson(to, now))) return 'stands';
  return facts.every(({ from, to, now }) => sameJson(from, now) || sameJson(to, now)) ? 'open' : 'clash';
}

/** Walls first, then vignettes, then pieces, each by id. */
export function movesOf(live: ShowDocuments, id: ProposalId): ProposedMove[] {
  const byAbout = new Map<string, { about: MoveAbout; facts: MoveFact[] }>();
  for (const [path, fact] of proposedFactsOf(live, id)) {
    const parts = proposedKeyParts(`${id}|${path}`);
    if (parts === null) continue;
    const about = aboutOf(parts.root, parts.key);
    const moveId = moveIdOf(about);
    const now = live.stored(parts.root, parts.key);
    const entry = byAbout.get(moveId) ?? { about, facts: [] };
    entry.facts.push({ ...fact, root: parts.root, key: parts.key, ...(now === undefined ? {} : { now }) });
    byAbout.set(moveId, entry);
  }
  const moves = [...byAbout].map(([moveId, { about, facts }]) => ({
    id: moveId,
    about,
    facts: facts.sort((a, b) => (a.root + a.key < b.root + b.key ? -1 : 1)),
    standing: standingOf(facts),
  }));
  return moves.sort((a, b) => RANK[a.about.kind] - RANK[b.about.kind] || (a.id < b.id ? -1 : 1));
}

const RANK = { wall: 0, vignette: 1, piece: 2 } as const;

function moveIdOf(about: MoveAbout): string {
  if (about.kind === 'piece') return `piece:${about.pieceId}`;
  return about.kind === 'vignette' ? `vignette:${about.vignetteId}` : `wall:${about.surface}`;
}

/** The piece's place before and as proposed; null where it has none. */
export function placesOfMove(move: ProposedMove): { from: Place | null; to: Place | null; now: Place | null } | null {
  const fact = move.facts.find(({ root }) => root === 'places');
  if (fact === undefined) return null;
  return {
    from: (fact.from ?? null) as Place | null,
    to: (fact.to ?? null) as Place | null,
    now: (fact.now ?? null) as Place | null,
  };
}

/**
 * The moves and whatever they need that the hang has not: the vignette a piece joins, the carrier it stands on. A piece
 * taken alone would otherwise belong to nothing or fall off.
 */
export function withWhatTheyNeed(
  live: ShowDocuments,
  moves: readonly ProposedMove[],
  chosen: ReadonlySet<string>,
): Set<string> {
  const byId = new Map(moves.map((move) => [move.id, move]));
  const taken = new Set(chosen);
  const wait = [...chosen];
  for (let id = wait.pop(); id !== undefined; id = wait.pop()) {
    for (const { root, to } of byId.get(id)?.facts ?? []) {
      const needed =
        root === 'memberOf' && typeof to === 'string' && live.get('vignettes', to) === undefined
          ? `vignette:${to}`
          : root === 'places'
            ? carrierNeeded(live, to as Place | undefined)
            : null;
      if (needed !== null && byId.has(needed) && !taken.has(needed)) {
        taken.add(needed);
        wait.push(needed);
      }
    }
  }
  return taken;
}

function carrierNeeded(live: ShowDocuments, to: Place | undefined): string | null {
  const carrier = to === undefined ? null : carrierOf(to[0]);
  return carrier === null || live.get('places', carrier.pieceId) !== undefined ? null : `piece:${carrier.pieceId}`;
}

/**
 * Takes moves into the hang as one act, with what they need; a move that clashes is not taken, it is to be settled
 * first. When nothing is open any more the proposal is ended as taken, or taken in part.
 */
export function takeMoves(live: ShowDocuments, id: ProposalId, chosen: ReadonlySet<string>, word: Word): Act {
  const moves = movesOf(live, id);
  const wanted = withWhatTheyNeed(live, moves, chosen);
  const taken = moves.filter((move) => wanted.has(move.id) && move.standing === 'open');
  const changes: Change[] = taken.flatMap(({ facts }) => facts.map(({ root, key, to }) => ({ root, key, value: to })));
  const rest = moves.filter((move) => !taken.includes(move));
  const title = live.get('proposals', id)?.title ?? 'a proposal';
  if (taken.length > 0 && rest.every(({ standing }) => standing === 'stands' || standing === 'left')) {
    const outcome: ProposalOutcome = {
      ...word,
      outcome: rest.some(({ standing }) => standing === 'left') ? 'taken in part' : 'taken',
      why: '',
    };
    changes.push({ root: 'proposals', key: `${id}/outcome`, value: outcome as never });
  }
  const whole = rest.length === 0;
  return { name: whole ? `take ${title}` : `take ${taken.length} of ${moves.length}: ${title}`, changes };
}

/** Leaves moves out of a proposal: it no longer shows them, and remembers that they were left. */
export function leaveMoves(live: ShowDocuments, id: ProposalId, chosen: ReadonlySet<string>, left = true): Act {
  const changes = movesOf(live, id)
    .filter((move) => chosen.has(move.id))
    .flatMap(({ facts }) =>
      facts.map(({ root, key, to, from }): Change => {
        const fact: ProposedFact = {
          ...(to === undefined ? {} : { to }),
          ...(from === undefined ? {} : { from }),
          ...(left ? { left: true } : {}),
        };
        return { root: 'proposed', key: proposedKey(id, root, key), value: fact as Json };
      }),
    );
  return { name: left ? 'leave a move' : 'look at a move again', changes };
}

/** Settles a clash: keeps the hang as it is now and leaves the move, or stands by the move against the hang as it is. */
export function settleClash(live: ShowDocuments, id: ProposalId, moveId: string, keep: 'hang' | 'proposal'): Act {
  if (keep === 'hang') return { ...leaveMoves(live, id, new Set([moveId])), name: 'settle a clash: keep the hang' };
  const move = movesOf(live, id).find((candidate) => candidate.id === moveId);
  const changes = (move?.facts ?? []).map(({ root, key, to, now }): Change => {
    const fact: ProposedFact = { ...(to === undefined ? {} : { to }), ...(now === undefined ? {} : { from: now }) };
    return { root: 'proposed', key: proposedKey(id, root, key), value: fact as Json };
  });
  return { name: 'settle a clash: keep the proposal', changes };
}
