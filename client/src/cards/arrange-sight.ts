/** Where an arrangement that is tried can be seen: its wall, or the room it stands in. */
import type { ArrangeTask } from '@enfilade/shared/arrange-task';
import type { Judgements } from '@enfilade/shared/judgements';
import { LAYOUT_FLOOR, surfaceParts } from '@enfilade/shared/schema';
import { go, type View, viewFrom } from '../view-address.ts';

/** Goes there, unless it is in sight already. */
export function faceIt(judgements: Judgements, task: ArrangeTask): void {
  const now = viewFrom(location.hash);
  const on = task.kind === 'massed' ? judgements.where.surfaceOf(task.carrier) : task.wish.surface;
  if (on === LAYOUT_FLOOR) {
    if (now?.sheet !== 'layout') go({ sheet: 'layout' });
    return;
  }
  const wanted = sightOf(task, on ?? task.wish.surface);
  if (wanted === null) return;
  const roomId = surfaceParts(task.wish.surface)?.roomId;
  const inRoom =
    (now?.sheet === 'room' && now.roomId === roomId) ||
    (now?.sheet === 'wall' && now.surface === task.wish.surface && task.kind !== 'plinths');
  if (!inRoom || (task.kind !== 'massed' && task.kind !== 'plinths' && now?.sheet !== 'wall')) go(wanted);
}

function sightOf(task: ArrangeTask, on: string): View | null {
  const { surface } = task.wish;
  if (task.kind !== 'massed' && task.kind !== 'plinths') return { sheet: 'wall', surface };
  const roomId = surfaceParts(on)?.roomId;
  return roomId === undefined ? null : { sheet: 'room', roomId };
}
