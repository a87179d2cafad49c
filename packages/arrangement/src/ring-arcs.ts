const POINTS = 720;

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A curve, or what obstacles leave of it. */
export interface Arc {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** One step along an arc is one cell across or up (mm). */
export interface Cell {
  readonly width: number;
  readonly height: number;
}

/** A superellipse of two half axes (mm) round a centre, from its top clockwise. */
export function curveOf(focal: Point, a: number, b: number, power: number): Point[] {
  return Array.from({ length: POINTS }, (_, i) => {
    const angle = (2 * Math.PI * i) / POINTS;
    const [dx, dy] = [Math.sin(angle), Math.cos(angle)];
    const r = (Math.abs(dx / a) ** power + Math.abs(dy / b) ** power) ** (-1 / power);
    return { x: focal.x + r * dx, y: focal.y + r * dy };
  });
}

/** What is left of a closed curve where only some of it is free. */
export function arcsOf(curve: readonly Point[], isFree: (point: Point) => boolean): Arc[] {
  const open = curve.map(isFree);
  const firstShut = open.indexOf(false);
  if (firstShut < 0) return [{ points: curve, closed: true }];
  const arcs: Point[][] = [];
  for (let i = 1; i <= curve.length; i++) {
    const at = (firstShut + i) % curve.length;
    if (!open[at]) continue;
    if (!open[(firstShut + i - 1) % curve.length]) arcs.push([]);
    arcs[arcs.length - 1]!.push(curve[at]!);
  }
  return arcs.map((points) => ({ points, closed: false }));
}

/** The points met going along an arc in steps of so many cells, the larger of across and up; a closed one from `from` on. */
export function walked({ points, closed }: Arc, step: number, cell: Cell, from = 0): Point[] {
  const far = (p: Point, q: Point) => Math.max(Math.abs(p.x - q.x) / cell.width, Math.abs(p.y - q.y) / cell.height);
  const first = points[from % points.length]!;
  const met = [first];
  for (let i = 1; i < points.length; i++) {
    const point = points[(from + i) % points.length]!;
    if (far(point, met[met.length - 1]!) < step) continue;
    if (closed && met.length > 1 && i > points.length / 2 && far(point, first) < step) break;
    met.push(point);
  }
  return met;
}

/** So many points equally far along an arc: the longest step that still meets them all. The phase shifts or insets them. */
export function spaced(arc: Arc, count: number, cell: Cell, phase: number): Point[] {
  const { points, closed } = arc;
  if (count === 0) return [];
  if (count === 1 && !closed) return [points[points.length >> 1]!];
  const shift = Math.round((phase * points.length) / (closed ? count : 2 * count));
  const inset = closed ? arc : { points: points.slice(shift, points.length - shift), closed };
  const from = closed ? shift : 0;
  let [low, high] = [0.5, 4 * POINTS];
  for (let i = 0; i < 30; i++) {
    const step = (low + high) / 2;
    if (walked(inset, step, cell, from).length >= count) low = step;
    else high = step;
  }
  return walked(inset, low, cell, from).slice(0, count);
}
