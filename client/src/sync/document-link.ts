/** One document's socket: a stock y-websocket provider that also knows what the server has in its log. */
import {
  CLOSE,
  HELLO_EPOCH,
  HELLO_ROLE,
  HELLO_SCHEMA,
  MESSAGE_ACKNOWLEDGED,
  MESSAGE_HELLO,
  MESSAGE_NOTICE,
  MESSAGE_SYNC,
  type Me,
  type Notice,
  SUBPROTOCOL,
} from '@enfilade/shared/protocol';
import { SCHEMA_VERSION } from '@enfilade/shared/schema';
import type { DocumentName } from '@enfilade/shared/seats';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import type { Awareness } from 'y-protocols/awareness';
import { WebsocketProvider } from 'y-websocket';
import type * as Y from 'yjs';

const SYNC_STEP_2 = 1;
const SYNC_UPDATE = 2;

/** Why this page is not connected any more and will not be, for the person before it. */
export interface Closing {
  readonly strong: string;
  readonly reason: string;
  /** What the page holds must go: for good, or to be fetched anew under another role. */
  readonly discard?: 'gone' | 'anew';
}

export const SEAT_GONE: Closing = {
  discard: 'gone',
  strong: 'This seat is no longer valid.',
  reason:
    'It was taken back, its end has come, or this browser does not hold it any more. Ask whoever invited you for a new link.',
};
export const SEAT_CHANGED: Closing = {
  discard: 'anew',
  strong: 'Your role has changed.',
  reason: 'What this seat may read or change is different now.',
};
export const OLDER_PAGE: Closing = {
  strong: 'This page is older than the server.',
  reason: 'Reload the page to go on.',
};
export const RESTORED: Closing = {
  strong: 'The show was brought back from a copy.',
  reason: 'This page still shows it as it was before. Reload the page to go on from the copy.',
};

/** The standard's code for a frame larger than is taken. */
const MESSAGE_TOO_BIG = 1009;
const TOO_LARGE: Closing = {
  strong: 'Too large to be taken.',
  reason:
    'This page sent more in one piece than the server takes, and was disconnected. Load the page again and do it in smaller parts.',
};

/** Close codes after which asking again would be refused again. */
const FINAL: ReadonlyMap<number, Closing> = new Map([
  [CLOSE.notAdmitted, SEAT_GONE],
  [
    CLOSE.notAllowed,
    {
      discard: 'anew',
      strong: 'This page has to be opened anew.',
      reason: 'The server took what it writes for another person’s.',
    },
  ],
  [CLOSE.roleChanged, SEAT_CHANGED],
  [CLOSE.olderSchema, OLDER_PAGE],
  [CLOSE.otherEpoch, RESTORED],
  [CLOSE.tooLarge, TOO_LARGE],
  [MESSAGE_TOO_BIG, TOO_LARGE],
  [
    CLOSE.tooFast,
    {
      strong: 'Too much in too short a time.',
      reason:
        'This page sent more than the server takes from one seat, and was disconnected so that the others can go on. Load the page again.',
    },
  ],
  [
    CLOSE.malformed,
    {
      strong: 'The server could not read this page.',
      reason: 'Something it sent did not come whole, and it was disconnected. Load the page again.',
    },
  ],
]);

/** What the link is told about its seat, and asks about it. */
export interface LinkSeat {
  /** Where the sockets are: `ws(s)://host/seat/<id>/doc`. */
  readonly address: string;
  readonly me: Me;
  /** This page begins with work that was kept on this device and never sent. */
  readonly beginsUnsent: boolean;
  /** Whether a change came from this device's own copy. */
  isFromCopy(origin: unknown): boolean;
  /** Asked when the server refuses a socket without a word: why, or null when it may be tried again. */
  closingNow(): Promise<Closing | null>;
  changed(): void;
}

export interface LinkState {
  readonly connected: boolean;
  readonly synced: boolean;
  /** Something of ours is not yet known to be in the server's log. */
  readonly unsaved: boolean;
  readonly readOnly: string | null;
  /** Something was refused, or is about to be; the socket stays. */
  readonly told: Closing | null;
  readonly closing: Closing | null;
}

function helloOf(clientId: number): Uint8Array<ArrayBuffer> {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, MESSAGE_HELLO);
  encoding.writeVarUint(encoder, clientId);
  return encoding.toUint8Array(encoder);
}

