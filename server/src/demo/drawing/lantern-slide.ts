/** Botanical lantern slides: a hand-coloured plant between two glasses, masked and bound in black paper. */
import {
  between,
  type Dice,
  type Drawing,
  diceFrom,
  disc,
  hex,
  ink,
  n,
  nth,
  oval,
  type Point,
  path,
  rect,
  shade,
  smooth,
  stroke,
  turned,
} from './ink.ts';
import { noise, textured } from './texture.ts';

const GROUNDS = [ink(84, 3, 20), ink(80, -3, 16), ink(88, 0, 12), ink(77, 6, 24)];
const GREENS = [ink(38, -20, 24), ink(46, -26, 32), ink(32, -14, 14), ink(52, -18, 36)];
const FLOWERS = [
  ink(48, 46, 8),
  ink(70, 14, 62),
  ink(40, 22, -34),
  ink(56, 44, 34),
  ink(82, 6, 8),
  ink(62, 32, -12),
  ink(74, 26, 18),
];

function plantLeaf(
  kind: number,
  x: number,
  y: number,
  length: number,
  degrees: number,
  green: (typeof GREENS)[number],
): string {
  const c = shade(green, 0);
  const rib = stroke(`M${n(x)} ${n(y)}h${n(length * 0.9)}`, shade(green, 20), length * 0.03);
  const shapes = [
    `M${n(x)} ${n(y)}q${n(length * 0.4)} ${n(-length * 0.34)} ${n(length)} 0q${n(-length * 0.6)} ${n(length * 0.34)} ${n(-length)} 0z`,
    `M${n(x)} ${n(y)}q${n(length * 0.5)} ${n(-length * 0.1)} ${n(length)} 0q${n(-length * 0.5)} ${n(length * 0.1)} ${n(-length)} 0z`,
    `M${n(x)} ${n(y)}c${n(length * 0.1)} ${n(-length * 0.5)} ${n(length * 0.6)} ${n(-length * 0.5)} ${n(length * 0.6)} ${n(-length * 0.2)}c${n(length * 0.2)} ${n(-length * 0.1)} ${n(length * 0.4)} 0 ${n(length * 0.4)} ${n(length * 0.2)}c0 ${n(length * 0.2)} ${n(-length * 0.2)} ${n(length * 0.3)} ${n(-length * 0.4)} ${n(length * 0.2)}c0 ${n(length * 0.3)} ${n(-length * 0.5)} ${n(length * 0.3)} ${n(-length * 0.6)} ${n(-length * 0.2)}z`,
  ];
  return turned(degrees, x, y, path(nth(shapes, kind), c) + rib);
}

function flower(kind: number, x: number, y: number, r: number, c: (typeof FLOWERS)[number], dice: Dice): string {
  let out = '';
  if (kind === 0) {
    const petals = 5 + Math.floor(dice() * 4);
    for (let i = 0; i < petals; i++)
      out += turned((360 * i) / petals, x, y, oval(x, y - r * 0.6, r * 0.3, r * 0.45, shade(c, i % 2 ? 0 : 7)));
    return out + disc(x, y, r * 0.26, hex(78, 8, 62));
  }
  if (kind === 1) {
    // An umbel.
    for (let i = 0; i < 11; i++) {
      const a = Math.PI * (1.08 + (0.84 * i) / 10);
      const tip: Point = [x + Math.cos(a) * r * 1.2, y + Math.sin(a) * r * 1.1 + r * 0.4];
      out +=
        stroke(`M${n(x)} ${n(y + r)}L${n(tip[0])} ${n(tip[1])}`, hex(44, -18, 26), r * 0.06) +
        disc(tip[0], tip[1], r * 0.19, shade(c, i % 2 ? 0 : 9));
    }
    return out;
  }
  if (kind === 2) {
    // A bell, hanging.
    return (
      path(
        `M${n(x - r * 0.5)} ${n(y - r * 0.5)}q${n(r * 0.5)} ${n(-r * 0.6)} ${n(r)} 0q${n(r * 0.1)} ${n(r)} ${n(r * 0.35)} ${n(r * 1.3)}q${n(-r * 0.4)} ${n(-r * 0.3)} ${n(-r * 0.85)} 0q${n(-r * 0.4)} ${n(-r * 0.3)} ${n(-r * 0.85)} 0q${n(r * 0.3)} ${n(-r * 0.4)} ${n(r * 0.35)} ${n(-r * 1.3)}z`,
        shade(c, 0),
      ) + stroke(`M${n(x)} ${n(y - r * 0.6)}v${n(r * 1.2)}`, shade(c, 14), r * 0.14)
    );
  }
  // A spike of small florets.
  for (let i = 0; i < 9; i++)
    out += disc(
      x + ((i % 3) - 1) * r * 0.3 * (1 - i / 14),
      y + r * 0.9 - i * r * 0.26,
      r * 0.2,
      shade(c, (i % 3) * 6 - 4),
    );
  return out;
}

