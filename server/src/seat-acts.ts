/** Seats given, changed and taken back, by whoever may: at once on every open socket. */
import { newId } from '@enfilade/shared/identity';
import { isRole, mayInvite, maySeat } from '@enfilade/shared/seats';
import { type Invited, personNameFrom, type SeatEntry } from '@enfilade/shared/seats-page';
import { type Answer, json, refusal } from './answers.ts';
import type { ActHandler, Desk } from './desk.ts';
import type { Invitation, Seat } from './seats.ts';

/** Longest a seat may be given for, ms: as long as a cookie is kept. */
const LONGEST_MS = 10 * 366 * 86_400_000;

const NOTHING = 'Nothing was changed.';

function fieldsOf(body: unknown): Record<string, unknown> {
  return typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : {};
}

/** Everybody's seats, for whoever may invite; undefined for others. */
export async function seatsFor({ person, seats }: Pick<Desk, 'person' | 'seats'>): Promise<SeatEntry[] | undefined> {
  return mayInvite(person.role) ? await seats.list() : undefined;
}

async function told({ seats }: Desk, { seat, token }: Invitation): Promise<Answer> {
  return json(200, { seats: await seats.list(), seatId: seat.id, path: `/join/${token}` } satisfies Invited);
}

/** The seat an act is about, when whoever asks may change it; else why not. */
function seatToChange({ person, seats, seatId: own }: Desk, body: unknown): Seat | Answer {
  if (!mayInvite(person.role)) return refusal(403, `Only a lead or a curator changes seats. ${NOTHING}`, 'seats');
  const { seatId } = fieldsOf(body);
  const seat = typeof seatId === 'string' ? seats.get(seatId) : undefined;
  if (seat === undefined) return refusal(404, `That seat is not here any more. ${NOTHING}`, 'seats');
  const { name, role } = seat.person;
  if (seat.id === own || seat.person.id === person.id) {
    return refusal(403, `Nobody changes or takes back their own seat. ${NOTHING}`, name);
  }
  if (!maySeat(person.role, role)) {
    return refusal(403, `A ${role}’s seat has powers that a ${person.role} has not. ${NOTHING}`, name);
  }
  return seat;
}

function isAnswer(found: Seat | Answer): found is Answer {
  return 'status' in found;
}

const invite: ActHandler = async (desk) => {
  const { person, seats, body } = desk;
  if (!mayInvite(person.role)) return refusal(403, 'Only a lead or a curator invites. Nobody was invited.', 'seats');
  const { name, role, until = null } = fieldsOf(body);
  const kept = typeof name === 'string' ? personNameFrom(name) : null;
  if (kept === null) return refusal(400, 'An invitation needs a name. Nobody was invited.', 'name');
  if (typeof role !== 'string' || !isRole(role)) {
    return refusal(400, 'An invitation needs one of the roles. Nobody was invited.', 'role');
  }
  if (!maySeat(person.role, role)) {
    return refusal(403, `A ${role} has powers that a ${person.role} has not. Nobody was invited.`, 'role');
  }
  const end = until === null ? null : typeof until === 'string' ? Date.parse(until) : Number.NaN;
  if (end !== null && !(end > Date.now() && end < Date.now() + LONGEST_MS)) {
    return refusal(400, 'The end of an invitation lies in the future. Nobody was invited.', 'until');
  }
  const terms = { until: end === null ? null : new Date(end).toISOString(), by: person.name };
  return told(desk, await seats.invite({ id: newId(), name: kept, role }, undefined, terms));
};

const changeRole: ActHandler = async (desk) => {
  const { person, seats, body } = desk;
  const seat = seatToChange(desk, body);
  if (isAnswer(seat)) return seat;
  const { role } = fieldsOf(body);
  if (typeof role !== 'string' || !isRole(role)) return refusal(400, `That is none of the roles. ${NOTHING}`, 'role');
  if (!maySeat(person.role, role)) {
    return refusal(403, `A ${role} has powers that a ${person.role} has not. ${NOTHING}`, seat.person.name);
  }
  if (role !== seat.person.role) await seats.changeRole(seat.id, role);
  return json(200, await seats.list());
};

const takeBack: ActHandler = async (desk) => {
  const seat = seatToChange(desk, desk.body);
  if (isAnswer(seat)) return seat;
  await desk.seats.revoke(seat.id);
  return json(200, await desk.seats.list());
};

/** A link is a seat: a new one is given by whoever might have given the first. */
const newLink: ActHandler = async (desk) => {
  const seat = seatToChange(desk, desk.body);
  if (isAnswer(seat)) return seat;
  return told(desk, await desk.seats.renew(seat.id));
};

export const SEAT_ACTS: Readonly<Record<string, ActHandler>> = {
  invite,
  'change-role': changeRole,
  'take-back': takeBack,
  'new-link': newLink,
};
