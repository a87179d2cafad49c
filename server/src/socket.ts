/** One socket of one seat in one document: frames in, frames out, and what of it is in the log. */
import type { Duplex } from 'node:stream';
import {
  CLOSE,
  MESSAGE_ACKNOWLEDGED,
  MESSAGE_AWARENESS,
  MESSAGE_HELLO,
  MESSAGE_NOTICE,
  MESSAGE_QUERY_AWARENESS,
  MESSAGE_SYNC,
  type Notice,
} from '@enfilade/shared/protocol';
import type { Person } from '@enfilade/shared/seats';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import type { WebSocket } from 'ws';
import { Allowance, type Limits } from './limits.ts';
import type { Member, Session } from './session.ts';

const SYNC_STEP_1 = 0;
const SYNC_STEP_2 = 1;
const SYNC_UPDATE = 2;

/** Standard code for "try again later": a provider comes back by itself. */
const SLOW = 1013;

/** Presence travels with one document only. */
const PRESENCE_DOCUMENT = 'hang';

const SILENCE = frame(MESSAGE_AWARENESS, (encoder) => encoding.writeVarUint8Array(encoder, Uint8Array.of(0)));

function frame(type: number, write: (encoder: encoding.Encoder) => void): Uint8Array {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, type);
  write(encoder);
  return encoding.toUint8Array(encoder);
}

/** The frame of one update or presence, made once for all who are told the same, one after another. */
function sharedFrame(make: (content: Uint8Array) => Uint8Array): (content: Uint8Array) => Uint8Array {
  let last: { content: Uint8Array; bytes: Uint8Array } | null = null;
  return (content) => {
    if (last === null || last.content !== content) last = { content, bytes: make(content) };
    return last.bytes;
  };
}

const updateFrame = sharedFrame((update) =>
  frame(MESSAGE_SYNC, (encoder) => {
    encoding.writeVarUint(encoder, SYNC_UPDATE);
    encoding.writeVarUint8Array(encoder, update);
  }),
);
const presenceFrame = sharedFrame((update) =>
  frame(MESSAGE_AWARENESS, (encoder) => encoding.writeVarUint8Array(encoder, update)),
);

export interface SocketCounts {
  framesIn: number;
  framesOut: number;
  closedForFault: number;
}

/** Who sits at a socket. `mayWrite` is asked anew for every update: powers change while sockets are open. */
export interface SeatOfSocket {
  readonly seatId: string;
  readonly person: Person;
  readonly mayWrite: boolean;
}

/** A stream that can keep back what is written until it is let go. */
export type Corked = Pick<Duplex, 'cork' | 'uncork'>;

export class SeatSocket implements Member {
  readonly seatId: string;
  readonly person: Person;
  private readonly seat: SeatOfSocket;
  private greeted: number | null = null;
  private readonly socket: WebSocket;
  /** What the socket runs on. */
  private readonly stream: Corked;
  private readonly session: Session;
  private readonly limits: Limits;
  private readonly counts: SocketCounts;
  private readonly frames: Allowance;
  private readonly bytes: Allowance;
  /** Update-bearing frames received, and those of which all that came before is in the log. */
  private received = 0;
  private settled = 0;
  private told = 0;
  /** The first frame that was dropped and not yet made good by a later sync step 2. */
  private dropped: number | null = null;
  private madeGoodBy: 'nothing' | 'step 2' = 'nothing';
  private telling = false;
  private gathering = false;
  private alive = true;

  constructor(
    socket: WebSocket,
    stream: Corked,
    session: Session,
    seat: SeatOfSocket,
    limits: Limits,
    counts: SocketCounts,
  ) {
    this.socket = socket;
    this.stream = stream;
    this.session = session;
    this.seatId = seat.seatId;
    this.person = seat.person;
    this.seat = seat;
    this.limits = limits;
    this.counts = counts;
    this.frames = new Allowance(limits.framesPerSecond, limits.framesAtOnce);
    this.bytes = new Allowance(limits.bytesPerSecond, limits.bytesAtOnce);
    socket.on('message', (data: Buffer, isBinary: boolean) => this.receive(data, isBinary));
    socket.on('pong', () => {
      this.alive = true;
    });
    // A broken frame: ws has chosen a close code; without a listener the process would end.
    socket.on('error', () => {
      counts.closedForFault += 1;
    });
    socket.on('close', () => session.leave(this));
    this.askForWhatIsMissing();
    session.join(this);
  }

  /** As powers stand now. */
  get mayWrite(): boolean {
    return this.seat.mayWrite;
  }

  get open(): boolean {
    return this.socket.readyState === this.socket.OPEN;
  }

  tellUpdate(update: Uint8Array): void {
    this.send(updateFrame(update));
  }

  tellPresence(update: Uint8Array): void {
    this.send(presenceFrame(update));
  }

  /** To our own clients only: a stock provider knows no notices. */
  notice(notice: Notice): void {
    if (this.socket.protocol === '') return;
    this.send(frame(MESSAGE_NOTICE, (encoder) => encoding.writeVarString(encoder, JSON.stringify(notice))));
  }

  /** After frames were dropped: the client is asked for everything it has and we have not. */
  recover(): void {
    this.madeGoodBy = 'step 2';
    this.askForWhatIsMissing();
  }

