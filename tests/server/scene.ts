/** A server of its own for each test, on a free port in a folder of its own, and people who sit down at it. */
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import type { Limits } from '@enfilade/server/limits';
import { logTo } from '@enfilade/server/log';
import { type RunningServer, type ServerOptions, startServer } from '@enfilade/server/server';
import { MESSAGE_ACKNOWLEDGED, MESSAGE_NOTICE, type Notice, SUBPROTOCOL } from '@enfilade/shared/protocol';
import type { DocumentName, Role } from '@enfilade/shared/seats';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { Awareness } from 'y-protocols/awareness';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';

export interface TakenSeat {
  readonly seatId: string;
  readonly cookie: string;
  readonly token: string;
  readonly personId: string;
}

export class Scene {
  readonly dataDirectory: string;
  server!: RunningServer;
  /** Every line the server has logged. */
  readonly logged: string[] = [];
  /** Every frame any client of this scene has received. */
  readonly frames: { seatId: string; document: string; bytes: Uint8Array }[] = [];
  private readonly limits: Partial<Limits>;
  private readonly more: Partial<ServerOptions>;
  private readonly leave: (() => void)[] = [];

  constructor(dataDirectory: string, limits: Partial<Limits>, more: Partial<ServerOptions>) {
    this.dataDirectory = dataDirectory;
    this.limits = limits;
    this.more = more;
  }

  async open(): Promise<void> {
    const sink = new Writable({
      write: (chunk, _encoding, done) => {
        this.logged.push(String(chunk));
        done();
      },
    });
    this.server = await startServer({
      port: 0,
      host: '127.0.0.1',
      dataDirectory: this.dataDirectory,
      logger: logTo(sink, 'trace'),
      limits: this.limits,
      ...this.more,
    });
  }

  async reopen(): Promise<void> {
    await this.server.close();
    await this.open();
  }

  get address(): string {
    return `http://127.0.0.1:${this.server.port}`;
  }

  /** Invites somebody and opens the link as their browser would. */
  async seat(role: Role, personId: string = role): Promise<TakenSeat> {
    const { token } = await this.server.seats.invite({ id: personId, name: `The ${role}`, role });
    const answer = await fetch(`${this.address}/join/${token}`, { redirect: 'manual' });
    const cookie = (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    const seatId = /^\/seat\/(\w+)\/$/.exec(answer.headers.get('location') ?? '')?.[1] ?? '';
    return { seatId, cookie, token, personId };
  }

  get(seat: TakenSeat, path: string, init: RequestInit = {}): Promise<Response> {
    return fetch(`${this.address}/seat/${seat.seatId}/${path}`, {
      ...init,
      headers: { cookie: seat.cookie, ...(init.headers as Record<string, string> | undefined) },
    });
  }

  socketUrl(seat: TakenSeat, document: string): string {
    return `ws://127.0.0.1:${this.server.port}/seat/${seat.seatId}/doc/${document}`;
  }

  /** A provider as published, told nothing but the address and the cookie. */
  stock(seat: TakenSeat, document: DocumentName, doc = new Y.Doc(), awareness = new Awareness(doc)): WebsocketProvider {
    const { frames } = this;
    class SocketWithCookie extends WebSocket {
      constructor(url: string, protocols: string[]) {
        super(url, protocols, { headers: { cookie: seat.cookie } });
        this.on('message', (data: Buffer) =>
          frames.push({ seatId: seat.seatId, document, bytes: new Uint8Array(data) }),
        );
      }
    }
    const provider = new WebsocketProvider(
      `ws://127.0.0.1:${this.server.port}/seat/${seat.seatId}/doc`,
      document,
      doc,
      {
        disableBc: true,
        awareness,
        maxBackoffTime: 100,
        WebSocketPolyfill: SocketWithCookie as unknown as typeof globalThis.WebSocket,
      },
    );
    this.leave.push(() => {
      provider.destroy();
      doc.destroy();
    });
    return provider;
  }

  /** One of our own clients, frame by frame. */
  async client(seat: TakenSeat, document: DocumentName): Promise<Client> {
    const socket = new WebSocket(this.socketUrl(seat, document), [SUBPROTOCOL], { headers: { cookie: seat.cookie } });
    const client = new Client(socket);
    socket.on('message', (data: Buffer) =>
      this.frames.push({ seatId: seat.seatId, document, bytes: new Uint8Array(data) }),
    );
    this.leave.push(() => socket.terminate());
    await once(socket, 'open');
    return client;
  }

  /** The status an upgrade is refused with. */
  async refusedUpgrade(url: string, headers: Record<string, string>): Promise<number> {
    const socket = new WebSocket(url, { headers });
    socket.on('error', () => {});
    const [request, response] = await once(socket, 'unexpected-response');
    response.resume();
    request.destroy();
    return response.statusCode;
  }

  async close(): Promise<void> {
    for (const leave of this.leave) leave();
    await this.server.close();
    await rm(this.dataDirectory, { recursive: true, force: true });
  }
}

export async function scene(limits: Partial<Limits> = {}, more: Partial<ServerOptions> = {}): Promise<Scene> {
  const opened = new Scene(await mkdtemp(join(tmpdir(), 'enfilade-')), limits, more);
  await opened.open();
  onTestFinished(() => opened.close());
  return opened;
}

/** Speaks the protocol by hand and counts what it is told. */
export class Client {
  readonly socket: WebSocket;
  readonly doc = new Y.Doc();
  readonly notices: Notice[] = [];
  acknowledged = 0;
  acknowledgements: number[] = [];
  /** Updates and second steps received. */
  updatesReceived = 0;
  stepOnes = 0;
  closed: { code: number; reason: string } | null = null;
  private watchers: (() => void)[] = [];

