/** Where remarks are marked on a drawing: beside the thing they are about, clear of it and of what is near. Pure. */
import { aboutKey, type RemarkThread } from '@enfilade/shared/remarks';
import type { PieceId } from '@enfilade/shared/schema';
import type { RemarkAbout } from '@enfilade/shared/talk';
import { toDrawing } from '@enfilade/space/fold-out';
import { boxInDrawing, panelOf } from '../stage/panels.ts';
import type { Scene } from '../stage/scene.ts';

export interface RemarkMark {
  readonly key: string;
  readonly about: RemarkAbout;
  /** All open threads about this one thing, the newest word first. */
  readonly threads: readonly RemarkThread[];
  /** The ring's centre, px of the drawing at the scale asked for. */
  readonly x: number;
  readonly y: number;
  /** The spot itself, where the remark is about one. */
  readonly spot: { readonly x: number; readonly y: number } | null;
  /** The paper's ink on the surface it stands on. */
  readonly ink: 'white' | 'black';
}

/** Of the ring with its mark for what is not read, CSS px. */
export const RING_PX = 10;
const HALF_PX = RING_PX + 3;
/** Beside the corner marks of a selection, and under the ring of whoever holds the thing. */
const OFF_PX = 7;
const UNDER_PX = 10;

interface Hands {
  /** Under a hand just now: their marks step aside. */
  readonly lifted: ReadonlySet<PieceId>;
  /** Held by another, whose ring stands at the corner. */
  readonly held: ReadonlySet<PieceId>;
}

/** One mark for each thing on the drawing that has open remarks; `scale`: px a mm. */
export function remarkMarksOf(
  scene: Scene,
  threads: readonly RemarkThread[],
  scale: number,
  { lifted, held }: Hands,
): RemarkMark[] {
  const byThing = new Map<string, RemarkThread[]>();
  for (const thread of threads) {
    const { about, settled } = thread.remark;
    if (settled || (about.kind !== 'piece' && about.kind !== 'spot')) continue;
    const key = `${about.kind} ${aboutKey(about)}`;
    byThing.set(key, [...(byThing.get(key) ?? []), thread]);
  }
  const marks: RemarkMark[] = [];
  for (const [key, all] of byThing) {
    const about = (all[0] as RemarkThread).remark.about;
    if (about.kind === 'spot') {
      const panel = panelOf(scene.frame, about.surface);
      if (panel === undefined) continue;
      const at = toDrawing(panel, about.xMm, about.yMm);
      const spot = { x: at.X * scale, y: at.Y * scale };
      const box = { minX: spot.x - 4, minY: spot.y - 4, maxX: spot.x + 4, maxY: spot.y + 4 };
      const ring = placeOf(scene, box, scale, marks, { roundabout: true });
      marks.push({ key, about, threads: all, spot, ink: panel.ink, ...ring });
    } else if (about.kind === 'piece' && !lifted.has(about.pieceId)) {
      const items = scene.itemsOf(about.pieceId);
      const item = items.find(({ direct }) => direct) ?? items[0];
      if (item === undefined) continue;
      const box = {
        minX: item.minX * scale,
        minY: item.minY * scale,
        maxX: item.maxX * scale,
        maxY: item.maxY * scale,
      };
      const at = placeOf(scene, box, scale, marks, { own: about.pieceId, held: held.has(about.pieceId) });
      marks.push({ key, about, threads: all, spot: null, ink: item.panel.ink, ...at });
    }
  }
  return marks;
}

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

interface Standing {
  readonly own?: PieceId;
  readonly held?: boolean;
  /** A spot may lie on a work: its ring goes as far as it must to stand clear, and is led to it by a line. */
  readonly roundabout?: boolean;
}

const WIDE_PX = [44, 66, 92, 122] as const;

function wideOf(x: number, y: number): { readonly x: number; readonly y: number }[] {
  return WIDE_PX.flatMap((far) =>
    [-45, 0, 45, 90, 135, 180, -135, -90].map((degrees) => {
      const turn = (degrees * Math.PI) / 180;
      return { x: x + far * Math.cos(turn), y: y + far * Math.sin(turn) };
    }),
  );
}

/** Off its upper right corner, beside the ring of whoever holds it; above, left or beneath where that is taken. */
function placeOf(
  scene: Scene,
  box: Box,
  scale: number,
  others: readonly RemarkMark[],
  { own, held = false, roundabout = false }: Standing,
): { readonly x: number; readonly y: number } {
  const out = OFF_PX + HALF_PX;
  const places = [
    held ? { x: box.maxX + 30, y: box.minY - 3 } : { x: box.maxX + HALF_PX + 2, y: box.minY - HALF_PX },
    { x: box.maxX + out, y: box.minY + UNDER_PX + HALF_PX },
    { x: box.maxX - HALF_PX - UNDER_PX, y: box.minY - out },
    { x: box.minX - out, y: box.minY + HALF_PX },
    { x: box.maxX - HALF_PX, y: box.maxY + out },
    ...(roundabout ? wideOf((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2) : []),
  ];
  const free = places.find(({ x, y }) => {
    const rect = {
      minX: (x - HALF_PX) / scale,
      minY: (y - HALF_PX) / scale,
      maxX: (x + HALF_PX) / scale,
      maxY: (y + HALF_PX) / scale,
    };
    return (
      scene.within(rect).every(({ pieceId }) => pieceId === own) &&
      fixturesOf(scene).every((one) => apart(one, rect)) &&
      others.every((mark) => Math.hypot(mark.x - x, mark.y - y) > 2 * HALF_PX)
    );
  });
  return free ?? { x: box.maxX, y: box.minY };
}

function fixturesOf({ frame }: Scene): Box[] {
  return frame.panels.flatMap((panel) =>
    panel.fixtures.map((fixture) => {
      const { X, Y, width, height } = boxInDrawing(panel, fixture);
      return { minX: X, minY: Y, maxX: X + width, maxY: Y + height };
    }),
  );
}

function apart(a: Box, b: Box): boolean {
  return a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY;
}
