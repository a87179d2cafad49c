/** The heavy things: the mangle, the sluice gear, the dye vats. */
import {
  type Drawing,
  disc,
  hex,
  ink,
  linear,
  n,
  nth,
  oval,
  path,
  polygon,
  rect,
  shade,
  stroke,
  turned,
} from './ink.ts';
import { noise, textured } from './texture.ts';

const IRON = linear(
  'iron',
  [0, 0, 1, 1],
  [
    [0, hex(50, 1, 3)],
    [0.45, hex(31, 2, 3)],
    [1, hex(17, 2, 2)],
  ],
);
const OAK = linear(
  'oak',
  [0, 0, 0, 1],
  [
    [0, hex(53, 11, 25)],
    [1, hex(35, 10, 19)],
  ],
);

function wheel(cx: number, cy: number, r: number, spokes: number, rimWidth: number, fill: string): string {
  let out = disc(cx, cy, r - rimWidth / 2, 'none', `stroke="${fill}" stroke-width="${n(rimWidth)}"`);
  out += disc(
    cx,
    cy,
    r - rimWidth * 0.15,
    'none',
    `stroke="${hex(58, 1, 3)}" stroke-width="${n(rimWidth * 0.14)}" opacity=".7"`,
  );
  for (let i = 0; i < spokes; i++) {
    const a = (i * 2 * Math.PI) / spokes + 0.3;
    const bend = a + 0.22;
    out += stroke(
      `M${n(cx)} ${n(cy)}Q${n(cx + Math.cos(bend) * r * 0.5)} ${n(cy + Math.sin(bend) * r * 0.5)} ${n(cx + Math.cos(a) * (r - rimWidth))} ${n(cy + Math.sin(a) * (r - rimWidth))}`,
      hex(30, 2, 3),
      rimWidth * 0.7,
    );
  }
  return out + disc(cx, cy, r * 0.17, 'url(#iron)') + disc(cx - r * 0.04, cy - r * 0.04, r * 0.06, hex(60, 1, 3));
}

/** Cast-iron sluice gear: rack, pinion, hand wheel on an A-frame. */
export function sluiceGear(w: number, h: number): Drawing {
  const X = (t: number) => w * t;
  const Y = (t: number) => h * t;
  let body = rect(X(0.08), Y(0.93), X(0.84), Y(0.07), 'url(#iron)', 'rx=".8"');
  for (const x of [0.13, 0.83]) body += disc(X(x), Y(0.95), w * 0.02, hex(52, 2, 4));
  body += path(
    polygon([
      [X(0.2), Y(0.93)],
      [X(0.36), Y(0.3)],
      [X(0.64), Y(0.3)],
      [X(0.8), Y(0.93)],
      [X(0.66), Y(0.93)],
      [X(0.56), Y(0.42)],
      [X(0.44), Y(0.42)],
      [X(0.34), Y(0.93)],
    ]),
    'url(#iron)',
  );
  body += stroke(`M${n(X(0.205))} ${n(Y(0.92))}L${n(X(0.365))} ${n(Y(0.305))}H${n(X(0.63))}`, hex(56, 1, 3), w * 0.012);
  body += rect(X(0.27), Y(0.68), X(0.46), Y(0.035), 'url(#iron)');
  body += rect(X(0.46), 0, X(0.1), Y(0.97), hex(34, 4, 6)) + rect(X(0.46), 0, X(0.025), Y(0.97), hex(50, 3, 5));
  for (let i = 0; i < 22; i++)
    body += rect(X(0.56), Y(0.015 + i * 0.042), X(0.045), Y(0.022), hex(i % 2 ? 36 : 40, 6, 8));
  body +=
    turned(
      0,
      0,
      0,
      disc(
        X(0.66),
        Y(0.46),
        w * 0.12,
        'url(#iron)',
        `stroke="${hex(24, 2, 2)}" stroke-width="${n(w * 0.03)}" stroke-dasharray="${n(w * 0.035)} ${n(w * 0.028)}"`,
      ),
    ) + disc(X(0.66), Y(0.46), w * 0.04, hex(50, 2, 4));
  body += wheel(X(0.3), Y(0.4), w * 0.29, 6, w * 0.05, 'url(#iron)');
  body += rect(X(0.02), Y(0.37), X(0.03), Y(0.06), hex(46, 12, 24), 'rx=".6"');
  body +=
    rect(X(0.4), Y(0.5), X(0.16), Y(0.075), hex(26, 3, 4), 'rx=".5"') +
    stroke(
      `M${n(X(0.425))} ${n(Y(0.525))}h${n(X(0.11))}m${n(-X(0.11))} ${n(Y(0.025))}h${n(X(0.08))}`,
      hex(60, 2, 6),
      h * 0.008,
    );
  return { defs: IRON, body };
}

