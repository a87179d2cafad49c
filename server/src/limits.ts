import { PICTURE_AT_MOST } from '@enfilade/shared/protocol';

/** What the server takes from one socket, one document, one request. Own rules, each with its reason. */
export interface Limits {
  /** One frame, bytes. A whole import of 5,000 records is one frame of two to three megabytes. */
  readonly frameBytes: number;
  /** One frame of presence, bytes. A drag of 300 pieces takes about 20,000. */
  readonly awarenessBytes: number;
  /** Frames a second from one socket, and how many may come at once. A drag with its echoes takes about 90. */
  readonly framesPerSecond: number;
  readonly framesAtOnce: number;
  /** Bytes a second from one socket, and how many may come at once. */
  readonly bytesPerSecond: number;
  readonly bytesAtOnce: number;
  /** Bytes not yet taken by a slow client before its socket is closed; more than any document takes to arrive. */
  readonly unsentBytes: number;
  /** Updates of one document that may wait for predecessors that never came. */
  readonly pendingUpdates: number;
  readonly pendingBytes: number;
  /** Snapshot and log of one document together. */
  readonly documentBytes: number;
  /** Least time between two tellings of who is where in a document, ms: two frames of a 60 Hz screen. */
  readonly tickMs: number;
  /** Updates, and bytes of updates, after which the log is compacted. */
  readonly compactAfterUpdates: number;
  readonly compactAfterBytes: number;
  /** How often a log that could not be written is tried again, ms. */
  readonly retryMs: number;
  /** How often a socket is asked whether it is alive, ms; a stock provider gives up after 30,000 of silence. */
  readonly heartbeatMs: number;
  /** One picture as sent, bytes; and as decoded, pixels. */
  readonly pictureBytes: number;
  readonly picturePixels: number;
  /** Records of the museum's whole collection; four times the largest it is measured with. */
  readonly collectionRecords: number;
}

export const DEFAULT_LIMITS: Limits = {
  frameBytes: 16 << 20,
  awarenessBytes: 64 << 10,
  framesPerSecond: 400,
  framesAtOnce: 2000,
  bytesPerSecond: 4 << 20,
  bytesAtOnce: 48 << 20,
  unsentBytes: 32 << 20,
  pendingUpdates: 64,
  pendingBytes: 4 << 20,
  documentBytes: 256 << 20,
  tickMs: 33,
  compactAfterUpdates: 2000,
  compactAfterBytes: 8 << 20,
  retryMs: 1000,
  heartbeatMs: 12_000,
  pictureBytes: PICTURE_AT_MOST.bytes,
  picturePixels: PICTURE_AT_MOST.pixels,
  collectionRecords: 400_000,
};

/** A bucket that fills at a steady rate: `take` says whether so much may be taken now. */
export class Allowance {
  private left: number;
  private at: number;
  private readonly perSecond: number;
  private readonly atOnce: number;

  constructor(perSecond: number, atOnce: number, now = performance.now()) {
    this.perSecond = perSecond;
    this.atOnce = atOnce;
    this.left = atOnce;
    this.at = now;
  }

  take(amount: number, now = performance.now()): boolean {
    this.left = Math.min(this.atOnce, this.left + ((now - this.at) / 1000) * this.perSecond);
    this.at = now;
    if (amount > this.left) return false;
    this.left -= amount;
    return true;
  }
}
