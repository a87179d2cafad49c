/** The faces of a room, as `space` names its surfaces. */
export type Face = 'foot' | 'right' | 'head' | 'left' | 'floor' | 'ceiling';

export const FACES: readonly Face[] = ['foot', 'right', 'head', 'left', 'floor', 'ceiling'];

const OPPOSITE: Readonly<Record<Face, Face>> = {
  foot: 'head',
  head: 'foot',
  left: 'right',
  right: 'left',
  floor: 'ceiling',
  ceiling: 'floor',
};

/** Width is across plan x, depth along plan y; any one unit. */
export interface Box {
  readonly widthMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
}

/** Share of what one rectangle a × b sends out that meets its equal straight opposite at distance c (Howell, C-11). */
function oppositeFactor(a: number, b: number, c: number): number {
  const [x, y] = [a / c, b / c];
  const [rx, ry] = [Math.hypot(1, x), Math.hypot(1, y)];
  return (
    (2 / (Math.PI * x * y)) *
    (Math.log((rx * ry) / Math.sqrt(1 + x * x + y * y)) +
      x * ry * Math.atan(x / ry) +
      y * rx * Math.atan(y / rx) -
      x * Math.atan(x) -
      y * Math.atan(y))
  );
}

/** Share of what a rectangle `from` × edge sends out that meets one `to` × edge at a right angle along that edge (Howell, C-14). */
function adjacentFactor(from: number, to: number, edge: number): number {
  const [w, h] = [from / edge, to / edge];
  const [w2, h2] = [w * w, h * h];
  const all = 1 + w2 + h2;
  const logs =
    Math.log(((1 + w2) * (1 + h2)) / all) +
    w2 * Math.log((w2 * all) / ((1 + w2) * (w2 + h2))) +
    h2 * Math.log((h2 * all) / ((1 + h2) * (h2 + w2)));
  const across = Math.sqrt(w2 + h2);
  return (w * Math.atan(1 / w) + h * Math.atan(1 / h) - across * Math.atan(1 / across) + logs / 4) / (Math.PI * w);
}

/**
 * What share of the light each face of a box sends out meets each other face: rows in the order of `FACES`, each summing to
 * 1. Howell, "A Catalog of Radiation Heat Transfer Configuration Factors", C-11 and C-14. RangeError for a size not over 0.
 */
export function boxFormFactors({ widthMm, depthMm, heightMm }: Box): number[][] {
  for (const size of [widthMm, depthMm, heightMm]) {
    if (!(size > 0)) throw new RangeError(`boxFormFactors: ${size} mm is not over 0`);
  }
  // The axis a face looks along, and the sizes of the box along each axis.
  const sizes = { x: widthMm, y: depthMm, z: heightMm };
  const axisOf = (face: Face): 'x' | 'y' | 'z' =>
    face === 'left' || face === 'right' ? 'x' : face === 'foot' || face === 'head' ? 'y' : 'z';
  const others = { x: ['y', 'z'], y: ['x', 'z'], z: ['x', 'y'] } as const;
  return FACES.map((from) =>
    FACES.map((to) => {
      if (from === to) return 0;
      const axis = axisOf(from);
      const [p, q] = others[axis];
      if (OPPOSITE[from] === to) return oppositeFactor(sizes[p], sizes[q], sizes[axis]);
      const edge = axisOf(to) === p ? q : p;
      return adjacentFactor(sizes[axisOf(to)], sizes[axis], sizes[edge]);
    }),
  );
}

/** Areas of the faces of a box, in the order of `FACES`. */
export function faceAreas({ widthMm, depthMm, heightMm }: Box): number[] {
  const [across, along, plan] = [widthMm * heightMm, depthMm * heightMm, widthMm * depthMm];
  return [across, along, across, along, plan, plan];
}
