/** Every HTTP path there is, and what it answers. */
import type { IncomingMessage } from 'node:http';
import type { Judgements } from '@enfilade/shared/judgements';
import type { Me } from '@enfilade/shared/protocol';
import { DEFAULT_SETTINGS } from '@enfilade/shared/schema';
import { mayBringIn } from '@enfilade/shared/seats';
import { showManifest } from '@enfilade/shared/show-manifest';
import { ACTS } from './acts.ts';
import { type Answer, bodyOf, IMMUTABLE, isSameOrigin, json, page, refusal } from './answers.ts';
import { BundleTooLarge, bundleOf } from './bundle.ts';
import { takeBundle } from './bundle-in.ts';
import type { Collection } from './collection.ts';
import type { CollectionIntake } from './collection-intake.ts';
import { collectionIntakePath } from './collection-intake-paths.ts';
import type { CollectionLooks } from './collection-looks.ts';
import { collectionPath } from './collection-paths.ts';
import type { History } from './history.ts';
import type { Images } from './images.ts';
import type { Kept } from './kept.ts';
import type { Limits } from './limits.ts';
import type { Manifests } from './manifests.ts';
import { metricsText } from './metrics.ts';
import type { Meta } from './migrate.ts';
import { PAPERS } from './paper/papers.ts';
import { PictureRefused } from './picture-ingest.ts';
import { seatsFor } from './seat-acts.ts';
import type { Seat, Seats } from './seats.ts';
import { ReadOnlyError } from './session.ts';
import type { Sessions } from './sessions.ts';
import type { SocketCounts } from './socket.ts';
import type { StaticFiles } from './static-files.ts';

export interface House {
  readonly sessions: Sessions;
  readonly seats: Seats;
  readonly images: Images;
  readonly manifests: Manifests;
  readonly history: History;
  readonly kept: Kept;
  readonly collection: Collection;
  readonly collectionLooks: CollectionLooks;
  readonly collectionIntake: CollectionIntake;
  readonly judgements: () => Judgements;
  readonly meta: Meta;
  readonly dataDirectory: string;
  readonly limits: Limits;
  readonly counts: SocketCounts;
  /** This machine's own certificate, for devices that are to trust it; null where there is none to hand out. */
  readonly certificate: string | null;
  readonly client: StaticFiles | null;
  readonly allowedOrigins: readonly string[];
}

/** An act's body: a digest and a name, never a document. */
const ACT_BYTES = 64 << 10;

/** What was asked for, in words a log may hold: never a token, a cookie, a file's name. */
export interface Answered {
  readonly route: string;
  readonly answer: Answer;
}

export async function answerTo(house: House, request: IncomingMessage): Promise<Answered> {
  const url = new URL(request.url ?? '/', 'http://here');
  const [first, second, ...rest] = url.pathname.split('/').slice(1);
  if (request.method === 'POST') {
    if (!isSameOrigin(request, house.allowedOrigins)) {
      return { route: 'post', answer: refusal(403, 'This request came from another address.', 'origin') };
    }
  } else if (request.method !== 'GET' && request.method !== 'HEAD') {
    return { route: 'other', answer: refusal(405, 'Only GET and POST are answered here.', 'method') };
  }
  if (first === 'seat' && second !== undefined) {
    if (rest.length === 0) return { route: 'seat', answer: moved(`/seat/${second}/`) };
    if (rest.length === 1 && rest[0] === '') return { route: 'seat', answer: await clientPage(house, request) };
    return seatPath(house, request, url, second, rest);
  }
  if (request.method === 'POST') return { route: 'other', answer: refusal(404, 'There is nothing here.', 'address') };
  if (first === 'join' && second !== undefined) return { route: 'join', answer: await join(house, request, second) };
  if (url.pathname === '/certificate.pem' && house.certificate !== null) {
    return {
      route: 'certificate',
      answer: { status: 200, type: 'application/x-x509-ca-cert', body: house.certificate },
    };
  }
  if (url.pathname === '/health') return { route: 'health', answer: health(house) };
  if (url.pathname === '/metrics') {
    return { route: 'metrics', answer: { status: 200, type: 'text/plain; version=0.0.4', body: metricsText(house) } };
  }
  if (url.pathname === '/') {
    return { route: 'front', answer: page(200, 'Enfilade', 'Open the invitation link you were sent.') };
  }
  const file = await house.client?.answer(decoded(url.pathname), encodingsOf(request));
  return { route: 'static', answer: file ?? page(404, 'Nothing here', 'Open the invitation link you were sent.') };
}

