/** Accepting a caution: an act that writes the record, by whoever is competent for what the caution is about. */
import { acceptingOf, acceptorsText, isCompetent, standingCautionsOf } from '@enfilade/shared/accepted';
import { Judgements } from '@enfilade/shared/judgements';
import type { Acceptance, AcceptRequest } from '@enfilade/shared/protocol';
import { json, refusal } from './answers.ts';
import type { ActHandler } from './desk.ts';

const WHERE = 'accept a caution';
const REASON_AT_MOST = 1000;
const NAME_AT_MOST = 120;

function acceptRequestFrom(body: unknown): AcceptRequest | null {
  if (typeof body !== 'object' || body === null) return null;
  const { pieceId, digest, reason, wordOf } = body as Record<string, unknown>;
  if (typeof pieceId !== 'string' || typeof digest !== 'string') return null;
  if (typeof reason !== 'string' || typeof wordOf !== 'string') return null;
  if (reason.trim() === '' || reason.length > REASON_AT_MOST || wordOf.length > NAME_AT_MOST) return null;
  return { pieceId, digest, reason: reason.trim(), wordOf: wordOf.trim() };
}

/** One person's word on one caution as it stands here. What they saw must be what follows from what is committed. */
const acceptCaution: ActHandler = async ({ person, body, documents, sessions }) => {
  const request = acceptRequestFrom(body);
  if (request === null) {
    return refusal(400, 'Accepting names a piece, a caution’s digest and a reason. Nothing was accepted.', WHERE);
  }
  const judgements = new Judgements(documents, { get: () => undefined });
  const found = standingCautionsOf(judgements, request.pieceId).find(({ digest }) => digest === request.digest);
  if (found === undefined) {
    return refusal(409, 'That caution does not stand as you saw it any more. Look again. Nothing was accepted.', WHERE);
  }
  const { caution } = found;
  if (!isCompetent(caution, { role: person.role, wordOf: request.wordOf })) {
    const needs =
      acceptingOf(caution, person.role) === 'a conservator’s word' ? ' Name the conservator whose word it is.' : '';
    return refusal(
      403,
      `This caution is for ${acceptorsText(caution)} to accept.${needs} Nothing was accepted.`,
      WHERE,
    );
  }
  const record = sessions.get('record');
  if (record === undefined) return refusal(503, 'The record is not open. Nothing was accepted.', WHERE);
  const acceptance: Acceptance = {
    pieceId: request.pieceId,
    kind: caution.kind,
    digest: found.digest,
    what: caution.what,
    reason: request.reason,
    // A conservator's own word is nobody else's.
    wordOf: acceptingOf(caution, person.role) === 'a conservator’s word' ? request.wordOf : '',
    personId: person.id,
    name: person.name,
    role: person.role,
    at: new Date().toISOString(),
  };
  await record.act((doc) => {
    doc.getMap('acceptances').set(`${acceptance.pieceId}|${acceptance.digest}`, acceptance);
  });
  return json(200, acceptance);
};

export const CAUTION_ACTS: Readonly<Record<string, ActHandler>> = { 'accept-caution': acceptCaution };
