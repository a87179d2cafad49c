/** Beaten copper moulds: seen from the face as they hang, or from the side as they stand. */
import { type Drawing, diceFrom, disc, hex, linear, n, nth, oval, path, rect, round, stroke, turned } from './ink.ts';
import { noise, textured } from './texture.ts';

const COPPER = round('cu', [
  [0, hex(90, 12, 26)],
  [0.25, hex(70, 27, 36)],
  [0.68, hex(47, 30, 33)],
  [1, hex(26, 21, 19)],
]);
/** Tinned inside: a mould whose lining shows reads grey. */
const TINNED = round('cu', [
  [0, hex(92, 0, 2)],
  [0.3, hex(74, 0, 3)],
  [0.7, hex(52, 2, 5)],
  [1, hex(30, 6, 8)],
]);
const BEAD = round('bead', [
  [0, hex(92, 10, 22)],
  [0.4, hex(64, 28, 36)],
  [1, hex(33, 25, 25)],
]);
const HOLLOW = round(
  'hollow',
  [
    [0, hex(20, 15, 14)],
    [0.6, hex(30, 24, 22)],
    [1, hex(52, 30, 32)],
  ],
  0.4,
  0.4,
  0.6,
);

/** Hung, from the face. Shape families by `variant`; `tinned` shows the lining. */
export function copperFace(w: number, h: number, variant: number, tinned: boolean): Drawing {
  const dice = diceFrom(variant * 131 + 3);
  const cx = w / 2;
  const cy = h / 2;
  const line = tinned ? hex(36, 3, 5) : hex(31, 24, 24);
  const lobes = 6 + Math.floor(dice() * 11);
  const family = variant % 5;
  let outline = `M0 ${n(cy)}a${n(cx)} ${n(cy)} 0 1 0 ${n(w)} 0a${n(cx)} ${n(cy)} 0 1 0 ${n(-w)} 0z`;
  let body = '';
  if (family === 2) {
    // A fluted rim: the outline itself is scalloped.
    let d = '';
    for (let i = 0; i <= lobes * 2; i++) {
      const a = (i * Math.PI) / lobes;
      const r = i % 2 ? 0.995 : 0.92;
      d += `${i ? 'L' : 'M'}${n(cx + Math.cos(a) * cx * r)} ${n(cy + Math.sin(a) * cy * r)}`;
    }
    outline = `${d}z`;
    body += path(outline, 'url(#cu)', `stroke="${line}" stroke-width="${n(w * 0.008)}" stroke-linejoin="round"`);
  } else body += oval(cx, cy, cx, cy, 'url(#cu)') + ringAt(cx, cy, 0.94, line, w * 0.014);
  if (family === 0 || family === 2) {
    for (let i = 0; i < lobes; i++) {
      const a = (360 * i) / lobes;
      body += turned(
        a,
        cx,
        cy,
        oval(
          cx,
          cy * 0.44,
          ((w * 0.62) / lobes) * 0.9,
          cy * 0.36,
          'none',
          `stroke="${line}" stroke-width="${n(w * 0.016)}" opacity=".75"`,
        ),
      );
      const t = (a * Math.PI) / 180;
      body += disc(cx + Math.sin(t) * cx * 0.72, cy - Math.cos(t) * cy * 0.72, w * 0.032, 'url(#bead)');
    }
    body += oval(cx, cy, cx * 0.3, cy * 0.3, 'url(#bead)', `stroke="${line}" stroke-width="${n(w * 0.015)}"`);
  } else if (family === 1) {
    for (const q of [0.82, 0.64])
      body +=
        ringAt(cx, cy, q, line, w * 0.018) +
        ringAt(cx - w * 0.006, cy - w * 0.006, q + 0.02, hex(80, 18, 28), w * 0.008);
    for (let i = 0; i < lobes + 6; i++)
      body += turned(
        (360 * i) / (lobes + 6),
        cx,
        cy,
        stroke(`M${n(cx)} ${n(cy * 0.06)}V${n(cy * 0.34)}`, line, w * 0.016, 'opacity=".65"'),
      );
    body += oval(cx, cy, cx * 0.27, cy * 0.27, 'url(#hollow)', `stroke="${line}" stroke-width="${n(w * 0.014)}"`);
  } else if (family === 3) {
    for (const q of [0.84, 0.66, 0.48, 0.3])
      body += oval(cx, cy, cx * q, cy * q, 'url(#cu)', `stroke="${line}" stroke-width="${n(w * 0.018)}"`);
    body += oval(cx, cy, cx * 0.14, cy * 0.14, 'url(#bead)');
  } else {
    // A turban: flutes that swirl about a knob.
    for (let i = 0; i < lobes + 4; i++) {
      const d = `M${n(cx)} ${n(cy * 0.08)}C${n(cx + cx * 0.34)} ${n(cy * 0.3)} ${n(cx + cx * 0.3)} ${n(cy * 0.6)} ${n(cx + cx * 0.1)} ${n(cy * 0.78)}`;
      body += turned((360 * i) / (lobes + 4), cx, cy, stroke(d, line, w * 0.02, 'opacity=".7"'));
      body += turned((360 * i) / (lobes + 4) + 3, cx, cy, stroke(d, 'url(#bead)', w * 0.012, 'opacity=".8"'));
    }
    body += oval(cx, cy, cx * 0.24, cy * 0.24, 'url(#bead)', `stroke="${line}" stroke-width="${n(w * 0.015)}"`);
    body += oval(cx, cy, cx * 0.1, cy * 0.1, 'url(#cu)');
  }
  body += textured(outline, 'dents', 0.4);
  body += turned(-38, cx * 0.62, cy * 0.5, oval(cx * 0.62, cy * 0.5, cx * 0.17, cy * 0.08, '#fff', 'opacity=".45"'));
  return {
    defs:
      (tinned ? TINNED + TINNED.replace('"cu"', '"bead"') : COPPER + BEAD) +
      HOLLOW +
      noise('dents', [w, h], [4.5 / w, 4.5 / h], 2, variant + 11, 1.8),
    body,
  };
}

