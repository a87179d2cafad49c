/**
 * The peer: the same protocol over the same ws, each message applied and passed on to everybody by itself, nothing
 * written to a disk, nobody asked who they are. The algorithm of the published server of this protocol.
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { WebSocketServer } from 'ws';
import * as awareness from 'y-protocols/awareness';
import * as sync from 'y-protocols/sync';
import * as Y from 'yjs';

const doc = new Y.Doc();
const here = new awareness.Awareness(doc);
here.setLocalState(null);
const http = createServer();
const sockets = new WebSocketServer({ server: http, perMessageDeflate: false });
const tell = (type: number, write: (encoder: encoding.Encoder) => void): void => {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, type);
  write(encoder);
  const bytes = encoding.toUint8Array(encoder);
  for (const socket of sockets.clients) if (socket.readyState === socket.OPEN) socket.send(bytes);
};
doc.on('update', (update: Uint8Array) => tell(0, (encoder) => sync.writeUpdate(encoder, update)));
here.on('update', ({ added, updated, removed }: { added: number[]; updated: number[]; removed: number[] }) => {
  const changed = [...added, ...updated, ...removed];
  tell(1, (encoder) => encoding.writeVarUint8Array(encoder, awareness.encodeAwarenessUpdate(here, changed)));
});
sockets.on('connection', (socket) => {
  socket.on('error', () => {});
  socket.on('message', (data: Buffer) => {
    const decoder = decoding.createDecoder(new Uint8Array(data));
    if (decoding.readVarUint(decoder) === 0) {
      const encoder = encoding.createEncoder();
      encoding.writeVarUint(encoder, 0);
      sync.readSyncMessage(decoder, encoder, doc, socket);
      if (encoding.length(encoder) > 1) socket.send(encoding.toUint8Array(encoder));
    } else awareness.applyAwarenessUpdate(here, decoding.readVarUint8Array(decoder), socket);
  });
});
process.on('message', (asked) => {
  if (asked === 'cpu') process.send?.({ cpu: process.cpuUsage() });
  else process.exit(0);
});
http.listen(0, '127.0.0.1', () => {
  process.send?.({ url: `ws://127.0.0.1:${(http.address() as AddressInfo).port}/hang`, cookie: '' });
});
