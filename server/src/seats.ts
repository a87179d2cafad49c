/**
 * People and their seats. An invitation link is exchanged for a cookie that holds for that seat's path only, so several
 * seats live side by side in one browser; on another device the same link is exchanged again.
 */

import { newId } from '@enfilade/shared/identity';
import { isRole, type Person, type Role } from '@enfilade/shared/seats';
import type { SeatEntry } from '@enfilade/shared/seats-page';
import { hashOf, newSecret } from './secrets.ts';
import type { Store } from './store.ts';

export interface Seat {
  readonly id: string;
  readonly person: Person;
  /** ISO 8601: the seat holds until then; null: without an end. */
  readonly until: string | null;
}

export interface Invitation {
  readonly seat: Seat;
  /** The only time it is known here: the store keeps its hash. */
  readonly token: string;
}

export interface Terms {
  readonly until?: string | null;
  /** Name of whoever invites; empty for the server itself. */
  readonly by?: string;
}

/** What happened to a seat that open sockets must hear of at once. */
export type SeatNews = 'taken back' | 'over' | 'role changed';

const COOKIE = 'enfilade-seat';
/** Longer than any show is in the making: ten years. */
const COOKIE_SECONDS = 10 * 366 * 86_400;

export class Seats {
  private readonly store: Store;
  private readonly seats = new Map<string, Seat>();
  private readonly byInvitation = new Map<string, Seat>();
  private readonly byDevice = new Map<string, Seat>();
  private readonly newsListeners = new Set<(seatId: string, news: SeatNews) => void>();
  private readonly changeListeners = new Set<() => void>();

  private constructor(store: Store) {
    this.store = store;
  }

  static async open(store: Store): Promise<Seats> {
    const seats = new Seats(store);
    const rows = await store.query
      .selectFrom('seats')
      .innerJoin('people', 'people.id', 'seats.person')
      .leftJoin('terms', 'terms.seat', 'seats.id')
      .select(['seats.id', 'seats.invitation', 'terms.until', 'people.id as personId', 'people.name', 'people.role'])
      .where('seats.revoked', 'is', null)
      .execute();
    for (const { id, invitation, until, personId, name, role } of rows) {
      if (!isRole(role)) continue;
      const seat: Seat = { id, person: { id: personId, name, role }, until };
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

  get(seatId: string): Seat | undefined {
    return this.seats.get(seatId);
  }

  /** Gives a person a seat. Without a token a new one is made. */
  async invite(person: Person, token = newSecret(), { until = null, by = '' }: Terms = {}): Promise<Invitation> {
    const seat: Seat = { id: newId(), person, until };
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
      await transaction
        .insertInto('terms')
        .values({ seat: seat.id, until, since: new Date().toISOString(), giver: by })
        .execute();
    });
    this.seats.set(seat.id, seat);
    this.byInvitation.set(invitation, seat);
    this.changed();
    return { seat, token };
  }

  /** The seat an invitation's token stands for. */
  invited(token: string): Seat | undefined {
    const seat = this.byInvitation.get(hashOf(token));
    return seat === undefined || isOver(seat) ? undefined : seat;
  }

  /** Whether a person has, or had, a seat here. */
  async knows(personId: string): Promise<boolean> {
    const row = await this.store.query
      .selectFrom('seats')
      .select('id')
      .where('person', '=', personId)
      .executeTakeFirst();
    return row !== undefined;
  }

