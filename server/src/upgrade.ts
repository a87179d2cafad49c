/** Who may open a socket to which document: asked before the upgrade, so that nobody else ever gets a frame. */
import type { IncomingMessage, Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { CLOSE, HELLO_EPOCH, HELLO_ROLE, HELLO_SCHEMA, SUBPROTOCOL } from '@enfilade/shared/protocol';
import { isDocumentName, mayRead, mayWrite, type Role } from '@enfilade/shared/seats';
import type { Logger } from 'pino';
import { WebSocketServer } from 'ws';
import { isSameOrigin } from './answers.ts';
import type { Meta } from './migrate.ts';
import type { House } from './routes.ts';
import { isOver, type SeatNews } from './seats.ts';
import { SeatSocket } from './socket.ts';

const REFUSED = {
  400: 'Bad Request',
  401: 'Unauthorized',
  403: 'Forbidden',
  404: 'Not Found',
  503: 'Service Unavailable',
} as const;

/** Why a page made for another schema, or holding another epoch's state, is not let in; null for a stock provider. */
function staleness(url: string, role: Role, { schemaVersion, epoch }: Meta): { code: number; reason: string } | null {
  const hello = new URL(url, 'http://here').searchParams;
  const differs = (name: string, ours: number | string): boolean => hello.has(name) && hello.get(name) !== String(ours);
  if (differs(HELLO_EPOCH, epoch)) return { code: CLOSE.otherEpoch, reason: 'restored from a copy: reload the page' };
  if (differs(HELLO_ROLE, role)) return { code: CLOSE.roleChanged, reason: CLOSED_BY['role changed'][1] };
  if (differs(HELLO_SCHEMA, schemaVersion)) return { code: CLOSE.olderSchema, reason: 'reload the page' };
  return null;
}

const CLOSED_BY = {
  'taken back': [CLOSE.notAdmitted, 'this seat was taken back'],
  over: [CLOSE.notAdmitted, 'the end of this invitation has come'],
  'role changed': [CLOSE.roleChanged, 'this seat has another role now'],
} as const satisfies Record<SeatNews, readonly [number, string]>;

/** Answers upgrades on the server; returns the way to close every socket. */
export function acceptSockets(server: Server, house: House, log: Logger): () => Promise<void> {
  const { limits, sessions, seats, counts } = house;
  const sockets = new WebSocketServer({
    noServer: true,
    maxPayload: limits.frameBytes,
    perMessageDeflate: false,
    handleProtocols: (offered) => (offered.has(SUBPROTOCOL) ? SUBPROTOCOL : false),
  });
  let closing = false;

  server.on('upgrade', (request: IncomingMessage, raw: Duplex, head: Buffer) => {
    // A peer that resets while it is being answered must not end the process.
    raw.on('error', () => raw.destroy());
    const refuse = (status: keyof typeof REFUSED): void => {
      log.info({ event: 'upgrade refused', status });
      raw.end(`HTTP/1.1 ${status} ${REFUSED[status]}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
    };
    if (closing) return refuse(503);
    const path = /^\/seat\/([^/?]+)\/doc\/([^/?]+)(?:\?|$)/.exec(request.url ?? '');
    const [, seatId, name] = path ?? [];
    if (seatId === undefined || name === undefined || !isDocumentName(name)) return refuse(404);
    if (!isSameOrigin(request, house.allowedOrigins)) return refuse(403);
    const seat = seats.seatOf(seatId, request.headers.cookie);
    if (seat === undefined) return refuse(401);
    const { person } = seat;
    const { role } = person;
    if (!mayRead(role, name)) return refuse(403);
    const stale = staleness(request.url ?? '', role, house.meta);
    sockets.handleUpgrade(request, raw, head, (socket) => {
      if (stale !== null) {
        // Let in only to be told why: a browser is not told the status of a refused upgrade.
        socket.on('error', () => {});
        socket.close(stale.code, stale.reason);
        log.info({ event: 'stale page', seat: seat.id, document: name, code: stale.code });
        return;
      }
      const about = {
        seatId: seat.id,
        person,
        get mayWrite() {
          const now = seats.get(seat.id);
          return now !== undefined && !isOver(now) && mayWrite(now.person.role, name, sessions.powerSettings);
        },
      };
      const own = new SeatSocket(socket, raw, sessions.get(name), about, limits, counts);
      sessions.sockets.add(own);
      log.info({ event: 'socket open', seat: seat.id, document: name });
      socket.on('close', (code) => {
        sessions.sockets.delete(own);
        log.info({ event: 'socket closed', seat: seat.id, document: name, code });
      });
      const reason = sessions.commit.readOnly;
      if (reason !== null) own.notice({ kind: 'read-only', reason });
    });
  });

  const heartbeat = setInterval(() => {
    seats.endWhatIsOver();
    for (const socket of sessions.sockets) socket.heartbeat();
  }, limits.heartbeatMs);
  heartbeat.unref();

  seats.onNews((seatId, news) => {
    const [code, reason] = CLOSED_BY[news];
    for (const socket of sessions.sockets) if (socket.seatId === seatId) socket.close(code, reason);
  });

  return async () => {
    closing = true;
    clearInterval(heartbeat);
    const open = [...sockets.clients];
    const gone = Promise.all(open.map((socket) => new Promise((done) => socket.once('close', done))));
    for (const socket of sessions.sockets) socket.close(CLOSE.goingAway, 'the server is stopping');
    await gone;
  };
}
