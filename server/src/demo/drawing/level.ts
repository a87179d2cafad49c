/** Spirit levels of hardwood and brass, seen along their length. */
import { type Drawing, diceFrom, disc, hex, ink, linear, n, nth, oval, rect, shade } from './ink.ts';
import { noise, textured } from './texture.ts';

const WOODS = [ink(30, 16, 18), ink(38, 18, 22), ink(22, 6, 8), ink(48, 14, 28), ink(34, 22, 20)];

export function level(w: number, h: number, variant: number): Drawing {
  const dice = diceFrom(variant * 17 + 5);
  const wood = nth(WOODS, variant);
  const cap = Math.min(w * 0.06, h * 0.9);
  const plate = w * (0.22 + dice() * 0.14);
  const px = (w - plate) / 2;
  let body = rect(0, 0, w, h, shade(wood, 0), 'rx=".3"');
  body +=
    rect(0, 0, w, h * 0.2, shade(wood, 15), 'rx=".3"') + rect(0, h * 0.8, w, h * 0.2, shade(wood, -12), 'rx=".3"');
  body += textured(`M0 0h${n(w)}v${n(h)}h${n(-w)}z`, 'grain', 0.55);
  for (const x of [0, w - cap])
    body += rect(x, 0, cap, h, 'url(#brass)', 'rx=".2"') + disc(x + cap / 2, h / 2, h * 0.08, hex(38, 8, 30));
  body += rect(px, h * 0.06, plate, h * 0.6, 'url(#brass)', 'rx=".25"');
  body +=
    disc(px + h * 0.18, h * 0.36, h * 0.07, hex(36, 8, 28)) +
    disc(px + plate - h * 0.18, h * 0.36, h * 0.07, hex(36, 8, 28));
  const vx = w / 2 - plate * 0.3;
  body += rect(vx, h * 0.18, plate * 0.6, h * 0.34, hex(20, 3, 6), `rx="${n(h * 0.17)}"`);
  body += rect(vx + h * 0.06, h * 0.23, plate * 0.6 - h * 0.12, h * 0.24, 'url(#spirit)', `rx="${n(h * 0.12)}"`);
  body += oval(
    w / 2 + plate * (dice() - 0.5) * 0.14,
    h * 0.33,
    plate * 0.09,
    h * 0.07,
    hex(97, -3, 10),
    'opacity=".9"',
  );
  for (const t of [0.42, 0.58]) body += rect(vx + plate * 0.6 * t, h * 0.2, h * 0.035, h * 0.3, hex(15, 0, 0));
  if (variant % 3 === 0) {
    // A plumb vial at one end, in a round brass eye.
    body +=
      disc(w * 0.82, h * 0.5, h * 0.33, 'url(#brass)') +
      rect(w * 0.82 - h * 0.08, h * 0.24, h * 0.16, h * 0.52, 'url(#spirit)', `rx="${n(h * 0.07)}"`);
  }
  if (variant % 4 === 1)
    for (const x of [0.16, 0.26, 0.74, 0.84])
      body += rect(w * x, h * 0.32, w * 0.045, h * 0.3, 'url(#brass)', 'rx=".15"');
  return {
    defs:
      linear(
        'brass',
        [0, 0, 0, 1],
        [
          [0, hex(88, 2, 42)],
          [0.35, hex(70, 6, 46)],
          [1, hex(44, 9, 36)],
        ],
      ) +
      linear(
        'spirit',
        [0, 0, 0, 1],
        [
          [0, hex(92, -8, 26)],
          [0.5, hex(80, -13, 40)],
          [1, hex(62, -12, 36)],
        ],
      ) +
      noise('grain', [w, h], [0.05, 2.4], 3, variant + 1, 2.4),
    body,
  };
}
