/**
 * People and their seats. An invitation link is exchanged for a cookie that holds for that seat's path only, so several
 * seats live side by side in one browser; on another device the same link is exchanged again.
 */

import { newId } from '@enfilade/shared/identity';
import { isRole, type Person } from '@enfilade/shared/seats';
import { hashOf, newSecret } from './secrets.ts';
import type { Store } from './store.ts';

export interface Seat {
  readonly id: string;
  readonly person: Person;
}

export interface Invitation {
  readonly seat: Seat;
  /** The only time it is known here: the store keeps its hash. */
  readonly token: string;
}

const COOKIE = 'enfilade-seat';
/** Longer than any show is in the making: ten years. */
const COOKIE_SECONDS = 10 * 366 * 86_400;

export class Seats {
  private readonly store: Store;
  private readonly seats = new Map<string, Seat>();
  private readonly byInvitation = new Map<string, Seat>();
  private readonly byDevice = new Map<string, Seat>();
  private readonly revokeListeners = new Set<(seatId: string) => void>();

  private constructor(store: Store) {
    this.store = store;
  }

  static async open(store: Store): Promise<Seats> {
    const seats = new Seats(store);
    const rows = await store.query
      .selectFrom('seats')
      .innerJoin('people', 'people.id', 'seats.person')
      .select(['seats.id', 'seats.invitation', 'people.id as personId', 'people.name', 'people.role'])
      .where('seats.revoked', 'is', null)
      .execute();
    for (const { id, invitation, personId, name, role } of rows) {
      if (!isRole(role)) continue;
      const seat: Seat = { id, person: { id: personId, name, role } };
      seats.seats.set(id, seat);
      seats.byInvitation.set(invitation, seat);
    }
    for (const { hash, seat: id } of await store.query.selectFrom('devices').select(['hash', 'seat']).execute()) {
      const seat = seats.seats.get(id);
      if (seat !== undefined) seats.byDevice.set(hash, seat);
    }
    return seats;
  }

  get count(): number {
    return this.seats.size;
  }

  /** Gives a person a seat. Without a token a new one is made. */
  async invite(person: Person, token = newSecret()): Promise<Invitation> {
    const seat: Seat = { id: newId(), person };
    const invitation = hashOf(token);
    await this.store.query.transaction().execute(async (transaction) => {
      await transaction
        .insertInto('people')
        .values({ id: person.id, name: person.name, role: person.role })
        .onConflict((conflict) => conflict.column('id').doUpdateSet({ name: person.name, role: person.role }))
        .execute();
      await transaction
        .insertInto('seats')
        .values({ id: seat.id, person: person.id, invitation, revoked: null })
        .execute();
    });
    this.seats.set(seat.id, seat);
    this.byInvitation.set(invitation, seat);
    return { seat, token };
  }

  /** The seat an invitation's token stands for. */
  invited(token: string): Seat | undefined {
    return this.byInvitation.get(hashOf(token));
  }

  /** Exchanges a token: its seat, and the cookie this device is to keep; undefined when nobody was invited by it. */
  async exchange(token: string, secure: boolean): Promise<{ seat: Seat; cookie: string } | undefined> {
    const seat = this.invited(token);
    if (seat === undefined) return undefined;
    const secret = newSecret();
    const hash = hashOf(secret);
    await this.store.query
      .insertInto('devices')
      .values({ hash, seat: seat.id, since: new Date().toISOString() })
      .execute();
    this.byDevice.set(hash, seat);
    const cookie = `${COOKIE}=${secret}; Path=/seat/${seat.id}/; HttpOnly; SameSite=Strict; Max-Age=${COOKIE_SECONDS}`;
    return { seat, cookie: secure ? `${cookie}; Secure` : cookie };
  }

  /** The seat a request may act for: the one its path names, when its cookie is that seat's; else undefined. */
  seatOf(seatId: string, cookieHeader: string | undefined): Seat | undefined {
    for (const part of (cookieHeader ?? '').split(';')) {
      const [name, value] = part.trim().split('=');
      if (name !== COOKIE || value === undefined) continue;
      const seat = this.byDevice.get(hashOf(value));
      if (seat !== undefined && seat.id === seatId && this.seats.get(seatId) === seat) return seat;
    }
    return undefined;
  }

  /** Takes a seat away: its link, its devices, and whatever listens (open sockets). */
  async revoke(seatId: string): Promise<void> {
    const at = new Date().toISOString();
    await this.store.query.updateTable('seats').set({ revoked: at }).where('id', '=', seatId).execute();
    await this.store.query.deleteFrom('devices').where('seat', '=', seatId).execute();
    this.seats.delete(seatId);
    for (const map of [this.byInvitation, this.byDevice]) {
      for (const [key, seat] of map) if (seat.id === seatId) map.delete(key);
    }
    for (const listener of this.revokeListeners) listener(seatId);
  }

  onRevoke(listener: (seatId: string) => void): void {
    this.revokeListeners.add(listener);
  }
}
