/** Fennimarsh's panels of glazed tile: flat strong colour over a grid, each glaze a little different. Eighteen designs. */
import {
  between,
  type Drawing,
  diceFrom,
  disc,
  hex,
  linear,
  n,
  nth,
  type Point,
  path,
  polygon,
  rect,
  stroke,
} from './ink.ts';

const ORANGE = hex(60, 44, 54);
const NAVY = hex(28, 6, -42);
const WHITE = hex(93, -1, 5);
const SUN = hex(81, 4, 66);
const SEA = hex(52, -24, -16);
const RED = hex(47, 56, 36);
const SKY = hex(72, -12, -18);
const CLAY = hex(56, 24, 28);
const GREEN = hex(48, -32, 22);
const PLUM = hex(32, 26, -14);
const SAND = hex(82, 4, 24);
const BLACK = hex(15, 1, -3);

/** Draws on a field w × h with its three or four colours. */
type Design = (w: number, h: number, c: readonly string[]) => string;

const wave = (w: number, y: number, amp: number, foot: number) =>
  `M0 ${n(y)}C${n(w * 0.2)} ${n(y - amp)} ${n(w * 0.35)} ${n(y + amp)} ${n(w * 0.55)} ${n(y)}S${n(w * 0.85)} ${n(y - amp)} ${n(w)} ${n(y + amp * 0.2)}V${n(foot)}C${n(w * 0.85)} ${n(foot - amp * 0.9)} ${n(w * 0.7)} ${n(foot)} ${n(w * 0.55)} ${n(foot)}S${n(w * 0.2)} ${n(foot - amp)} 0 ${n(foot)}z`;
const poly = (w: number, h: number, points: readonly Point[], colour: string) =>
  path(polygon(points.map(([x, y]): Point => [x * w, y * h])), colour);
const C = (c: readonly string[], i: number) => nth(c, i);

const noon: Design = (w, h, c) =>
  rect(0, 0, w, h, C(c, 0)) +
  disc(w / 2, h * 0.37, Math.min(w, h) * 0.27, C(c, 1)) +
  path(wave(w, h * 0.64, h * 0.08, h * 1.2), C(c, 2)) +
  path(wave(w, h * 0.82, h * 0.06, h * 0.91), C(c, 3));
const gate: Design = (w, h, c) =>
  rect(0, 0, w, h, C(c, 1)) +
  rect(0, 0, w * 0.42, h * 0.7, C(c, 0)) +
  rect(w * 0.42, h * 0.3, w * 0.58, h * 0.2, C(c, 3)) +
  path(wave(w, h * 0.76, h * 0.07, h * 1.2), C(c, 2));
const hills: Design = (w, h, c) =>
  rect(0, 0, w, h, C(c, 0)) +
  path(
    `M0 0H${n(w)}V${n(h * 0.35)}C${n(w * 0.7)} ${n(h * 0.5)} ${n(w * 0.4)} ${n(h * 0.2)} 0 ${n(h * 0.45)}z`,
    C(c, 1),
  ) +
  poly(
    w,
    h,
    [
      [0.1, 1],
      [0.46, 0.48],
      [0.82, 1],
    ],
    C(c, 2),
  ) +
  poly(
    w,
    h,
    [
      [0.5, 1],
      [0.78, 0.62],
      [1, 0.9],
      [1, 1],
    ],
    C(c, 3),
  ) +
  disc(w * 0.8, h * 0.18, w * 0.1, C(c, 3));
