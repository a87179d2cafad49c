/** Work done at most once a frame, and none while nothing asks for it. */
export interface FrameClock {
  request(callback: () => void): number;
  cancel(handle: number): void;
}

export const WINDOW_FRAMES: FrameClock = {
  request: (callback) => requestAnimationFrame(callback),
  cancel: (handle) => cancelAnimationFrame(handle),
};

export class OncePerFrame {
  private readonly clock: FrameClock;
  private readonly work: () => void;
  private handle: number | null = null;

  constructor(work: () => void, clock: FrameClock = WINDOW_FRAMES) {
    this.work = work;
    this.clock = clock;
  }

  get waiting(): boolean {
    return this.handle !== null;
  }

  /** However often it is asked in a frame, the work is done once, at the next. */
  ask(): void {
    this.handle ??= this.clock.request(() => {
      this.handle = null;
      this.work();
    });
  }

  /** Does what waits now, if anything does. */
  flush(): void {
    if (this.handle === null) return;
    this.clock.cancel(this.handle);
    this.handle = null;
    this.work();
  }

  stop(): void {
    if (this.handle !== null) this.clock.cancel(this.handle);
    this.handle = null;
  }
}
