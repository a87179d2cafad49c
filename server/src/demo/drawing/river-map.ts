/** River and flood maps: engraved or washed by hand, each with a course of its own, glazed in a narrow frame or bare. */
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
  type Point,
  rect,
  shade,
  smooth,
  stroke,
} from './ink.ts';
import { noise, textured } from './texture.ts';

export type MapFrame = 'black' | 'oak' | 'none';

const PAPERS = [ink(86, 2, 16), ink(88, 0, 10), ink(80, 5, 22), ink(84, 3, 18), ink(90, -1, 7)];
const WATERS = [ink(56, -8, -24), ink(64, -14, -12), ink(48, -4, -20), ink(60, -18, -6), ink(70, -6, -16)];

/** A river's course across the sheet: a wandering line from the left (or top) edge to the right (or bottom). */
function courseOf(dice: Dice, w: number, h: number, bends: number, upright: boolean): Point[] {
  const points: Point[] = [];
  for (let i = 0; i <= bends; i++) {
    const t = i / bends;
    const drift = 0.5 + 0.3 * Math.sin(t * between(dice, 4, 8) + dice() * 2) * (0.4 + dice() * 0.6);
    points.push(upright ? [w * drift, h * (-0.04 + 1.08 * t)] : [w * (-0.04 + 1.08 * t), h * drift]);
  }
  return points;
}

