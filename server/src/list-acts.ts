/** Freezing the vignette list under a version stamp: an act that writes the record. */
import { Judgements } from '@enfilade/shared/judgements';
import { frozenListOf } from '@enfilade/shared/list-versions';
import { VIGNETTE_LIST } from '@enfilade/shared/print-stamps';
import type { FrozenAnswer } from '@enfilade/shared/protocol';
import { mayWrite } from '@enfilade/shared/seats';
import { json, refusal } from './answers.ts';
import type { ActHandler } from './desk.ts';
import { raiseVersion } from './paper/versions.ts';

/**
 * Whoever may change the hang may say that the list of it stands: the rule and the settings are those of the hang, so a
 * guest artist who only proposes does not freeze. What is frozen is what is committed here, never what a page holds.
 */
const freezeList: ActHandler = async ({ person, documents, sessions, kept }) => {
  const artistProposesOnly = documents.get('settings', 'artistProposesOnly') === true;
  if (!mayWrite(person.role, 'hang', { artistProposesOnly })) {
    return refusal(403, 'This seat may read the list, not freeze it. Nothing was frozen.', 'freeze the vignette list');
  }
  const record = sessions.get('record');
  if (record === undefined)
    return refusal(503, 'The record is not open. Nothing was frozen.', 'freeze the vignette list');
  // Pictures say nothing about a list.
  const list = frozenListOf(new Judgements(documents, { get: () => undefined }));
  if (list.rows.length === 0) {
    return refusal(409, 'There is no vignette yet, so there is nothing to freeze.', 'freeze the vignette list');
  }
  // The text before its stamp: no number is given out for what is not kept.
  const digest = await kept.put(list);
  const raised: FrozenAnswer = await raiseVersion((change) => record.act(change), {
    what: VIGNETTE_LIST,
    digest,
    by: person.name,
  });
  return json(200, raised);
};

export const LIST_ACTS: Readonly<Record<string, ActHandler>> = { 'freeze-list': freezeList };