const fall: Design = (w, h, c) => {
  let s = rect(0, 0, w, h, C(c, 0));
  for (let i = 0; i < 5; i++)
    s += rect(w * (0.06 + i * 0.19), i % 2 ? h * 0.1 : 0, w * 0.1, h * (0.55 + (i % 3) * 0.12), C(c, 1 + (i % 2)));
  return s + path(wave(w, h * 0.84, h * 0.05, h * 1.2), C(c, 3));
};
const whirl: Design = (w, h, c) => {
  const m = Math.min(w, h);
  let s = rect(0, 0, w, h, C(c, 0));
  for (let i = 4; i > 0; i--) s += disc(w / 2 + (4 - i) * m * 0.03, h / 2 - (4 - i) * m * 0.04, m * 0.115 * i, C(c, i));
  return s;
};
const lightning: Design = (w, h, c) =>
  rect(0, 0, w, h, C(c, 0)) +
  rect(0, h * 0.74, w, h * 0.26, C(c, 2)) +
  poly(
    w,
    h,
    [
      [0.56, 0],
      [0.74, 0],
      [0.56, 0.36],
      [0.76, 0.36],
      [0.3, 0.86],
      [0.44, 0.46],
      [0.28, 0.46],
    ],
    C(c, 1),
  ) +
  poly(
    w,
    h,
    [
      [0, 0.14],
      [0.3, 0.14],
      [0.24, 0.26],
      [0, 0.26],
    ],
    C(c, 3),
  );
const confluence: Design = (w, h, c) =>
  rect(0, 0, w, h, C(c, 0)) +
  path(
    `M0 0H${n(w * 0.2)}C${n(w * 0.3)} ${n(h * 0.4)} ${n(w * 0.5)} ${n(h * 0.4)} ${n(w * 0.5)} ${n(h)}H${n(w * 0.3)}C${n(w * 0.3)} ${n(h * 0.5)} 0 ${n(h * 0.4)} 0 ${n(h * 0.1)}z`,
    C(c, 1),
  ) +
  path(
    `M${n(w)} 0H${n(w * 0.74)}C${n(w * 0.76)} ${n(h * 0.4)} ${n(w * 0.5)} ${n(h * 0.4)} ${n(w * 0.5)} ${n(h)}H${n(w * 0.72)}C${n(w * 0.72)} ${n(h * 0.6)} ${n(w)} ${n(h * 0.4)} ${n(w)} ${n(h * 0.14)}z`,
    C(c, 2),
  ) +
  disc(w * 0.5, h * 0.2, w * 0.09, C(c, 3));
const terraces: Design = (w, h, c) => {
  let s = rect(0, 0, w, h, C(c, 0));
  for (let i = 0; i < 5; i++)
    s += poly(
      w,
      h,
      [
        [0, 0.3 + i * 0.15],
        [0.3 + i * 0.1, 0.24 + i * 0.15],
        [1, 0.34 + i * 0.14],
        [1, 1],
        [0, 1],
      ],
      C(c, 1 + i),
    );
  return s;
};
const moonrise: Design = (w, h, c) =>
  rect(0, 0, w, h, C(c, 0)) +
  disc(w * 0.36, h * 0.4, w * 0.26, C(c, 1)) +
  disc(w * 0.46, h * 0.34, w * 0.24, C(c, 0)) +
  rect(0, h * 0.72, w, h * 0.1, C(c, 2)) +
  rect(w * 0.2, h * 0.82, w * 0.5, h * 0.08, C(c, 3)) +
  rect(w * 0.5, h * 0.62, w * 0.5, h * 0.1, C(c, 3));
const reeds: Design = (w, h, c) => {
  let s = rect(0, 0, w, h, C(c, 0)) + rect(0, h * 0.66, w, h * 0.34, C(c, 1));
  for (let i = 0; i < 7; i++)
    s += poly(
      w,
      h,
      [
        [0.06 + i * 0.13, 1],
        [0.1 + i * 0.14, 0.2 + ((i * 5) % 4) * 0.1],
        [0.13 + i * 0.13, 1],
      ],
      C(c, 2 + (i % 2)),
    );
  return s;
};

interface Panel {
  readonly design: Design;
  readonly colours: readonly string[];
}

