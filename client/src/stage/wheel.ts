/** The wheel moves the view; with control it goes nearer and farther about the pointer, with shift sideways. */
import type { StageMachine } from './stage-machine.ts';

/** `at`: where the pointer is, window px. */
export function turnWheel(
  machine: StageMachine,
  event: WheelEvent,
  at: { readonly x: number; readonly y: number },
): void {
  event.preventDefault();
  const unit = event.deltaMode === 1 ? 18 : event.deltaMode === 2 ? machine.size.height : 1;
  if (event.ctrlKey || event.metaKey) machine.zoom(Math.exp((-event.deltaY * unit) / 240), at.x, at.y);
  else if (event.shiftKey && event.deltaX === 0) machine.pan(-event.deltaY * unit, 0);
  else machine.pan(-event.deltaX * unit, -event.deltaY * unit);
}
