/** The fingers that lie on the stage, and what two of them do together. */

interface Step {
  /** How far the point between them went. */
  readonly dx: number;
  readonly dy: number;
  /** How much farther apart they are, as a factor. */
  readonly factor: number;
  /** The point between them. */
  readonly x: number;
  readonly y: number;
}

export class Fingers {
  private readonly down = new Map<number, { readonly x: number; readonly y: number }>();

  get count(): number {
    return this.down.size;
  }

  has(pointerId: number): boolean {
    return this.down.has(pointerId);
  }

  /** A finger is here now; what that does to what lies under them all. */
  put(pointerId: number, x: number, y: number): Step {
    const before = this.middle();
    const wasApart = this.apart();
    this.down.set(pointerId, { x, y });
    const after = this.middle();
    return { dx: after.x - before.x, dy: after.y - before.y, factor: this.apart() / wasApart, x: after.x, y: after.y };
  }

  lift(pointerId: number): void {
    this.down.delete(pointerId);
  }

  private apart(): number {
    const [a, b] = [...this.down.values()];
    return a === undefined || b === undefined ? 1 : Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));
  }

  private middle(): { readonly x: number; readonly y: number } {
    const all = [...this.down.values()];
    return {
      x: all.reduce((sum, finger) => sum + finger.x, 0) / all.length,
      y: all.reduce((sum, finger) => sum + finger.y, 0) / all.length,
    };
  }
}
