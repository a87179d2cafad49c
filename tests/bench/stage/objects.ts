/** The 3,000 things both pages draw: on a wall of 24 × 13.5 m, sides of 200 to 900 mm, seeded. */

const COUNT = 3000;
/** Distinct pictures, each decoded on its own; their files repeat. */
export const PICTURES = 2200;
export const FILES = 220;
export const WALL = { widthMm: 24_000, heightMm: 13_500 } as const;
export const WINDOW = { width: 1600, height: 900 } as const;

export interface BenchObject {
  readonly id: string;
  readonly picture: number;
  /** Centre from the wall's left lower corner. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Pixels of the picture with this number: longest side 256. */
export function pictureSizeOf(picture: number): { readonly width: number; readonly height: number } {
  const file = picture % FILES;
  const short = 120 + ((file * 37) % 136);
  return file % 2 === 0 ? { width: 256, height: short } : { width: short, height: 256 };
}

export function benchObjects(count = COUNT): BenchObject[] {
  let state = 7;
  const random = (): number => {
    // Park and Miller's minimal standard generator.
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return Array.from({ length: count }, (_, i) => {
    const picture = i % PICTURES;
    const { width, height } = pictureSizeOf(picture);
    const k = (200 + random() * 700) / Math.max(width, height);
    return {
      id: `o${i}`,
      picture,
      xMm: Math.round(450 + random() * (WALL.widthMm - 900)),
      yMm: Math.round(450 + random() * (WALL.heightMm - 900)),
      widthMm: Math.round(width * k),
      heightMm: Math.round(height * k),
    };
  });
}

/** Where the n-th message from another seat puts a thing: every one in its turn, never far from where it was. */
export function remoteMove(objects: readonly BenchObject[], n: number) {
  const index = (n * 7919) % objects.length;
  const { id, xMm, yMm } = objects[index] as BenchObject;
  return { index, id, xMm: xMm + Math.round(Math.sin(n) * 100), yMm: yMm + Math.round(Math.cos(n) * 100) };
}

/** Messages made before the clock runs: five seconds' worth and some. */
export const MESSAGES = 1100;

/** What a page offers to be measured by. All lengths in CSS px and mm. */
interface BenchPage {
  readonly ready: Promise<void>;
  /** Everything in view, or a stretch of about 6 m. */
  look(at: 'all' | 'wall'): void;
  pan(dx: number, dy: number): void;
  dragStart(): void;
  dragTo(step: number): void;
  dragEnd(): void;
  /** The n-th message from another seat arrives: an encoded Yjs update of one thing's place. */
  remote(n: number): void;
  /** Frames drawn since the page opened. */
  drawn(): number;
}

declare global {
  interface Window {
    bench?: BenchPage;
  }
}
