/** Fennimarsh's hangings: dyed wool in flat strong colour, about rivers and weather. Nine compositions. */
import { type Drawing, disc, hex, linear, n, nth, type Point, path, polygon, rect, smooth, stroke } from './ink.ts';
import { noise, textured } from './texture.ts';

const RED = hex(43, 56, 36);
const BLUE = hex(27, 9, -40);
const CREAM = hex(90, 0, 13);
const YELLOW = hex(79, 6, 68);
const INK = hex(17, 2, -6);
const PINK = hex(70, 30, 12);
const SKY = hex(66, -12, -20);
const ORANGE = hex(62, 40, 56);
const GREEN = hex(46, -26, -2);
const LEAF = hex(68, -26, 42);
const MOSS = hex(48, -22, 30);
const VIOLET = hex(34, 28, -30);
const ICE = hex(84, -7, -8);

type Weave = (w: number, h: number) => string;

const band = (w: number, h: number, top: readonly number[], thick: readonly number[], colour: string) => {
  const upper = top.map((y, i): Point => [(w * i) / (top.length - 1), h * y]);
  const lower = top.map((y, i): Point => [(w * i) / (top.length - 1), h * (y + nth(thick, i))]).reverse();
  return path(`${smooth(upper)}L${smooth(lower).slice(1)}z`, colour);
};

const weirRising: Weave = (w, h) => {
  const top = [0.36, 0.2, 0.17, 0.3, 0.58, 0.78, 0.72, 0.42, 0.22];
  let s = rect(0, 0, w, h, RED) + band(w, h, top, [0.46, 0.4, 0.33, 0.4, 0.34, 0.3, 0.32, 0.42, 0.46], BLUE);
  s += band(
    w,
    h,
    top.map((y) => y + 0.12),
    [0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.09, 0.1, 0.1],
    CREAM,
  );
  s += disc(w * 0.735, h * 0.27, h * 0.2, YELLOW) + rect(w * 0.63, h * 0.33, w * 0.21, h * 0.055, RED);
  for (let i = 0; i < 5; i++) s += rect(w * 0.045 * i, h * 0.86, w * 0.028, h * 0.14, INK);
  for (let i = 0; i < 3; i++) s += rect(w * (0.46 + i * 0.045), h * 0.06, w * 0.03, h * (0.2 - 0.05 * i), YELLOW);
  return s;
};

const rainOnTheFlats: Weave = (w, h) => {
  let s =
    rect(0, 0, w, h, GREEN) +
    path(`M0 0H${n(w)}V${n(h * 0.3)}C${n(w * 0.6)} ${n(h * 0.2)} ${n(w * 0.4)} ${n(h * 0.42)} 0 ${n(h * 0.34)}z`, SKY);
  s += path(
    `M${n(w * 0.3)} ${n(h)}C${n(w * 0.9)} ${n(h * 0.8)} ${n(w * 0.1)} ${n(h * 0.62)} ${n(w * 0.56)} ${n(h * 0.36)}C${n(w * 0.4)} ${n(h * 0.62)} ${n(w * 1.02)} ${n(h * 0.76)} ${n(w * 0.74)} ${n(h)}z`,
    CREAM,
  );
  for (let i = 0; i < 6; i++)
    s += path(
      polygon([
        [w * (0.08 + 0.16 * i), h * 0.04],
        [w * (0.115 + 0.16 * i), h * 0.04],
        [w * (0.06 + 0.16 * i), h * 0.26],
        [w * (0.035 + 0.16 * i), h * 0.26],
      ]),
      BLUE,
    );
  return (
    s +
    path(
      `M0 ${n(h * 0.9)}C${n(w * 0.3)} ${n(h * 0.82)} ${n(w * 0.6)} ${n(h * 0.97)} ${n(w)} ${n(h * 0.9)}V${n(h)}H0z`,
      hex(28, -14, 2),
    )
  );
};

const drySummer: Weave = (w, h) => {
  let s =
    rect(0, 0, w, h, YELLOW) +
    path(`M0 ${n(h * 0.6)}Q${n(w / 2)} ${n(h * 0.32)} ${n(w)} ${n(h * 0.62)}V${n(h)}H0z`, ORANGE);
  s +=
    path(`M${n(w * 0.08)} ${n(h)}Q${n(w / 2)} ${n(h * 0.42)} ${n(w * 0.92)} ${n(h)}z`, RED) +
    disc(w / 2, h * 0.22, w * 0.18, CREAM);
  for (let i = 0; i < 7; i++)
    s += rect(w * (0.08 + i * 0.125), h * 0.02, w * 0.02, h * (i === 3 ? 0.03 : 0.1 + (i % 2) * 0.05), ORANGE);
  return s + path(`M${n(w * 0.4)} ${n(h)}Q${n(w / 2)} ${n(h * 0.66)} ${n(w * 0.6)} ${n(h)}z`, INK);
};

