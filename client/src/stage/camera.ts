/** What part of the drawing the window shows: CSS pixels a millimetre, and where the drawing's origin lies. */
import type { Rect } from './scene-items.ts';

export interface Camera {
  /** CSS px of the drawing's (0, 0). Whole pixels, so that resting text and edges stay crisp. */
  readonly x: number;
  readonly y: number;
  /** CSS px a mm. */
  readonly scale: number;
}

export interface Insets {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

/** From the whole of a large building to a coin filling the window. */
const LEAST_SCALE = 0.002;
const MOST_SCALE = 4;

/** Shows all of a rectangle of the drawing in what the insets leave free of the window. */
export function fitted(bounds: Rect, size: WindowSize, insets: Insets): Camera {
  const width = Math.max(80, size.width - insets.left - insets.right);
  const height = Math.max(80, size.height - insets.top - insets.bottom);
  const scale = bounded(Math.min(width / (bounds.maxX - bounds.minX), height / (bounds.maxY - bounds.minY)));
  return {
    scale,
    x: Math.round(insets.left + width / 2 - ((bounds.minX + bounds.maxX) / 2) * scale),
    y: Math.round(insets.top + height / 2 - ((bounds.minY + bounds.maxY) / 2) * scale),
  };
}

/** Nearer or farther by a factor, keeping the drawing point under (atX, atY) where it is. */
export function zoomed(camera: Camera, factor: number, atX: number, atY: number): Camera {
  const scale = bounded(camera.scale * factor);
  const f = scale / camera.scale;
  return { scale, x: Math.round(atX - (atX - camera.x) * f), y: Math.round(atY - (atY - camera.y) * f) };
}

/** Moved over the window, but never so far that nothing of the bounds is left in it. */
export function panned(camera: Camera, dx: number, dy: number, bounds: Rect, size: WindowSize): Camera {
  const keep = 60;
  return {
    scale: camera.scale,
    x: clamp(
      Math.round(camera.x + dx),
      keep - bounds.maxX * camera.scale,
      size.width - keep - bounds.minX * camera.scale,
    ),
    y: clamp(
      Math.round(camera.y + dy),
      keep - bounds.maxY * camera.scale,
      size.height - keep - bounds.minY * camera.scale,
    ),
  };
}

export function toDrawingPoint(camera: Camera, px: number, py: number): { readonly X: number; readonly Y: number } {
  return { X: (px - camera.x) / camera.scale, Y: (py - camera.y) / camera.scale };
}

export function toScreenPoint(camera: Camera, X: number, Y: number): { readonly x: number; readonly y: number } {
  return { x: camera.x + X * camera.scale, y: camera.y + Y * camera.scale };
}

function bounded(scale: number): number {
  return Math.min(MOST_SCALE, Math.max(LEAST_SCALE, scale));
}

function clamp(value: number, least: number, most: number): number {
  return Math.round(Math.min(Math.max(value, Math.min(least, most)), Math.max(least, most)));
}
