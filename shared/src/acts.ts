/**
 * One person's acts: performed, taken back, done again. An act is a list of changed facts; what it found before is kept
 * beside it, so taking it back needs no garbage kept in the live documents, spans documents (an import writes records
 * and values), and never takes back another's act: a fact that someone has changed since stays as they left it.
 */
import { type ShowDocuments, sameJson } from './documents.ts';
import { onHeard } from './heard.ts';
import type { Change } from './root-snapshot.ts';
import { ROOTS } from './schema.ts';
import type { DocumentName } from './seats.ts';
import { inWholeLetters } from './whole-letters.ts';

/** What a command returns: a name in words, and the facts it changes. */
export interface Act {
  readonly name: string;
  readonly changes: readonly Change[];
}

interface DoneAct {
  readonly name: string;
  readonly before: readonly Change[];
  readonly after: readonly Change[];
  /** How often others had changed each fact when this person last set it. */
  readonly heard: readonly number[];
}

export interface Outcome {
  readonly name: string;
  /** Facts taken back (or done again). */
  readonly done: number;
  /** Facts the act had changed. */
  readonly of: number;
}

/** The sentence a person reads after an undo: "3 of 5 undone: hang around". */
export function outcomeText(outcome: Outcome, word: 'undone' | 'redone'): string {
  return outcome.done === outcome.of
    ? `${word}: ${outcome.name}`
    : `${outcome.done} of ${outcome.of} ${word}: ${outcome.name}. The rest has been changed by someone since.`;
}

export class ActHistory {
  private readonly documents: ShowDocuments;
  private readonly origin: unknown;
  private readonly may: (document: DocumentName) => boolean;
  private readonly done: DoneAct[] = [];
  private readonly undone: DoneAct[] = [];
  private readonly listeners = new Set<() => void>();
  /** How often others have changed each fact since this person first did: moved away and back, it is theirs all the same. */
  private readonly heard = new Map<string, number>();

  /**
   * `origin` tags every transaction of this person, so others' changes can be told from one's own. `may`: whether this
   * person may change a document now; what they no longer may is not taken back either.
   */
  constructor(documents: ShowDocuments, origin: unknown, may: (document: DocumentName) => boolean = () => true) {
    this.documents = documents;
    this.origin = origin;
    this.may = may;
  }

  get undoable(): string | undefined {
    return this.done.at(-1)?.name;
  }

  get redoable(): string | undefined {
    return this.undone.at(-1)?.name;
  }

  /** Performs the act as one step. An act that changes nothing leaves no step. */
  perform(act: Act): void {
    const before: Change[] = [];
    const after: Change[] = [];
    // A fact that is set twice within an act is one fact, and what it is set to last.
    for (const change of new Map(act.changes.map((change) => [factId(change), change])).values()) {
      const stored = this.documents.stored(change.root, change.key);
      const value = inWholeLetters(change.value);
      if (sameJson(stored, value)) continue;
      before.push({ ...change, value: stored });
      after.push({ ...change, value });
    }
    if (after.length === 0) return;
    // Not before: until then everything that arrives is the show as it stood.
    if (this.heard.size === 0) onHeard(this.documents, (root, key) => this.hear(factId({ root, key })));
    for (const change of after) this.heard.set(factId(change), this.heard.get(factId(change)) ?? 0);
    this.documents.write(after, this.origin);
    const heard = after.map((change) => this.heard.get(factId(change)) ?? 0);
    this.done.push({ name: act.name, before, after, heard });
    this.undone.length = 0;
    this.tell();
  }

  /** Takes back the last act, where it has not been overtaken; undefined when there is none. */
  undo(): Outcome | undefined {
    return this.reverse(this.done, this.undone, 'after', 'before');
  }

  redo(): Outcome | undefined {
    return this.reverse(this.undone, this.done, 'before', 'after');
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private reverse(
    from: DoneAct[],
    to: DoneAct[],
    expected: 'before' | 'after',
    wanted: 'before' | 'after',
  ): Outcome | undefined {
    const act = from.pop();
    if (act === undefined) return undefined;
    const changes = act[wanted].filter(
      (change, index) =>
        this.may(ROOTS[change.root].document) &&
        act.heard[index] === this.heard.get(factId(change)) &&
        sameJson(this.documents.stored(change.root, change.key), act[expected][index]?.value),
    );
    this.documents.write(changes, this.origin);
    to.push(act);
    this.tell();
    return { name: act.name, done: changes.length, of: act.after.length };
  }

  private hear(id: string): void {
    const times = this.heard.get(id);
    if (times !== undefined) this.heard.set(id, times + 1);
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }
}

function factId({ root, key }: { readonly root: string; readonly key: string }): string {
  return `${root}|${key}`;
}
