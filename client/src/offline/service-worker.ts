/**
 * What lets the page open without a connection: the shell as it was built, each seat's own facts as last fetched, and
 * pictures that have been seen, within a bound. Everything else goes to the server or fails as it always would.
 */
import {
  isPicturePath,
  pictureCacheOf,
  SHELL_CACHE,
  SHELL_LIST,
  seatOf,
  TO_KEEP_FRESH,
  withinBound,
} from './kept-paths.ts';

/** The few parts of the worker's scope that are used; the browser's own types for it clash with a page's. */
interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Lasting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Scope {
  addEventListener(type: 'install' | 'activate', listener: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
}
const scope = self as unknown as Scope;

/** Parts of the shell fetched at once. */
const AT_ONCE = 3;

/** A gallery's network that does not answer in this time is taken to be gone for this request, ms. */
const PATIENCE_MS = 4000;

scope.addEventListener('install', (event) => {
  event.waitUntil(keepShell().then(() => scope.skipWaiting()));
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(scope.clients.claim());
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin) return;
  const seat = seatOf(url.pathname);
  if (request.mode === 'navigate' && seat !== null) event.respondWith(pageOf(request));
  else if (url.pathname.startsWith('/assets/')) event.respondWith(fromShell(request));
  else if (seat !== null && isPicturePath(url.pathname)) event.respondWith(pictureOf(event, request, seat));
  else if (seat !== null && TO_KEEP_FRESH.test(url.pathname)) event.respondWith(freshOf(event, request, seat));
});

/** Fetches the list of what was built and keeps all of it; what a former build left and this one has not goes. */
async function keepShell(): Promise<void> {
  const list = (await (await fetch(SHELL_LIST, { cache: 'no-store' })).json()) as string[];
  const cache = await caches.open(SHELL_CACHE);
  const wanted = new Set(['/', ...list].map((path) => new URL(path, location.origin).href));
  const held = new Set((await cache.keys()).map(({ url }) => url));
  const missing = [...wanted].filter((url) => !held.has(url) || !url.includes('/assets/'));
  // A few at a time: the page itself is fetching its pictures meanwhile.
  const next = async (): Promise<void> => {
    for (let url = missing.pop(); url !== undefined; url = missing.pop()) await keepOne(cache, url);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, next));
  await Promise.all([...held].filter((url) => !wanted.has(url)).map((url) => cache.delete(url)));
}

async function keepOne(cache: Cache, url: string): Promise<void> {
  // The front page is no page of a seat; the shell's own page is what a seat's address opens.
  const answer = await fetch(url.endsWith('/') ? new URL('/index.html', url) : url, { cache: 'no-store' });
  if (answer.ok) await cache.put(url, answer);
  // An answer that is not read keeps its connection, and a few of them keep the worker from ever being ready.
  else await answer.body?.cancel();
}

async function pageOf(request: Request): Promise<Response> {
  const answer = await withPatience(request);
  if (answer !== null) return answer;
  const kept = await (await caches.open(SHELL_CACHE)).match(new URL('/', location.origin).href);
  return kept ?? Response.error();
}

async function fromShell(request: Request): Promise<Response> {
  const kept = await (await caches.open(SHELL_CACHE)).match(request, { ignoreSearch: true });
  return kept ?? fetch(request);
}

/** A picture never changes under its address: once seen it is not fetched again. */
async function pictureOf(event: Fetching, request: Request, seat: string): Promise<Response> {
  const cache = await caches.open(pictureCacheOf(seat));
  const kept = await cache.match(request);
  if (kept !== undefined) return kept;
  const answer = await fetch(request);
  if (answer.ok) event.waitUntil(keepPicture(cache, request, answer.clone()));
  return answer;
}

async function keepPicture(cache: Cache, request: Request, answer: Response): Promise<void> {
  await cache.put(request, answer);
  const keys = await cache.keys();
  for (const old of withinBound(keys)) await cache.delete(old);
}

/** The newest the server has; as it was last, where the server cannot be reached. */
async function freshOf(event: Fetching, request: Request, seat: string): Promise<Response> {
  const cache = await caches.open(`facts ${seat}`);
  const answer = await withPatience(request);
  if (answer === null) return (await cache.match(request)) ?? Response.error();
  if (answer.ok) event.waitUntil(cache.put(request, answer.clone()));
  // A seat that is refused has nothing of its own here any more.
  else if (answer.status === 401 || answer.status === 403) event.waitUntil(forget(seat));
  return answer;
}

async function forget(seat: string): Promise<void> {
  for (const name of await caches.keys()) if (name.includes(seat)) await caches.delete(name);
}

/** The server's answer, or null when there is none in time or it is of a server that is not well. */
async function withPatience(request: Request): Promise<Response | null> {
  const controller = new AbortController();
  const timer = setTimeout(() => controller.abort(), PATIENCE_MS);
  try {
    const answer = await fetch(request, { signal: controller.signal });
    return answer.status >= 502 ? null : answer;
  } catch {
    return null;
  } finally {
    clearTimeout(timer);
  }
}
