/**
 * Seats as those who may invite see and change them. Only the server holds seats:
 *   GET  /seat/<id>/seats                                          → SeatEntry[]
 *   POST /seat/<id>/acts/invite       {name, role, until | null}   → Invited
 *   POST /seat/<id>/acts/change-role  {seatId, role}               → SeatEntry[]
 *   POST /seat/<id>/acts/take-back    {seatId}                     → SeatEntry[]
 *   POST /seat/<id>/acts/new-link     {seatId}                     → Invited
 */
import type { Person } from './seats.ts';

export interface SeatEntry {
  readonly seatId: string;
  readonly person: Person;
  /** ISO 8601, the end the seat was given with; null: none. */
  readonly until: string | null;
  /** ISO 8601; empty where it was not written down. */
  readonly since: string;
  /** Name of whoever invited; empty for the server itself. */
  readonly by: string;
  /** ISO 8601, when it was taken back; null: it was not. */
  readonly takenBack: string | null;
  /** Devices the link has been opened on. */
  readonly devices: number;
}

export interface Invited {
  readonly seats: readonly SeatEntry[];
  readonly seatId: string;
  /** `/join/<token>`, told this once: the server keeps no link it could tell again. */
  readonly path: string;
}

/** Longest name of a person, characters. */
export const NAME_LENGTH = 80;

/** A person's name as it is kept: one line, no controls, at most NAME_LENGTH characters; null where nothing is left. */
export function personNameFrom(text: string): string | null {
  const name = text
    .replace(/[\p{C}\p{Z}\s]+/gu, ' ')
    .trim()
    .slice(0, NAME_LENGTH)
    .trim();
  return name === '' ? null : name;
}
