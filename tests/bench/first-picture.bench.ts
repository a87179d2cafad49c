/** A show of 3,000 records opened cold from a server on this machine: seconds to true-size rectangles, then to pictures. */
import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { furtherPlaces, furtherRecords } from '@enfilade/server/demo/large';
import { chromium } from '@playwright/test';

export const name = 'first-picture';

interface Probe {
  frames(): number;
  screenRectOf(id: string): unknown;
  pictureLevelOf(id: string): number | null;
}

const ARGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'];
const TIMES = 3;

async function openedCold(link: string, pieceId: string): Promise<{ placeholders: number; atlas: number }> {
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ARGS });
  try {
    const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
    // The seat's cookie, and nothing else, is there before: the page itself is not loaded yet.
    const seat = await page.request.get(link, { maxRedirects: 0 });
    const at = new URL(seat.headers().location ?? '/', link).href;
    const began = performance.now();
    const seconds = (): number => (performance.now() - began) / 1000;
    await page.goto(`${at}?probe#layout`, { waitUntil: 'commit' });
    const probe = (what: 'drawn' | 'pictured'): Promise<unknown> =>
      page.waitForFunction(
        ([id, wanted]) => {
          const stage = (window as unknown as { enfiladeProbe?: Probe }).enfiladeProbe;
          if (stage === undefined || stage.frames() === 0 || stage.screenRectOf(id as string) === null) return false;
          return wanted === 'drawn' || stage.pictureLevelOf(id as string) !== null;
        },
        [pieceId, what],
        { polling: 20 },
      );
    await probe('drawn');
    const placeholders = seconds();
    await probe('pictured');
    return { placeholders, atlas: seconds() };
  } finally {
    await browser.close();
  }
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

export async function run(): Promise<
  { row: string; ours: number; peer: number; ratio: number; unit: string; gate?: string }[]
> {
  const data = mkdtempSync(join(tmpdir(), 'enfilade-large-'));
  const server = spawn(process.execPath, ['server/dist/main.mjs', '--large', '--port', '0', '--data', data]);
  try {
    let printed = '';
    await new Promise<void>((done, fail) => {
      server.stdout.on('data', (part: Buffer) => {
        printed += part.toString();
        if (/^ready$/m.test(printed)) done();
      });
      server.once('exit', (code) => fail(new Error(`the server ended with ${code}`)));
    });
    const link = /curator.*?(http:\S+)/.exec(printed)?.[1] ?? '';
    const last = [...furtherPlaces(furtherRecords()).keys()].at(-1) ?? '';
    const opened: { placeholders: number; atlas: number }[] = [];
    for (let n = 0; n < TIMES; n++) opened.push(await openedCold(link, last));
    const assets = join('client', 'dist', 'assets');
    const shell = readdirSync(assets)
      .filter((file) => /^index-.*\.(js|css)$/.test(file))
      .reduce((sum, file) => sum + gzipSync(readFileSync(join(assets, file))).length / 1024, 0);
    // No peer opens this show: the row is a time, its ratio that to the gate.
    const row = (what: string, ours: number, gate: number, unit: string): (typeof rows)[number] => ({
      row: what,
      ours,
      peer: gate,
      ratio: gate / ours,
      unit,
      gate: `≤ ${gate} ${unit}`,
    });
    const rows: { row: string; ours: number; peer: number; ratio: number; unit: string; gate?: string }[] = [];
    rows.push(
      row('3,000 records cold: true-size rectangles', median(opened.map(({ placeholders }) => placeholders)), 1.5, 's'),
    );
    rows.push(row('3,000 records cold: atlas pictures', median(opened.map(({ atlas }) => atlas)), 3, 's'));
    rows.push(row('shell, gzip', shell, 240, 'KB'));
    return rows;
  } finally {
    server.removeAllListeners('exit');
    server.kill('SIGTERM');
    await new Promise((done) => server.once('exit', done));
    rmSync(data, { recursive: true, force: true });
  }
}
