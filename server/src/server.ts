/** The server: everything loaded whole, then one address. */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { createServer as createTlsServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { Judgements } from '@enfilade/shared/judgements';
import { type Logger, pino } from 'pino';
import { refusal, send } from './answers.ts';
import { Collection } from './collection.ts';
import { CollectionIntake } from './collection-intake.ts';
import { CollectionLooks } from './collection-looks.ts';
import { History } from './history.ts';
import { Images } from './images.ts';
import { Kept, keepEachDay } from './kept.ts';
import { DEFAULT_LIMITS, type Limits } from './limits.ts';
import { Manifests } from './manifests.ts';
import { migrate } from './migrate.ts';
import { PeopleRecord } from './people-record.ts';
import { answerTo, type House } from './routes.ts';
import { Seats } from './seats.ts';
import { Sessions } from './sessions.ts';
import { StaticFiles } from './static-files.ts';
import { Store } from './store.ts';
import type { Certificate } from './tls.ts';
import { acceptSockets } from './upgrade.ts';

export interface ServerOptions {
  /** 0: any free one. */
  readonly port: number;
  /** Which of the machine's addresses to listen on; all unless given. */
  readonly host?: string;
  readonly dataDirectory: string;
  /** The client as built; without it only the documents, pictures and paper are served. */
  readonly clientDirectory?: string;
  readonly logger?: Logger;
  readonly limits?: Partial<Limits>;
  /** Spoken over TLS where given; else over plain HTTP. */
  readonly tls?: Certificate;
  /** Origins besides the server's own that pages may come from, as `https://show.example`. */
  readonly allowedOrigins?: readonly string[];
  /** Which IP addresses may be called where a person gives a web address; those of the public network unless given. */
  readonly mayCall?: (address: string) => boolean;
}

export interface RunningServer {
  readonly url: string;
  readonly port: number;
  readonly sessions: Sessions;
  readonly seats: Seats;
  readonly store: Store;
  readonly images: Images;
  readonly collection: Collection;
  /** Takes no more, writes what it has taken, says goodbye to every socket, and lets go of the folder. */
  close(): Promise<void>;
}

export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const log = options.logger ?? pino({ level: 'silent' });
  const limits: Limits = { ...DEFAULT_LIMITS, ...options.limits };
  const store = await Store.open(options.dataDirectory);
  const sessions = await Sessions.open(store, limits, log);
  const seats = await Seats.open(store);
  const images = await Images.open(store, options.dataDirectory, limits);
  const meta = await migrate(store, sessions.byName);
  const people = new PeopleRecord(seats, sessions.get('record'), log);
  people.write();
  const kept = new Kept(store);
  const collection = new Collection(store);
  const history = await History.watch(store, sessions.byName, log);
  const days = keepEachDay(kept, sessions.byName, sessions.documents, log);
  const pictureTrouble = (error: unknown): void =>
    log.error({ event: 'palette', kind: error instanceof Error ? error.name : typeof error });
  // Made when first asked for: a fact of a shape no command writes must not keep the server from starting.
  let judgements: Judgements | undefined;
  const house: House = {
    sessions,
    seats,
    images,
    manifests: new Manifests(images, limits.pictureBytes, options.mayCall),
    history,
    kept,
    collection,
    collectionLooks: new CollectionLooks(collection, images),
    collectionIntake: new CollectionIntake(store, collection, limits.collectionRecords),
    judgements: () => {
      judgements ??= new Judgements(sessions.documents, {
        get: (key) => images.factsFor(key, pictureTrouble),
      });
      return judgements;
    },
    meta,
    dataDirectory: options.dataDirectory,
    limits,
    counts: { framesIn: 0, framesOut: 0, closedForFault: 0 },
    certificate: options.tls?.own ? options.tls.cert : null,
    client: options.clientDirectory === undefined ? null : new StaticFiles(options.clientDirectory),
    allowedOrigins: options.allowedOrigins ?? [],
  };

  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    request.on('error', () => {});
    response.on('error', () => {});
    answerTo(house, request)
      .then(({ route, answer }) => {
        send(request, response, answer);
        log.debug({ event: 'request', route, method: request.method, status: answer.status });
      })
      .catch((error: unknown) => {
        if (!request.complete && request.destroyed) return;
        // Of an error only its kind: a message may quote what a person wrote.
        log.error({ event: 'request failed', kind: error instanceof Error ? error.name : typeof error });
        send(request, response, refusal(500, 'The server could not do this. Nothing was changed by it.', 'server'));
      });
  };
  const { tls } = options;
  const http = tls === undefined ? createServer(answer) : createTlsServer({ cert: tls.cert, key: tls.key }, answer);
  http.on('clientError', (_error, socket) => socket.destroy());
  const closeSockets = acceptSockets(http, house, log);

  await new Promise<void>((listening, failed) => {
    http.once('error', failed);
    http.listen(options.port, options.host, () => {
      http.off('error', failed);
      listening();
    });
  });
  const { port } = http.address() as AddressInfo;
  log.info({ event: 'listening', port, schemaVersion: meta.schemaVersion, epoch: meta.epoch });
  const palettes = images.refreshPalettes(pictureTrouble);

  let closing: Promise<void> | null = null;
  const close = async (): Promise<void> => {
    const stopped = new Promise<void>((done) => http.close(() => done()));
    await people.settled();
    await days.settled();
    await sessions.commit.drain();
    await closeSockets();
    http.closeIdleConnections();
    await images.close();
    await palettes;
    await sessions.close();
    await history.settled();
    http.closeAllConnections();
    await stopped;
    await store.close();
    log.info({ event: 'stopped' });
  };
  return {
    url: `${tls === undefined ? 'http' : 'https'}://localhost:${port}`,
    port,
    sessions,
    seats,
    store,
    images,
    collection,
    close: () => {
      closing ??= close();
      return closing;
    },
  };
}
