/** A dyer's pattern book, open at a spread of pasted swatches, or shut in its worn boards. */
import { between, type Drawing, diceFrom, hex, ink, linear, n, nth, path, pick, rect, shade, stroke } from './ink.ts';
import { MOTIFS } from './motifs.ts';
import { noise, textured } from './texture.ts';

const DYES = [
  ink(42, 40, 22),
  ink(32, 6, -30),
  ink(68, 8, 46),
  ink(58, -12, 10),
  ink(28, 6, -6),
  ink(52, 24, 30),
  ink(38, 18, -14),
  ink(74, 16, 14),
  ink(46, -16, 24),
  ink(82, 0, 14),
];
const BOARDS = [ink(32, 16, 14), ink(24, 4, 6), ink(38, 6, -10), ink(40, 12, 22)];

export function patternBook(w: number, h: number, variant: number): Drawing {
  const dice = diceFrom(variant * 71 + 2);
  const boards = nth(BOARDS, variant);
  if (variant % 4 === 3) return shut(w, h, variant, boards);
  const columns = 2 + (variant % 3);
  const rows = 3 + (Math.floor(variant / 2) % 3);
  const page = (w - 1.6) / 2;
  let body = rect(0, 0, w, h, shade(boards, 0), 'rx=".4"');
  for (let k = 3; k >= 0; k--)
    body += rect(0.5 + k * 0.06, 0.5 + k * 0.05, w - 1 - k * 0.12, h - 1.1, shade(ink(84, 3, 15), -k * 3));
  for (const side of [0, 1]) {
    const x0 = 0.8 + side * page;
    const cw = (page - 1.8) / columns;
    const ch = (h - 3.4) / rows;
    for (let i = 0; i < columns; i++)
      for (let j = 0; j < rows; j++) {
        if (dice() < 0.08) continue;
        const dye = pick(dice, DYES);
        const sw = cw * between(dice, 0.7, 0.86);
        const sh = ch * between(dice, 0.58, 0.76);
        const x = x0 + 0.9 + i * cw + (cw - sw) / 2;
        const y = 1.5 + j * ch;
        body += rect(x + 0.1, y + 0.14, sw, sh, hex(52, 4, 12), 'opacity=".55"') + rect(x, y, sw, sh, shade(dye, 0));
        const m = nth(MOTIFS, Math.floor(dice() * 20));
        body += `<g opacity=".85">${m({ x: x + sw * 0.12, y: y + sh * 0.12, w: sw * 0.76, h: sh * 0.76 }, shade(dye, dye.L > 55 ? -30 : 32), diceFrom(variant * 100 + i * 10 + j))}</g>`;
        body += stroke(
          `M${n(x)} ${n(y + sh + ch * 0.08)}h${n(sw * 0.5)}m${n(sw * 0.1)} 0h${n(sw * 0.22)}`,
          hex(36, 6, 14),
          0.09,
        );
      }
  }
  body +=
    rect(w / 2 - 1.6, 0.5, 3.2, h - 1.1, 'url(#gutter)') +
    textured(`M.5 .5h${n(w - 1)}v${n(h - 1.1)}h${n(1 - w)}z`, 'paper', 0.35);
  body +=
    stroke(`M.2 ${n(h)}V.2H${n(w)}`, shade(boards, 22), 0.3) +
    stroke(`M0 ${n(h - 0.15)}H${n(w - 0.15)}V0`, shade(boards, -16), 0.4);
  return {
    defs:
      linear(
        'gutter',
        [0, 0, 1, 0],
        [
          [0, '#000', 0],
          [0.48, '#000', 0.42],
          [0.56, '#000', 0.3],
          [1, '#fff', 0.12],
        ],
      ) + noise('paper', [w, h], [1.2, 1.2], 3, variant + 2, 2),
    body,
  };
}

function shut(w: number, h: number, variant: number, boards: { L: number; a: number; b: number }): Drawing {
  const c = { ...boards };
  let body = rect(0, 0, w, h, shade(c, 0), 'rx=".5"') + rect(0, 0, w * 0.13, h, shade(c, -12), 'rx=".5"');
  for (let i = 1; i < 5; i++) body += rect(0, (h * i) / 5 - 0.35, w * 0.13, 0.7, shade(c, 10));
  body += path(`M${n(w - 4)} 0H${n(w)}V4zM${n(w - 4)} ${n(h)}H${n(w)}V${n(h - 4)}z`, shade(c, -14));
  body += rect(w * 0.32, h * 0.16, w * 0.46, h * 0.2, hex(82, 3, 18), `stroke="${hex(30, 14, 12)}" stroke-width=".15"`);
  for (const y of [0.21, 0.26, 0.31])
    body += stroke(
      `M${n(w * 0.37)} ${n(h * y)}q${n(w * 0.04)} -.5 ${n(w * 0.09)} 0t${n(w * 0.09)} 0t${n(w * 0.09)} 0`,
      hex(28, 4, 8),
      0.16,
    );
  body += textured(`M0 0h${n(w)}v${n(h)}h${n(-w)}z`, 'paper', 0.4);
  body +=
    stroke(`M.2 ${n(h)}V.2H${n(w)}`, shade(c, 24), 0.3) +
    stroke(`M0 ${n(h - 0.2)}H${n(w - 0.2)}V0`, shade(c, -18), 0.45);
  return { defs: noise('paper', [w, h], [1.4, 1.4], 3, variant + 2, 2.6), body };
}
