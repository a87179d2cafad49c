/** What a painter of valleys needs: skies, hills, water, trees, houses, in dabs. Coordinates are shares of the canvas. */
import {
  between,
  type Dice,
  disc,
  hexFrom,
  type Ink,
  linear,
  n,
  oval,
  type Point,
  path,
  polygon,
  rect,
  type Stop,
  shade,
  smooth,
  stroke,
} from './ink.ts';

/** One canvas being painted: what is drawn is collected in order. */
export class Canvas {
  readonly w: number;
  readonly h: number;
  readonly dice: Dice;
  body = '';
  defs = '';

  constructor(w: number, h: number, dice: Dice) {
    this.w = w;
    this.h = h;
    this.dice = dice;
  }

  add(piece: string): this {
    this.body += piece;
    return this;
  }

  x(t: number): number {
    return t * this.w;
  }

  y(t: number): number {
    return t * this.h;
  }

  points(list: readonly Point[]): Point[] {
    return list.map(([a, b]) => [this.x(a), this.y(b)]);
  }

  /** Sky (or any ground) from top to bottom of the canvas down to `foot`. */
  sky(stops: readonly (readonly [number, Ink])[], foot = 1): this {
    const id = `s${this.defs.length}`;
    this.defs += linear(
      id,
      [0, 0, 0, 1],
      stops.map(([o, c]): Stop => [o, hexFrom(c)]),
    );
    return this.add(rect(0, 0, this.w, this.y(foot), `url(#${id})`));
  }

  cloud(cx: number, cy: number, size: number, lit: Ink, opacity = 0.6): this {
    for (let i = 0; i < 9; i++) {
      const x = cx + between(this.dice, -1, 1) * size;
      const y = cy + between(this.dice, -0.16, 0.16) * size;
      const r = size * between(this.dice, 0.2, 0.42);
      this.add(
        oval(
          this.x(x),
          this.y(y),
          this.x(r),
          this.y(r * 0.4),
          shade(lit, i < 4 ? -9 : 0),
          `opacity="${n(opacity * 0.7)}"`,
        ),
      );
    }
    return this;
  }

  /** A hill's ground from a ridge through `ridge` down to the foot of the canvas, lit along its brow. */
  land(ridge: readonly Point[], c: Ink, roughness = 0.012): this {
    const line: Point[] = [];
    for (let i = 0; i < ridge.length - 1; i++) {
      const [a, b] = [ridge[i] as Point, ridge[i + 1] as Point];
      for (let k = 0; k < 4; k++)
        line.push([
          a[0] + ((b[0] - a[0]) * k) / 4,
          a[1] + ((b[1] - a[1]) * k) / 4 + between(this.dice, -roughness, roughness),
        ]);
    }
    line.push(ridge.at(-1) as Point);
    const d = smooth(this.points(line));
    const id = `l${this.defs.length}`;
    this.defs += linear(
      id,
      [0, 0, 0, 1],
      [
        [0, shade(c, 5)],
        [0.35, shade(c, 0)],
        [1, shade(c, -6)],
      ],
    );
    this.add(path(`${d}V${n(this.h)}H0z`, `url(#${id})`));
    return this.add(stroke(d, shade(c, 12), this.h * 0.004, 'opacity=".55"'));
  }

  shape(points: readonly Point[], c: Ink, opacity = 1): this {
    return this.add(path(smooth(this.points(points), true), shade(c, 0), opacity < 1 ? `opacity="${n(opacity)}"` : ''));
  }

  flat(points: readonly Point[], c: Ink, opacity = 1): this {
    return this.add(path(polygon(this.points(points)), shade(c, 0), opacity < 1 ? `opacity="${n(opacity)}"` : ''));
  }

  /** A ribbon of water: centre points with half widths (all shares of the canvas), drawn with a lit bank. */
  water(course: readonly (readonly [x: number, y: number, half: number])[], c: Ink): this {
    const left = course.map(([x, y, half]): Point => [x - half, y]);
    const right = course.map(([x, y, half]): Point => [x + half, y]).reverse();
    const d = `${smooth(this.points(left))}L${smooth(this.points(right)).slice(1)}z`;
    this.add(path(d, shade(c, 0))).add(
      stroke(smooth(this.points(left)), shade(c, -22), this.h * 0.006, 'opacity=".6"'),
    );
    for (const [x, y, half] of course)
      this.add(
        rect(this.x(x - half * 0.5), this.y(y), this.x(half * 0.9), this.h * 0.004, shade(c, 10), 'opacity=".7"'),
      );
    return this;
  }

  /** Still water from `top` down: dabs of sky and ground. */
  mirror(top: number, foot: number, c: Ink, glints: number, glint: Ink): this {
    this.add(rect(0, this.y(top), this.w, this.y(foot - top), shade(c, 0)));
    for (let i = 0; i < glints; i++) {
      const t = this.dice() ** 1.4;
      const length = between(this.dice, 0.03, 0.16) * (0.5 + t);
      this.add(
        rect(
          this.x(this.dice() - length / 2),
          this.y(top + (foot - top) * t),
          this.x(length),
          this.h * (0.003 + 0.006 * t),
          shade(glint, between(this.dice, -8, 6)),
          'opacity=".5"',
        ),
      );
    }
    return this;
  }

