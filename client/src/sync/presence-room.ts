/** Who is here and what is under their hand, over the hang's awareness. */
import { type Presence, type RingPattern, ringPatternOf } from '@enfilade/shared/presence';
import type { Person } from '@enfilade/shared/seats';
import { Awareness } from 'y-protocols/awareness';
import type * as Y from 'yjs';

export interface Other {
  readonly clientId: number;
  readonly person: Person;
  readonly ring: RingPattern;
  readonly presence: Presence;
}

export class PresenceRoom {
  readonly awareness: Awareness;
  private readonly me: Person;
  private readonly seated: () => Iterable<string>;
  private own: Presence = {};
  private frame = 0;
  private others: readonly Other[] = [];
  private readonly listeners = new Set<() => void>();

  /** `seated`: everyone who has, or had, a seat, so that a ring is the same whoever happens to be here. */
  constructor(doc: Y.Doc, me: Person, seated: () => Iterable<string>) {
    this.me = me;
    this.seated = seated;
    this.awareness = new Awareness(doc);
    this.own = { person: me };
    this.awareness.setLocalState(this.own as Record<string, unknown>);
    this.awareness.on('change', () => this.take());
  }

  /** Says where I look, what I hold, or how my drag goes: at most one message a frame, the last word of it. */
  say(change: Partial<Presence>): void {
    this.own = { ...this.own, ...change };
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.awareness.setLocalState(this.own as Record<string, unknown>);
    });
  }

  /** Everyone else who is here now; the same array until something changes. */
  everyoneElse(): readonly Other[] {
    return this.others;
  }

  /** Those who work in the same layer: the hang (null) or a proposal. Whoever works elsewhere holds things there. */
  everyoneIn(layerId: string | null): readonly Other[] {
    return this.others.filter(({ presence }) => (presence.layer ?? null) === layerId);
  }

  ringOf(personId: string): RingPattern {
    return ringPatternOf(personId, [...this.seated(), this.me.id, ...this.others.map(({ person }) => person.id)]);
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private take(): void {
    const others: { clientId: number; person: Person; presence: Presence }[] = [];
    for (const [clientId, state] of this.awareness.getStates()) {
      const presence = state as Presence;
      if (clientId === this.awareness.clientID || presence.person === undefined) continue;
      others.push({ clientId, person: presence.person, presence });
    }
    const people = [...this.seated(), this.me.id, ...others.map(({ person }) => person.id)];
    this.others = others.map((other) => ({ ...other, ring: ringPatternOf(other.person.id, people) }));
    for (const listener of this.listeners) listener();
  }
}
