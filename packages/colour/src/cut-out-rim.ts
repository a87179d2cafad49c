import { type LabPlanes, lengthOf } from './lab-planes.ts';

/** Takes away islands of the mask under a fiftieth of the largest: dust, a scale's tick, a shadow's dark core. */
export function withoutSpecks(mask: Uint8Array, width: number): void {
  const label = new Int32Array(mask.length);
  const sizes: number[] = [0];
  const stack = new Int32Array(mask.length);
  let top = 0;
  const take = (i: number, mine: number): void => {
    if (mask[i] === 0 || label[i] !== 0) return;
    label[i] = mine;
    stack[top++] = i;
  };
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] === 0 || label[start] !== 0) continue;
    const mine = sizes.length;
    let size = 0;
    take(start, mine);
    while (top > 0) {
      const i = stack[--top]!;
      size++;
      const x = i % width;
      if (x > 0) take(i - 1, mine);
      if (x < width - 1) take(i + 1, mine);
      if (i >= width) take(i - width, mine);
      if (i < mask.length - width) take(i + width, mine);
    }
    sizes.push(size);
  }
  const least = sizes.reduce((most, size) => Math.max(most, size)) / 50;
  if (sizes.every((size, which) => which === 0 || size >= least)) return;
  for (let i = 0; i < mask.length; i++) if (mask[i] !== 0 && sizes[label[i]!]! < least) mask[i] = 0;
}

/** Takes away what of the mask lies loose among the pixels `told` (indices), is joined to no others and is as small. */
export function withoutLooseBits(mask: Uint8Array, width: number, told: Int32Array): void {
  const LOOSE = 1;
  const DONE = 2;
  const state = new Uint8Array(mask.length);
  let area = 0;
  for (let i = 0; i < mask.length; i++) area += mask[i]! & 1;
  for (const i of told) if (mask[i] !== 0) state[i] = LOOSE;
  const bit = new Int32Array(told.length);
  let size = 0;
  let held = false;
  const take = (i: number): void => {
    if (mask[i] === 0 || state[i] === DONE) return;
    if (state[i] !== LOOSE) {
      held = true;
      return;
    }
    state[i] = DONE;
    bit[size++] = i;
  };
  for (const start of told) {
    if (state[start] !== LOOSE) continue;
    size = 0;
    held = false;
    take(start);
    for (let n = 0; n < size; n++) {
      const i = bit[n]!;
      const x = i % width;
      if (x > 0) take(i - 1);
      if (x < width - 1) take(i + 1);
      if (i >= width) take(i - width);
      if (i < mask.length - width) take(i + width);
    }
    if (!held && size < area / 50) for (let n = 0; n < size; n++) mask[bit[n]!] = 0;
  }
}

const RIM_PASSES = 2;
const OUTWARD = 3;
const INWARD = 2;

/**
 * Takes rim pixels that are more ground than thing out of the mask: those nearer to the ground about them, as it is
 * there in light or shadow, than half the way to what of the thing stands off most close by. `among`: the pixels
 * (indices) that may be taken; any unless given.
 */
export function trimmed(mask: Uint8Array, planes: LabPlanes, among?: Int32Array): void {
  const { width } = planes;
  const isRim = (before: Uint8Array, i: number): boolean =>
    before[i] !== 0 &&
    i > width &&
    i < before.length - width - 1 &&
    (before[i - 1] === 0 || before[i + 1] === 0 || before[i - width] === 0 || before[i + width] === 0);
  for (let pass = 0; pass < RIM_PASSES; pass++) {
    const before = mask.slice();
    const count = among?.length ?? mask.length;
    for (let n = 0; n < count; n++) {
      const i = among === undefined ? n : among[n]!;
      if (isRim(before, i) && isMoreGround(i, before, planes)) mask[i] = 0;
    }
  }
}

function isMoreGround(i: number, mask: Uint8Array, { width, height, L, a, b }: LabPlanes): boolean {
  const x = i % width;
  const y = (i - x) / width;
  // No closure may hold these while they grow: each sum would be a thing of its own on the heap.
  let n = 0;
  let sumL = 0;
  let sumA = 0;
  let sumB = 0;
  for (let v = Math.max(0, y - OUTWARD); v <= Math.min(height - 1, y + OUTWARD); v++) {
    const end = v * width + Math.min(width - 1, x + OUTWARD);
    for (let at = v * width + Math.max(0, x - OUTWARD); at <= end; at++) {
      if (mask[at] !== 0) continue;
      n++;
      sumL += L[at]!;
      sumA += a[at]!;
      sumB += b[at]!;
    }
  }
  const gL = sumL / n;
  const ga = sumA / n;
  const gb = sumB / n;
  const off = 2 * lengthOf(L[i]! - gL, a[i]! - ga, b[i]! - gb);
  for (let v = Math.max(0, y - INWARD); v <= Math.min(height - 1, y + INWARD); v++) {
    const end = v * width + Math.min(width - 1, x + INWARD);
    for (let at = v * width + Math.max(0, x - INWARD); at <= end; at++) {
      if (mask[at] !== 0 && lengthOf(L[at]! - gL, a[at]! - ga, b[at]! - gb) > off) return true;
    }
  }
  return false;
}
