/** Bringing a kept state back, whole or one vignette of it: fetched by its digest, then one act. */
import type { HangState } from '@enfilade/shared/hang-layer';
import { hangStateFrom, restoreState, restoreVignette } from '@enfilade/shared/kept-states';
import type { KeptState } from '@enfilade/shared/protocol';
import type { VignetteId } from '@enfilade/shared/schema';
import { act } from '../cards/acting.ts';
import { dayText } from '../cards/day-text.ts';
import type { ShowSession } from '../sync/show-session.ts';

/** 'As 9 May 2026 found it', 'Sixty impressions, signed off', 'Before the repaint'. */
export function stateName({ kind, name, at }: KeptState): string {
  if (kind === 'day') return `As ${dayText(at)} found it`;
  return kind === 'signed off' ? `${name}, signed off` : name;
}

async function fetched(hang: ShowSession, { digest }: KeptState): Promise<HangState | null> {
  const answer = await fetch(`${hang.base}/states/${digest}`).catch(() => null);
  return answer?.ok ? hangStateFrom(await answer.json()) : null;
}

const NOT_FETCHED = 'That state could not be fetched. Nothing was changed.';

/** @returns what went wrong, or null. `hang`: the show itself, not a layer over it. */
export async function bringBack(hang: ShowSession, state: KeptState): Promise<string | null> {
  const kept = await fetched(hang, state);
  if (kept === null) return NOT_FETCHED;
  const name = stateName(state);
  const done = act(
    hang,
    () => restoreState(hang.documents, kept, name),
    `The hang is as in ${name}; undo takes it back`,
  );
  return done ? null : 'This cannot be written just now. Nothing was changed.';
}

export async function bringVignetteBack(hang: ShowSession, state: KeptState, id: VignetteId): Promise<string | null> {
  const kept = await fetched(hang, state);
  if (kept === null) return NOT_FETCHED;
  const done = act(
    hang,
    () => restoreVignette(hang.documents, kept, id),
    'The vignette is as it was; undo takes it back',
  );
  return done ? null : 'This cannot be written just now. Nothing was changed.';
}
