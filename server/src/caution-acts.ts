/** Accepting cautions, and taking an acceptance back: acts that write the record, by whoever is competent for what they are about. */
import {
  acceptingOf,
  acceptorsText,
  isCompetent,
  mayWithdraw,
  standingCautionsOf,
  withdrawersText,
} from '@enfilade/shared/accepted';
import { Judgements } from '@enfilade/shared/judgements';
import { ACCEPTED_AT_ONCE, type Acceptance, type AcceptRequest, type WithdrawRequest } from '@enfilade/shared/protocol';
import { json, refusal } from './answers.ts';
import type { ActHandler } from './desk.ts';

const WHERE = 'accept cautions';
const REASON_AT_MOST = 1000;
const NAME_AT_MOST = 120;

function acceptRequestFrom(body: unknown): AcceptRequest | null {
  const named = withdrawRequestFrom(body);
  if (named === null) return null;
  const { wordOf } = body as Record<string, unknown>;
  if (typeof wordOf !== 'string' || wordOf.length > NAME_AT_MOST) return null;
  return { ...named, wordOf: wordOf.trim() };
}

function withdrawRequestFrom(body: unknown): WithdrawRequest | null {
  if (typeof body !== 'object' || body === null) return null;
  const { cautions, reason } = body as Record<string, unknown>;
  if (typeof reason !== 'string' || reason.trim() === '' || reason.length > REASON_AT_MOST) return null;
  if (!Array.isArray(cautions) || cautions.length === 0 || cautions.length > ACCEPTED_AT_ONCE) return null;
  const named: { pieceId: string; digest: string }[] = [];
  for (const each of cautions as unknown[]) {
    const { pieceId, digest } = (typeof each === 'object' && each !== null ? each : {}) as Record<string, unknown>;
    if (typeof pieceId !== 'string' || typeof digest !== 'string') return null;
    named.push({ pieceId, digest });
  }
  return { cautions: named, reason: reason.trim() };
}

/** One person's word on cautions as they stand here. What they saw must be what follows from what is committed. */
const acceptCautions: ActHandler = async ({ person, body, documents, sessions }) => {
  const request = acceptRequestFrom(body);
  if (request === null) {
    const what = `Accepting names 1 to ${ACCEPTED_AT_ONCE} cautions by piece and digest, and a reason. Nothing was accepted.`;
    return refusal(400, what, WHERE);
  }
  const { role } = person;
  const judgements = new Judgements(documents, { get: () => undefined });
  const at = new Date().toISOString();
  const acceptances: Acceptance[] = [];
  for (const { pieceId, digest } of request.cautions) {
    const caution = standingCautionsOf(judgements, pieceId).find((one) => one.digest === digest)?.caution;
    if (caution === undefined) {
      const what = `A caution on ${judgements.nameOf(pieceId)} does not stand as you saw it any more. Look again. Nothing was accepted.`;
      return refusal(409, what, WHERE);
    }
    const how = acceptingOf(caution, role);
    if (!isCompetent(caution, { role, wordOf: request.wordOf })) {
      const needs = how === 'a conservator’s word' ? ' Name the conservator whose word it is.' : '';
      return refusal(
        403,
        `This caution is for ${acceptorsText(caution)} to accept.${needs} Nothing was accepted.`,
        WHERE,
      );
    }
    // Who accepts by their own competence does so on nobody else's word.
    const wordOf = how === 'a conservator’s word' ? request.wordOf : '';
    const { kind, what } = caution;
    const { reason } = request;
    acceptances.push({ pieceId, kind, digest, what, reason, wordOf, personId: person.id, name: person.name, role, at });
  }
  const record = sessions.get('record');
  if (record === undefined) return refusal(503, 'The record is not open. Nothing was accepted.', WHERE);
  await record.act((doc) => {
    for (const one of acceptances) doc.getMap('acceptances').set(`${one.pieceId}|${one.digest}`, one);
  });
  return json(200, acceptances);
};

/** One person takes back words on cautions, theirs or another's. What was said stays in the record, with why it holds no longer. */
const withdrawAcceptances: ActHandler = async ({ person, body, documents, sessions }) => {
  const where = 'take acceptances back';
  const request = withdrawRequestFrom(body);
  if (request === null) {
    const what = `Taking back names 1 to ${ACCEPTED_AT_ONCE} accepted cautions by piece and digest, and a reason. Nothing was taken back.`;
    return refusal(400, what, where);
  }
  const withdrawn: Acceptance[] = [];
  const { id: personId, name, role } = person;
  const by = { reason: request.reason, personId, name, role, at: new Date().toISOString() };
  for (const { pieceId, digest } of request.cautions) {
    const one = documents.get('acceptances', `${pieceId}|${digest}`);
    if (one === undefined || one.withdrawn !== undefined) {
      return refusal(409, 'One of these is not accepted any more. Look again. Nothing was taken back.', where);
    }
    if (!mayWithdraw(one, person)) {
      return refusal(403, `This is for ${withdrawersText(one)} to take back. Nothing was taken back.`, where);
    }
    withdrawn.push({ ...one, withdrawn: by });
  }
  const record = sessions.get('record');
  if (record === undefined) return refusal(503, 'The record is not open. Nothing was taken back.', where);
  await record.act((doc) => {
    const acceptances = doc.getMap('acceptances');
    for (const one of withdrawn) {
      acceptances.delete(`${one.pieceId}|${one.digest}`);
      acceptances.set(`${one.pieceId}|${one.digest}|${one.at}`, one);
    }
  });
  return json(200, withdrawn);
};

export const CAUTION_ACTS: Readonly<Record<string, ActHandler>> = {
  'accept-cautions': acceptCautions,
  'withdraw-acceptances': withdrawAcceptances,
};