const bankFull: Weave = (w, h) => {
  let s = rect(0, 0, w, h, BLUE);
  for (let i = 0; i < 7; i++)
    s += band(
      w,
      h,
      [0.09, 0.05, 0.08, 0.13, 0.14, 0.1].map((y) => y + 0.13 * i),
      [0.035, 0.045, 0.05, 0.045, 0.035, 0.04],
      nth([CREAM, SKY, PINK], i),
    );
  return s + rect(w * 0.62, 0, w * 0.14, h, YELLOW) + rect(w * 0.62, h * 0.5, w * 0.14, h * 0.07, BLUE);
};

const twoRivers: Weave = (w, h) => {
  let s =
    rect(0, 0, w, h, CREAM) +
    path(`M0 0H${n(w * 0.46)}C${n(w * 0.3)} ${n(h * 0.4)} ${n(w * 0.7)} ${n(h * 0.6)} ${n(w * 0.5)} ${n(h)}H0z`, PINK);
  s += path(
    `M${n(w * 0.46)} 0C${n(w * 0.3)} ${n(h * 0.4)} ${n(w * 0.7)} ${n(h * 0.6)} ${n(w * 0.5)} ${n(h)}H${n(w * 0.66)}C${n(w * 0.86)} ${n(h * 0.6)} ${n(w * 0.46)} ${n(h * 0.4)} ${n(w * 0.62)} 0z`,
    RED,
  );
  s += path(
    `M${n(w * 0.06)} 0h${n(w * 0.12)}C${n(w * 0.1)} ${n(h * 0.3)} ${n(w * 0.4)} ${n(h * 0.7)} ${n(w * 0.22)} ${n(h)}h${n(-w * 0.14)}C${n(w * 0.24)} ${n(h * 0.7)} ${n(-w * 0.06)} ${n(h * 0.3)} ${n(w * 0.06)} 0z`,
    VIOLET,
  );
  for (let i = 0; i < 4; i++) s += rect(w * 0.76, h * (0.12 + 0.2 * i), w * 0.24, h * 0.07, BLUE);
  return s;
};

const meadowUnderWater: Weave = (w, h) => {
  let s = rect(0, 0, w, h, LEAF) + rect(0, 0, w, h * 0.26, hex(88, -3, 2));
  s += band(w, h, [0.2, 0.24, 0.18, 0.22], [0.16, 0.12, 0.17, 0.14], hex(70, -22, 18));
  for (let i = 0; i < 5; i++)
    s += path(
      polygon([
        [0, h * (0.5 + i * 0.11)],
        [w, h * (0.4 + i * 0.11)],
        [w, h * (0.425 + i * 0.115)],
        [0, h * (0.535 + i * 0.115)],
      ]),
      i % 2 ? hex(90, -4, -2) : hex(84, -8, 4),
    );
  for (let i = 0; i < 4; i++)
    s += path(
      `M${n(w * (0.14 + i * 0.22))} ${n(h)}V${n(h * (0.74 - (i % 2) * 0.1))}q${n(w * 0.05)} ${n(-h * 0.06)} ${n(w * 0.1)} 0V${n(h)}z`,
      i % 2 ? MOSS : hex(56, -30, 36),
    );
  return s + disc(w * 0.78, h * 0.13, w * 0.09, YELLOW);
};

const nightBarge: Weave = (w, h) => {
  let s = rect(0, 0, w, h, hex(20, 6, -26)) + rect(0, h * 0.6, w, h * 0.4, INK);
  s += path(
    `M${n(w * 0.12)} ${n(h * 0.56)}H${n(w * 0.86)}C${n(w * 0.84)} ${n(h * 0.68)} ${n(w * 0.76)} ${n(h * 0.72)} ${n(w * 0.66)} ${n(h * 0.72)}H${n(w * 0.3)}C${n(w * 0.2)} ${n(h * 0.72)} ${n(w * 0.14)} ${n(h * 0.68)} ${n(w * 0.12)} ${n(h * 0.56)}z`,
    RED,
  );
  s += rect(w * 0.5, h * 0.42, w * 0.24, h * 0.14, VIOLET) + disc(w * 0.29, h * 0.4, h * 0.08, YELLOW);
  for (let i = 0; i < 6; i++)
    s += rect(w * (0.25 + (i % 2) * 0.015), h * (0.74 + i * 0.042), w * (0.1 - i * 0.012), h * 0.02, YELLOW);
  for (let i = 0; i < 9; i++) s += disc(w * (0.08 + i * 0.105), h * (0.12 + ((i * 7) % 5) * 0.045), h * 0.012, CREAM);
  return s + band(w, h, [0.9, 0.86, 0.93, 0.88, 0.92], [0.04, 0.03, 0.04, 0.03, 0.04], SKY);
};

