/** A pointer that is seen: while it is on, everybody who looks at the surface I point at sees where. */
import { Store } from '../selection.ts';
import { say } from '../shell/live-region.tsx';
import type { OnSurface } from './surface-under.ts';

export const pointing = new Store(false);
/** Where the keys have moved it: my hand's own pointer needs no second mark. */
export const pointedByKeys = new Store<OnSurface | null>(null);

export function setPointing(on: boolean): void {
  if (on === pointing.get()) return;
  pointing.set(on);
  say(on ? 'Your pointer is seen; arrows on the stage move it, Escape puts it away' : 'Your pointer is seen no more');
}
