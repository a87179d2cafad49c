/**
 * Whose hand every Yjs client id of one document is. An id belongs to the first person who says it is theirs (in a
 * hello, by presence, or by a first write under it) and to nobody else from then on, whatever socket, tab or device it
 * comes back on; an id the document holds and nobody owns is the server's own, or was nobody's to claim.
 */

export interface HeldId {
  readonly client: number;
  readonly person: string;
}

/**
 * Ids up to here are given out by the server alone, one a page, never twice: they take two bytes in each thing written
 * where a random one takes five. Nobody else may claim one.
 */
export const SHORT_AT_MOST = 16_383;

/** Ids of one person that were announced and never written under; the oldest is forgotten first. */
const IDLE_KEPT = 500;
/** Ids one person may have written under in one document: many a year of opened pages. */
const WRITTEN_AT_MOST = 20_000;

export class ClientIds {
  private readonly owners = new Map<number, string>();
  private readonly idle = new Map<string, Set<number>>();
  private readonly written = new Map<string, number>();
  private readonly writtenIds = new Set<number>();
  private readonly isInDocument: (client: number) => boolean;
  private readonly keep: (client: number, person: string | null) => void;

  /** `keep` is told of every id that is bound, and of every one that is let go (null), to be stored. */
  constructor(
    known: Iterable<HeldId>,
    isInDocument: (client: number) => boolean,
    keep: (client: number, person: string | null) => void,
  ) {
    this.isInDocument = isInDocument;
    this.keep = keep;
    for (const { client, person } of known) this.own(client, person, isInDocument(client));
  }

  ownerOf(client: number): string | undefined {
    return this.owners.get(client);
  }

  /** Whether this person may speak and write under the id. */
  mayHold(client: number, person: string): boolean {
    const owner = this.owners.get(client);
    return owner === undefined ? client > SHORT_AT_MOST && !this.isInDocument(client) : owner === person;
  }

  /** The highest short id that was ever given out here, as far as is known; 0: none. */
  highestShort(): number {
    let highest = 0;
    for (const client of this.owners.keys()) if (client <= SHORT_AT_MOST) highest = Math.max(highest, client);
    return highest;
  }

  /** Whether this person may write under so many more ids that are new to the document. */
  hasRoomFor(count: number, person: string): boolean {
    return (this.written.get(person) ?? 0) + count <= WRITTEN_AT_MOST;
  }

  /** Makes the id this person's, if it may be; `writes`: something is written under it. */
  bind(client: number, person: string, writes: boolean): void {
    const owner = this.owners.get(client);
    if (owner === undefined ? this.isInDocument(client) : owner !== person) return;
    if (owner === undefined) this.keep(client, person);
    this.own(client, person, writes);
  }

  private own(client: number, person: string, writes: boolean): void {
    this.owners.set(client, person);
    const idle = this.idle.get(person) ?? new Set<number>();
    this.idle.set(person, idle);
    if (writes) {
      if (idle.delete(client) || !this.writtenIds.has(client)) {
        this.writtenIds.add(client);
        this.written.set(person, (this.written.get(person) ?? 0) + 1);
      }
      return;
    }
    if (this.writtenIds.has(client)) return;
    idle.delete(client);
    idle.add(client);
    if (idle.size <= IDLE_KEPT) return;
    for (const oldest of idle) {
      idle.delete(oldest);
      this.owners.delete(oldest);
      this.keep(oldest, null);
      break;
    }
  }
}
