/**
 * The stage with 3,000 things in Chromium's software rendering, against a naive react-konva page with one Image per
 * object. CPU of all of the browser's processes a drawn frame (SystemInfo.getProcessInfo), in one run on one seed.
 * A display shows at most 60 frames a second, and the stage reaches them: how much faster it is than the peer shows
 * only where the browser may draw as often as it can, so frames a second are compared there, and told for a display too.
 */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { ATLAS_CELL_PX, ATLAS_CELLS, ATLAS_COLUMNS } from '@enfilade/shared/protocol';
import { type Browser, type CDPSession, chromium, type Page } from '@playwright/test';
import { build } from 'esbuild';
import sharp from 'sharp';
import { FILES, PICTURES, pictureSizeOf, WINDOW } from './stage/objects.ts';

export const name = 'stage, 3,000 objects, software rendering';

interface Row {
  readonly row: string;
  readonly ours: number;
  readonly peer: number;
  readonly ratio: number;
  readonly unit: string;
  readonly gate?: string;
}

type Job = 'pan over all' | 'pan at a wall' | 'drag' | 'remote';

const FRAMES = 120;
const MOST_MS = 9000;
const REMOTE_PER_S = 200;
const UNHELD_ROUNDS = 2;

export async function run(): Promise<Row[]> {
  const server = await serve();
  const browser = await launched();
  const unheld = await launched('--disable-frame-rate-limit', '--disable-gpu-vsync');
  try {
    const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const ours = await measured(browser, `${origin}/ours?probe`, ['pan over all', 'pan at a wall', 'drag', 'remote']);
    const peer = await measured(browser, `${origin}/peer`, ['pan over all', 'pan at a wall', 'drag', 'remote']);
    // In turns, so that a busy machine is busy for both.
    const [oursUnheld, peerUnheld] = [[], []] as [Jobs[], Jobs[]];
    for (let round = 0; round < UNHELD_ROUNDS; round++) {
      oursUnheld.push(await measured(unheld, `${origin}/ours?probe`, ['remote']));
      peerUnheld.push(await measured(unheld, `${origin}/peer`, ['remote']));
    }
    const again = await measured(browser, `${origin}/peer`, ['pan over all']);
    const cpu = (row: Job, gate: string): Row => {
      const [mine, its] = [ours.get(row)?.cpuMs ?? Number.NaN, peer.get(row)?.cpuMs ?? Number.NaN];
      return { row: `${row}, CPU a drawn frame`, ours: mine, peer: its, ratio: its / mine, unit: 'ms', gate };
    };
    const fps = (row: string, mine: readonly Jobs[], its: readonly Jobs[], gate?: string): Row => {
      const mean = (rounds: readonly Jobs[]) =>
        rounds.reduce((sum, jobs) => sum + (jobs.get('remote')?.fps ?? Number.NaN), 0) / rounds.length;
      const [a, b] = [mean(mine), mean(its)];
      return { row, ours: a, peer: b, ratio: a / b, unit: 'fps', ...(gate === undefined ? {} : { gate }) };
    };
    const null1 = peer.get('pan over all')?.cpuMs ?? Number.NaN;
    const null2 = again.get('pan over all')?.cpuMs ?? Number.NaN;
    return [
      cpu('pan over all', '≥ 10×'),
      cpu('pan at a wall', '≥ 4×'),
      cpu('drag', '≥ 10×'),
      fps(`${REMOTE_PER_S} remote moves/s, frames a second unheld`, oursUnheld, peerUnheld, '≥ 12×'),
      fps(`${REMOTE_PER_S} remote moves/s, frames a second on a display`, [ours], [peer]),
      {
        row: `${REMOTE_PER_S} remote moves/s, CPU a drawn frame`,
        ours: ours.get('remote')?.cpuMs ?? Number.NaN,
        peer: peer.get('remote')?.cpuMs ?? Number.NaN,
        ratio: (peer.get('remote')?.cpuMs ?? Number.NaN) / (ours.get('remote')?.cpuMs ?? Number.NaN),
        unit: 'ms',
      },
      {
        row: 'null: the peer against itself, pan over all',
        ours: null2,
        peer: null1,
        ratio: null1 / null2,
        unit: 'ms',
      },
    ];
  } finally {
    await browser.close();
    await unheld.close();
    server.close();
  }
}