const iceOnTheRace: Weave = (w, h) => {
  let s = rect(0, 0, w, h, ICE);
  const shards: [Point[], string][] = [
    [
      [
        [0, 0.08],
        [0.6, 0],
        [0.34, 0.3],
      ],
      CREAM,
    ],
    [
      [
        [0.6, 0],
        [1, 0],
        [1, 0.26],
        [0.34, 0.3],
      ],
      SKY,
    ],
    [
      [
        [0, 0.08],
        [0.34, 0.3],
        [0.08, 0.52],
        [0, 0.5],
      ],
      INK,
    ],
    [
      [
        [0.34, 0.3],
        [1, 0.26],
        [0.72, 0.6],
      ],
      CREAM,
    ],
    [
      [
        [0.34, 0.3],
        [0.72, 0.6],
        [0.28, 0.78],
        [0.08, 0.52],
      ],
      hex(74, -9, -14),
    ],
    [
      [
        [1, 0.26],
        [1, 0.74],
        [0.72, 0.6],
      ],
      BLUE,
    ],
    [
      [
        [0.72, 0.6],
        [1, 0.74],
        [1, 1],
        [0.5, 1],
        [0.28, 0.78],
      ],
      ICE,
    ],
    [
      [
        [0, 0.7],
        [0.28, 0.78],
        [0.5, 1],
        [0, 1],
      ],
      hex(50, -8, -22),
    ],
  ];
  for (const [points, colour] of shards)
    s += path(
      polygon(points.map(([x, y]): Point => [x * w, y * h])),
      colour,
      `stroke="${CREAM}" stroke-width="${n(w * 0.012)}"`,
    );
  return s + disc(w * 0.2, h * 0.9, w * 0.06, RED);
};

const windFromTallowHill: Weave = (w, h) => {
  let s = rect(0, 0, w, h, PINK);
  const arcs = [VIOLET, ORANGE, CREAM, RED, INK];
  for (const [i, colour] of arcs.entries()) {
    const r = w * (0.95 - i * 0.17);
    s += path(`M${n(w * 0.1 - r)} ${n(h * 1.06)}a${n(r)} ${n(r * 0.86)} 0 0 1 ${n(r * 2)} 0z`, colour);
  }
  for (let i = 0; i < 4; i++)
    s += path(
      polygon([
        [w * (0.7 + i * 0.07), h * 0.06],
        [w * (0.74 + i * 0.07), h * 0.06],
        [w * (0.84 + i * 0.07), h * 0.3],
        [w * (0.8 + i * 0.07), h * 0.3],
      ]),
      VIOLET,
    );
  return s;
};

export const WEAVES: readonly Weave[] = [
  weirRising,
  rainOnTheFlats,
  drySummer,
  bankFull,
  twoRivers,
  meadowUnderWater,
  nightBarge,
  iceOnTheRace,
  windFromTallowHill,
];

/** The ribs of the weave, and the ends that show between them. */
function ribs(w: number, h: number): string {
  let dark = '';
  let pale = '';
  for (let y = 0.55; y < h; y += 1.1) {
    dark += `M0 ${n(y)}H${n(w)}`;
    pale += `M${n((y * 7) % 1.7)} ${n(y + 0.55)}H${n(w)}`;
  }
  return (
    stroke(dark, '#000', 0.34, 'opacity=".1"') + stroke(pale, '#fff', 0.3, 'opacity=".1" stroke-dasharray=".85 .85"')
  );
}

export function hanging(w: number, h: number, variant: number): Drawing {
  const rod = Math.min(3.4, h * 0.025);
  const cloth = h - rod * 0.5;
  const whole = `M${n(w * 0.006)} 0H${n(w * 0.994)}V${n(cloth)}H${n(w * 0.006)}z`;
  // The foot of the cloth hangs a little out of true.
  const foot = smooth([
    [w * 0.006, cloth * 0.995],
    [w * 0.25, cloth],
    [w * 0.5, cloth * 0.996],
    [w * 0.75, cloth],
    [w * 0.994, cloth * 0.994],
  ]);
  const body =
    `<g clip-path="url(#cloth)">${nth(WEAVES, variant)(w, cloth)}${ribs(w, cloth)}${textured(whole, 'wool-noise', 0.16)}<rect width="${n(w)}" height="${n(cloth)}" fill="url(#drape)"/>${stroke(foot, '#000', 0.9, 'opacity=".3"')}</g>` +
    rect(0, 0, w, rod, 'url(#rod)', 'rx=".8"') +
    rect(w * 0.006, rod, w * 0.988, rod * 0.5, '#000', 'opacity=".22"');
  return {
    defs:
      `<clipPath id="cloth"><path d="${foot}L${n(w * 0.994)} 0H${n(w * 0.006)}z"/></clipPath>` +
      linear(
        'drape',
        [0, 0, 1, 0],
        [
          [0, '#fff', 0.08],
          [0.16, '#000', 0.05],
          [0.33, '#fff', 0.05],
          [0.55, '#000', 0.06],
          [0.72, '#fff', 0.04],
          [1, '#000', 0.13],
        ],
      ) +
      linear(
        'rod',
        [0, 0, 0, 1],
        [
          [0, hex(64, 11, 26)],
          [1, hex(30, 9, 16)],
        ],
      ) +
      noise('wool-noise', [w, h], [0.2, 0.6], 2, variant + 90, 1.6),
    body,
  };
}