async function seatPath(
  house: House,
  request: IncomingMessage,
  url: URL,
  seatId: string,
  path: readonly string[],
): Promise<Answered> {
  const [what = '', name = '', more] = path;
  const route = `seat/${['me', 'client-id', 'images', 'acts', 'paper', 'seats', 'history', 'states', 'collection', 'manifests', 'bundle', 'manifest.json'].includes(what) ? what : 'other'}`;
  const seat = house.seats.seatOf(seatId, request.headers.cookie);
  if (seat === undefined) {
    return { route, answer: refusal(401, 'This seat is not known on this device. Open its invitation link.', 'seat') };
  }
  const post = request.method === 'POST';
  if (what === 'me' && path.length === 1 && !post) return { route, answer: json(200, meOf(house, seat)) };
  if (what === 'client-id' && path.length === 1 && post) return { route, answer: await clientId(house, seat) };
  if (what === 'seats' && path.length === 1 && !post) return { route, answer: await seatList(house, seat) };
  if (what === 'history' && path.length === 1 && !post) return { route, answer: await historyOf(house, url) };
  if (what === 'states' && path.length === 2 && !post) return { route, answer: await keptText(house, name) };
  if (what === 'images' && post && path.length === 1)
    return { route, answer: await bringIn(house, request, url, seat) };
  if (what === 'bundle' && path.length === 1) {
    return { route, answer: post ? await takeIn(house, request, seat) : await takeOut(house, seat) };
  }
  if (what === 'manifest.json' && path.length === 1 && !post) return { route, answer: iiif(house, request, seat) };
  if (what === 'manifests' && post) return { route, answer: await manifest(house, request, seat, path.slice(1)) };
  if (what === 'images' && !post) return { route, answer: await image(house, url, name, more) };
  if (what === 'acts' && post && path.length === 2) return { route, answer: await act(house, request, seat, name) };
  if (what === 'collection' && !post && path.length <= 2)
    return { route, answer: await collectionOf(house, url, seat, name) };
  if (what === 'collection' && post)
    return { route, answer: await intoCollection(house, request, seat, path.slice(1)) };
  if (what === 'paper' && !post && path.length === 2) return { route, answer: await paper(house, url, seat, name) };
  return { route, answer: nothing() };
}

function nothing(): Answer {
  return refusal(404, 'There is nothing here.', 'address');
}

function moved(location: string): Answer {
  return { status: 308, type: 'text/plain', body: '', headers: { location } };
}

function encodingsOf(request: IncomingMessage): string | undefined {
  const accepted = request.headers['accept-encoding'];
  return Array.isArray(accepted) ? accepted.join(',') : accepted;
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return '/';
  }
}

/** The page is nobody's secret: a browser that follows a link from elsewhere sends a strict cookie only afterwards. */
async function clientPage(house: House, request: IncomingMessage): Promise<Answer> {
  const index = await house.client?.answer('/index.html', encodingsOf(request));
  return index ?? page(503, 'Not built yet', 'The page itself has not been built on this server.');
}

async function join(house: House, request: IncomingMessage, token: string): Promise<Answer> {
  const secure = 'encrypted' in request.socket || request.headers['x-forwarded-proto'] === 'https';
  const exchanged = request.method === 'GET' ? await house.seats.exchange(token, secure) : undefined;
  if (exchanged === undefined) {
    return page(404, 'Not known', 'This invitation is not known here, or was taken back. Ask whoever sent it.');
  }
  const headers = { location: `/seat/${exchanged.seat.id}/`, 'set-cookie': exchanged.cookie };
  return { status: 303, type: 'text/plain', body: '', headers };
}

function health({ sessions }: House): Answer {
  const reason = sessions.commit.readOnly;
  return json(reason === null ? 200 : 503, { status: reason === null ? 'ok' : 'read-only' });
}

function meOf({ meta }: House, seat: Seat): Me {
  return { seatId: seat.id, person: seat.person, schemaVersion: meta.schemaVersion, epoch: meta.epoch };
}

async function seatList({ seats }: House, { person }: Seat): Promise<Answer> {
  const list = await seatsFor({ person, seats });
  return list === undefined ? refusal(403, 'Only a lead or a curator sees the seats.', 'seats') : json(200, list);
}