type Jobs = ReadonlyMap<Job, { readonly cpuMs: number; readonly fps: number }>;

function launched(...more: string[]): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      ...more,
    ],
  });
}

async function measured(browser: Browser, address: string, jobs: readonly Job[]): Promise<Jobs> {
  const results = new Map<Job, { cpuMs: number; fps: number }>();
  const page = await browser.newPage({ viewport: WINDOW });
  page.on('pageerror', (error) => {
    throw error;
  });
  const session = await browser.newBrowserCDPSession();
  await page.goto(address);
  await page.waitForFunction(() => window.bench !== undefined);
  await page.evaluate(() => window.bench?.ready);
  for (const job of jobs) {
    await prepare(page, job);
    const before = await cpuMsOf(session);
    const { frames, ms } = await page.evaluate(perform, { job, frames: FRAMES, mostMs: MOST_MS, rate: REMOTE_PER_S });
    const spent = (await cpuMsOf(session)) - before;
    results.set(job, { cpuMs: spent / frames, fps: (frames / ms) * 1000 });
  }
  await page.close();
  return results;
}

/** Looks where the job is done, and lets what is fetched and drawn for it come to rest. */
async function prepare(page: Page, job: Job): Promise<void> {
  await page.evaluate(
    async (look) => {
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      window.bench?.look(look);
      for (let i = 0; i < 3; i++) await frame();
      await window.enfiladeProbe?.idle();
    },
    job === 'pan at a wall' ? ('wall' as const) : ('all' as const),
  );
}

/** Runs in the page. Steps once a frame until enough was drawn or the time is over. */
async function perform({
  job,
  frames,
  mostMs,
  rate,
}: {
  job: Job;
  frames: number;
  mostMs: number;
  rate: number;
}): Promise<{ frames: number; ms: number }> {
  const bench = window.bench;
  if (bench === undefined) throw new Error('no bench page');
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const first = bench.drawn();
  const from = performance.now();
  if (job === 'remote') {
    // Moves come when they come, each a message of its own as from a socket, not with the frames.
    const socket = new MessageChannel();
    socket.port2.onmessage = ({ data }) => bench.remote(data);
    let sent = 0;
    const timer = setInterval(() => {
      for (const due = ((performance.now() - from) / 1000) * rate; sent < due; sent++) socket.port1.postMessage(sent);
    }, 5);
    while (performance.now() - from < 5000) await frame();
    clearInterval(timer);
    socket.port2.onmessage = null;
    socket.port1.close();
  } else {
    if (job === 'drag') bench.dragStart();
    for (let step = 0; bench.drawn() - first < frames && performance.now() - from < mostMs; step++) {
      if (job === 'drag') bench.dragTo(step + 1);
      else bench.pan(Math.round(12 * Math.cos(step / 15)), Math.round(8 * Math.sin(step / 11)));
      await frame();
    }
    if (job === 'drag') bench.dragEnd();
  }
  return { frames: Math.max(1, bench.drawn() - first), ms: performance.now() - from };
}

/** CPU of all of the browser's processes so far. */
async function cpuMsOf(session: CDPSession): Promise<number> {
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  return processInfo.reduce((sum, { cpuTime }) => sum + cpuTime * 1000, 0);
}

