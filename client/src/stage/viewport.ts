/** What part of a drawing the window shows: fitted into what caption and card leave free, then moved by a hand. */
import { type Camera, fitted, type Insets, panned, type WindowSize, zoomed } from './camera.ts';
import { WALL_NAME_PX } from './draw-ceiling.ts';
import { FIGURE_LANE_PX, figureReachPx, SCALE_BAR_PX } from './draw-surrounds.ts';
import type { SceneFrame } from './panels.ts';

/** A row of vignettes' brackets beneath a faced wall, CSS px. */
export const BRACKET_ROW_PX = 31;
/** After a zoom the picture is drawn sharp once the hand has rested so long (ms). */
const REST_MS = 140;

export class Viewport {
  camera: Camera = { x: 0, y: 0, scale: 0.1 };
  size: WindowSize = { width: 1, height: 1 };
  insets: Insets = { left: 0, right: 0, top: 0, bottom: 0 };
  /** False while a zoom goes on: what rests may be shown scaled. */
  exact = true;
  /** Whether there is room for the standing figure beside a faced wall. */
  figure = true;
  /** Rows of brackets beneath a faced wall. */
  bracketRows = 0;
  private fittedCamera: Camera | null = null;
  private restTimer = 0;
  private readonly changed: () => void;

  /** `changed` is told of every move, and of the hand coming to rest. */
  constructor(changed: () => void) {
    this.changed = changed;
  }

  stop(): void {
    clearTimeout(this.restTimer);
  }

  /** Nobody has moved it since it was fitted. */
  get untouched(): boolean {
    return this.fittedCamera === null || this.fittedCamera === this.camera;
  }

  /** CSS px a mm at which the whole is seen. */
  get fittedScale(): number {
    return this.fittedCamera?.scale ?? this.camera.scale;
  }

  /** What the brackets take, CSS px. */
  get belowPx(): number {
    return this.bracketRows * BRACKET_ROW_PX;
  }

  fit({ sheet, bounds }: SceneFrame): void {
    // A wide window leaves room for the standing figure between the caption and the wall.
    const names = sheet === 'ceiling' ? WALL_NAME_PX : 0;
    const lane = sheet === 'wall' && this.insets.left >= 200 ? FIGURE_LANE_PX : 0;
    this.camera = fitted(bounds, this.size, {
      left: this.insets.left + lane + names,
      right: this.insets.right + names,
      top: Math.max(this.insets.top, sheet === 'room' ? BRACKET_ROW_PX + 3 : names),
      bottom:
        this.insets.bottom + (sheet === 'wall' ? SCALE_BAR_PX + this.belowPx : names > 0 ? names + SCALE_BAR_PX : 0),
    });
    this.fittedCamera = this.camera;
    this.figure = this.camera.x >= figureReachPx(this.camera.scale);
    this.exact = true;
    this.changed();
  }

  pan(dx: number, dy: number, { bounds }: SceneFrame): void {
    this.camera = panned(this.camera, dx, dy, bounds, this.size);
    this.changed();
  }

  zoom(factor: number, atX: number, atY: number): void {
    this.camera = zoomed(this.camera, factor, atX, atY);
    this.exact = false;
    clearTimeout(this.restTimer);
    this.restTimer = window.setTimeout(() => {
      this.exact = true;
      this.changed();
    }, REST_MS);
    this.changed();
  }
}