function ringAt(cx: number, cy: number, q: number, colour: string, width: number): string {
  return oval(cx, cy, cx * q, cy * q, 'none', `stroke="${colour}" stroke-width="${n(width)}" opacity=".8"`);
}

/** Standing, from the side. */
export function copperStanding(w: number, h: number, variant: number, tinned: boolean): Drawing {
  const dice = diceFrom(variant * 57 + 1);
  const c = w / 2;
  const X = (t: number) => n(w * t);
  const Y = (t: number) => n(h * t);
  const outlines = [
    `M${X(0.03)} ${Y(1)}Q${X(0.06)} ${Y(0.42)} ${X(0.22)} ${Y(0.34)}Q${X(0.3)} ${Y(0)} ${n(c)} ${Y(0)}Q${X(0.7)} ${Y(0)} ${X(0.78)} ${Y(0.34)}Q${X(0.94)} ${Y(0.42)} ${X(0.97)} ${Y(1)}z`,
    `M${X(0.03)} ${Y(1)}L${X(0.1)} ${Y(0.52)}H${X(0.24)}L${X(0.3)} ${Y(0.24)}H${X(0.37)}Q${n(c)} ${Y(-0.22)} ${X(0.63)} ${Y(0.24)}H${X(0.7)}L${X(0.76)} ${Y(0.52)}H${X(0.9)}L${X(0.97)} ${Y(1)}z`,
    `M${X(0.03)} ${Y(1)}C${X(0.03)} ${Y(0.3)} ${X(0.2)} ${Y(0)} ${n(c)} ${Y(0)}C${X(0.8)} ${Y(0)} ${X(0.97)} ${Y(0.3)} ${X(0.97)} ${Y(1)}z`,
    `M${X(0.04)} ${Y(1)}L${X(0.12)} ${Y(0.62)}L${X(0.2)} ${Y(0.66)}L${X(0.26)} ${Y(0.22)}L${X(0.36)} ${Y(0.28)}L${n(c)} ${Y(0)}L${X(0.64)} ${Y(0.28)}L${X(0.74)} ${Y(0.22)}L${X(0.8)} ${Y(0.66)}L${X(0.88)} ${Y(0.62)}L${X(0.96)} ${Y(1)}z`,
  ];
  const outline = nth(outlines, variant);
  const flutes = 5 + Math.floor(dice() * 5);
  let inside = rect(0, 0, w, h, 'url(#cul)');
  for (let i = 1; i < flutes; i++) {
    const t = i / flutes;
    const d = `M${X(t)} ${Y(1)}Q${n(c + (w * t - c) * 0.92)} ${Y(0.42)} ${n(c + (w * t - c) * 0.5)} ${Y(0.06)}`;
    inside +=
      stroke(d, hex(28, 22, 22), w * 0.02, 'opacity=".5"') +
      `<g transform="translate(${n(w * 0.018)} 0)">${stroke(d, hex(86, 15, 26), w * 0.012, 'opacity=".5"')}</g>`;
  }
  const tiers = [0.34, 0.52, 0.7];
  const y = h * nth(tiers, variant + Math.floor(dice() * 3));
  inside += oval(
    c,
    y,
    w * 0.5,
    h * 0.03,
    'none',
    `stroke="${hex(30, 23, 23)}" stroke-width="${n(h * 0.02)}" opacity=".55"`,
  );
  inside += textured(`M0 0h${n(w)}v${n(h)}h${n(-w)}z`, 'dents', 0.4);
  return {
    defs:
      linear(
        'cul',
        [0, 0, 1, 0],
        tinned
          ? [
              [0, hex(46, 3, 6)],
              [0.3, hex(84, 1, 4)],
              [0.55, hex(62, 2, 6)],
              [1, hex(30, 6, 8)],
            ]
          : [
              [0, hex(43, 28, 30)],
              [0.28, hex(84, 17, 29)],
              [0.52, hex(59, 30, 36)],
              [0.86, hex(31, 23, 22)],
              [1, hex(40, 26, 26)],
            ],
      ) +
      linear(
        'rim',
        [0, 0, 1, 0],
        [
          [0, hex(50, 28, 32)],
          [0.3, hex(88, 14, 26)],
          [1, hex(34, 22, 22)],
        ],
      ) +
      `<clipPath id="shape"><path d="${outline}"/></clipPath>` +
      noise('dents', [w, h], [5 / w, 5 / h], 2, variant + 3, 1.8),
    body: `<g clip-path="url(#shape)">${inside}</g>${stroke(outline, hex(26, 20, 20), w * 0.012, 'opacity=".55"')}${rect(0, h - Math.max(0.6, h * 0.035), w, Math.max(0.6, h * 0.035), 'url(#rim)', 'rx=".25"')}`,
  };
}