export function lanternSlide(w: number, h: number, variant: number): Drawing {
  const dice = diceFrom(variant * 211 + 9);
  const ground = nth(GROUNDS, variant);
  const green = nth(GREENS, variant * 3 + 1);
  const colour = nth(FLOWERS, variant * 5);
  const arched = variant % 3;
  const m = w * 0.1;
  const iw = w - 2 * m;
  const mask =
    arched === 0
      ? `M${n(m)} ${n(m)}h${n(iw)}v${n(iw)}h${n(-iw)}z`
      : arched === 1
        ? `M${n(m)} ${n(h / 2)}a${n(iw / 2)} ${n(iw / 2)} 0 1 0 ${n(iw)} 0a${n(iw / 2)} ${n(iw / 2)} 0 1 0 ${n(-iw)} 0z`
        : `M${n(m)} ${n(h - m)}V${n(m + iw * 0.14)}q0 ${n(-iw * 0.14)} ${n(iw * 0.14)} ${n(-iw * 0.14)}h${n(iw * 0.72)}q${n(iw * 0.14)} 0 ${n(iw * 0.14)} ${n(iw * 0.14)}V${n(h - m)}z`;
  const cx = w / 2;
  const top = h * (0.28 + dice() * 0.06);
  const foot = h * 0.84;
  const bend = between(dice, -0.12, 0.12) * w;
  const stemAt = (t: number): Point => [cx + bend * Math.sin(t * Math.PI), foot + (top - foot) * t];
  let plant = stroke(smooth([0, 0.25, 0.5, 0.75, 1].map(stemAt)), shade(green, -4), w * 0.014);
  const leafKind = variant % 3;
  const leaves = 3 + Math.floor(dice() * 4);
  const opposite = dice() < 0.5;
  for (let i = 0; i < leaves; i++) {
    const [x, y] = stemAt(0.08 + (0.62 * i) / leaves);
    const length = w * (0.24 - 0.02 * i) * (leafKind === 1 ? 1.1 : 1);
    const tilt = between(dice, 20, 50);
    if (opposite || i % 2) plant += plantLeaf(leafKind, x, y, length, -tilt, green);
    if (opposite || i % 2 === 0) plant += plantLeaf(leafKind, x, y, length, 180 + tilt, green);
  }
  const kind = (variant >> 1) % 4;
  const r = w * (kind === 1 ? 0.15 : 0.1);
  const [tx, ty] = stemAt(1);
  plant += flower(kind, tx, ty, r, colour, dice);
  if (variant % 2) {
    for (const side of [-1, 1]) {
      const [x, y] = stemAt(0.7);
      plant += stroke(
        `M${n(x)} ${n(y)}q${n(side * w * 0.1)} ${n(-h * 0.02)} ${n(side * w * 0.15)} ${n(-h * 0.09)}`,
        shade(green, -4),
        w * 0.011,
      );
      plant += flower(kind, x + side * w * 0.15, y - h * 0.09, r * 0.66, colour, dice);
    }
  }
  const roots =
    variant % 4 === 2
      ? [-1, 0, 1]
          .map((k) =>
            stroke(
              `M${n(cx)} ${n(foot)}q${n(k * w * 0.04)} ${n(h * 0.03)} ${n(k * w * 0.07)} ${n(h * 0.06)}`,
              hex(40, 12, 22),
              w * 0.009,
            ),
          )
          .join('')
      : '';
  const body =
    rect(0, 0, w, h, hex(13, 0, 1), `rx="${n(w * 0.012)}"`) +
    path(mask, shade(ground, 0)) +
    `<g clip-path="url(#window)">${plant}${roots}${textured(mask, 'foxing', 0.35)}<path d="${mask}" fill="url(#vignette)"/></g>` +
    disc(w * 0.06, h * 0.94, w * 0.022, hex(90, 0, 4)) +
    rect(w * 0.3, h * 0.925, w * 0.4, h * 0.05, hex(88, 1, 12)) +
    stroke(
      `M${n(w * 0.34)} ${n(h * 0.95)}q${n(w * 0.05)} ${n(-h * 0.015)} ${n(w * 0.1)} 0t${n(w * 0.1)} 0h${n(w * 0.1)}`,
      hex(26, 2, 4),
      w * 0.007,
    ) +
    path(
      `M${n(w * 0.02)} ${n(h * 0.3)}L${n(w * 0.3)} ${n(h * 0.02)}H${n(w * 0.44)}L${n(w * 0.02)} ${n(h * 0.46)}z`,
      '#fff',
      'opacity=".07"',
    ) +
    stroke(`M${n(w * 0.008)} ${n(h)}V${n(h * 0.008)}H${n(w)}`, '#fff', w * 0.012, 'opacity=".25"');
  return {
    defs:
      `<clipPath id="window"><path d="${mask}"/></clipPath>` +
      `<radialGradient id="vignette" cx=".5" cy=".5" r=".72"><stop offset=".55" stop-color="#000" stop-opacity="0"/><stop offset="1" stop-color="${hex(30, 10, 24)}" stop-opacity=".35"/></radialGradient>` +
      noise('foxing', [w, h], [0.9, 0.9], 3, variant + 40, 2.4),
    body,
  };
}