export class DocumentLink {
  readonly name: DocumentName;
  readonly provider: WebsocketProvider;
  private readonly changed: () => void;
  private framesSent = 0;
  private framesAcknowledged = 0;
  private unsaved = false;
  private readOnly: string | null = null;
  private told: Closing | null = null;
  private closing: Closing | null = null;

  constructor(name: DocumentName, doc: Y.Doc, seat: LinkSeat, awareness: Awareness | undefined) {
    this.name = name;
    this.changed = () => seat.changed();
    this.unsaved = seat.beginsUnsent;
    let everOpened = false;
    const countSent = (bytes: Uint8Array): void => {
      if (bytes[0] === MESSAGE_SYNC && (bytes[1] === SYNC_STEP_2 || bytes[1] === SYNC_UPDATE)) this.framesSent += 1;
    };
    const begun = (): void => {
      this.framesSent = 0;
      this.framesAcknowledged = 0;
      everOpened = false;
      // A server that cannot write says so to every new socket.
      this.readOnly = null;
    };
    const opened = (event: Event): void => {
      everOpened = true;
      // Before anything the provider sends: from here on nobody else may write under this page's client id.
      (event.target as CountingSocket).send(helloOf(doc.clientID));
    };
    // Counting at the socket is the one place that sees every frame the provider decides to send.
    class CountingSocket extends WebSocket {
      constructor(url: string | URL, protocols?: string | string[]) {
        super(url, protocols);
        begun();
        this.addEventListener('open', opened);
      }
      override send(data: Parameters<WebSocket['send']>[0]): void {
        if (data instanceof Uint8Array) countSent(data);
        super.send(data);
      }
    }
    this.provider = new WebsocketProvider(seat.address, name, doc, {
      protocols: [SUBPROTOCOL],
      params: {
        [HELLO_SCHEMA]: String(SCHEMA_VERSION),
        [HELLO_EPOCH]: String(seat.me.epoch),
        [HELLO_ROLE]: seat.me.person.role,
      },
      shouldReconnect: ({ code }) => !FINAL.has(code),
      disableBc: true,
      maxBackoffTime: 2500,
      WebSocketPolyfill: CountingSocket as unknown as typeof WebSocket,
      ...(awareness === undefined ? {} : { awareness }),
    });
    if (awareness === undefined) this.provider.awareness.setLocalState(null);
    this.provider.messageHandlers[MESSAGE_ACKNOWLEDGED] = (_encoder, decoder) => {
      this.framesAcknowledged = decoding.readVarUint(decoder);
      this.settle();
    };
    this.provider.messageHandlers[MESSAGE_NOTICE] = (_encoder, decoder) => {
      const notice = JSON.parse(decoding.readVarString(decoder)) as Notice;
      if (notice.kind === 'read-only') this.readOnly = notice.reason;
      else if (notice.kind === 'writable') this.readOnly = null;
      else if (notice.kind === 'refused') this.told = { strong: 'Not taken.', reason: notice.reason, discard: 'anew' };
      else this.told = { strong: 'Nearly full.', reason: notice.reason };
      this.changed();
    };
    doc.on('update', (_update: Uint8Array, origin: unknown) => {
      if (origin === this.provider || seat.isFromCopy(origin)) return;
      this.unsaved = true;
      this.changed();
    });
    this.provider.on('status', () => this.changed());
    this.provider.on('sync', () => this.changed());
    this.provider.on('connection-close', (event: { code?: number; reason?: string } | null) => {
      const closing = FINAL.get(event?.code ?? 0);
      if (closing !== undefined) this.end(closing);
      // A browser is not told why an upgrade was refused: the seat is asked about over HTTP instead.
      else if (!everOpened) void seat.closingNow().then((found) => found !== null && this.end(found));
      this.changed();
    });
  }

  get state(): LinkState {
    return {
      connected: this.provider.wsconnected,
      synced: this.provider.synced,
      unsaved: this.unsaved,
      readOnly: this.readOnly,
      told: this.told,
      closing: this.closing,
    };
  }

  private end(closing: Closing): void {
    this.closing = closing;
    this.stop();
    this.changed();
  }

  /** Another document's link has heard that the seat is closed. */
  stop(): void {
    this.provider.shouldConnect = false;
    this.provider.disconnect();
  }

  private settle(): void {
    if (this.provider.synced && this.framesAcknowledged >= this.framesSent) this.unsaved = false;
    this.changed();
  }
}
