/** One document's socket: a stock y-websocket provider that also knows what the server has in its log. */
import {
  CLOSE,
  MESSAGE_ACKNOWLEDGED,
  MESSAGE_NOTICE,
  MESSAGE_SYNC,
  type Notice,
  SUBPROTOCOL,
} from '@enfilade/shared/protocol';
import type { DocumentName } from '@enfilade/shared/seats';
import * as decoding from 'lib0/decoding';
import type { Awareness } from 'y-protocols/awareness';
import { WebsocketProvider } from 'y-websocket';
import type * as Y from 'yjs';

const SYNC_STEP_2 = 1;
const SYNC_UPDATE = 2;

/** Close codes after which asking again would be refused again. */
const FINAL_CODES: ReadonlySet<number> = new Set([CLOSE.notAdmitted, CLOSE.notAllowed, CLOSE.olderSchema]);

export interface LinkState {
  readonly connected: boolean;
  readonly synced: boolean;
  /** Something of ours is not yet known to be in the server's log. */
  readonly unsaved: boolean;
  readonly readOnly: string | null;
  readonly refused: string | null;
}

export class DocumentLink {
  readonly name: DocumentName;
  readonly provider: WebsocketProvider;
  private readonly changed: () => void;
  private framesSent = 0;
  private framesAcknowledged = 0;
  private unsaved = false;
  private readOnly: string | null = null;
  private refused: string | null = null;

  constructor(name: DocumentName, doc: Y.Doc, address: string, awareness: Awareness | undefined, changed: () => void) {
    this.name = name;
    this.changed = changed;
    const countSent = (bytes: Uint8Array): void => {
      if (bytes[0] === MESSAGE_SYNC && (bytes[1] === SYNC_STEP_2 || bytes[1] === SYNC_UPDATE)) this.framesSent += 1;
    };
    const opened = (): void => {
      this.framesSent = 0;
      this.framesAcknowledged = 0;
    };
    // Counting at the socket is the one place that sees every frame the provider decides to send.
    class CountingSocket extends WebSocket {
      constructor(url: string | URL, protocols?: string | string[]) {
        super(url, protocols);
        opened();
      }
      override send(data: Parameters<WebSocket['send']>[0]): void {
        if (data instanceof Uint8Array) countSent(data);
        super.send(data);
      }
    }
    this.provider = new WebsocketProvider(address, name, doc, {
      protocols: [SUBPROTOCOL],
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
      else this.refused = notice.reason;
      this.changed();
    };
    doc.on('update', (_update: Uint8Array, origin: unknown) => {
      if (origin === this.provider) return;
      this.unsaved = true;
      this.changed();
    });
    this.provider.on('status', () => this.changed());
    this.provider.on('sync', () => this.changed());
    this.provider.on('connection-close', (event: { code?: number; reason?: string } | null) => {
      if (event?.code !== undefined && FINAL_CODES.has(event.code)) {
        this.refused = event.reason || 'the server has closed this seat';
        this.provider.shouldConnect = false;
      }
      this.changed();
    });
  }

  get state(): LinkState {
    return {
      connected: this.provider.wsconnected,
      synced: this.provider.synced,
      unsaved: this.unsaved,
      readOnly: this.readOnly,
      refused: this.refused,
    };
  }

  private settle(): void {
    if (this.provider.synced && this.framesAcknowledged >= this.framesSent) this.unsaved = false;
    this.changed();
  }
}