  tree(x: number, foot: number, size: number, dark: Ink, lit: Ink): this {
    const { dice } = this;
    this.add(
      rect(
        this.x(x) - this.h * size * 0.04,
        this.y(foot - size * 0.4),
        this.h * size * 0.08,
        this.y(size * 0.4),
        shade(dark, -8, 0.4),
      ),
    );
    for (let i = 0; i < 16; i++) {
      const a = dice() * 6.283;
      const r = Math.sqrt(dice()) * size * 0.36;
      const cx = this.x(x) + Math.cos(a) * r * this.h;
      const cy = this.y(foot - size * 0.66) + Math.sin(a) * r * this.h * 1.05;
      const q = this.h * size * between(dice, 0.1, 0.2);
      const upper = Math.sin(a) + Math.cos(a) < 0.1;
      this.add(
        oval(
          cx,
          cy,
          q,
          q * 0.85,
          i < 7 ? shade(dark, between(dice, -4, 2)) : shade(upper ? lit : dark, between(dice, -5, 5)),
        ),
      );
    }
    return this;
  }

  trees(x0: number, x1: number, y0: number, y1: number, count: number, size: number, dark: Ink, lit: Ink): this {
    const spots = Array.from(
      { length: count },
      () => [between(this.dice, x0, x1), between(this.dice, y0, y1)] as const,
    );
    for (const [x, y] of [...spots].sort((a, b) => a[1] - b[1]))
      this.tree(x, y, size * between(this.dice, 0.7, 1.25), dark, lit);
    return this;
  }

  poplar(x: number, foot: number, size: number, dark: Ink, lit: Ink): this {
    for (let i = 0; i < 14; i++) {
      const t = i / 13;
      const half = size * 0.11 * Math.sin(Math.PI * (0.12 + 0.8 * t));
      this.add(
        oval(
          this.x(x) + between(this.dice, -0.3, 0.3) * half * this.h,
          this.y(foot - size * (0.05 + 0.93 * t)),
          half * this.h,
          size * 0.09 * this.h,
          i % 3 ? shade(dark, between(this.dice, -4, 4)) : shade(lit, 0),
        ),
      );
    }
    return this;
  }

  house(x: number, foot: number, size: number, wall: Ink, roof: Ink, chimney = true): this {
    const s = size * this.h;
    const X = this.x(x);
    const Y = this.y(foot);
    this.add(rect(X, Y - s * 0.62, s * 1.3, s * 0.62, shade(wall, 0))).add(
      rect(X + s * 0.85, Y - s * 0.62, s * 0.45, s * 0.62, shade(wall, -16)),
    );
    if (chimney) this.add(rect(X + s * 0.22, Y - s * 1.22, s * 0.15, s * 0.4, shade(wall, -22)));
    this.add(
      path(
        polygon([
          [X - s * 0.08, Y - s * 0.6],
          [X + s * 0.2, Y - s],
          [X + s * 1.1, Y - s],
          [X + s * 1.38, Y - s * 0.6],
        ]),
        shade(roof, 0),
      ),
    );
    for (const t of [0.15, 0.5]) this.add(rect(X + s * t, Y - s * 0.42, s * 0.16, s * 0.2, shade(wall, -34)));
    return this;
  }

  tower(x: number, foot: number, height: number, c: Ink, spire = true): this {
    const half = height * 0.11 * this.h;
    const X = this.x(x);
    const body = this.y(foot - height * 0.52);
    this.add(rect(X - half, body, half * 2, this.y(foot) - body, shade(c, 0))).add(
      rect(X + half * 0.3, body, half * 0.7, this.y(foot) - body, shade(c, -8)),
    );
    if (spire)
      this.add(
        path(
          polygon([
            [X - half * 1.1, body],
            [X, this.y(foot - height)],
            [X + half * 1.1, body],
          ]),
          shade(c, -5),
        ),
      );
    return this.add(rect(X - half * 0.25, body + half * 0.8, half * 0.5, half * 1.2, shade(c, -22)));
  }

  sun(x: number, y: number, r: number, c: Ink): this {
    return this.add(disc(this.x(x), this.y(y), r * this.h * 1.7, shade(c, 0), 'opacity=".3"')).add(
      disc(this.x(x), this.y(y), r * this.h, shade(c, 4)),
    );
  }

  /** Loose dabs over a band, for grass, stubble or foam. */
  dabs(x0: number, x1: number, y0: number, y1: number, count: number, c: Ink, length: number, lean = 0): this {
    for (let i = 0; i < count; i++) {
      const x = this.x(between(this.dice, x0, x1));
      const y = this.y(between(this.dice, y0, y1));
      const l = length * this.h * between(this.dice, 0.5, 1.3);
      this.add(
        stroke(
          `M${n(x)} ${n(y)}l${n(l * lean)} ${n(-l * (1 - Math.abs(lean)))}`,
          shade(c, between(this.dice, -8, 8)),
          this.h * 0.005,
          'opacity=".75" stroke-linecap="round"',
        ),
      );
    }
    return this;
  }
}