/** Who did what, newest first; a number that is none asks for nothing less. */
async function historyOf({ history }: House, { searchParams }: URL): Promise<Answer> {
  const whole = (name: string): number | undefined => {
    const text = searchParams.get(name);
    return text !== null && /^\d{1,12}$/.test(text) ? Number(text) : undefined;
  };
  const [before, limit, since] = [whole('before'), whole('limit'), searchParams.get('since')];
  return json(
    200,
    await history.read({
      ...(before === undefined ? {} : { before }),
      ...(limit === undefined ? {} : { limit }),
      ...(since === null ? {} : { since }),
    }),
  );
}

function collectionOf(house: House, { searchParams }: URL, { person }: Seat, name: string): Promise<Answer> {
  const { sessions, collection, collectionLooks: looks, collectionIntake: intake } = house;
  const { documents } = sessions;
  return collectionPath(name, { person, query: searchParams, documents, collection, looks, intake });
}

function intoCollection(house: House, request: IncomingMessage, seat: Seat, path: readonly string[]): Promise<Answer> {
  const { sessions, seats, images, collection, collectionIntake: intake } = house;
  return collectionIntakePath(path, {
    request,
    collection,
    intake,
    hasPicture: (sha256) => images.factsOf(sha256) !== undefined,
    personNow: () => seats.seatOf(seat.id, request.headers.cookie)?.person,
    readOnly: () => sessions.commit.readOnly,
  });
}

async function keptText({ kept }: House, digest: string): Promise<Answer> {
  const text = /^[0-9a-f]{64}$/.test(digest) ? await kept.text(digest) : undefined;
  if (text === undefined) return nothing();
  return { status: 200, type: 'application/json', body: text, headers: { 'cache-control': IMMUTABLE } };
}

async function clientId({ sessions }: House, seat: Seat): Promise<Answer> {
  const given = await sessions.clientIdFor(seat.person.id);
  return given === undefined
    ? refusal(503, 'No short id can be given now.', 'client-id')
    : json(200, { clientId: given });
}

async function image({ images }: House, url: URL, name: string, more: string | undefined): Promise<Answer> {
  if (name === 'facts' && more === undefined) return json(200, images.facts());
  if (more === 'facts') {
    const facts = await images.cutOf(name);
    return facts === undefined ? nothing() : json(200, facts);
  }
  const webp = /^(.+)\.webp$/.exec(more ?? '')?.[1];
  if (webp === undefined) return nothing();
  let body: Uint8Array | undefined;
  if (name === 'atlas') {
    const [pageNumber, cells] = [Number(webp), Number(url.searchParams.get('cells'))];
    if (Number.isInteger(pageNumber) && pageNumber >= 0 && Number.isInteger(cells)) {
      body = await images.atlas.page(pageNumber, cells);
    }
  } else if (webp === '256' || webp === '1024') {
    body = await images.thumbnail(name, webp);
  }
  if (body === undefined) return nothing();
  return { status: 200, type: 'image/webp', body, headers: { 'cache-control': IMMUTABLE } };
}

async function bringIn(house: House, request: IncomingMessage, url: URL, seat: Seat): Promise<Answer> {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a file's name may hold them; an answer may not
  const name = (url.searchParams.get('name') ?? 'a picture').replace(/[\u0000-\u001f\u007f]/g, '').slice(0, 200);
  if (!mayBringIn(seat.person.role)) {
    return refusal(403, `This seat may not bring pictures in. “${name}” was not kept.`, name);
  }
  if (Number(request.headers['content-length'] ?? 0) > house.limits.pictureBytes) {
    const megabytes = Math.round(house.limits.pictureBytes / (1 << 20));
    return refusal(422, `“${name}” is larger than ${megabytes} MB. Nothing of it was kept.`, name);
  }
  try {
    return json(200, await house.images.add(request, name));
  } catch (error) {
    if (error instanceof PictureRefused) return refusal(422, error.message, name);
    throw error;
  }
}

/** The whole show with what is private of it, and pictures as they were sent: for whoever may read and bring in all that. */
async function takeOut({ sessions, images, kept }: House, { person }: Seat): Promise<Answer> {
  if (!mayBringIn(person.role)) {
    return refusal(403, 'The lead, the curator and the registrar take the whole show out.', 'bundle');
  }
  const { documents } = sessions;
  const title = String(documents.get('settings', 'title') ?? DEFAULT_SETTINGS.title);
  try {
    const body = await bundleOf({ documents, images, kept }, { title, by: person.name });
    const headers = { 'content-disposition': 'attachment' };
    return { status: 200, type: 'application/zip', body, headers };
  } catch (error) {
    if (!(error instanceof BundleTooLarge)) throw error;
    return refusal(422, 'The show with its pictures is larger than 4 GB; a backup of the server holds it.', 'bundle');
  }
}

