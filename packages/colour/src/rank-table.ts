import { differenceBetween } from './differences.ts';
import { DATA_FROM, type Kernel, kernelOf, reserve } from './kernel.ts';
import type { LabD65 } from './lab.ts';
import { WITHIN } from './measures.ts';
import type { Swatch } from './palette.ts';

/** Palettes laid out for the kernel: planes of L, a, b, C and share, each swatch after swatch of `stride` works. */
export interface PackedWorks {
  readonly works: number;
  readonly swatches: number;
  /** Works, rounded up to whole vectors. */
  readonly stride: number;
  readonly planes: Float32Array;
}

/** ΔE00 of every paint to every work, in f32 for ranking: rows of `works`, one a paint. */
export interface DifferenceTable {
  readonly paints: number;
  readonly works: number;
  /** Area-weighted mean over the work's swatches. */
  readonly mean: Float32Array;
  /** Least over the work's swatches; empty unless asked for. */
  readonly least: Float32Array;
  /** Share, 0..1, of the work within ΔE00 10 of the paint; empty unless asked for. */
  readonly within10: Float32Array;
}

/** What a table holds beside the mean: a large one is mostly memory. */
export interface TableParts {
  readonly least?: boolean;
  readonly within10?: boolean;
}

const LANES = 4;
// Paints a call: results of so many rows stay in the cache until they are copied out.
const BLOCK = 8;

/** Palettes, CIELAB D65, packed once for many tables; shares are made to add up to 1. RangeError for an empty palette. */
export function packedWorksOf(palettes: readonly (readonly Swatch[])[]): PackedWorks {
  const works = palettes.length;
  const stride = Math.ceil(works / LANES) * LANES;
  const swatches = palettes.reduce((most, { length }) => Math.max(most, length), 0);
  const plane = swatches * stride;
  const planes = new Float32Array(plane * 5);
  palettes.forEach((palette, work) => {
    if (palette.length === 0) throw new RangeError(`packedWorksOf: palette ${work} has 0 swatches, needs at least 1`);
    const total = palette.reduce((sum, { share }) => sum + share, 0);
    for (let j = 0; j < swatches; j++) {
      // A palette of fewer swatches says its first again, with no area: neither mean nor least heeds it.
      const { lab, share } = palette[j] ?? { lab: palette[0]!.lab, share: 0 };
      const at = j * stride + work;
      planes[at] = lab.L;
      planes[plane + at] = lab.a;
      planes[2 * plane + at] = lab.b;
      planes[3 * plane + at] = Math.hypot(lab.a, lab.b);
      planes[4 * plane + at] = share / total;
    }
  });
  return { works, swatches, stride, planes };
}

/** Every work's swatches against every paint (CIELAB D65), with the parts asked for: on vectors where there are any. */
export function differenceTable(paints: readonly LabD65[], packed: PackedWorks, parts: TableParts): DifferenceTable {
  const kernel = kernelOf();
  return kernel ? tableInVectors(kernel, paints, packed, parts) : tableInOneLane(paints, packed, parts);
}

function emptyTable(paints: number, works: number, { least = false, within10 = false }: TableParts): DifferenceTable {
  const size = paints * works;
  return {
    paints,
    works,
    mean: new Float32Array(size),
    least: new Float32Array(least ? size : 0),
    within10: new Float32Array(within10 ? size : 0),
  };
}

function tableInVectors(
  kernel: Kernel,
  paints: readonly LabD65[],
  packed: PackedWorks,
  parts: TableParts,
): DifferenceTable {
  const { works, swatches, stride, planes } = packed;
  const table = emptyTable(paints.length, works, parts);
  if (works === 0) return table;
  const rows = BLOCK * stride;
  const size = planes.length + BLOCK * 4 + 3 * rows;
  reserve(kernel, size * 4);
  const heap = new Float32Array(kernel.memory.buffer, DATA_FROM, size);
  heap.set(planes);
  const paintsAt = planes.length;
  const meanAt = paintsAt + BLOCK * 4;
  const address = (index: number): number => DATA_FROM + index * 4;
  for (let from = 0; from < paints.length; from += BLOCK) {
    const count = Math.min(BLOCK, paints.length - from);
    for (let p = 0; p < count; p++) {
      const { L, a, b } = paints[from + p]!;
      heap.set([L, a, b, Math.hypot(a, b)], paintsAt + p * 4);
    }
    const [leastAt, withinAt] = [meanAt + rows, meanAt + 2 * rows];
    kernel.rowsF32(
      address(paintsAt),
      count,
      address(0),
      swatches,
      stride,
      WITHIN,
      address(meanAt),
      address(leastAt),
      address(withinAt),
    );
    for (let p = 0; p < count; p++) {
      const into = (from + p) * works;
      const row = p * stride;
      table.mean.set(heap.subarray(meanAt + row, meanAt + row + works), into);
      if (parts.least) table.least.set(heap.subarray(leastAt + row, leastAt + row + works), into);
      if (parts.within10) table.within10.set(heap.subarray(withinAt + row, withinAt + row + works), into);
    }
  }
  return table;
}

/** The same without vectors, in f64 until it is stored. */
export function tableInOneLane(paints: readonly LabD65[], packed: PackedWorks, parts: TableParts): DifferenceTable {
  const { works, swatches, stride, planes } = packed;
  const plane = swatches * stride;
  const table = emptyTable(paints.length, works, parts);
  paints.forEach(({ L, a, b }, p) => {
    const C = Math.sqrt(a * a + b * b);
    for (let work = 0; work < works; work++) {
      let mean = 0;
      let least = Number.POSITIVE_INFINITY;
      let within = 0;
      for (let j = 0, at = work; j < swatches; j++, at += stride) {
        const d = differenceBetween(
          L,
          a,
          b,
          C,
          planes[at]!,
          planes[plane + at]!,
          planes[2 * plane + at]!,
          planes[3 * plane + at]!,
        );
        const share = planes[4 * plane + at]!;
        mean += d * share;
        if (d < least) least = d;
        if (d < WITHIN) within += share;
      }
      const into = p * works + work;
      table.mean[into] = mean;
      if (parts.least) table.least[into] = least;
      if (parts.within10) table.within10[into] = within;
    }
  });
  return table;
}
