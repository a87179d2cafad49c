/** Enamel flood marks: the height the river reached, with its year. */
import { figures } from './digits.ts';
import {
  between,
  type Drawing,
  diceFrom,
  disc,
  hex,
  ink,
  n,
  nth,
  type Point,
  path,
  polygon,
  rect,
  round,
  shade,
  stroke,
} from './ink.ts';
import { noise, textured } from './texture.ts';

interface Livery {
  readonly ground: ReturnType<typeof ink>;
  readonly mark: ReturnType<typeof ink>;
}

const LIVERIES: readonly Livery[] = [
  { ground: ink(93, -1, 4), mark: ink(30, 8, -38) },
  { ground: ink(30, 8, -40), mark: ink(94, -1, 4) },
  { ground: ink(92, -2, 8), mark: ink(18, 1, 0) },
  { ground: ink(94, -1, 3), mark: ink(44, 56, 38) },
  { ground: ink(38, -22, 6), mark: ink(93, -2, 8) },
];

export function enamelMark(w: number, h: number, variant: number, year: string): Drawing {
  const dice = diceFrom(variant * 97 + 23);
  const { ground, mark } = nth(LIVERIES, [0, 0, 2, 0, 1, 0, 3, 0, 2, 4, 0, 1, 0, 3][variant % 14] ?? 0);
  const m = shade(mark, 0);
  const rust = hex(28, 16, 16);
  let body = rect(0, 0, w, h, 'url(#enamel)', 'rx=".9"');
  body += `<rect x=".8" y=".8" width="${n(w - 1.6)}" height="${n(h - 1.6)}" rx=".6" fill="none" stroke="${m}" stroke-width=".5"/>`;
  const tall = h > w;
  const size = Math.min(h * 0.36, w * 0.225);
  body += figures(year, w / 2, h * (tall ? 0.3 : 0.36), size, m, 0.15);
  const y = h * (tall ? 0.6 : 0.72);
  const style = variant % 3;
  if (style === 0)
    body +=
      rect(w * 0.1, y - h * 0.035, w * 0.8, h * 0.06, m) +
      path(
        polygon([
          [w * 0.5, y + h * 0.03],
          [w * 0.41, y + h * 0.18],
          [w * 0.59, y + h * 0.18],
        ]),
        m,
      );
  else if (style === 1) {
    let d = `M${n(w * 0.1)} ${n(y)}`;
    for (let i = 0; i < 5; i++) d += `q${n(w * 0.04)} ${n(-h * 0.07)} ${n(w * 0.08)} 0t${n(w * 0.08)} 0`;
    body +=
      stroke(d, m, h * 0.04) +
      stroke(d.replace(`M${n(w * 0.1)} ${n(y)}`, `M${n(w * 0.1)} ${n(y + h * 0.1)}`), m, h * 0.02);
  } else {
    body +=
      path(
        polygon([
          [w * 0.12, y],
          [w * 0.32, y - h * 0.08],
          [w * 0.32, y + h * 0.08],
        ]),
        m,
      ) + rect(w * 0.32, y - h * 0.02, w * 0.56, h * 0.04, m);
    for (let i = 0; i < 6; i++) body += rect(w * (0.4 + i * 0.085), y, w * 0.014, h * (i % 2 ? 0.06 : 0.1), m);
  }
  body +=
    '<path d="M0 0" fill="none"/>' +
    textured(
      `M.9 0h${n(w - 1.8)}q.9 0 .9 .9v${n(h - 1.8)}q0 .9 -.9 .9h${n(1.8 - w)}q-.9 0 -.9 -.9v${n(1.8 - h)}q0 -.9 .9 -.9z`,
      'worn',
      0.4,
    );
  for (const x of [w * 0.07, w * 0.93])
    body +=
      disc(x, h * 0.11, 0.55, hex(40, 4, 6)) +
      disc(x - 0.12, h * 0.11 - 0.12, 0.22, hex(70, 2, 4)) +
      stroke(`M${n(x)} ${n(h * 0.11 + 0.5)}q.2 1 -.1 ${n(between(dice, 1.5, 3))}`, rust, 0.35, 'opacity=".45"');
  const chips = 1 + Math.floor(dice() * 3);
  for (let i = 0; i < chips; i++) {
    const cx = dice() < 0.5 ? between(dice, 0, 1.4) : w - between(dice, 0, 1.4);
    const cy = between(dice, h * 0.3, h * 0.95);
    const points: Point[] = Array.from({ length: 7 }, (_, k) => [
      cx + Math.cos(k * 0.9) * between(dice, 0.4, 1.1),
      cy + Math.sin(k * 0.9) * between(dice, 0.4, 1.1),
    ]);
    body += `<g clip-path="url(#plate)">${path(polygon(points), hex(20, 4, 4))}${path(polygon(points.map(([a, b]): Point => [(a - cx) * 0.6 + cx, (b - cy) * 0.6 + cy])), rust)}</g>`;
  }
  body +=
    stroke(`M.25 ${n(h - 0.8)}V.9q0 -.65 .65 -.65H${n(w - 0.8)}`, '#fff', 0.4, 'opacity=".75"') +
    stroke(`M.8 ${n(h - 0.2)}H${n(w - 0.9)}q.7 0 .7 -.7V.8`, '#000', 0.4, 'opacity=".4"');
  return {
    defs:
      round(
        'enamel',
        [
          [0, shade(ground, 6)],
          [0.6, shade(ground, 0)],
          [1, shade(ground, -14)],
        ],
        0.35,
        0.3,
        0.9,
      ) +
      `<clipPath id="plate"><rect width="${n(w)}" height="${n(h)}" rx=".9"/></clipPath>` +
      noise('worn', [w, h], [0.22, 0.22], 3, variant + 5, 2),
    body,
  };
}
