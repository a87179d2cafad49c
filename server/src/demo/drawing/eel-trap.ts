/** Willow eel traps: woven funnels, standing on their mouths. */
import { type Drawing, diceFrom, ink, linear, n, nth, path, rect, shade, stroke } from './ink.ts';

const WILLOW = [ink(52, 10, 25), ink(46, 9, 20), ink(58, 8, 28), ink(40, 10, 18), ink(50, 6, 16), ink(55, 13, 30)];

export function eelTrap(w: number, h: number, variant: number): Drawing {
  const dice = diceFrom(variant * 37 + 1);
  const c = nth(WILLOW, variant);
  const X = (t: number) => n(w * t);
  const Y = (t: number) => n(h * t);
  const belly = 0.2 + dice() * 0.1;
  const waist = 0.04 + dice() * 0.05;
  const outline = [
    `M${X(0.03)} ${Y(1)}C${X(0.1)} ${Y(0.92)} ${X(belly)} ${Y(0.88)} ${X(belly)} ${Y(0.76)}C${X(belly - 0.03)} ${Y(0.6)} ${X(0.2)} ${Y(0.5)} ${X(0.27)} ${Y(0.38)}C${X(0.33)} ${Y(0.28)} ${X(0.4)} ${Y(0.2)} ${X(0.41)} ${Y(0.12)}H${X(0.59)}C${X(0.6)} ${Y(0.2)} ${X(0.67)} ${Y(0.28)} ${X(0.73)} ${Y(0.38)}C${X(0.8)} ${Y(0.5)} ${X(1.03 - belly)} ${Y(0.6)} ${X(1 - belly)} ${Y(0.76)}C${X(1 - belly)} ${Y(0.88)} ${X(0.9)} ${Y(0.92)} ${X(0.97)} ${Y(1)}z`,
    `M${X(0.06)} ${Y(1)}C${X(waist)} ${Y(0.8)} ${X(waist)} ${Y(0.5)} ${X(0.24)} ${Y(0.34)}C${X(0.34)} ${Y(0.26)} ${X(0.38)} ${Y(0.2)} ${X(0.39)} ${Y(0.12)}H${X(0.61)}C${X(0.62)} ${Y(0.2)} ${X(0.66)} ${Y(0.26)} ${X(0.76)} ${Y(0.34)}C${X(1 - waist)} ${Y(0.5)} ${X(1 - waist)} ${Y(0.8)} ${X(0.94)} ${Y(1)}z`,
    `M${X(0.02)} ${Y(1)}L${X(0.3)} ${Y(0.7)}L${X(0.22)} ${Y(0.52)}C${X(0.24)} ${Y(0.36)} ${X(0.4)} ${Y(0.26)} ${X(0.42)} ${Y(0.12)}H${X(0.58)}C${X(0.6)} ${Y(0.26)} ${X(0.76)} ${Y(0.36)} ${X(0.78)} ${Y(0.52)}L${X(0.7)} ${Y(0.7)}L${X(0.98)} ${Y(1)}z`,
  ][variant % 3] as string;
  let body = '';
  const tips = [0.025, 0.005, 0.04, 0.012, 0.03, 0.02];
  for (let i = 0; i < 6; i++)
    body += stroke(
      `M${X(0.42 + 0.032 * i)} ${Y(0.14)}Q${X(0.42 + 0.032 * i)} ${Y(0.06)} ${X(0.3 + 0.08 * i)} ${Y(nth(tips, i + variant))}`,
      shade(c, i % 2 ? 6 : -8),
      w * 0.03,
      'stroke-linecap="round"',
    );
  body += path(outline, shade(c, -34));
  let weave = '';
  for (let i = 0; i <= 12; i++) {
    const t = i / 12;
    weave += stroke(
      `M${X(t)} ${Y(1)}C${X(0.13 + 0.74 * t)} ${Y(0.86)} ${X(0.14 + 0.72 * t)} ${Y(0.55)} ${X(0.42 + 0.16 * t)} ${Y(0.1)}`,
      shade(c, t < 0.42 ? 8 : -9),
      w * 0.026,
    );
  }
  const bands = nth(
    [
      [
        [0.12, 0.3],
        [0.37, 0.55],
        [0.62, 0.8],
        [0.88, 1],
      ],
      [
        [0.12, 0.42],
        [0.5, 0.62],
        [0.72, 1],
      ],
      [
        [0.12, 0.22],
        [0.28, 0.38],
        [0.44, 0.54],
        [0.6, 0.72],
        [0.78, 0.88],
        [0.93, 1],
      ],
    ],
    variant + (variant > 2 ? 1 : 0),
  );
  const dash = Math.max(1.2, w * 0.075);
  for (const [a, b] of bands as [number, number][]) {
    const rows = Math.max(3, Math.round(((b - a) * h) / 1.5));
    for (let i = 0; i < rows; i++) {
      const y = a + ((b - a) * (i + 0.5)) / rows;
      weave += stroke(
        `M0 ${Y(y)}Q${X(0.5)} ${Y(y + 0.024)} ${X(1)} ${Y(y)}`,
        shade(c, i % 2 ? 11 : 1),
        (((b - a) * h) / rows) * 0.8,
        `stroke-dasharray="${n(dash)} ${n(dash * 0.3)}" stroke-dashoffset="${i % 2 ? 0 : n(dash * 0.65)}"`,
      );
    }
  }
  body += `<g clip-path="url(#trap)">${weave}${rect(0, 0, w, h, 'url(#turn)')}</g>`;
  body += stroke(`M${X(0.05)} ${Y(0.992)}Q${X(0.5)} ${Y(1)} ${X(0.95)} ${Y(0.992)}`, shade(c, -16), h * 0.014);
  return {
    defs:
      `<clipPath id="trap"><path d="${outline}"/></clipPath>` +
      linear(
        'turn',
        [0, 0, 1, 0],
        [
          [0, '#000', 0.26],
          [0.24, '#fff', 0.2],
          [0.48, '#fff', 0],
          [1, '#000', 0.5],
        ],
      ),
    body,
  };
}