  /** Ends a socket that has not answered since the last time; keeps a stock provider from giving up in a silence. */
  heartbeat(): void {
    if (!this.alive) {
      this.socket.terminate();
      return;
    }
    this.alive = false;
    if (!this.open) return;
    this.socket.ping();
    this.send(SILENCE);
  }

  close(code: number, reason: string): void {
    if (code >= 4000 || code === SLOW) this.counts.closedForFault += 1;
    this.socket.close(code, reason);
    // Whoever does not read does not answer a close either.
    setTimeout(() => this.socket.terminate(), 2000).unref();
  }

  private receive(data: Buffer, isBinary: boolean): void {
    if (!this.open) return;
    this.counts.framesIn += 1;
    if (!this.frames.take(1) || !this.bytes.take(data.length)) {
      this.close(CLOSE.tooFast, 'more than one socket may send in this time');
      return;
    }
    try {
      if (!isBinary) throw new TypeError('a text frame');
      // A copy: the log keeps these bytes, and ws may use its buffer again.
      const decoder = decoding.createDecoder(new Uint8Array(data));
      const type = decoding.readVarUint(decoder);
      if (type === MESSAGE_SYNC) this.sync(decoder);
      else if (type === MESSAGE_AWARENESS) this.awareness(decoding.readVarUint8Array(decoder));
      else if (type === MESSAGE_HELLO) this.hello(decoding.readVarUint(decoder));
      else if (type === MESSAGE_QUERY_AWARENESS) this.tellEverybody();
      else throw new TypeError(`message type ${type}`);
    } catch {
      this.close(CLOSE.malformed, 'a frame that does not parse');
    }
  }

  private sync(decoder: decoding.Decoder): void {
    const step = decoding.readVarUint(decoder);
    const content = decoding.readVarUint8Array(decoder);
    if (step === SYNC_STEP_1) {
      const update = this.session.answerTo(content);
      this.send(
        frame(MESSAGE_SYNC, (encoder) => {
          encoding.writeVarUint(encoder, SYNC_STEP_2);
          encoding.writeVarUint8Array(encoder, update);
        }),
      );
      return;
    }
    if (step !== SYNC_STEP_2 && step !== SYNC_UPDATE) throw new TypeError(`sync step ${step}`);
    this.received += 1;
    const index = this.received;
    const makesGood = step === SYNC_STEP_2 && this.madeGoodBy === 'step 2' ? this.dropped : null;
    const verdict = this.session.take(this, content, () => this.settle(index, makesGood));
    if (verdict === null) return;
    this.dropped ??= index;
    if (verdict === 'read-only') {
      this.madeGoodBy = 'nothing';
      return;
    }
    if (verdict.kind === 'refuse') this.notice({ kind: 'refused', reason: verdict.reason });
    else if (verdict.kind === 'close') this.close(verdict.code, verdict.reason);
  }

  private hello(client: number): void {
    if (this.greeted !== null && this.greeted !== client) throw new TypeError('a second hello');
    this.greeted = client;
    if (!this.session.greet(this, client)) this.close(CLOSE.notAllowed, 'this client id is another person’s');
  }

  private settle(index: number, makesGood: number | null): void {
    if (makesGood !== null && this.dropped === makesGood) {
      this.dropped = null;
      this.madeGoodBy = 'nothing';
    }
    this.settled = index;
    if (this.telling) return;
    this.telling = true;
    queueMicrotask(() => {
      this.telling = false;
      const count = this.dropped === null ? this.settled : Math.min(this.settled, this.dropped - 1);
      if (count <= this.told || this.socket.protocol === '') return;
      this.told = count;
      this.send(frame(MESSAGE_ACKNOWLEDGED, (encoder) => encoding.writeVarUint(encoder, count)));
    });
  }

  private awareness(update: Uint8Array): void {
    if (update.length > this.limits.awarenessBytes) {
      this.close(CLOSE.tooLarge, 'more presence than fits');
      return;
    }
    if (this.session.name === PRESENCE_DOCUMENT) this.session.takePresence(this, update);
  }

  private tellEverybody(): void {
    const here = this.session.presence.toUpdate(this.session.presence.clients(), this);
    if (here !== null) this.tellPresence(here);
  }

  private askForWhatIsMissing(): void {
    const stateVector = this.session.stateVector();
    this.send(
      frame(MESSAGE_SYNC, (encoder) => {
        encoding.writeVarUint(encoder, SYNC_STEP_1);
        encoding.writeVarUint8Array(encoder, stateVector);
      }),
    );
  }

  private send(bytes: Uint8Array): void {
    if (!this.open) return;
    if (this.socket.bufferedAmount > this.limits.unsentBytes) {
      this.close(SLOW, 'this connection takes less than is sent');
      return;
    }
    this.counts.framesOut += 1;
    this.gather();
    this.socket.send(bytes);
  }

  /** What is sent in one turn leaves as one write: most of what a small frame costs is the call of the system. */
  private gather(): void {
    if (this.gathering) return;
    this.gathering = true;
    this.stream.cork();
    process.nextTick(() => {
      this.gathering = false;
      this.stream.uncork();
    });
  }
}
