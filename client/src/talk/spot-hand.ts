/** The hand on the stage while a spot is asked for: its next press is the spot, and nothing is taken up. */

import type { StageMachine } from '../stage/stage-machine.ts';
import { leaveSpot, spotAsked, spotTaken } from './spot-asked.ts';
import { surfaceUnder } from './surface-under.ts';

export function takeSpots(machine: StageMachine, element: HTMLElement): () => void {
  const down = (event: PointerEvent): void => {
    const surfaces = spotAsked.get();
    if (surfaces === null || event.button !== 0) return;
    event.stopImmediatePropagation();
    event.preventDefault();
    const at = surfaceUnder(machine, element, event);
    if (at === null || !surfaces.includes(at[0])) return;
    spotAsked.set(null);
    spotTaken.set({ surface: at[0], xMm: at[1], yMm: at[2] });
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || spotAsked.get() === null) return;
    event.stopImmediatePropagation();
    leaveSpot();
  };
  const mark = (): void => {
    element.classList.toggle('stage-asked', spotAsked.get() !== null);
  };
  mark();
  const unmark = spotAsked.subscribe(mark);
  element.addEventListener('pointerdown', down, true);
  element.addEventListener('keydown', key, true);
  return () => {
    unmark();
    element.classList.remove('stage-asked');
    element.removeEventListener('pointerdown', down, true);
    element.removeEventListener('keydown', key, true);
  };
}
