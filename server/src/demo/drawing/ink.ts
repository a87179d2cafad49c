/** Ink for the demo's drawings: colours in CIELAB, a seeded dice, SVG elements in centimetres. */

/** CIELAB, D65/2°. */
export interface Ink {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** A seeded stream of numbers in [0, 1). */
export type Dice = () => number;

/** A drawing in centimetres, origin at its top left corner; `defs` go into the SVG's head. */
export interface Drawing {
  readonly defs: string;
  readonly body: string;
}

export function ink(L: number, a: number, b: number): Ink {
  return { L, a, b };
}

/** sRGB hex of a CIELAB D65 colour, clipped to the screen's gamut. IEC 61966-2-1. */
export function hexFrom({ L, a, b }: Ink): string {
  const fy = (L + 16) / 116;
  const inverse = (t: number) => (t > 6 / 29 ? t ** 3 : 3 * (6 / 29) ** 2 * (t - 4 / 29));
  const X = 0.95047 * inverse(fy + a / 500);
  const Y = inverse(fy);
  const Z = 1.08883 * inverse(fy - b / 200);
  const linear = [
    3.2404542 * X - 1.5371385 * Y - 0.4985314 * Z,
    -0.969266 * X + 1.8760108 * Y + 0.041556 * Z,
    0.0556434 * X - 0.2040259 * Y + 1.0572252 * Z,
  ];
  return `#${linear
    .map((c) => {
      const coded = c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055;
      return Math.round(255 * Math.min(1, Math.max(0, coded)))
        .toString(16)
        .padStart(2, '0');
    })
    .join('')}`;
}

/** The hex of an ink made lighter or darker by `dL`, its chroma scaled. */
export function shade(c: Ink, dL: number, chroma = 1): string {
  return hexFrom(ink(Math.max(2, Math.min(98, c.L + dL)), c.a * chroma, c.b * chroma));
}

export function hex(L: number, a: number, b: number): string {
  return hexFrom(ink(L, a, b));
}

/** Mulberry32. */
export function diceFrom(seed: number): Dice {
  let s = Math.imul(seed, 0x9e3779b1) | 0;
  return () => {
    s = (s + 0x6d2b79f5) | 0;
    let t = Math.imul(s ^ (s >>> 15), 1 | s);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function between(dice: Dice, low: number, high: number): number {
  return low + dice() * (high - low);
}

export function pick<T>(dice: Dice, list: readonly T[]): T {
  return list[Math.floor(dice() * list.length)] as T;
}

/** Cycles through a list by index. */
export function nth<T>(list: readonly T[], index: number): T {
  return list[((index % list.length) + list.length) % list.length] as T;
}

/** A number with at most two decimals, as SVG wants it. */
export function n(value: number): string {
  return String(Math.round(value * 100) / 100);
}

export function rect(x: number, y: number, w: number, h: number, fill: string, extra = ''): string {
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}" fill="${fill}" ${extra}/>`;
}

export function path(d: string, fill: string, extra = ''): string {
  return `<path d="${d}" fill="${fill}" ${extra}/>`;
}

export function stroke(d: string, colour: string, width: number, extra = ''): string {
  return `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${n(width)}" ${extra}/>`;
}

export function disc(cx: number, cy: number, r: number, fill: string, extra = ''): string {
  return `<circle cx="${n(cx)}" cy="${n(cy)}" r="${n(r)}" fill="${fill}" ${extra}/>`;
}

export function oval(cx: number, cy: number, rx: number, ry: number, fill: string, extra = ''): string {
  return `<ellipse cx="${n(cx)}" cy="${n(cy)}" rx="${n(rx)}" ry="${n(ry)}" fill="${fill}" ${extra}/>`;
}

export function moved(x: number, y: number, body: string): string {
  return `<g transform="translate(${n(x)} ${n(y)})">${body}</g>`;
}

export function turned(degrees: number, cx: number, cy: number, body: string): string {
  return `<g transform="rotate(${n(degrees)} ${n(cx)} ${n(cy)})">${body}</g>`;
}

export type Point = readonly [x: number, y: number];

/** A smooth path through points (quadratic curves between midpoints); closed when asked. */
export function smooth(points: readonly Point[], closed = false): string {
  const at = (i: number) => nth(points, i);
  const mid = (i: number): Point => [(at(i)[0] + at(i + 1)[0]) / 2, (at(i)[1] + at(i + 1)[1]) / 2];
  const first = closed ? mid(-1) : at(0);
  let d = `M${n(first[0])} ${n(first[1])}`;
  const last = closed ? points.length : points.length - 1;
  for (let i = closed ? 0 : 1; i < last; i++) {
    const m = !closed && i === last - 1 ? at(last) : mid(i);
    d += `Q${n(at(i)[0])} ${n(at(i)[1])} ${n(m[0])} ${n(m[1])}`;
  }
  return closed ? `${d}z` : d;
}

/** A polygon's path. */
export function polygon(points: readonly Point[]): string {
  return `M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}z`;
}

/** `body` shown only inside the path `d`. */
export function clipped(id: string, d: string, body: string): Drawing {
  return { defs: `<clipPath id="${id}"><path d="${d}"/></clipPath>`, body: `<g clip-path="url(#${id})">${body}</g>` };
}

export function box(x: number, y: number, w: number, h: number): string {
  return `M${n(x)} ${n(y)}h${n(w)}v${n(h)}h${n(-w)}z`;
}

export type Stop = readonly [offset: number, colour: string, opacity?: number];

function stopsOf(stops: readonly Stop[]): string {
  return stops
    .map(
      ([o, c, op]) => `<stop offset="${n(o)}" stop-color="${c}"${op === undefined ? '' : ` stop-opacity="${n(op)}"`}/>`,
    )
    .join('');
}

/** A linear gradient over the shape's box, from (x1, y1) to (x2, y2) in 0..1. */
export function linear(
  id: string,
  [x1, y1, x2, y2]: readonly [number, number, number, number],
  stops: readonly Stop[],
) {
  return `<linearGradient id="${id}" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}">${stopsOf(stops)}</linearGradient>`;
}

/** A radial gradient lit from the upper left of the shape's box. */
export function round(id: string, stops: readonly Stop[], cx = 0.36, cy = 0.3, r = 0.8): string {
  return `<radialGradient id="${id}" cx="${cx}" cy="${cy}" r="${r}">${stopsOf(stops)}</radialGradient>`;
}
