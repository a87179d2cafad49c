/** Work done without a connection, remembered on this device until it is sent: what it is called, and what it replaced. */
import type { Written } from '@enfilade/shared/documents';
import type { BothSides } from './clashes.ts';

export interface KeptWork {
  /** Names of acts not yet sent, in order. */
  readonly unsent: readonly string[];
  /** What they changed: what the others know each fact as, and what it is here. */
  readonly facts: readonly Written[];
  /** ISO time since when this device has heard nothing of the others; null while it hears them. */
  readonly since: string | null;
}

export const NO_WORK: KeptWork = { unsent: [], facts: [], since: null };

function keyOf(seatId: string): string {
  return `enfilade.kept ${seatId}`;
}

export function keptWorkOf(seatId: string): KeptWork {
  try {
    return { ...NO_WORK, ...(JSON.parse(localStorage.getItem(keyOf(seatId)) ?? '{}') as Partial<KeptWork>) };
  } catch {
    return NO_WORK;
  }
}

export function keepWork(seatId: string, work: KeptWork): void {
  try {
    if (work.unsent.length === 0 && work.facts.length === 0) localStorage.removeItem(keyOf(seatId));
    else localStorage.setItem(keyOf(seatId), JSON.stringify(work));
  } catch {
    // Without storage the page itself remembers.
  }
}

/** The work with more facts changed: one that was changed before keeps what it was first. */
export function withWritten(work: KeptWork, written: readonly Written[], since: string | null): KeptWork {
  const facts = new Map(work.facts.map((fact) => [`${fact.root}|${fact.key}`, fact]));
  for (const fact of written) {
    const id = `${fact.root}|${fact.key}`;
    const known = facts.get(id);
    const from = known === undefined ? fact.from : known.from;
    const { root, key, to } = fact;
    facts.set(id, { root, key, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) });
  }
  return { ...work, facts: [...facts.values()], since: work.since ?? since };
}

function bothKeyOf(seatId: string): string {
  return `enfilade.both ${seatId}`;
}

/** What is still to be settled after a return; it outlives the page. */
export function keptBothSidesOf(seatId: string): readonly BothSides[] {
  try {
    return JSON.parse(localStorage.getItem(bothKeyOf(seatId)) ?? '[]') as BothSides[];
  } catch {
    return [];
  }
}

export function keepBothSides(seatId: string, both: readonly BothSides[]): void {
  try {
    if (both.length === 0) localStorage.removeItem(bothKeyOf(seatId));
    else localStorage.setItem(bothKeyOf(seatId), JSON.stringify(both));
  } catch {
    // Without storage the page itself remembers.
  }
}
