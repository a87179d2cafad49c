/** `npm start` when everything is installed, built and filled: wall-clock seconds to its links; against the first. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const name = 'second-start';

/** Seconds until the start says it is ready; then it is stopped. */
function secondsToReady(data: string): Promise<number> {
  const began = performance.now();
  return new Promise((done, fail) => {
    const child = spawn('npm', ['start', '--silent', '--', '--port', '0', '--data', data], { detached: true });
    let printed = '';
    child.stdout.on('data', (part: Buffer) => {
      printed += part.toString();
      if (!/^ready$/m.test(printed)) return;
      const seconds = (performance.now() - began) / 1000;
      child.removeAllListeners('exit');
      child.once('exit', () => done(seconds));
      // The whole group: npm does not pass a signal on.
      process.kill(-(child.pid as number), 'SIGTERM');
    });
    child.once('exit', (code) => fail(new Error(`npm start ended with ${code}:\n${printed}`)));
  });
}

export async function run(): Promise<
  { row: string; ours: number; peer: number; ratio: number; unit: string; gate?: string }[]
> {
  const data = mkdtempSync(join(tmpdir(), 'enfilade-start-'));
  try {
    const first = await secondsToReady(data);
    const second = await secondsToReady(data);
    const third = await secondsToReady(data);
    return [
      {
        row: 'second start, demo in place',
        ours: second,
        peer: first,
        ratio: first / second,
        unit: 's',
        gate: 'about 5 s',
      },
      {
        row: 'null: a third start against the second',
        ours: third,
        peer: second,
        ratio: second / third,
        unit: 's',
        gate: 'about 1',
      },
    ];
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
}
