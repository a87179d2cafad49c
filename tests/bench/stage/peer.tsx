/**
 * The naive peer: one react-konva Image per object, draggable, each from an ImageBitmap of its own picture; places in
 * React's state. Others' moves come into a Y.Doc of one nested Y.Map an object, each observed and set at once.
 */
import type Konva from 'konva';
import { createElement, useState } from 'react';
import { createRoot } from 'react-dom/client';
import { Image, Layer, Stage } from 'react-konva';
import * as Y from 'yjs';
import { type BenchObject, benchObjects, MESSAGES, PICTURES, remoteMove, WALL, WINDOW } from './objects.ts';

const FIT = Math.min(WINDOW.width / WALL.widthMm, WINDOW.height / WALL.heightMm);
let frames = 0;
let lastFrame: unknown = null;
const bitmaps: ImageBitmap[] = [];
let setView: (change: (view: View) => View) => void = () => {};
let setObjects: (change: (objects: readonly BenchObject[]) => readonly BenchObject[]) => void = () => {};

interface View {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

function countDraws(layer: Konva.Layer | null): void {
  layer?.off('draw.bench').on('draw.bench', () => {
    const now = document.timeline.currentTime;
    if (now !== lastFrame) frames += 1;
    lastFrame = now;
  });
}

function Page() {
  const [view, viewTo] = useState<View>({ x: 0, y: 0, scale: FIT });
  const [objects, objectsTo] = useState<readonly BenchObject[]>(benchObjects());
  setView = viewTo;
  setObjects = objectsTo;
  return (
    <Stage {...WINDOW} x={view.x} y={view.y} scaleX={view.scale} scaleY={view.scale}>
      <Layer ref={countDraws}>
        {objects.map((object, index) => (
          <Image
            key={object.id}
            image={bitmaps[object.picture]}
            x={object.xMm - object.widthMm / 2}
            y={WALL.heightMm - object.yMm - object.heightMm / 2}
            width={object.widthMm}
            height={object.heightMm}
            draggable
            name={object.id}
            onDragMove={({ target }) => put(index, target.x(), target.y())}
          />
        ))}
      </Layer>
    </Stage>
  );
}

const held = 1500;
const first = benchObjects()[held] as BenchObject;

const put = (index: number, xMm: number, yMm: number): void =>
  setObjects((objects) => objects.map((object, i) => (i === index ? { ...object, xMm, yMm } : object)));

/** The document as it came, what another seat then sends of it, and what this page does with each message. */
const shared = new Y.Doc();
const messages: Uint8Array[] = [];
{
  const objects = benchObjects();
  const sender = new Y.Doc();
  const places = sender.getMap<Y.Map<number>>('objs');
  sender.transact(() => {
    for (const { id, xMm, yMm } of objects) places.set(id, new Y.Map<number>(Object.entries({ xMm, yMm })));
  });
  Y.applyUpdate(shared, Y.encodeStateAsUpdate(sender));
  sender.on('update', (update: Uint8Array) => messages.push(update));
  for (let n = 0; n < MESSAGES; n++) {
    const { id, xMm, yMm } = remoteMove(objects, n);
    sender.transact(() => {
      places.get(id)?.set('xMm', xMm);
      places.get(id)?.set('yMm', yMm);
    });
  }
  const indexOf = new Map(objects.map(({ id }, index) => [id, index]));
  shared.getMap('objs').observeDeep((events) => {
    for (const { path, target } of events) {
      const index = indexOf.get(String(path[0]));
      const at = target as Y.Map<number>;
      if (index !== undefined) put(index, at.get('xMm') ?? 0, at.get('yMm') ?? 0);
    }
  });
}

window.bench = {
  ready: (async () => {
    for (let i = 0; i < PICTURES; i++) {
      bitmaps.push(await createImageBitmap(await (await fetch(`/picture/${i}.webp`)).blob()));
    }
    createRoot(document.getElementById('root') as HTMLElement).render(createElement(Page));
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    while (frames === 0) await frame();
  })(),
  look(at) {
    const scale = at === 'all' ? FIT : WINDOW.width / 6000;
    const about = (long: number, seen: number) => (seen - long * scale) / 2;
    setView(() => ({ scale, x: about(WALL.widthMm, WINDOW.width), y: about(WALL.heightMm, WINDOW.height) }));
  },
  pan: (dx, dy) => setView((view) => ({ ...view, x: view.x + dx, y: view.y + dy })),
  dragStart: () => {},
  dragTo: (step) =>
    put(held, first.xMm + (Math.sin(step / 9) * 200) / FIT, first.yMm - (Math.cos(step / 7) * 120) / FIT),
  dragEnd: () => {},
  remote(n) {
    const message = messages[n % messages.length];
    if (message !== undefined) Y.applyUpdate(shared, message);
  },
  drawn: () => frames,
};