/** A box mangle: two rollers in an iron frame, geared to a hand wheel, on a table of sycamore. */
export function mangle(w: number, h: number): Drawing {
  const X = (t: number) => w * t;
  const Y = (t: number) => h * t;
  let body = '';
  for (const x of [0.14, 0.7]) {
    body += path(
      polygon([
        [X(x), Y(1)],
        [X(x + 0.03), Y(0.12)],
        [X(x + 0.11), Y(0.12)],
        [X(x + 0.14), Y(1)],
        [X(x + 0.1), Y(1)],
        [X(x + 0.07), Y(0.62)],
        [X(x + 0.04), Y(1)],
      ]),
      'url(#iron)',
    );
    body += path(
      `M${n(X(x + 0.03))} ${n(Y(0.12))}Q${n(X(x + 0.07))} ${n(Y(0.02))} ${n(X(x + 0.11))} ${n(Y(0.12))}z`,
      hex(40, 2, 3),
    );
  }
  body +=
    rect(X(0.2), Y(0.09), X(0.58), Y(0.045), 'url(#iron)') +
    rect(X(0.46), 0, X(0.05), Y(0.12), hex(36, 2, 3)) +
    rect(X(0.4), 0, X(0.17), Y(0.025), 'url(#iron)', 'rx=".6"');
  for (const [y, r] of [
    [0.2, 0.1],
    [0.33, 0.11],
  ] as const) {
    body += rect(X(0.23), Y(y), X(0.52), Y(r), 'url(#roller)', 'rx="1.4"');
    for (const x of [0.21, 0.74]) body += rect(X(x), Y(y + r * 0.3), X(0.03), Y(r * 0.4), hex(44, 2, 4));
  }
  body +=
    rect(X(0.06), Y(0.47), X(0.84), Y(0.045), 'url(#oak)') +
    rect(X(0.06), Y(0.47), X(0.84), Y(0.01), hex(70, 9, 28)) +
    rect(X(0.06), Y(0.515), X(0.84), Y(0.016), '#000', 'opacity=".4"');
  body += rect(X(0.2), Y(0.82), X(0.6), Y(0.035), 'url(#iron)');
  body +=
    wheel(X(0.84), Y(0.36), w * 0.16, 5, w * 0.028, 'url(#iron)') +
    rect(X(0.965), Y(0.3), X(0.03), Y(0.09), 'url(#oak)', 'rx=".8"');
  body +=
    disc(
      X(0.2),
      Y(0.3),
      w * 0.07,
      'none',
      `stroke="url(#iron)" stroke-width="${n(w * 0.04)}" stroke-dasharray="${n(w * 0.018)} ${n(w * 0.012)}"`,
    ) + disc(X(0.2), Y(0.3), w * 0.05, hex(34, 3, 4));
  for (const x of [0.16, 0.27, 0.72, 0.83]) body += disc(X(x), Y(0.985), h * 0.015, hex(24, 2, 3));
  return {
    defs:
      IRON +
      OAK +
      linear(
        'roller',
        [0, 0, 0, 1],
        [
          [0, hex(58, 8, 22)],
          [0.25, hex(78, 5, 22)],
          [0.6, hex(62, 9, 26)],
          [1, hex(34, 9, 18)],
        ],
      ),
    body,
  };
}

const LIQUORS = [ink(20, 8, -26), ink(28, 30, 14), ink(44, 2, 40), ink(14, 2, 0)];

/** A coopered dye vat with iron hoops; stained by what it held. */
export function dyeVat(w: number, h: number, variant: number): Drawing {
  const liquor = nth(LIQUORS, variant);
  const top = h * 0.075;
  const wall = `M0 ${n(top)}L${n(w * 0.07)} ${n(h)}H${n(w * 0.93)}L${n(w)} ${n(top)}z`;
  let inside = rect(0, 0, w, h, 'url(#stave)');
  for (let i = 1; i < 13; i++) {
    const t = 0.5 - 0.5 * Math.cos((Math.PI * i) / 13);
    inside += stroke(
      `M${n(w * t)} ${n(top)}L${n(w * (0.07 + 0.86 * t))} ${n(h)}`,
      hex(20, 8, 12),
      w * 0.006,
      'opacity=".75"',
    );
    if (i % 2)
      inside += path(
        `M${n(w * t)} ${n(top)}h${n(w * 0.045)}L${n(w * (0.08 + 0.86 * t))} ${n(h * (0.3 + ((i * 37) % 40) / 100))}z`,
        shade(liquor, 8),
        'opacity=".35"',
      );
  }
  inside += textured(`M0 0h${n(w)}v${n(h)}h${n(-w)}z`, 'grain', 0.4);
  for (const y of [0.2, 0.55, 0.86])
    inside += `<path d="M0 ${n(h * y)}q${n(w / 2)} ${n(h * 0.03)} ${n(w)} 0v${n(h * 0.05)}q${n(-w / 2)} ${n(h * 0.03)} ${n(-w)} 0z" fill="url(#hoop)"/>`;
  inside += rect(0, 0, w, h, 'url(#roundness)');
  return {
    defs:
      `<clipPath id="vat"><path d="${wall}"/></clipPath>` +
      linear(
        'stave',
        [0, 0, 0, 1],
        [
          [0, hex(46, 9, 20)],
          [1, hex(36, 9, 18)],
        ],
      ) +
      linear(
        'hoop',
        [0, 0, 1, 0],
        [
          [0, hex(26, 3, 4)],
          [0.25, hex(52, 3, 5)],
          [0.6, hex(32, 3, 4)],
          [1, hex(14, 2, 2)],
        ],
      ) +
      linear(
        'roundness',
        [0, 0, 1, 0],
        [
          [0, '#000', 0.3],
          [0.24, '#fff', 0.16],
          [0.5, '#fff', 0],
          [1, '#000', 0.5],
        ],
      ) +
      noise('grain', [w, h], [0.9, 0.04], 2, variant + 8, 2.4),
    body: `<g clip-path="url(#vat)">${inside}</g>${oval(w / 2, top, w / 2, top, hex(50, 10, 22))}${oval(w / 2, top, w * 0.46, top * 0.8, hex(22, 7, 10))}${oval(w / 2, top * 1.2, w * 0.43, top * 0.58, shade(liquor, 0))}${oval(w * 0.4, top * 1.05, w * 0.14, top * 0.14, '#fff', 'opacity=".22"')}`,
  };
}
