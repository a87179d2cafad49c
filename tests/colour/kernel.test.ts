import { readFileSync } from 'node:fs';
import { KERNEL_HEX } from '@enfilade/colour/kernel-bytes';
import { describe, expect, test, vi } from 'vitest';
// @ts-expect-error a script of the build, in plain JavaScript
import { compiledKernel, toModuleText } from '../../packages/colour/kernel/build.mjs';

describe('the committed kernel', () => {
  test('law: is what its source compiles to now, byte for byte', { timeout: 120_000 }, async () => {
    const bytes: Uint8Array = await compiledKernel();
    expect(Buffer.from(bytes).toString('hex')).toBe(KERNEL_HEX);
    const committed = readFileSync(new URL('../../packages/colour/src/kernel-bytes.ts', import.meta.url), 'utf8');
    expect(committed).toBe(toModuleText(bytes));
  });

  test('law: without WebAssembly, or where it is refused, there is no kernel and every figure still comes', async () => {
    const refusals = [
      () => vi.spyOn(WebAssembly, 'validate').mockReturnValue(false),
      () =>
        vi.spyOn(WebAssembly, 'Module').mockImplementation(function refusedModule() {
          throw new WebAssembly.CompileError('refused by the policy');
        }),
    ];
    for (const refuse of refusals) {
      vi.resetModules();
      const refused = refuse();
      try {
        const { kernelOf } = await import('@enfilade/colour/kernel');
        const { differences } = await import('@enfilade/colour/differences');
        const { differenceTable, packedWorksOf } = await import('@enfilade/colour/rank-table');
        expect(kernelOf()).toBeNull();
        const many = new Float64Array(300).fill(50);
        expect([...differences(many, { L: 50, a: 50, b: 50 })]).toEqual(new Array(100).fill(0));
        const packed = packedWorksOf([[{ lab: { L: 50, a: 2.5, b: 0 }, share: 1 }]]);
        // Sharma 2005, pair 17.
        expect(differenceTable([{ L: 73, a: 25, b: -18 }], packed, {}).mean[0]).toBeCloseTo(27.1492, 4);
      } finally {
        refused.mockRestore();
        vi.resetModules();
      }
    }
  });
});
