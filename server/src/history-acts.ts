/** Keeping the hang as it stands under a name: an act that writes the record. */
import type { KeptState } from '@enfilade/shared/protocol';
import { mayWrite } from '@enfilade/shared/seats';
import { json, refusal } from './answers.ts';
import type { ActHandler } from './desk.ts';
import { keepState } from './kept.ts';

const NAME_LENGTH = 120;

const keepNamed: ActHandler = async ({ person, body, documents, sessions, kept }) => {
  // Whoever has a word in the show may keep a state; a viewer looks.
  if (!mayWrite(person.role, 'talk')) return refusal(403, 'This seat may look, not keep a state.', 'keep a state');
  const name = (body as { name?: unknown } | null)?.name;
  if (typeof name !== 'string' || name.trim() === '') {
    return refusal(400, 'A state is kept under a name. Nothing was kept.', 'keep a state');
  }
  const record = sessions.get('record');
  if (record === undefined) return refusal(503, 'The record is not open. Nothing was kept.', 'keep a state');
  const words = {
    kind: 'named',
    name: name.trim().slice(0, NAME_LENGTH),
    at: new Date().toISOString(),
    by: person.name,
  } as const;
  const state: KeptState | null = await keepState(kept, record, documents, words);
  return state === null
    ? refusal(409, 'Nothing has a place yet, so there is nothing to keep.', 'keep a state')
    : json(200, state);
};

export const HISTORY_ACTS: Readonly<Record<string, ActHandler>> = { 'keep-state': keepNamed };