/** Columns × rows of tiles come with the record; design and glazes from here. */
export const PANELS: readonly Panel[] = [
  { design: noon, colours: [SUN, ORANGE, NAVY, WHITE] },
  { design: gate, colours: [NAVY, WHITE, SEA, RED] },
  { design: hills, colours: [WHITE, SKY, NAVY, CLAY] },
  { design: fall, colours: [SEA, WHITE, NAVY, SUN] },
  { design: whirl, colours: [RED, WHITE, NAVY, SUN, BLACK] },
  { design: lightning, colours: [PLUM, SUN, BLACK, SKY] },
  { design: confluence, colours: [SAND, NAVY, RED, SUN] },
  { design: terraces, colours: [SKY, GREEN, SUN, CLAY, PLUM, BLACK] },
  { design: moonrise, colours: [BLACK, SAND, NAVY, ORANGE] },
  { design: reeds, colours: [ORANGE, NAVY, GREEN, BLACK] },
  { design: noon, colours: [SKY, WHITE, GREEN, SAND] },
  { design: gate, colours: [CLAY, SAND, BLACK, SEA] },
  { design: hills, colours: [ORANGE, SUN, RED, PLUM] },
  { design: fall, colours: [NAVY, SKY, WHITE, RED] },
  { design: whirl, colours: [SEA, SAND, SEA, WHITE, NAVY] },
  { design: lightning, colours: [WHITE, NAVY, RED, SUN] },
  { design: confluence, colours: [GREEN, WHITE, SKY, ORANGE] },
  { design: terraces, colours: [SUN, ORANGE, RED, PLUM, NAVY, BLACK] },
];

export function tilePanel(w: number, h: number, columns: number, rows: number, variant: number): Drawing {
  const dice = diceFrom(variant * 83 + 41);
  const { design, colours } = nth(PANELS, variant);
  const tw = w / columns;
  const th = h / rows;
  let glaze = '';
  let joints = '';
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++) {
      const x = i * tw;
      const y = j * th;
      const k = between(dice, -1, 1);
      glaze += rect(x, y, tw, th, k > 0 ? '#fff' : '#000', `opacity="${n(Math.abs(k) * 0.07)}"`);
      glaze += rect(x, y, tw, th, 'url(#pillow)');
      glaze += stroke(
        `M${n(x + tw * 0.06)} ${n(y + th * 0.93)}V${n(y + th * 0.07)}H${n(x + tw * 0.93)}`,
        '#fff',
        tw * 0.026,
        'opacity=".5"',
      );
      glaze += stroke(
        `M${n(x + tw * 0.18)} ${n(y + th * 0.32)}l${n(tw * 0.18)} ${n(-th * 0.15)}`,
        '#fff',
        tw * 0.04,
        'opacity=".32" stroke-linecap="round"',
      );
    }
  for (let i = 1; i < columns; i++) joints += `M${n(i * tw)} 0V${n(h)}`;
  for (let j = 1; j < rows; j++) joints += `M0 ${n(j * th)}H${n(w)}`;
  return {
    defs:
      `<clipPath id="panel"><rect width="${n(w)}" height="${n(h)}"/></clipPath>` +
      linear(
        'pillow',
        [0, 0, 1, 1],
        [
          [0, '#fff', 0.12],
          [0.4, '#fff', 0],
          [0.6, '#000', 0],
          [1, '#000', 0.16],
        ],
      ) +
      linear(
        'fall',
        [0, 0, 1, 1],
        [
          [0, '#fff', 0.1],
          [0.5, '#fff', 0],
          [1, '#000', 0.14],
        ],
      ),
    body: `<g clip-path="url(#panel)">${design(w, h, colours)}${glaze}${stroke(joints, hex(56, 1, 6), Math.min(0.5, tw * 0.03))}${rect(0, 0, w, h, 'url(#fall)')}</g>${stroke(`M0 ${n(h - 0.2)}H${n(w - 0.2)}V0`, hex(40, 6, 10), 0.4)}`,
  };
}
