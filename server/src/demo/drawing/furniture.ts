/** What other things stand on: the shelf unit, the long bench, the plinths. */
import { type Drawing, hex, linear, n, path, polygon, rect, stroke } from './ink.ts';
import { noise, textured } from './texture.ts';

const OAK = linear(
  'oak',
  [0, 0, 0, 1],
  [
    [0, hex(54, 11, 25)],
    [1, hex(38, 10, 20)],
  ],
);

/** Open shelves with a backboard. `levels`: heights of the boards' upper faces above the foot, as shares of h, top first. */
export function shelfUnit(w: number, h: number, levels: readonly number[]): Drawing {
  let body = rect(0, 0, w, h, hex(22, 6, 10)) + rect(2.4, 2, w - 4.8, h - 4, hex(28, 7, 12));
  for (let i = 1; i < 9; i++) body += stroke(`M${n((w * i) / 9)} 2V${n(h - 4)}`, hex(19, 6, 9), 0.4);
  body += textured(`M0 0h${n(w)}v${n(h)}h${n(-w)}z`, 'grainUp', 0.3);
  const board = 2.4;
  for (const level of levels) {
    const y = h * (1 - level);
    body +=
      rect(0, y + board, w, 3.2, '#000', 'opacity=".4"') +
      rect(0, y, w, board, 'url(#oak)') +
      rect(0, y, w, 0.6, hex(66, 11, 28));
  }
  body +=
    rect(0, 0, 3, h, 'url(#side)') +
    rect(w - 3, 0, 3, h, hex(34, 10, 18)) +
    stroke(`M.2 0V${n(h)}`, hex(66, 11, 28), 0.4);
  body += rect(0, h - 4, 4, 4, hex(30, 9, 15)) + rect(w - 4, h - 4, 4, 4, hex(22, 7, 11));
  return {
    defs:
      OAK +
      linear(
        'side',
        [0, 0, 1, 0],
        [
          [0, hex(56, 11, 25)],
          [1, hex(40, 10, 20)],
        ],
      ) +
      noise('grainUp', [w, h], [0.6, 0.02], 2, 5, 1.8),
    body,
  };
}

/** A dye-works bench: thick top, five legs, a stretcher. */
export function longBench(w: number, h: number): Drawing {
  const top = h * 0.16;
  let body =
    rect(w * 0.06, h * 0.58, w * 0.88, h * 0.09, hex(33, 10, 18)) +
    rect(w * 0.06, h * 0.58, w * 0.88, h * 0.02, hex(48, 10, 22));
  for (const x of [0.04, 0.475, 0.91])
    body += rect(w * x, top, w * 0.05, h - top, 'url(#leg)') + rect(w * x, h * 0.96, w * 0.05, h * 0.04, hex(20, 5, 8));
  body += rect(w * 0.02, top, w * 0.96, h * 0.1, hex(32, 9, 16));
  body +=
    rect(0, 0, w, top, 'url(#oak)', 'rx=".5"') +
    rect(0, 0, w, h * 0.03, hex(66, 11, 28), 'rx=".4"') +
    rect(w * 0.02, top, w * 0.96, h * 0.035, '#000', 'opacity=".45"');
  for (const x of [0.2, 0.55, 0.8])
    body += path(
      polygon([
        [w * x, h * 0.03],
        [w * (x + 0.07), h * 0.03],
        [w * (x + 0.06), h * 0.1],
        [w * (x + 0.02), h * 0.13],
      ]),
      [hex(30, 6, -18), hex(34, 24, 12), hex(28, 4, -4)][Math.round(x * 3)] ?? hex(30, 6, -18),
      'opacity=".4"',
    );
  body += textured(`M0 0h${n(w)}v${n(top)}h${n(-w)}z`, 'grain', 0.5);
  return {
    defs:
      OAK +
      linear(
        'leg',
        [0, 0, 1, 0],
        [
          [0, hex(52, 11, 24)],
          [0.4, hex(42, 10, 21)],
          [1, hex(26, 8, 14)],
        ],
      ) +
      noise('grain', [w, h], [0.04, 1.2], 2, 12, 2),
    body,
  };
}

/** A painted plinth. */
export function plinth(w: number, h: number): Drawing {
  return {
    defs:
      linear(
        'front',
        [0, 0, 1, 1],
        [
          [0, hex(90, 0, 3)],
          [1, hex(80, 0, 3)],
        ],
      ) + noise('worn', [w, h], [0.1, 0.1], 3, 3, 1.8),
    body:
      rect(0, 0, w, h, 'url(#front)') +
      rect(0, 0, w, 0.9, hex(96, 0, 2)) +
      rect(w - 1, 0, 1, h, hex(70, 0, 3)) +
      rect(0.8, h - 5, w - 1.6, 5, hex(34, 0, 1)) +
      textured(`M0 0h${n(w)}v${n(h - 5)}h${n(-w)}z`, 'worn', 0.25),
  };
}
