/** Accepting cautions: an act that writes the record, by whoever is competent for what each of them is about. */
import { acceptingOf, acceptorsText, isCompetent, standingCautionsOf } from '@enfilade/shared/accepted';
import { Judgements } from '@enfilade/shared/judgements';
import { ACCEPTED_AT_ONCE, type Acceptance, type AcceptRequest } from '@enfilade/shared/protocol';
import { json, refusal } from './answers.ts';
import type { ActHandler } from './desk.ts';

const WHERE = 'accept cautions';
const REASON_AT_MOST = 1000;
const NAME_AT_MOST = 120;

function acceptRequestFrom(body: unknown): AcceptRequest | null {
  if (typeof body !== 'object' || body === null) return null;
  const { cautions, reason, wordOf } = body as Record<string, unknown>;
  if (typeof reason !== 'string' || typeof wordOf !== 'string') return null;
  if (reason.trim() === '' || reason.length > REASON_AT_MOST || wordOf.length > NAME_AT_MOST) return null;
  if (!Array.isArray(cautions) || cautions.length === 0 || cautions.length > ACCEPTED_AT_ONCE) return null;
  const named: { pieceId: string; digest: string }[] = [];
  for (const each of cautions as unknown[]) {
    const { pieceId, digest } = (typeof each === 'object' && each !== null ? each : {}) as Record<string, unknown>;
    if (typeof pieceId !== 'string' || typeof digest !== 'string') return null;
    named.push({ pieceId, digest });
  }
  return { cautions: named, reason: reason.trim(), wordOf: wordOf.trim() };
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

export const CAUTION_ACTS: Readonly<Record<string, ActHandler>> = { 'accept-cautions': acceptCautions };