export function riverMap(w: number, h: number, variant: number, frame: MapFrame): Drawing {
  const dice = diceFrom(variant * 401 + 17);
  const fw = frame === 'none' ? 0 : Math.min(w, h) * 0.035;
  const iw = w - 2 * fw;
  const ih = h - 2 * fw;
  const paper = nth(PAPERS, variant);
  const water = nth(WATERS, variant * 2);
  const linework = hex(30, 6, 9);
  const course = courseOf(dice, iw, ih, 6 + (variant % 4), h > w);
  const d = smooth(course);
  const s = Math.min(iw, ih);
  let sheet = rect(0, 0, iw, ih, shade(paper, 0));
  // Fields: lines that follow the river at growing distance, as hachures do.
  for (let k = 1; k <= 5; k++)
    for (const side of [-1, 1]) {
      const off = side * s * (0.1 + k * 0.085);
      const line = course.map(
        ([x, y], i): Point =>
          h > w ? [x + off + Math.sin(i + k) * s * 0.02, y] : [x, y + off + Math.sin(i + k) * s * 0.02],
      );
      sheet += stroke(
        smooth(line),
        shade(paper, -34),
        s * 0.0035,
        `opacity=".75" stroke-dasharray="${k % 2 ? 'none' : `${n(s * 0.02)} ${n(s * 0.008)}`}"`,
      );
    }
  // The flood's reach, washed; then the river itself.
  sheet += stroke(d, shade(water, 14), s * between(dice, 0.16, 0.3), 'stroke-linejoin="round" opacity=".55"');
  sheet += stroke(d, shade(water, 6), s * between(dice, 0.08, 0.13), 'stroke-linejoin="round" opacity=".6"');
  sheet +=
    stroke(d, shade(water, -18), s * 0.042, 'stroke-linejoin="round"') +
    stroke(d, shade(water, -4), s * 0.03, 'stroke-linejoin="round"');
  for (let k = 0; k < 3; k++) {
    const from = nth(course, 1 + k * 2);
    const tip: Point = [from[0] + between(dice, -0.3, 0.3) * iw, between(dice, 0.02, 0.98) * ih];
    sheet += stroke(
      smooth([from, [(from[0] + tip[0]) / 2 + s * 0.06, (from[1] + tip[1]) / 2], tip]),
      shade(water, -14),
      s * 0.009,
    );
  }
  // Houses gather where the river bends; two washes of colour for parishes.
  for (let k = 0; k < 4; k++) {
    const p = nth(course, 1 + ((k * 2 + variant) % (course.length - 2)));
    for (let i = 0; i < 9; i++) {
      const x = p[0] + between(dice, -0.12, 0.12) * iw;
      const y = p[1] + (dice() < 0.5 ? -1 : 1) * between(dice, 0.06, 0.17) * s;
      sheet += rect(
        x,
        y,
        s * between(dice, 0.014, 0.03),
        s * between(dice, 0.01, 0.02),
        k === 0 ? hex(46, 38, 24) : hex(33, 16, 13),
      );
    }
  }
  for (let k = 0; k < 70; k++) {
    const x = dice() * iw;
    const y = dice() * ih;
    sheet += stroke(`M${n(x)} ${n(y)}l${n(s * 0.012)} ${n(-s * 0.014)}`, shade(paper, -40), s * 0.003);
  }
  const tint = nth([hex(72, 22, 16), hex(78, -4, 42), hex(70, -16, 20)], variant);
  sheet += `<path d="${smooth(
    [
      [0, 0],
      [iw * 0.3, ih * 0.1],
      [iw * between(dice, 0.3, 0.6), ih * 0.34],
      [iw * 0.1, ih * 0.42],
      [0, ih * 0.3],
    ],
    true,
  )}" fill="${tint}" opacity=".28"/>`;
  // Border, cartouche, scale, compass.
  sheet += `<rect x="${n(s * 0.025)}" y="${n(s * 0.025)}" width="${n(iw - s * 0.05)}" height="${n(ih - s * 0.05)}" fill="none" stroke="${linework}" stroke-width="${n(s * 0.006)}"/>`;
  const cw = iw * 0.28;
  const ch = ih * 0.16;
  const cx = variant % 2 ? iw * 0.06 : iw * 0.66;
  const cy = variant % 4 < 2 ? ih * 0.07 : ih * 0.76;
  sheet += rect(cx, cy, cw, ch, shade(paper, 6), `stroke="${linework}" stroke-width="${n(s * 0.004)}"`);
  for (let k = 0; k < 3; k++)
    sheet += stroke(
      `M${n(cx + cw * 0.12)} ${n(cy + ch * (0.28 + k * 0.24))}h${n(cw * (0.76 - k * 0.16))}`,
      linework,
      ch * (k === 0 ? 0.13 : 0.06),
      `stroke-dasharray="${n(cw * 0.05)} ${n(cw * 0.018)}"`,
    );
  for (let k = 0; k < 4; k++)
    sheet += rect(
      iw * 0.08 + k * iw * 0.05,
      ih * 0.93,
      iw * 0.05,
      s * 0.012,
      k % 2 ? shade(paper, 4) : linework,
      `stroke="${linework}" stroke-width="${n(s * 0.002)}"`,
    );
  const rx = iw * (variant % 2 ? 0.9 : 0.1);
  const ry = ih * 0.2;
  sheet +=
    stroke(
      `M${n(rx)} ${n(ry + s * 0.07)}V${n(ry - s * 0.08)}l${n(-s * 0.015)} ${n(s * 0.03)}m${n(s * 0.015)} ${n(-s * 0.03)}l${n(s * 0.015)} ${n(s * 0.03)}`,
      linework,
      s * 0.006,
    ) + disc(rx, ry, s * 0.03, 'none', `stroke="${linework}" stroke-width="${n(s * 0.004)}"`);
  // Folds and foxing.
  for (const t of [0.25, 0.5, 0.75])
    sheet +=
      stroke(`M${n(iw * t)} 0V${n(ih)}`, '#000', s * 0.006, 'opacity=".09"') +
      stroke(`M${n(iw * t + s * 0.006)} 0V${n(ih)}`, '#fff', s * 0.005, 'opacity=".25"');
  sheet += stroke(`M0 ${n(ih / 2)}H${n(iw)}`, '#000', s * 0.006, 'opacity=".09"');
  sheet += textured(`M0 0h${n(iw)}v${n(ih)}h${n(-iw)}z`, 'foxing', 0.35);
  const wood = frame === 'black' ? ink(16, 2, 3) : ink(44, 12, 24);
  const border =
    frame === 'none'
      ? ''
      : rect(0, 0, w, h, shade(wood, 0)) +
        stroke(`M${n(fw * 0.15)} ${n(h)}V${n(fw * 0.15)}H${n(w)}`, shade(wood, 26), fw * 0.3) +
        stroke(`M0 ${n(h - fw * 0.15)}H${n(w - fw * 0.15)}V0`, shade(wood, -14), fw * 0.3) +
        `<rect x="${n(fw * 0.9)}" y="${n(fw * 0.9)}" width="${n(w - fw * 1.8)}" height="${n(h - fw * 1.8)}" fill="none" stroke="${shade(wood, -10)}" stroke-width="${n(fw * 0.2)}"/>`;
  return {
    defs:
      `<clipPath id="sheet"><rect width="${n(iw)}" height="${n(ih)}"/></clipPath>` +
      noise('foxing', [iw, ih], [0.12, 0.12], 3, variant + 60, 2.4),
    body: `${border}<g transform="translate(${n(fw)} ${n(fw)})"><g clip-path="url(#sheet)">${sheet}</g></g>`,
  };
}
