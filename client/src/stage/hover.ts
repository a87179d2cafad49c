/** What lies under a resting pointer, looked for at most once a frame. */
import { OncePerFrame } from './frames.ts';
import type { StageMachine } from './stage-machine.ts';

/** How far beside a thing a pointer still counts as on it, CSS px. */
export const POINTER_SLOP_PX = 3;

export class Hover {
  private readonly machine: StageMachine;
  private readonly element: HTMLElement;
  private readonly look = new OncePerFrame(() => this.lookNow());
  private x = 0;
  private y = 0;

  constructor(machine: StageMachine, element: HTMLElement) {
    this.machine = machine;
    this.element = element;
  }

  at(x: number, y: number): void {
    this.x = x;
    this.y = y;
    this.look.ask();
  }

  stop(): void {
    this.look.stop();
  }

  private lookNow(): void {
    const { machine } = this;
    const item = machine.hit(this.x, this.y, POINTER_SLOP_PX);
    if (item?.key !== machine.hotState.hovered?.key) machine.setHot({ hovered: item });
    this.element.style.cursor = item === null ? '' : machine.show.may('hang') ? 'grab' : 'pointer';
  }
}
