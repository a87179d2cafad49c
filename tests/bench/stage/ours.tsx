/** The stage itself, on a session that lives in this page: its own documents, no socket. */

import { createElement } from 'react';
import { createRoot } from 'react-dom/client';
import * as Y from 'yjs';
import { Stage } from '../../../client/src/stage/stage.tsx';
import { ShowContext } from '../../../client/src/sync/hooks.ts';
import { benchObjects, MESSAGES, remoteMove, WALL, WINDOW } from './objects.ts';
import { commandsFor } from './show-in-page.ts';

const objects = benchObjects();
const { show, documents } = commandsFor(objects);
const hang = documents.doc('hang') as Y.Doc;
const messages = messagesFrom(hang);
const root = document.getElementById('root') as HTMLElement;
createRoot(root).render(
  createElement(
    ShowContext,
    { value: show },
    createElement(Stage, {
      view: { sheet: 'wall', surface: 'hall:head' },
      insets: { left: 0, right: 0, top: 0, bottom: 0 },
    }),
  ),
);

const element = (): HTMLElement => document.querySelector('.stage') as HTMLElement;
const probe = () => window.enfiladeProbe;

/** The hand as the stage hears it. */
function pointer(type: string, x: number, y: number, buttons: number): void {
  const at = { bubbles: true, clientX: x, clientY: y, pointerId: 1, pointerType: 'mouse', button: 0, buttons };
  element().dispatchEvent(new PointerEvent(type, at));
}

function wheel(deltaX: number, deltaY: number, ctrlKey = false): void {
  const at = {
    bubbles: true,
    cancelable: true,
    clientX: WINDOW.width / 2,
    clientY: WINDOW.height / 2,
    deltaX,
    deltaY,
    ctrlKey,
  };
  element().dispatchEvent(new WheelEvent('wheel', at));
}

const held = objects[1500] as (typeof objects)[number];
let start = { x: 0, y: 0 };

/** As another seat would send them: it had the same document, and moved one thing after another. */
function messagesFrom(doc: Y.Doc): Uint8Array[] {
  const sender = new Y.Doc();
  Y.applyUpdate(sender, Y.encodeStateAsUpdate(doc));
  const sent: Uint8Array[] = [];
  sender.on('update', (update: Uint8Array) => sent.push(update));
  for (let n = 0; n < MESSAGES; n++) {
    const { id, xMm, yMm } = remoteMove(objects, n);
    sender.getMap('places').set(`${id}#1`, ['hall:head', xMm, yMm, 0, 0]);
  }
  return sent;
}

window.bench = {
  ready: (async () => {
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    while (probe() === undefined) await frame();
    // A pointer made by a script cannot be captured.
    element().setPointerCapture = () => {};
    await probe()?.idle();
  })(),
  look(at) {
    element().dispatchEvent(new KeyboardEvent('keydown', { key: '0' }));
    if (at === 'wall') wheel(0, -240 * Math.log(WALL.widthMm / 6000), true);
  },
  pan: (dx, dy) => wheel(-dx, -dy),
  dragStart() {
    const at = probe()?.screenRectOf(`${held.id}#1`);
    start = { x: (at?.x ?? 0) + (at?.width ?? 0) / 2, y: (at?.y ?? 0) + (at?.height ?? 0) / 2 };
    pointer('pointerdown', start.x, start.y, 1);
  },
  dragTo: (step) => pointer('pointermove', start.x + Math.sin(step / 9) * 200, start.y + Math.cos(step / 7) * 120, 1),
  dragEnd: () => pointer('pointerup', start.x, start.y, 0),
  remote(n) {
    const message = messages[n % messages.length];
    if (message !== undefined) Y.applyUpdate(hang, message, 'another seat');
  },
  drawn: () => probe()?.frames() ?? 0,
};
