/** Behind `?probe`: tells browser tests where things are on the screen, and when the stage has come to rest. */
import type { PieceId, SurfaceId } from '@enfilade/shared/schema';
import { toDrawing } from '@enfilade/space/fold-out';
import { toScreenPoint } from './camera.ts';
import { boxInDrawing, panelOf } from './panels.ts';
import type { StageMachine } from './stage-machine.ts';

export interface ScreenRect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Probe {
  /** Page px of a piece: where it is drawn on its own surface, else wherever it is seen. */
  screenRectOf(pieceId: PieceId): ScreenRect | null;
  surfaceRectOf(surface: SurfaceId): ScreenRect | null;
  /** Page px of a point of a surface. */
  toScreen(surface: SurfaceId, xMm: number, yMm: number): { readonly x: number; readonly y: number } | null;
  /** Frames drawn since the stage opened. */
  frames(): number;
  /** Longest side of the picture a piece is drawn from now: 64, 256, 1024, or null while it is grey. */
  pictureLevelOf(pieceId: PieceId): number | null;
  /** Settles once nothing waits to be drawn or fetched. */
  idle(): Promise<void>;
}

declare global {
  interface Window {
    enfiladeProbe?: Probe;
  }
}

export function installProbe(machine: StageMachine, element: HTMLElement): void {
  if (!new URLSearchParams(location.search).has('probe')) return;
  const onPage = (minX: number, minY: number, maxX: number, maxY: number): ScreenRect => {
    const box = element.getBoundingClientRect();
    const a = toScreenPoint(machine.camera, minX, minY);
    const b = toScreenPoint(machine.camera, maxX, maxY);
    return { x: box.left + a.x, y: box.top + a.y, width: b.x - a.x, height: b.y - a.y };
  };
  window.enfiladeProbe = {
    screenRectOf(pieceId) {
      const item = machine.shownItemOf(pieceId);
      return item === undefined ? null : onPage(item.minX, item.minY, item.maxX, item.maxY);
    },
    surfaceRectOf(surface) {
      const panel = machine.scene === null ? undefined : panelOf(machine.scene.frame, surface);
      if (panel === undefined) return null;
      const { widthMm, heightMm } = panel;
      const at = boxInDrawing(panel, { xMm: widthMm / 2, yMm: heightMm / 2, widthMm, heightMm });
      return onPage(at.X, at.Y, at.X + at.width, at.Y + at.height);
    },
    toScreen(surface, xMm, yMm) {
      const panel = machine.scene === null ? undefined : panelOf(machine.scene.frame, surface);
      if (panel === undefined) return null;
      const { X, Y } = toDrawing(panel, xMm, yMm);
      const { x, y } = onPage(X, Y, X, Y);
      return { x, y };
    },
    frames: () => machine.painter.frames,
    pictureLevelOf(pieceId) {
      const item = machine.shownItemOf(pieceId);
      if (item?.picture == null) return null;
      const long = Math.max(item.widthMm, item.heightMm) * machine.camera.scale * devicePixelRatio;
      return machine.bitmaps.drawableOf(item.picture, long)?.level ?? null;
    },
    async idle() {
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      for (let quiet = 0; quiet < 3; ) {
        await frame();
        quiet = machine.idle ? quiet + 1 : 0;
      }
    },
  };
}
