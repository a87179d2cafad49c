// Compiles ciede2000.ts (AssemblyScript) and lays the module's bytes into src/kernel-bytes.ts as text. That file is
// committed, so that types, lint, tests and bundles need no step before them; the build makes it again when the source
// has changed, and a test holds it to the source by making it anew and comparing.
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const source = join(folder, 'ciede2000.ts');
const into = join(folder, '..', 'src', 'kernel-bytes.ts');

/** The module's bytes, compiled now; an Error with the compiler's words when it does not compile. */
export async function compiledKernel() {
  const { default: asc } = await import('assemblyscript/asc');
  let bytes = null;
  const { error, stderr } = await asc.main(
    [
      'ciede2000.ts',
      ...['--outFile', 'ciede2000.wasm', '--runtime', 'stub', '--enable', 'simd'],
      ...[
        '--optimizeLevel',
        '3',
        '--shrinkLevel',
        '0',
        '--converge',
        '--noAssert',
        '--use',
        'abort=',
        '--initialMemory',
        '1',
      ],
    ],
    {
      readFile: (name) => (name === 'ciede2000.ts' ? readFileSync(source, 'utf8') : null),
      writeFile: (name, contents) => {
        if (name === 'ciede2000.wasm') bytes = contents;
      },
      listFiles: () => [],
    },
  );
  if (error || bytes === null) throw new Error(`kernel/ciede2000.ts does not compile: ${stderr.toString()}`);
  return bytes;
}

/** The text of src/kernel-bytes.ts for these bytes. */
export function toModuleText(bytes) {
  const hex = Buffer.from(bytes).toString('hex');
  return `// Made by kernel/build.mjs from kernel/ciede2000.ts; not to be edited.

/** The difference kernel as a WebAssembly module, in hexadecimal. */
export const KERNEL_HEX =
  '${hex}';
`;
}

if (argv[1] && import.meta.url === pathToFileURL(argv[1]).href) {
  const text = toModuleText(await compiledKernel());
  let known = '';
  try {
    known = readFileSync(into, 'utf8');
  } catch {
    // Not made yet.
  }
  // Left alone when nothing changed, so that what is built from it stays as new as it is.
  if (known !== text) writeFileSync(into, text);
}
