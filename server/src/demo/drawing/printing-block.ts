/** A carved pear-wood block for printing cloth: raised motif, cut ground, some still stained with dye. */
import { between, box, type Drawing, diceFrom, hex, ink, n, nth, pick, rect, shade, stroke } from './ink.ts';
import { MOTIFS } from './motifs.ts';
import { light as lightFall, noise, textured } from './texture.ts';

const WOODS = [ink(54, 13, 27), ink(47, 15, 25), ink(60, 11, 29), ink(42, 13, 20), ink(64, 9, 27), ink(50, 17, 28)];

export function printingBlock(w: number, h: number, variant: number): Drawing {
  const dice = diceFrom(variant * 7919 + 13);
  const wood = pick(dice, WOODS);
  const dye = dice();
  const stained = dye < 0.34;
  const light = dice() < 0.6;
  const raised =
    dye < 0.13
      ? hex(34, 10, -26)
      : dye < 0.26
        ? hex(42, 36, 20)
        : dye < 0.34
          ? hex(24, 4, 2)
          : shade(wood, light ? 15 : -22);
  const m = Math.max(1, Math.min(w, h) * 0.08);
  const field = { x: m * 1.7, y: m * 1.7, w: w - m * 3.4, h: h - m * 3.4 };
  const draw = nth(MOTIFS, variant);
  const seed = variant * 31 + 7;
  const cut = (colour: string) => draw(field, colour, diceFrom(seed));
  const outer = box(0, 0, w, h);
  const wormholes = Array.from({ length: Math.floor(dice() * 5) }, () =>
    rect(between(dice, 0.5, w - 1), between(dice, 0.5, h - 1), 0.22, 0.22, shade(wood, -34), 'rx=".11"'),
  ).join('');
  const body =
    rect(0, 0, w, h, shade(wood, 0), 'rx=".45"') +
    rect(m, m, w - 2 * m, h - 2 * m, shade(wood, stained ? -2 : light ? -13 : 3), 'rx=".3"') +
    stroke(`M${n(m)} ${n(h - m)}V${n(m)}H${n(w - m)}`, shade(wood, -30), 0.35, 'opacity=".8"') +
    stroke(`M${n(m)} ${n(h - m)}H${n(w - m)}V${n(m)}`, shade(wood, 16), 0.3, 'opacity=".6"') +
    '<g clip-path="url(#ground)">' +
    `<g transform="translate(.34 .42)" opacity=".65">${cut(shade(wood, -32))}</g>` +
    `<g transform="translate(-.14 -.16)" opacity=".55">${cut(shade(wood, 22, 0.8))}</g>` +
    cut(raised) +
    '</g>' +
    textured(`M.3 .3h${n(w - 0.6)}v${n(h - 0.6)}h${n(0.6 - w)}z`, 'grain', 0.5) +
    wormholes +
    stroke(`M.25 ${n(h - 0.3)}V.25H${n(w - 0.3)}`, shade(wood, 24, 0.8), 0.45, 'opacity=".8"') +
    stroke(`M.3 ${n(h - 0.2)}H${n(w - 0.2)}V.3`, shade(wood, -30), 0.5, 'opacity=".8"') +
    `<path d="${outer}" fill="url(#fall)" opacity=".8"/>`;
  const along = dice() < 0.6;
  return {
    defs:
      `<clipPath id="ground"><path d="${box(m, m, w - 2 * m, h - 2 * m)}"/></clipPath>` +
      noise('grain', [w, h], [along ? 0.06 : 1.3, along ? 1.3 : 0.06], 2, variant, 1.9) +
      lightFall('fall', 0.16, 0.2),
    body,
  };
}