/** A whole show writes into every document, the record too: the lead's alone. */
async function takeIn(house: House, request: IncomingMessage, { person }: Seat): Promise<Answer> {
  if (person.role !== 'lead') return refusal(403, 'Only a lead takes a whole show in. Nothing was changed.', 'bundle');
  return orReadOnly('bundle', () => takeBundle(house, request));
}

function iiif({ judgements }: House, request: IncomingMessage, seat: Seat): Answer {
  const secure = 'encrypted' in request.socket || request.headers['x-forwarded-proto'] === 'https';
  const base = `${secure ? 'https' : 'http'}://${request.headers.host ?? 'localhost'}/seat/${seat.id}`;
  const type = 'application/ld+json;profile="http://iiif.io/api/presentation/3/context.json"';
  return { status: 200, type, body: JSON.stringify(showManifest(judgements(), base)) };
}

/** Whoever may bring pictures in may have a manifest read, and the pictures it names fetched. */
async function manifest(house: House, request: IncomingMessage, seat: Seat, path: readonly string[]): Promise<Answer> {
  const { manifests, seats } = house;
  const refused = refusal(403, 'This seat may not bring pictures in. Nothing was fetched.', 'manifest');
  if (!mayBringIn(seat.person.role)) return refused;
  const [first, what, row = '', n = ''] = path;
  if (first === undefined) return manifests.take(request, seat.person.id);
  if (first === 'fetch' && path.length === 1) {
    const text = await bodyOf(request, ACT_BYTES);
    // Asked anew, as of every act: nothing is called for a seat that was taken back meanwhile.
    const now = seats.seatOf(seat.id, request.headers.cookie);
    if (now === undefined || !mayBringIn(now.person.role)) return refused;
    return manifests.fetch(addressIn(text), seat.person.id);
  }
  if (what === 'pictures' && path.length === 4) return manifests.picture(first, row, n, seat.person.id);
  return nothing();
}

function addressIn(text: string | null): unknown {
  try {
    return (JSON.parse(text ?? '') as { address?: unknown } | null)?.address;
  } catch {
    return undefined;
  }
}

async function act(house: House, request: IncomingMessage, seat: Seat, name: string): Promise<Answer> {
  const handler = Object.hasOwn(ACTS, name) ? ACTS[name] : undefined;
  if (handler === undefined) return nothing();
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) {
    return refusal(415, 'An act is sent as JSON. Nothing was done.', name);
  }
  const text = await bodyOf(request, ACT_BYTES);
  if (text === null) return refusal(413, 'An act is at most 64 KB of text. Nothing was done.', name);
  let body: unknown;
  try {
    body = JSON.parse(text);
  } catch {
    return refusal(400, 'This is not JSON. Nothing was done.', name);
  }
  // Asked anew: the seat may have been taken back, or its role changed, while the body was on its way.
  const now = house.seats.seatOf(seat.id, request.headers.cookie);
  if (now === undefined) return refusal(401, 'This seat was taken back. Nothing was done.', 'seat');
  const { sessions, images, seats, kept } = house;
  const { documents, byName } = sessions;
  return orReadOnly(name, () =>
    handler({ person: now.person, seatId: now.id, body, documents, sessions: byName, images, seats, kept }),
  );
}

async function paper(house: House, url: URL, seat: Seat, name: string): Promise<Answer> {
  const handler = Object.hasOwn(PAPERS, name) ? PAPERS[name] : undefined;
  if (handler === undefined) return nothing();
  return orReadOnly(name, async () => {
    const answer = await handler({
      person: seat.person,
      query: url.searchParams,
      documents: house.sessions.documents,
      judgements: house.judgements(),
      record: (change) => house.sessions.get('record').act(change),
    });
    if (answer.status !== 200) return json(answer.status, answer.refusal);
    const fileName = answer.fileName.replace(/[^\w.-]/g, '-');
    const headers = { 'content-disposition': `inline; filename="${fileName}"` };
    return { status: 200, type: answer.type, body: answer.body, headers };
  });
}

async function orReadOnly(where: string, work: () => Promise<Answer>): Promise<Answer> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof ReadOnlyError) return refusal(503, error.message, where);
    throw error;
  }
}
