/** An oil view in its frame: gilt, dark (a green-black stain), black, or walnut. */
import { type Drawing, diceFrom, type Ink, ink, linear, n, nth, path, polygon, rect, shade, stroke } from './ink.ts';
import { Canvas } from './landscape.ts';
import { noise, textured } from './texture.ts';
import { VIEWS } from './valley-views.ts';

export type OilFrame = 'gilt' | 'dark' | 'black' | 'walnut';

const WOODS: Record<OilFrame, Ink> = {
  gilt: ink(64, 8, 45),
  dark: ink(26, -15, -2),
  black: ink(13, 0, 1),
  walnut: ink(34, 13, 19),
};
const WIDTHS: Record<OilFrame, number> = { gilt: 0.13, dark: 0.08, black: 0.075, walnut: 0.1 };

/** Four mitred sides of one moulding, each lit by where it looks. */
function side(
  frame: OilFrame,
  w: number,
  h: number,
  inset: number,
  width: number,
  lights: readonly [number, number, number, number],
): string {
  const c = WOODS[frame];
  const [x0, y0, x1, y1] = [inset, inset, w - inset, h - inset];
  const k = width;
  return (
    path(
      polygon([
        [x0, y0],
        [x1, y0],
        [x1 - k, y0 + k],
        [x0 + k, y0 + k],
      ]),
      shade(c, lights[0]),
    ) +
    path(
      polygon([
        [x1, y0],
        [x1, y1],
        [x1 - k, y1 - k],
        [x1 - k, y0 + k],
      ]),
      shade(c, lights[1]),
    ) +
    path(
      polygon([
        [x0, y1],
        [x1, y1],
        [x1 - k, y1 - k],
        [x0 + k, y1 - k],
      ]),
      shade(c, lights[2]),
    ) +
    path(
      polygon([
        [x0, y0],
        [x0, y1],
        [x0 + k, y1 - k],
        [x0 + k, y0 + k],
      ]),
      shade(c, lights[3]),
    )
  );
}

export function oilView(w: number, h: number, variant: number, frame: OilFrame): Drawing {
  const fw = Math.min(w, h) * WIDTHS[frame];
  const iw = w - 2 * fw;
  const ih = h - 2 * fw;
  const canvas = new Canvas(iw, ih, diceFrom(variant * 613 + 29));
  nth(VIEWS, variant)(canvas);
  const strong = frame === 'gilt' ? 1 : frame === 'walnut' ? 0.7 : 0.35;
  let border =
    side(frame, w, h, 0, fw * 0.24, [-4 * strong, -14 * strong, -16 * strong, 2 * strong]) +
    side(frame, w, h, fw * 0.24, fw * 0.42, [-10 * strong, 8 * strong, 12 * strong, -12 * strong]) +
    side(frame, w, h, fw * 0.62, fw * 0.22, [10 * strong, -10 * strong, -8 * strong, 10 * strong]) +
    side(frame, w, h, fw * 0.82, fw * 0.19, [-20 * strong, 12 * strong, 14 * strong, -22 * strong]);
  const c = WOODS[frame];
  if (frame === 'gilt') {
    const beads = Math.round((w - fw) / (fw * 0.42));
    for (let i = 0; i <= beads; i++) {
      const x = fw * 0.72 + ((w - fw * 1.44) * i) / beads;
      for (const y of [fw * 0.72, h - fw * 0.72])
        border += `<circle cx="${n(x)}" cy="${n(y)}" r="${n(fw * 0.07)}" fill="${shade(c, 18)}"/><circle cx="${n(x + fw * 0.025)}" cy="${n(y + fw * 0.025)}" r="${n(fw * 0.045)}" fill="${shade(c, -12)}"/>`;
    }
    for (const [x, y] of [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ] as const) {
      const cx = x ? w - fw * 0.46 : fw * 0.46;
      const cy = y ? h - fw * 0.46 : fw * 0.46;
      for (let i = 0; i < 5; i++)
        border += `<ellipse cx="${n(cx)}" cy="${n(cy - fw * 0.16)}" rx="${n(fw * 0.08)}" ry="${n(fw * 0.17)}" fill="${shade(c, i % 2 ? 14 : -6)}" transform="rotate(${i * 72} ${n(cx)} ${n(cy)})"/>`;
    }
  }
  border +=
    stroke(`M.2 ${n(h)}V.2H${n(w)}`, shade(c, 16 * strong + 6), 0.4) +
    stroke(`M0 ${n(h - 0.2)}H${n(w - 0.2)}V0`, shade(c, -16), 0.4);
  const ring = `M0 0h${n(w)}v${n(h)}h${n(-w)}zM${n(fw)} ${n(fw)}v${n(ih)}h${n(iw)}v${n(-ih)}z`;
  border += textured(ring, 'grain', frame === 'gilt' ? 0.3 : 0.2);
  const whole = `M0 0h${n(iw)}v${n(ih)}h${n(-iw)}z`;
  const inner =
    `<clipPath id="canvas"><path d="${whole}"/></clipPath><g clip-path="url(#canvas)">${canvas.body}${textured(whole, 'brush', 0.2)}${rect(0, 0, iw, ih, 'url(#varnish)')}</g>` +
    stroke(`M0 ${n(ih)}V0H${n(iw)}`, '#000', fw * 0.14, 'opacity=".4"') +
    stroke(`M0 ${n(ih)}H${n(iw)}V0`, '#fff', fw * 0.05, 'opacity=".12"');
  return {
    defs:
      canvas.defs +
      noise('brush', [iw, ih], [0.9, 2.2], 2, variant + 70, 2) +
      noise('grain', [w, h], [0.5, 0.5], 2, variant + 30, 1.8) +
      linear(
        'varnish',
        [0, 0, 1, 1],
        [
          [0, '#fff', 0.1],
          [0.4, '#fff', 0],
          [0.6, '#000', 0],
          [1, '#000', 0.16],
        ],
      ),
    body: `${border}<g transform="translate(${n(fw)} ${n(fw)})">${inner}</g>`,
  };
}