async function serve(): Promise<Server> {
  const folder = join(process.cwd(), 'tests', 'bench', 'stage');
  const pages = new Map<string, string>();
  for (const page of ['ours', 'peer']) {
    const { outputFiles } = await build({
      entryPoints: [join(folder, `${page}.tsx`)],
      bundle: true,
      write: false,
      format: 'iife',
      platform: 'browser',
      target: 'es2022',
      jsx: 'automatic',
      minify: true,
      define: { 'process.env.NODE_ENV': '"production"' },
      loader: { '.css': 'empty' },
      logLevel: 'warning',
    });
    pages.set(`/${page}.js`, outputFiles[0]?.text ?? '');
  }
  const pictures = new Map<string, Buffer>();
  for (let file = 0; file < FILES; file++) {
    const bytes = await pictureOf(file);
    for (let i = file; i < PICTURES; i += FILES) pictures.set(`/picture/${i}.webp`, bytes);
  }
  for (let page = 0; page * ATLAS_CELLS < PICTURES; page++)
    pictures.set(`/atlas/${page}.webp`, await atlasOf(page, pictures));
  const server = createServer((request, response) => {
    const path = (request.url ?? '/').split('?')[0] ?? '/';
    const script = pages.get(path);
    const picture = pictures.get(path);
    if (script !== undefined) response.setHeader('content-type', 'text/javascript').end(script);
    else if (picture !== undefined) response.setHeader('content-type', 'image/webp').end(picture);
    else {
      const style =
        'html,body{margin:0;background:#9e9e9e}#root{position:relative;width:1600px;height:900px}.stage{position:absolute;inset:0;overflow:hidden}.spoken{display:none}';
      const body = `<!doctype html><title>bench</title><style>${style}</style><div id="root"></div><script src="${path}.js"></script>`;
      response.setHeader('content-type', 'text/html').end(body);
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return server;
}

/** A cut-out disc and a frame in two colours of its own: enough detail to cost what a photograph costs. */
async function pictureOf(i: number): Promise<Buffer> {
  const { width, height } = pictureSizeOf(i);
  const hue = (i * 47) % 360;
  const shape =
    i % 3 === 0
      ? `<ellipse cx="50%" cy="50%" rx="48%" ry="48%" fill="url(#g)"/>`
      : `<rect width="100%" height="100%" fill="url(#g)"/><rect x="8%" y="8%" width="84%" height="84%" fill="none" stroke="#222" stroke-width="3"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><defs><linearGradient id="g" x2="1" y2="1"><stop stop-color="hsl(${hue},60%,45%)"/><stop offset="1" stop-color="hsl(${hue + 70},50%,70%)"/></linearGradient></defs>${shape}</svg>`;
  return await sharp(Buffer.from(svg)).webp({ quality: 82 }).toBuffer();
}

const miniatures = new Map<Buffer, Promise<Buffer>>();

function miniatureOf(picture: Buffer): Promise<Buffer> {
  const background = { r: 0, g: 0, b: 0, alpha: 0 };
  const made =
    miniatures.get(picture) ??
    sharp(picture).resize(ATLAS_CELL_PX, ATLAS_CELL_PX, { fit: 'contain', background }).png().toBuffer();
  miniatures.set(picture, made);
  return made;
}

async function atlasOf(page: number, pictures: ReadonlyMap<string, Buffer>): Promise<Buffer> {
  const cells = [];
  for (let index = 0; index < ATLAS_CELLS; index++) {
    const picture = pictures.get(`/picture/${page * ATLAS_CELLS + index}.webp`);
    if (picture === undefined) continue;
    const input = await miniatureOf(picture);
    const left = (index % ATLAS_COLUMNS) * ATLAS_CELL_PX;
    const top = Math.floor(index / ATLAS_COLUMNS) * ATLAS_CELL_PX;
    cells.push({ input, left, top });
  }
  const side = ATLAS_COLUMNS * ATLAS_CELL_PX;
  return await sharp({ create: { width: side, height: side, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } })
    .composite(cells)
    .webp({ quality: 80 })
    .toBuffer();
}
