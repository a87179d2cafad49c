/** What the cards do to the hang, with a word for the live region. */
import type { Act } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { say } from '../shell/live-region.tsx';
import type { ShowSession } from '../sync/show-session.ts';

/** Performs an act; says what came of it. False where it could not be done, and that is said too. */
export function act(show: ShowSession, made: Act | (() => Act), done?: string): boolean {
  try {
    const ready = typeof made === 'function' ? made() : made;
    if (!show.perform(ready)) {
      say('Not done: this cannot be written just now.');
      return false;
    }
    if (done !== undefined) say(done);
    return true;
  } catch (error) {
    say(error instanceof RangeError ? `Not done: ${error.message}.` : 'Not done.');
    return false;
  }
}

/** Changes numbers of one piece's place. */
export function placeAnew(
  show: ShowSession,
  pieceId: PieceId,
  at: Place,
  change: { xMm?: number; yMm?: number; liftMm?: number; turnDegrees?: number },
): string | null {
  const next: Place = [
    at[0],
    change.xMm ?? at[1],
    change.yMm ?? at[2],
    change.liftMm ?? at[3],
    change.turnDegrees === undefined ? at[4] : Math.round(change.turnDegrees * 100),
  ];
  const lift = at[0].endsWith(':ceiling') ? 'drop' : 'stand off';
  const name = change.turnDegrees !== undefined ? 'turn' : change.liftMm !== undefined ? lift : 'move';
  const done = act(show, () =>
    commands.place(show.documents, new Map([[pieceId, next]]), `${name} ${show.judgements.nameOf(pieceId)}`),
  );
  return done ? null : 'cannot be set just now';
}