  constructor(socket: WebSocket) {
    this.socket = socket;
    socket.on('message', (data: Buffer) => {
      this.receive(new Uint8Array(data));
      this.changed();
    });
    socket.on('close', (code, reason) => {
      this.closed = { code, reason: String(reason) };
      this.changed();
    });
    socket.on('error', () => {});
  }

  /** Resolves as soon as it holds; looks again after every frame and when the socket closes. */
  async when(holds: (client: this) => boolean): Promise<void> {
    while (!holds(this)) await new Promise<void>((look) => this.watchers.push(look));
  }

  sendUpdate(update: Uint8Array, step: 1 | 2 = 2): void {
    const encoder = encoding.createEncoder();
    encoding.writeVarUint(encoder, 0);
    encoding.writeVarUint(encoder, step);
    encoding.writeVarUint8Array(encoder, update);
    this.socket.send(encoding.toUint8Array(encoder));
  }

  /** Changes the document and sends each update that makes. */
  edit(change: (doc: Y.Doc) => void): void {
    const send = (update: Uint8Array): void => this.sendUpdate(update);
    this.doc.on('update', send);
    this.doc.transact(() => change(this.doc));
    this.doc.off('update', send);
  }

  sendStepOne(): void {
    const encoder = encoding.createEncoder();
    encoding.writeVarUint(encoder, 0);
    encoding.writeVarUint(encoder, 0);
    encoding.writeVarUint8Array(encoder, Y.encodeStateVector(this.doc));
    this.socket.send(encoding.toUint8Array(encoder));
  }

  sendPresence(client: number, clock: number, state: unknown): void {
    const inside = encoding.createEncoder();
    encoding.writeVarUint(inside, 1);
    encoding.writeVarUint(inside, client);
    encoding.writeVarUint(inside, clock);
    encoding.writeVarString(inside, JSON.stringify(state));
    const encoder = encoding.createEncoder();
    encoding.writeVarUint(encoder, 1);
    encoding.writeVarUint8Array(encoder, encoding.toUint8Array(inside));
    this.socket.send(encoding.toUint8Array(encoder));
  }

  protected onStepOne(_stateVector: Uint8Array): void {
    this.stepOnes += 1;
  }

  private receive(bytes: Uint8Array): void {
    const decoder = decoding.createDecoder(bytes);
    const type = decoding.readVarUint(decoder);
    if (type === 0) {
      const step = decoding.readVarUint(decoder);
      const content = decoding.readVarUint8Array(decoder);
      if (step === 0) {
        this.onStepOne(content);
        return;
      }
      this.updatesReceived += 1;
      Y.applyUpdate(this.doc, content);
    } else if (type === MESSAGE_ACKNOWLEDGED) {
      this.acknowledged = decoding.readVarUint(decoder);
      this.acknowledgements.push(this.acknowledged);
    } else if (type === MESSAGE_NOTICE) {
      this.notices.push(JSON.parse(decoding.readVarString(decoder)) as Notice);
    }
  }

  private changed(): void {
    const watchers = this.watchers;
    this.watchers = [];
    for (const look of watchers) look();
  }
}

/** Resolves as soon as it holds of a document; looks again after every change. */
export async function whenDoc(doc: Y.Doc, holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise<void>((look) => doc.once('update', () => look()));
}

export async function synced(provider: WebsocketProvider): Promise<void> {
  if (!provider.synced) await new Promise<void>((done) => provider.once('sync', () => done()));
}
