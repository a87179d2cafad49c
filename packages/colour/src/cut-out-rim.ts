import { type LabPlanes, lengthOf } from './cut-out-backdrop.ts';

/** Takes away islands of the mask under a fiftieth of the largest: dust, a scale's tick, a shadow's dark core. */
export function withoutSpecks(mask: Uint8Array, width: number, height: number): void {
  const label = new Int32Array(mask.length);
  const sizes: number[] = [0];
  const stack: number[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] === 0 || label[start] !== 0) continue;
    const mine = sizes.length;
    let size = 0;
    label[start] = mine;
    stack.push(start);
    while (stack.length > 0) {
      const i = stack.pop()!;
      size++;
      const x = i % width;
      for (const next of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width]) {
        if (next < 0 || next >= width * height || mask[next] === 0 || label[next] !== 0) continue;
        label[next] = mine;
        stack.push(next);
      }
    }
    sizes.push(size);
  }
  const largest = Math.max(...sizes);
  for (let i = 0; i < mask.length; i++) if (mask[i] !== 0 && sizes[label[i]!]! < largest / 50) mask[i] = 0;
}

const RIM_PASSES = 2;
const OUTWARD = 3;
const INWARD = 2;

/**
 * Takes rim pixels that are more ground than thing out of the mask: those nearer to the ground about them, as it is
 * there in light or shadow, than half the way to what of the thing stands off most close by.
 */
export function trimmed(mask: Uint8Array, { width, height, L, a, b }: LabPlanes): void {
  const offOf = (i: number, ground: Float64Array): number =>
    lengthOf(L[i]! - ground[0]!, a[i]! - ground[1]!, b[i]! - ground[2]!);
  const about = (i: number, reach: number, wanted: (at: number) => boolean, visit: (at: number) => void): void => {
    const x = i % width;
    const y = (i - x) / width;
    for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
      for (let u = Math.max(0, x - reach); u <= Math.min(width - 1, x + reach); u++) {
        if (wanted(v * width + u)) visit(v * width + u);
      }
    }
  };
  const ground = new Float64Array(3);
  for (let pass = 0; pass < RIM_PASSES; pass++) {
    const before = mask.slice();
    for (let i = width + 1; i < mask.length - width - 1; i++) {
      if (before[i] === 0) continue;
      if (before[i - 1] !== 0 && before[i + 1] !== 0 && before[i - width] !== 0 && before[i + width] !== 0) continue;
      let n = 0;
      ground.fill(0);
      about(
        i,
        OUTWARD,
        (at) => before[at] === 0,
        (at) => {
          n++;
          ground[0]! += L[at]!;
          ground[1]! += a[at]!;
          ground[2]! += b[at]!;
        },
      );
      for (let side = 0; side < 3; side++) ground[side]! /= n;
      let most = 0;
      about(
        i,
        INWARD,
        (at) => before[at] !== 0,
        (at) => {
          most = Math.max(most, offOf(at, ground));
        },
      );
      if (offOf(i, ground) < most / 2) mask[i] = 0;
    }
  }
}
