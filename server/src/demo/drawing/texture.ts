/**
 * Surfaces: what wood, wool, canvas, paper and iron do to flat colour. Light comes from the upper left. The noise is a
 * small grey picture inside the SVG: an SVG turbulence filter costs five times as much to render.
 */

import { deflateSync } from 'node:zlib';
import { crc32Of } from './crc32.ts';
import { type Dice, diceFrom, linear, n } from './ink.ts';

/** Samples per cell of the finest octave, and the most a side may have. */
const SAMPLES = 2;
const MOST_PX = 400;

/** One octave of value noise added to `out`: random values on a lattice, joined smoothly. */
function addOctave(
  out: Float32Array,
  wPx: number,
  hPx: number,
  columns: number,
  rows: number,
  weight: number,
  dice: Dice,
): void {
  const across = Math.ceil(columns) + 2;
  const lattice = Float32Array.from({ length: across * (Math.ceil(rows) + 2) }, dice);
  const ease = (t: number) => t * t * (3 - 2 * t);
  const xs = Array.from({ length: wPx }, (_, x) => (columns * x) / wPx);
  for (let y = 0; y < hPx; y++) {
    const v = (rows * y) / hPx;
    const j = Math.floor(v);
    const t = ease(v - j);
    for (let x = 0; x < wPx; x++) {
      const u = xs[x] as number;
      const i = Math.floor(u);
      const s = ease(u - i);
      const at = j * across + i;
      const top = (lattice[at] as number) * (1 - s) + (lattice[at + 1] as number) * s;
      const foot = (lattice[at + across] as number) * (1 - s) + (lattice[at + across + 1] as number) * s;
      out[y * wPx + x] = (out[y * wPx + x] as number) + weight * (top * (1 - t) + foot * t);
    }
  }
}

/** Grey bytes as a PNG data address. PNG, ISO/IEC 15948: signature, IHDR (8-bit grey), IDAT, IEND. */
function greyPng(grey: Uint8Array, wPx: number, hPx: number): string {
  const chunk = (type: string, data: Uint8Array) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crc32Of(body));
    return Buffer.concat([length, body, sum]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(wPx, 0);
  header.writeUInt32BE(hPx, 4);
  header[8] = 8;
  const rows = Buffer.alloc((wPx + 1) * hPx);
  for (let y = 0; y < hPx; y++) rows.set(grey.subarray(y * wPx, (y + 1) * wPx), y * (wPx + 1) + 1);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const png = Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 1 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
  return `data:image/png;base64,${png.toString('base64')}`;
}

/** Grey noise over w × h cm, for `textured`. Frequencies in cells per cm; contrast 1 leaves the noise as it falls. */
export function noise(
  id: string,
  [w, h]: readonly [number, number],
  [fx, fy]: readonly [number, number],
  octaves: number,
  seed: number,
  contrast: number,
): string {
  const finest = 2 ** (octaves - 1) * SAMPLES;
  const wPx = Math.max(4, Math.min(MOST_PX, Math.ceil(w * fx * finest)));
  const hPx = Math.max(4, Math.min(MOST_PX, Math.ceil(h * fy * finest)));
  const sum = new Float32Array(wPx * hPx);
  const dice = diceFrom(seed * 2 + 1);
  let whole = 0;
  for (let o = 0; o < octaves; o++) {
    addOctave(sum, wPx, hPx, w * fx * 2 ** o, h * fy * 2 ** o, 0.5 ** o, dice);
    whole += 0.5 ** o;
  }
  const grey = Uint8Array.from(sum, (value) =>
    Math.max(0, Math.min(255, 255 * (0.5 + (value / whole - 0.5) * contrast))),
  );
  return `<image id="${id}" width="${n(w)}" height="${n(h)}" preserveAspectRatio="none" href="${greyPng(grey, wPx, hPx)}"/>`;
}

/** The path `d` covered with a noise, blended so that it lightens and darkens what lies under it. */
export function textured(d: string, noiseId: string, strength: number): string {
  const clip = `${noiseId}-under`;
  return `<clipPath id="${clip}"><path d="${d}"/></clipPath><g style="mix-blend-mode:soft-light" opacity="${n(strength)}" clip-path="url(#${clip})"><use href="#${noiseId}"/></g>`;
}

/** The fall of light over a flat thing: a little white at the upper left, a little black at the lower right. */
export function light(id: string, white: number, black: number): string {
  return linear(
    id,
    [0, 0, 1, 1],
    [
      [0, '#fff', white],
      [0.45, '#fff', 0],
      [0.55, '#000', 0],
      [1, '#000', black],
    ],
  );
}
