/** The hand on the stage: press selects, a drag from a thing carries it, from bare ground it moves the view. */

import type { PieceId } from '@enfilade/shared/schema';
import { choose, selection } from '../selection.ts';
import type { Doing } from './doing.ts';
import { DragSession } from './drag-session.ts';
import { Fingers } from './fingers.ts';
import { OncePerFrame } from './frames.ts';
import { Hover, POINTER_SLOP_PX } from './hover.ts';
import { chooseCaught, choosePressed, chooseWhole, drawMarquee } from './press.ts';
import type { StageMachine } from './stage-machine.ts';
import { turnWheel } from './wheel.ts';

/** A press that moves less is a press, not a drag (CSS px). */
const MOUSE_SLACK_PX = 4;
const FINGER_SLACK_PX = 9;

export class Gestures {
  private readonly machine: StageMachine;
  private readonly element: HTMLElement;
  private readonly fingers = new Fingers();
  private readonly hover: Hover;
  private doing: Doing | null = null;
  private last = { x: 0, y: 0, freely: false };
  private readonly carry = new OncePerFrame(() => this.carryOn());
  private readonly ways: (() => void)[] = [];

  constructor(machine: StageMachine, element: HTMLElement) {
    this.machine = machine;
    this.element = element;
    this.hover = new Hover(machine, element);
    const on = <K extends keyof HTMLElementEventMap>(
      type: K,
      listener: (event: HTMLElementEventMap[K]) => void,
      options?: AddEventListenerOptions,
    ) => {
      element.addEventListener(type, listener, options);
      this.ways.push(() => element.removeEventListener(type, listener, options));
    };
    on('pointerdown', (event) => this.down(event));
    on('pointermove', (event) => this.move(event));
    on('pointerup', (event) => this.up(event));
    on('pointercancel', (event) => this.lost(event));
    on('pointerleave', () => this.machine.setHot({ hovered: null }));
    on('dblclick', (event) => chooseWhole(machine, this.at(event)));
    on('wheel', (event) => this.wheel(event), { passive: false });
  }

  stop(): void {
    this.cancel();
    this.carry.stop();
    this.hover.stop();
    for (const leave of this.ways) leave();
  }

  /** Gives up what the hand is doing; true when it was doing something. */
  cancel(): boolean {
    const was = this.doing;
    this.doing = null;
    if (was?.kind === 'carry') was.session.cancel();
    this.machine.setHot({ marquee: null });
    return was !== null && was.kind !== 'press';
  }

  /** The stage takes over what was carried in from the rail. */
  takeOver(pieceIds: readonly PieceId[], x: number, y: number): void {
    this.cancel();
    const session = new DragSession(this.machine, pieceIds, null, x, y);
    this.doing = { kind: 'carry', session };
    this.last = { x, y, freely: false };
    this.carry.ask();
  }

  carryTo(x: number, y: number, freely: boolean): void {
    this.last = { x, y, freely };
    this.carry.ask();
  }

  /** Lets go of what is carried. True when it was placed. */
  letGo(): boolean {
    if (this.doing?.kind !== 'carry') return false;
    this.carry.flush();
    const { session } = this.doing;
    this.doing = null;
    return session.drop();
  }

  private at(event: MouseEvent): { x: number; y: number } {
    const box = this.element.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }

  private down(event: PointerEvent): void {
    const { x, y } = this.at(event);
    if (event.pointerType === 'touch') {
      this.fingers.put(event.pointerId, x, y);
      if (this.fingers.count === 2) {
        this.cancel();
        this.doing = { kind: 'pinch' };
        return;
      }
    }
    if (this.doing !== null) return;
    this.element.setPointerCapture(event.pointerId);
    this.last = { x, y, freely: event.altKey };
    if (event.button === 1) {
      event.preventDefault();
      this.doing = { kind: 'pan' };
      return;
    }
    if (event.button !== 0) return;
    const item = this.machine.hit(x, y, event.pointerType === 'touch' ? 10 : POINTER_SLOP_PX);
    this.doing = { kind: 'press', item, shift: event.shiftKey, x, y };
    if (item !== null && !event.shiftKey && !selection.get().includes(item.pieceId)) choose([item.pieceId]);
  }

  private move(event: PointerEvent): void {
    const { x, y } = this.at(event);
    if (this.fingers.has(event.pointerId)) {
      const step = this.fingers.put(event.pointerId, x, y);
      if (this.doing?.kind === 'pinch') {
        // Two fingers move and scale at once, about the point between them.
        if (this.fingers.count < 2) return;
        this.machine.pan(step.dx, step.dy);
        this.machine.zoom(step.factor, step.x, step.y);
        return;
      }
    }
    const { doing } = this;
    if (doing === null) {
      if (event.pointerType !== 'touch') this.hover.at(x, y);
      return;
    }
    const from = this.last;
    this.last = { x, y, freely: event.altKey };
    if (doing.kind === 'press') this.startMoving(doing, x, y, event.pointerType === 'touch');
    else if (doing.kind === 'pan') this.machine.pan(x - from.x, y - from.y);
    else if (doing.kind === 'carry') this.carry.ask();
    else if (doing.kind === 'catch') drawMarquee(this.machine, doing, x, y);
  }

  private startMoving(press: Extract<Doing, { kind: 'press' }>, x: number, y: number, finger: boolean): void {
    const slack = finger ? FINGER_SLACK_PX : MOUSE_SLACK_PX;
    if (Math.hypot(x - press.x, y - press.y) < slack) return;
    const { machine } = this;
    if (press.item !== null && !press.shift && machine.show.may('hang')) {
      const session = new DragSession(machine, selection.get(), press.item, press.x, press.y);
      this.doing = { kind: 'carry', session };
      this.element.style.cursor = 'grabbing';
      this.carry.ask();
    } else if (press.item === null && press.shift) {
      this.doing = { kind: 'catch', x: press.x, y: press.y };
      drawMarquee(machine, this.doing, x, y);
    } else {
      this.doing = { kind: 'pan' };
      machine.pan(x - press.x, y - press.y);
    }
  }

  private carryOn(): void {
    if (this.doing?.kind === 'carry') this.doing.session.move(this.last.x, this.last.y, this.last.freely);
  }

  private up(event: PointerEvent): void {
    const pinching = this.doing?.kind === 'pinch';
    this.fingers.lift(event.pointerId);
    if (pinching) {
      if (this.fingers.count === 0) this.doing = null;
      return;
    }
    const { doing } = this;
    this.element.style.cursor = '';
    if (doing?.kind === 'carry') {
      this.letGo();
      return;
    }
    this.doing = null;
    if (doing?.kind === 'press') choosePressed(doing.item, doing.shift);
    if (doing?.kind === 'catch') {
      const frame = this.machine.hotState.marquee;
      this.machine.setHot({ marquee: null });
      if (frame !== null) chooseCaught(this.machine, frame);
    }
  }

  private lost(event: PointerEvent): void {
    this.fingers.lift(event.pointerId);
    this.element.style.cursor = '';
    this.cancel();
  }

  private wheel(event: WheelEvent): void {
    turnWheel(this.machine, event, this.at(event));
    if (this.doing?.kind === 'carry') this.carry.ask();
  }
}
