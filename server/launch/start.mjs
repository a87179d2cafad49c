// `npm start`: installs what is missing, builds what has changed, serves one address.
// `npm run demo` is the same with a data folder of its own; `-- --large` fills it with 3,000 records.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { build, install, ROOT, requireNode } from './ready.mjs';

requireNode();
install();
build();

const given = process.argv.slice(2);
const args = given.filter((word) => word !== '--demo');
if (given.includes('--demo') && !args.some((word) => word.startsWith('--data'))) {
  args.push('--data', join(ROOT, 'data', args.includes('--large') ? 'demo-large' : 'demo'));
}
const server = spawn(process.execPath, ['--enable-source-maps', join(ROOT, 'server', 'dist', 'main.mjs'), ...args], {
  cwd: ROOT,
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
server.on('exit', (code) => process.exit(code ?? 0));
