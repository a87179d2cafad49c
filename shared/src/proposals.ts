/**
 * Proposals: alternatives to the hang, kept as the facts they would change, each with what the hang said when it was
 * first touched. Shown = the hang with those facts laid over. Clash = the hang says something else by now.
 */
import type { Act } from './acts.ts';
import { type ShowDocuments, sameJson } from './documents.ts';
import { type ArrangedRoot, type HangLayer, isArranged } from './hang-layer.ts';
import { newId } from './identity.ts';
import type { Change, RawFacts } from './root-snapshot.ts';
import { type Json, ROOTS, type RootName } from './schema.ts';
import type { Person } from './seats.ts';
import type { Proposal, ProposalId, ProposalOutcome, ProposedFact, Word } from './talk.ts';

export function proposedKey(id: ProposalId, root: ArrangedRoot, key: string): string {
  return `${id}|${root}|${key}`;
}

/** The parts of a key of `proposed`, or null where it is none. */
export function proposedKeyParts(text: string): { id: ProposalId; root: ArrangedRoot; key: string } | null {
  const first = text.indexOf('|');
  const second = text.indexOf('|', first + 1);
  if (first < 0 || second < 0) return null;
  const root = text.slice(first + 1, second);
  if (!(root in ROOTS) || !isArranged(root as RootName)) return null;
  return { id: text.slice(0, first), root: root as ArrangedRoot, key: text.slice(second + 1) };
}

export function wordOf(person: Person, at: Date): Word {
  return { by: person.id, name: person.name, role: person.role, at: at.toISOString() };
}

export function propose(
  words: { readonly title: string; readonly reason: string },
  by: Word,
  id: ProposalId = newId(),
): Act & { readonly id: ProposalId } {
  const proposal: Proposal = { ...words, ...by };
  return { id, name: `propose ${words.title}`, changes: [{ root: 'proposals', key: id, value: proposal as never }] };
}

export function describeProposal(id: ProposalId, fields: Partial<Pick<Proposal, 'title' | 'reason' | 'removed'>>): Act {
  return {
    name: 'describe the proposal',
    changes: Object.entries(fields).map(([field, value]) => ({ root: 'proposals', key: `${id}/${field}`, value })),
  };
}

/** Declined by those who may take it, or withdrawn by the one who made it; its moves stay for the record. */
export function endProposal(id: ProposalId, outcome: ProposalOutcome): Act {
  return {
    name: outcome.outcome === 'withdrawn' ? 'withdraw the proposal' : 'decline the proposal',
    changes: [{ root: 'proposals', key: `${id}/outcome`, value: outcome as never }],
  };
}

export function reopenProposal(id: ProposalId): Act {
  return { name: 'reopen the proposal', changes: [{ root: 'proposals', key: `${id}/outcome`, value: null }] };
}

/** The facts a proposal changes, by `root|key`. */
export function proposedFactsOf(live: ShowDocuments, id: ProposalId): Map<string, ProposedFact> {
  const facts = new Map<string, ProposedFact>();
  const prefix = `${id}|`;
  for (const [key, fact] of live.all('proposed')) {
    if (key.startsWith(prefix) && proposedKeyParts(key) !== null) facts.set(key.slice(prefix.length), fact);
  }
  return facts;
}

/** A proposal as a layer over the live show. What a person has chosen to leave is not laid over. */
export function layerOfProposal(live: ShowDocuments, id: ProposalId): HangLayer {
  const prefix = `${id}|`;
  return {
    over(root, under) {
      return isArranged(root) ? laidFacts(live, `${prefix}${root}|`, under) : null;
    },
    changesFor(changes) {
      return changes.map((change): Change => {
        const { root } = change;
        if (!isArranged(root)) return change;
        const key = proposedKey(id, root, change.key);
        const known = live.get('proposed', key);
        const from = known === undefined ? live.stored(root, change.key) : known.from;
        // Back where it was: the proposal no longer says anything of it.
        if (sameJson(change.value, from)) return { root: 'proposed', key, value: undefined };
        const fact: ProposedFact = {
          ...(change.value === undefined ? {} : { to: change.value }),
          ...(from === undefined ? {} : { from }),
        };
        return { root: 'proposed', key, value: fact as Json };
      });
    },
  };
}

function laidFacts(live: ShowDocuments, prefix: string, under: RawFacts): RawFacts {
  const mine = new Map<string, ProposedFact>();
  for (const [key, fact] of live.all('proposed')) if (key.startsWith(prefix)) mine.set(key.slice(prefix.length), fact);
  const speaks = (key: string): ProposedFact | undefined => {
    const fact = mine.get(key);
    return fact === undefined || fact.left === true ? undefined : fact;
  };
  return {
    get(key) {
      const fact = speaks(key);
      return fact === undefined ? under.get(key) : fact.to;
    },
    *entries() {
      for (const [key, value] of under.entries()) if (speaks(key) === undefined) yield [key, value];
      for (const [key, fact] of mine) if (fact.left !== true && fact.to !== undefined) yield [key, fact.to];
    },
    observe(tell) {
      const leaveUnder = under.observe(tell);
      const leaveMine = live.subscribe('proposed', (ids) => {
        const keys = new Set<string>();
        for (const id of ids) {
          if (!id.startsWith(prefix)) continue;
          const key = id.slice(prefix.length);
          const fact = live.get('proposed', id);
          if (fact === undefined) mine.delete(key);
          else mine.set(key, fact);
          keys.add(key);
        }
        if (keys.size > 0) tell(keys);
      });
      return () => {
        leaveUnder();
        leaveMine();
      };
    },
  };
}
