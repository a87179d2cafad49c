/** A museum's server for a story: the built server on a free port, with a data folder of its own, killed at the end. */
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, linkSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, sep } from 'node:path';
import { type Browser, type BrowserContext, test as base, expect, type Page } from '@playwright/test';

export const ROOT = join(import.meta.dirname, '..', '..');
/** The demo, drawn before the first story (demo-data.ts) and copied for each. */
export const DEMO = join(ROOT, 'tests', 'test-results', 'demo-data');

interface Links {
  readonly [role: string]: string;
}

export class Museum {
  readonly data: string;
  links: Links = {};
  port = 0;
  /** What any page of this museum did that its content security policy forbids. */
  readonly breaches: string[] = [];
  private process: ChildProcess | null = null;
  private readonly contexts: BrowserContext[] = [];

  constructor(data: string) {
    this.data = data;
  }

  /**
   * Starts the server and waits for its links; on the same port again after a kill. `maxPages`: the log's file may not
   * grow past so many pages of 4,096 bytes (or past what it has, where that is more), as on a full disk.
   */
  async open({ maxPages }: { readonly maxPages?: number } = {}): Promise<void> {
    const bound = maxPages === undefined ? [] : ['--max-pages', String(maxPages)];
    const child = spawn(
      process.execPath,
      [
        join(ROOT, 'server', 'dist', 'main.mjs'),
        ...['--port', String(this.port), '--data', this.data, '--all-seats'],
        ...bound,
      ],
      { stdio: ['ignore', 'pipe', 'pipe'] },
    );
    this.process = child;
    let printed = '';
    await new Promise<void>((done, fail) => {
      const read = (part: Buffer): void => {
        printed += part.toString();
        for (const [, role, link] of printed.matchAll(
          /^\s*(lead|curator|guest artist|viewer|registrar|preparator|conservator)\b.*?(http:\S+)/gim,
        )) {
          if (role && link) this.links = { ...this.links, [role.toLowerCase()]: link };
        }
        if (/^ready/im.test(printed)) done();
      };
      child.stdout?.on('data', read);
      child.stderr?.on('data', read);
      child.once('exit', (code) => fail(new Error(`the server ended with ${code}:\n${printed}`)));
    });
    this.port = Number(new URL(Object.values(this.links)[0] ?? 'http://localhost:0').port);
  }

  /** kill -9: no goodbye, no flush. */
  async kill(): Promise<void> {
    const child = this.process;
    this.process = null;
    if (child === null || child.exitCode !== null) return;
    await new Promise<void>((done) => {
      child.removeAllListeners('exit');
      child.once('exit', () => done());
      child.kill('SIGKILL');
    });
  }

  /** Everybody goes: a page left open would call on a server that is gone, and slow the stories after it. */
  async leave(): Promise<void> {
    for (const context of this.contexts.splice(0)) await context.close();
  }

  /** A person at the show, in a browser context of their own. */
  async enter(browser: Browser, role: string, options: Parameters<Browser['newContext']>[0] = {}): Promise<Seat> {
    const context = await browser.newContext(options);
    this.contexts.push(context);
    const page = await context.newPage();
    const errors: string[] = [];
    page.on('pageerror', (error) => errors.push(String(error)));
    page.on('console', (message) => {
      if (/Content Security Policy/.test(message.text())) this.breaches.push(message.text());
      if (message.type() === 'error' && !/WebSocket|ERR_CONNECTION|Failed to load resource/.test(message.text())) {
        errors.push(message.text());
      }
    });
    const link = this.links[role];
    if (link === undefined) throw new Error(`no link was printed for the ${role}`);
    // The link is exchanged apart from the page, which is then loaded once, as it will be looked at.
    const seat = await context.request.get(link);
    await page.goto(`${seat.url()}?probe`);
    await page
      .getByText(/^Saved|view only|nothing here can be changed/i)
      .first()
      .waitFor();
    return { page, context, errors };
  }
}

export interface Seat {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly errors: string[];
}

/** Goes where an address leads, as a link on the page would. */
export async function goTo({ page }: Seat, address: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, address);
}

/** Pictures are never written over, under their hash: they are the same files in every copy. */
function copyDemo(data: string): void {
  const pictures = join(DEMO, 'images');
  const isHashed = (path: string): boolean => /^[0-9a-f]{2}$/.test(relative(pictures, path).split(sep)[0] ?? '');
  cpSync(DEMO, data, { recursive: true, filter: (path) => !isHashed(path) });
  for (const entry of readdirSync(pictures, { recursive: true, withFileTypes: true })) {
    const from = join(entry.parentPath, entry.name);
    if (!entry.isFile() || !isHashed(from)) continue;
    const to = join(data, 'images', relative(pictures, from));
    mkdirSync(dirname(to), { recursive: true });
    linkSync(from, to);
  }
}

export const test = base.extend<{ museum: Museum }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures a story asks for from this pattern.
  museum: async ({}, use) => {
    const data = mkdtempSync(join(tmpdir(), 'enfilade-story-'));
    copyDemo(data);
    const museum = new Museum(data);
    await museum.open();
    await use(museum);
    await museum.leave();
    await museum.kill();
    expect(museum.breaches).toEqual([]);
    rmSync(data, { recursive: true, force: true });
  },
});

export { expect } from '@playwright/test';
