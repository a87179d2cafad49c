import { KERNEL_HEX } from './kernel-bytes.ts';

type Rows = (
  paints: number,
  paintCount: number,
  works: number,
  swatches: number,
  stride: number,
  near: number,
  mean: number,
  least: number,
  within: number,
) => void;

/** The exports of kernel/ciede2000.ts; addresses and counts as that file says. */
export interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer; grow(pages: number): number };
  readonly rowsF32: Rows;
  readonly rowsF64: Rows;
}

// WebAssembly belongs to neither DOM nor Node, but TypeScript keeps its types with the DOM's: these are what is used.
declare const WebAssembly: {
  validate(bytes: Uint8Array): boolean;
  Module: new (bytes: Uint8Array) => object;
  Instance: new (module: object) => { readonly exports: object };
};

const PAGE = 65_536;
/** Where callers' data may begin: the first page is the module's own. */
export const DATA_FROM = PAGE;

let known: Kernel | null | undefined;

/** The difference kernel, or null where WebAssembly or its vectors are missing or forbidden (an old engine, a strict policy). */
export function kernelOf(): Kernel | null {
  if (known === undefined) known = instantiated();
  return known;
}

function instantiated(): Kernel | null {
  try {
    const bytes = Uint8Array.from(KERNEL_HEX.match(/../g) ?? [], (byte) => Number.parseInt(byte, 16));
    // A module with vectors in it does not validate where they are not known.
    if (!WebAssembly.validate(bytes)) return null;
    return new WebAssembly.Instance(new WebAssembly.Module(bytes)).exports as Kernel;
  } catch {
    // No WebAssembly at all, or one that may not compile.
    return null;
  }
}

/** Grows the kernel's memory until `bytes` from DATA_FROM on are there; views made before are then void. */
export function reserve(kernel: Kernel, bytes: number): void {
  const lacking = DATA_FROM + bytes - kernel.memory.buffer.byteLength;
  if (lacking > 0) kernel.memory.grow(Math.ceil(lacking / PAGE));
}
