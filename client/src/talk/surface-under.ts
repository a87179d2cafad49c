/** Which surface lies under a pointer over the stage, and where on it: whole mm of the surface's own frame. */
import type { SurfaceId } from '@enfilade/shared/schema';
import { toDrawingPoint } from '../stage/camera.ts';
import { surfaceAt } from '../stage/panels.ts';
import type { StageMachine } from '../stage/stage-machine.ts';

export type OnSurface = readonly [surface: SurfaceId, xMm: number, yMm: number];

export function surfaceUnder(machine: StageMachine, element: HTMLElement, event: MouseEvent): OnSurface | null {
  const box = element.getBoundingClientRect();
  return surfaceAtPx(machine, event.clientX - box.left, event.clientY - box.top);
}

/** The same of a point of the stage's window, CSS px. */
export function surfaceAtPx({ scene, camera }: StageMachine, x: number, y: number): OnSurface | null {
  if (scene === null) return null;
  const { X, Y } = toDrawingPoint(camera, x, y);
  const at = surfaceAt(scene.frame, X, Y);
  return at === null ? null : [at.panel.surface, Math.round(at.xMm), Math.round(at.yMm)];
}
