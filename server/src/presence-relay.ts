/**
 * Who is here, passed on. A socket speaks for one client id, bound when it first speaks; whatever it says of others
 * (a stock provider repeats everybody) is dropped, and who it says it is, is written over.
 */
import type { Person } from '@enfilade/shared/seats';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import type { ClientIds } from './client-ids.ts';

/** A socket, as far as presence goes. */
export interface Speaker {
  readonly seatId: string;
  readonly person: Person;
}

interface Entry {
  readonly speaker: Speaker;
  /** The clock its own client counts, and the one we send: a return under the same id must not look old to others. */
  ownClock: number;
  clock: number;
  state: string;
}

/** Ids that spoke once, remembered so that an echo of them binds nobody else; the oldest is forgotten first. */
const DEPARTED_KEPT = 10_000;
const CLIENTS_IN_ONE_FRAME = 10_000;

export class PresenceRelay {
  private readonly entries = new Map<number, Entry>();
  private readonly idOf = new Map<Speaker, number>();
  private readonly departed = new Map<number, { seatId: string; clock: number; ownClock: number }>();

  private readonly ids: ClientIds;

  /** `ids`: whose hand each client id is, asked before a socket may speak for one. */
  constructor(ids: ClientIds) {
    this.ids = ids;
  }

  /**
   * The one id a socket speaks for, told by itself before it speaks.
   * @throws TypeError when it has spoken for another: that one would stay here for ever.
   */
  greet(speaker: Speaker, client: number): void {
    const bound = this.idOf.get(speaker);
    if (bound !== undefined && bound !== client) throw new TypeError('a hello after speaking for another id');
    const living = this.entries.get(client);
    if (living !== undefined && living.speaker !== speaker) this.idOf.delete(living.speaker);
    this.idOf.set(speaker, client);
  }

  /**
   * Takes one awareness update (the bytes inside the frame) and answers the ids whose state changed.
   * @throws when it does not parse.
   */
  take(speaker: Speaker, update: Uint8Array): number[] {
    const changed: number[] = [];
    const decoder = decoding.createDecoder(update);
    const count = decoding.readVarUint(decoder);
    if (count > CLIENTS_IN_ONE_FRAME) throw new RangeError(`${count} clients in one frame of presence`);
    for (let i = 0; i < count; i++) {
      const client = decoding.readVarUint(decoder);
      const clock = decoding.readVarUint(decoder);
      const text = decoding.readVarUint8Array(decoder);
      if (!this.speaksFor(speaker, client, clock, text)) continue;
      if (this.set(speaker, client, clock, text)) changed.push(client);
    }
    return changed;
  }

  /** Forgets a socket that closed; answers the id to be told as gone. */
  leave(speaker: Speaker): number[] {
    const client = this.idOf.get(speaker);
    this.idOf.delete(speaker);
    if (client === undefined) return [];
    const entry = this.entries.get(client);
    if (entry === undefined) return [];
    // Said by an earlier socket that still speaks for the id; one that lost it to this socket would stay here for ever.
    if (entry.speaker !== speaker && this.idOf.get(entry.speaker) === client) return [];
    this.depart(client, entry);
    return [client];
  }

  /** The frame's inside that tells these clients' states, but for the asker's own; null when there is nothing to tell. */
  toUpdate(clients: Iterable<number>, except: Speaker): Uint8Array | null {
    return this.toUpdates(clients)(except);
  }

  /** The same for many askers: each state is written once, and whoever is not in it shares one update with the others. */
  toUpdates(clients: Iterable<number>): (except: Speaker) => Uint8Array | null {
    const parts = new Map<number, Uint8Array>();
    for (const client of clients) {
      const entry = this.entries.get(client);
      const clock = entry?.clock ?? this.departed.get(client)?.clock;
      if (clock === undefined) continue;
      const encoder = encoding.createEncoder();
      encoding.writeVarUint(encoder, client);
      encoding.writeVarUint(encoder, clock);
      encoding.writeVarString(encoder, entry?.state ?? 'null');
      parts.set(client, encoding.toUint8Array(encoder));
    }
    const without = (own: number | undefined): Uint8Array | null => {
      const left = [...parts].filter(([client]) => client !== own);
      if (left.length === 0) return null;
      const encoder = encoding.createEncoder();
      encoding.writeVarUint(encoder, left.length);
      for (const [, part] of left) encoding.writeUint8Array(encoder, part);
      return encoding.toUint8Array(encoder);
    };
    let whole: Uint8Array | null | undefined;
    return (except) => {
      const own = this.idOf.get(except);
      if (own !== undefined && parts.has(own)) return without(own);
      if (whole === undefined) whole = without(undefined);
      return whole;
    };
  }

  clients(): Iterable<number> {
    return this.entries.keys();
  }

  private speaksFor(speaker: Speaker, client: number, clock: number, text: Uint8Array): boolean {
    const bound = this.idOf.get(speaker);
    if (bound !== undefined) return bound === client;
    // "null" names somebody who has left: never oneself, on first speaking.
    if (text.length === 4 && text[0] === 0x6e) return false;
    if (!this.ids.mayHold(client, speaker.person.id)) return false;
    const living = this.entries.get(client);
    if (living !== undefined) {
      // The same seat coming back before its old socket was missed; an echo of it carries a clock we sent, not a later own one.
      if (living.speaker.seatId !== speaker.seatId || clock <= Math.max(living.ownClock, living.clock)) return false;
      this.idOf.delete(living.speaker);
    }
    const before = this.departed.get(client);
    if (before !== undefined && before.seatId !== speaker.seatId) return false;
    this.idOf.set(speaker, client);
    this.ids.bind(client, speaker.person.id, false);
    return true;
  }

  private set(speaker: Speaker, client: number, ownClock: number, text: Uint8Array): boolean {
    const entry = this.entries.get(client);
    const state: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(text));
    if (entry !== undefined && entry.speaker === speaker && ownClock <= entry.ownClock && state !== null) return false;
    if (state === null) {
      if (entry === undefined) return false;
      entry.ownClock = ownClock;
      this.depart(client, entry);
      return true;
    }
    if (typeof state !== 'object' || Array.isArray(state)) throw new TypeError('presence is an object');
    const clock = (entry?.clock ?? this.departed.get(client)?.clock ?? 0) + 1;
    const { id, name, role } = speaker.person;
    this.entries.set(client, {
      speaker,
      ownClock,
      clock,
      state: JSON.stringify({ ...state, person: { id, name, role } }),
    });
    this.departed.delete(client);
    return true;
  }

  private depart(client: number, { speaker, clock, ownClock }: Entry): void {
    this.entries.delete(client);
    this.departed.set(client, { seatId: speaker.seatId, clock: clock + 1, ownClock });
    if (this.departed.size > DEPARTED_KEPT) {
      for (const oldest of this.departed.keys()) {
        this.departed.delete(oldest);
        break;
      }
    }
  }
}
