import { KERNEL_HEX } from '@enfilade/colour/kernel-bytes';
import { expect, test } from './museum.ts';

test('law: what a page may do includes the difference kernel, and still no script from a text', async ({
  museum,
  browser,
}) => {
  const { page, context } = await museum.enter(browser, 'curator');
  const [kernel, text] = await page.evaluate(async (hex) => {
    // Later, so that it is the page's own doing: what a test evaluates is let past the policy.
    await new Promise((later) => setTimeout(later, 0));
    const bytes = Uint8Array.from(hex.match(/../g) ?? [], (byte) => Number.parseInt(byte, 16));
    const did = (act: () => unknown): string => {
      try {
        return String(act());
      } catch (error) {
        return error instanceof Error ? error.name : 'refused';
      }
    };
    return [
      did(() => Object.keys(new WebAssembly.Instance(new WebAssembly.Module(bytes)).exports).sort()),
      did(() => new Function('return "made"')()),
    ];
  }, KERNEL_HEX);
  expect(kernel).toBe('memory,rowsF32,rowsF64');
  expect(text).toBe('EvalError');
  // The text was refused on purpose; nothing else was.
  museum.breaches.splice(0);
  await context.close();
});
