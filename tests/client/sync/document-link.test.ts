import { type Closing, DocumentLink, type LinkSeat, SEAT_GONE } from '@enfilade/client/sync/document-link';
import { CLOSE, MESSAGE_HELLO, type Me } from '@enfilade/shared/protocol';
import * as decoding from 'lib0/decoding';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import * as Y from 'yjs';

const ME: Me = {
  seatId: 's',
  person: { id: 'castellane', name: 'Dov Castellane', role: 'curator' },
  schemaVersion: 1,
  epoch: 7,
};

/** A browser's socket whose server is the test. */
class TestSocket extends EventTarget {
  static made: TestSocket[] = [];
  readonly url: string;
  readonly OPEN = 1;
  binaryType = 'arraybuffer';
  readyState = 0;
  onopen: (() => void) | null = null;
  onclose: ((event: { code: number; reason: string }) => void) | null = null;
  onerror: ((event: unknown) => void) | null = null;
  onmessage: ((event: unknown) => void) | null = null;
  constructor(url: string) {
    super();
    this.url = url;
    TestSocket.made.push(this);
  }
  readonly sent: Uint8Array[] = [];
  send(bytes: Uint8Array): void {
    this.sent.push(bytes);
  }
  close(): void {}
  opens(): void {
    this.readyState = 1;
    this.dispatchEvent(new Event('open'));
    this.onopen?.();
  }
  ends(code: number): void {
    this.readyState = 3;
    this.onclose?.({ code, reason: '' });
  }
}

function link(closingNow: () => Promise<Closing | null> = async () => null): DocumentLink {
  const seat: LinkSeat = {
    address: 'ws://here/seat/s/doc',
    me: ME,
    beginsUnsent: false,
    isFromCopy: () => false,
    closingNow,
    changed: () => {},
  };
  const doc = new Y.Doc();
  const made = new DocumentLink('checklist', doc, seat, undefined);
  made.provider.connect();
  return made;
}

const last = (): TestSocket => TestSocket.made.at(-1) as TestSocket;

beforeEach(() => {
  vi.useFakeTimers();
  TestSocket.made = [];
  vi.stubGlobal('WebSocket', TestSocket);
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('law: after a close that is final no socket is opened again, and the person is told why in words', async () => {
  const codes = [
    CLOSE.tooLarge,
    CLOSE.tooFast,
    CLOSE.notAdmitted,
    CLOSE.notAllowed,
    CLOSE.roleChanged,
    CLOSE.olderSchema,
    CLOSE.otherEpoch,
    CLOSE.malformed,
    1009,
  ];
  for (const code of codes) {
    const { provider } = link();
    const socket = last();
    const count = TestSocket.made.length;
    socket.opens();
    socket.ends(code);
    await vi.advanceTimersByTimeAsync(60_000);
    expect([code, TestSocket.made.length]).toEqual([code, count]);
    provider.destroy();
  }
  const said = link();
  last().opens();
  last().ends(CLOSE.olderSchema);
  expect(said.state.closing).toEqual({
    strong: 'This page is older than the server.',
    reason: 'Reload the page to go on.',
  });
  said.provider.destroy();
});

test('law: after any other close, and after a server that is away, it is tried again', async () => {
  for (const code of [1001, 1006, 1013]) {
    const made = link();
    const count = TestSocket.made.length;
    last().opens();
    last().ends(code);
    await vi.advanceTimersByTimeAsync(5000);
    expect(TestSocket.made.length).toBeGreaterThan(count);
    expect(made.state.closing).toBeNull();
    made.provider.destroy();
  }
});

test('story: the server refuses the upgrade without a word: the seat is asked about once, and is said to be no longer valid', async () => {
  let asked = 0;
  const made = link(async () => {
    asked += 1;
    return SEAT_GONE;
  });
  last().ends(1006);
  await vi.advanceTimersByTimeAsync(60_000);
  expect([asked, TestSocket.made.length]).toEqual([1, 1]);
  expect(made.state.closing?.strong).toBe('This seat is no longer valid.');
  made.provider.destroy();
});

test('law: the first frame says which client id this page writes under', () => {
  const made = link();
  last().opens();
  const [first] = last().sent;
  const decoder = decoding.createDecoder(first as Uint8Array);
  expect([decoding.readVarUint(decoder), decoding.readVarUint(decoder)]).toEqual([
    MESSAGE_HELLO,
    made.provider.doc.clientID,
  ]);
  made.provider.destroy();
});

test('law: the address says what schema and epoch the page was made for', () => {
  const made = link();
  expect(last().url).toMatch(/\?schema=\d+&epoch=7(&|$)/);
  made.provider.destroy();
});
