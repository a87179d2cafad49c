/** Acts that the server alone may write into the record. */
import type { Signature, SignOffRequest } from '@enfilade/shared/protocol';
import { maySignOff } from '@enfilade/shared/seats';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { json, refusal } from './answers.ts';
import { CAUTION_ACTS } from './caution-acts.ts';
import type { ActHandler } from './desk.ts';
import { HISTORY_ACTS } from './history-acts.ts';
import { keepState } from './kept.ts';
import { LIST_ACTS } from './list-acts.ts';
import { SEAT_ACTS } from './seat-acts.ts';

function signOffRequestFrom(body: unknown): SignOffRequest | null {
  if (typeof body !== 'object' || body === null) return null;
  const { vignetteId, digest } = body as Record<string, unknown>;
  return typeof vignetteId === 'string' && typeof digest === 'string' ? { vignetteId, digest } : null;
}

/** One person's word on a vignette as it stands here. What they saw must be what is committed. */
const signOff: ActHandler = async ({ person, body, documents, sessions, kept }) => {
  if (!maySignOff(person.role)) {
    return refusal(403, 'This seat may look, not sign off. Nothing was signed.', 'sign off');
  }
  const request = signOffRequestFrom(body);
  if (request === null)
    return refusal(400, 'A sign-off names a vignette and a digest. Nothing was signed.', 'sign off');
  const form = canonicalVignetteOf(documents, request.vignetteId);
  if (form === null) return refusal(404, 'That vignette is not here any more. Nothing was signed.', 'sign off');
  const canonical = toCanonicalText(form);
  const digest = digestOf(canonical);
  if (digest !== request.digest) {
    return refusal(
      409,
      `“${form.name}” has changed since you looked. Look again, then sign. Nothing was signed.`,
      form.name,
    );
  }
  const signature: Signature = {
    vignetteId: request.vignetteId,
    personId: person.id,
    name: person.name,
    role: person.role,
    at: new Date().toISOString(),
    digest,
    canonical,
  };
  const record = sessions.get('record');
  await record?.act((doc) => {
    doc.getMap('signatures').set(`${signature.vignetteId}/${signature.personId}`, signature);
  });
  // The whole hang as it was signed in; the signature stands whether or not that can be kept.
  if (record !== undefined) {
    const words = { kind: 'signed off', name: form.name, at: signature.at, by: person.name } as const;
    await keepState(kept, record, documents, words).catch(() => null);
  }
  return json(200, signature);
};

export const ACTS: Readonly<Record<string, ActHandler>> = {
  ...SEAT_ACTS,
  ...HISTORY_ACTS,
  ...LIST_ACTS,
  ...CAUTION_ACTS,
  'sign-off': signOff,
};