  /** Every seat there is or was, without its link. */
  async list(): Promise<SeatEntry[]> {
    const rows = await this.store.query
      .selectFrom('seats')
      .innerJoin('people', 'people.id', 'seats.person')
      .leftJoin('terms', 'terms.seat', 'seats.id')
      .select(['seats.id as seatId', 'seats.revoked', 'people.id', 'people.name', 'people.role'])
      .select(['terms.until', 'terms.since', 'terms.giver as by'])
      .select(({ selectFrom, fn }) =>
        selectFrom('devices')
          .whereRef('devices.seat', '=', 'seats.id')
          .select(fn.countAll<number>().as('n'))
          .as('devices'),
      )
      .execute();
    return rows.flatMap(({ seatId, revoked, id, name, role, until, since, by, devices }) => {
      if (!isRole(role)) return [];
      const person = { id, name, role };
      const terms = { until, since: since ?? '', by: by ?? '', takenBack: revoked };
      return [{ seatId, person, ...terms, devices: Number(devices ?? 0) }];
    });
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
      if (seat === undefined || seat.id !== seatId) continue;
      // A role changed since: the seat as it is now, not as it was when the cookie was given.
      const now = this.seats.get(seatId);
      if (now !== undefined && !isOver(now)) return now;
    }
    return undefined;
  }

  /** Takes a seat away: its link, its devices, and whatever listens (open sockets). */
  async revoke(seatId: string): Promise<void> {
    // Before the disk: if that fails nobody sits here all the same, until the server starts anew.
    this.seats.delete(seatId);
    for (const map of [this.byInvitation, this.byDevice]) {
      for (const [key, seat] of map) if (seat.id === seatId) map.delete(key);
    }
    this.tell(seatId, 'taken back');
    const at = new Date().toISOString();
    await this.store.query.updateTable('seats').set({ revoked: at }).where('id', '=', seatId).execute();
    await this.store.query.deleteFrom('devices').where('seat', '=', seatId).execute();
    this.changed();
  }

  /** Gives the person of a seat another role, on every seat they have. @throws RangeError for a seat that is not here. */
  async changeRole(seatId: string, role: Role): Promise<void> {
    const person = this.seats.get(seatId)?.person;
    if (person === undefined) throw new RangeError(`no seat '${seatId}' here`);
    await this.store.query.updateTable('people').set({ role }).where('id', '=', person.id).execute();
    for (const seat of this.seats.values()) {
      if (seat.person.id !== person.id) continue;
      this.replace({ ...seat, person: { ...person, role } });
      this.tell(seat.id, 'role changed');
    }
    this.changed();
  }

  /** A new link in the place of a seat's old one; devices that have been let in stay. @throws RangeError as above. */
  async renew(seatId: string): Promise<Invitation> {
    const seat = this.seats.get(seatId);
    if (seat === undefined) throw new RangeError(`no seat '${seatId}' here`);
    const token = newSecret();
    const invitation = hashOf(token);
    await this.store.query.updateTable('seats').set({ invitation }).where('id', '=', seatId).execute();
    for (const [key, held] of this.byInvitation) if (held.id === seatId) this.byInvitation.delete(key);
    this.byInvitation.set(invitation, seat);
    return { seat, token };
  }

  /** Tells of every seat whose end has come by `now` (ms since 1970); asked now and then by whoever holds sockets. */
  endWhatIsOver(now = Date.now()): void {
    for (const seat of this.seats.values()) if (isOver(seat, now)) this.tell(seat.id, 'over');
  }

  /** Told at once of what open sockets must know. */
  onNews(listener: (seatId: string, news: SeatNews) => void): void {
    this.newsListeners.add(listener);
  }

  /** Told after any change of who is seated. */
  onChange(listener: () => void): void {
    this.changeListeners.add(listener);
  }

  private replace(seat: Seat): void {
    this.seats.set(seat.id, seat);
    for (const map of [this.byInvitation, this.byDevice]) {
      for (const [key, held] of map) if (held.id === seat.id) map.set(key, seat);
    }
  }

  private tell(seatId: string, news: SeatNews): void {
    for (const listener of this.newsListeners) listener(seatId, news);
  }

  private changed(): void {
    for (const listener of this.changeListeners) listener();
  }
}

/** Whether a seat's end has come. */
export function isOver({ until }: Seat, now = Date.now()): boolean {
  return until !== null && Date.parse(until) <= now;
}
