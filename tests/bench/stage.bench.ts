/**
 * The stage with 3,000 things in Chromium's software rendering, against a naive react-konva page with one Image per
 * object. CPU of all of the browser's processes a drawn frame (SystemInfo.getProcessInfo), in one run on one seed.
 */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { ATLAS_CELL_PX, ATLAS_CELLS, ATLAS_COLUMNS } from '@enfilade/shared/protocol';
import { type Browser, type CDPSession, chromium, type Page } from '@playwright/test';
import { build } from 'esbuild';
import sharp from 'sharp';
import { PICTURES, pictureSizeOf, WINDOW } from './stage/objects.ts';

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

export async function run(): Promise<Row[]> {
  const server = await serve();
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'],
  });
  try {
    const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const ours = await measured(browser, `${origin}/ours?probe`, ['pan over all', 'pan at a wall', 'drag', 'remote']);
    const peer = await measured(browser, `${origin}/peer`, ['pan over all', 'pan at a wall', 'drag', 'remote']);
    const again = await measured(browser, `${origin}/peer`, ['pan over all']);
    const cpu = (row: Job, gate: string): Row => {
      const [mine, its] = [ours.get(row)?.cpuMs ?? Number.NaN, peer.get(row)?.cpuMs ?? Number.NaN];
      return { row: `${row}, CPU a drawn frame`, ours: mine, peer: its, ratio: its / mine, unit: 'ms', gate };
    };
    const fps = [ours.get('remote')?.fps ?? Number.NaN, peer.get('remote')?.fps ?? Number.NaN] as const;
    const null1 = peer.get('pan over all')?.cpuMs ?? Number.NaN;
    const null2 = again.get('pan over all')?.cpuMs ?? Number.NaN;
    return [
      cpu('pan over all', '≥ 10×'),
      cpu('pan at a wall', '≥ 4×'),
      cpu('drag', '≥ 10×'),
      {
        row: `${REMOTE_PER_S} remote moves/s, drawn frames a second (at most 60)`,
        ours: fps[0],
        peer: fps[1],
        ratio: fps[0] / fps[1],
        unit: 'fps',
        gate: '≥ 12×',
      },
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
    server.close();
  }
}

async function measured(
  browser: Browser,
  address: string,
  jobs: readonly Job[],
): Promise<Map<Job, { cpuMs: number; fps: number }>> {
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
    socket.port2.onmessage = ({ data }) => bench.remote((data * 7919) % 3000, Math.round(Math.sin(data) * 100));
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
  for (let i = 0; i < PICTURES; i++) pictures.set(`/picture/${i}.webp`, await pictureOf(i));
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

async function atlasOf(page: number, pictures: ReadonlyMap<string, Buffer>): Promise<Buffer> {
  const cells = [];
  for (let index = 0; index < ATLAS_CELLS; index++) {
    const picture = pictures.get(`/picture/${page * ATLAS_CELLS + index}.webp`);
    if (picture === undefined) continue;
    const background = { r: 0, g: 0, b: 0, alpha: 0 };
    const input = await sharp(picture)
      .resize(ATLAS_CELL_PX, ATLAS_CELL_PX, { fit: 'contain', background })
      .png()
      .toBuffer();
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
