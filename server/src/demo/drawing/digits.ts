/** Figures as pen strokes, so that no picture depends on a font of the machine. */
import { n, stroke } from './ink.ts';

/** Each figure in a box 1 wide and 1.6 high. */
const FIGURES: Record<string, string> = {
  '0': 'M.5 0C.95 0 1 .5 1 .8S.95 1.6 .5 1.6 0 1.1 0 .8 .05 0 .5 0z',
  '1': 'M.15 .35L.55 0V1.6',
  '2': 'M.05 .45C.05-.1 .95-.1 .95 .45C.95 .85 .05 1.2 .05 1.6H1',
  '3': 'M.05 .28C.2-.1 .95-.1 .92 .4C.9 .72 .55 .75 .4 .75C.65 .75 1 .82 1 1.2C1 1.72 .15 1.74 0 1.3',
  '4': 'M.75 1.6V0L0 1.12H1',
  '5': 'M.9 0H.17L.08 .7C.3 .5 1 .5 1 1.08C1 1.72 .15 1.7 .02 1.36',
  '6': 'M.85 .05C.3 .1 .02 .6 .02 1.05C.02 1.8 1 1.8 1 1.1C1 .5 .1 .5 .03 1.05',
  '7': 'M0 0H1C.7 .5 .45 1 .4 1.6',
  '8': 'M.5 .72C-.08 .6 0 0 .5 0S1.08 .6 .5 .72C-.18 .85-.1 1.6 .5 1.6S1.18 .85 .5 .72z',
  '9': 'M.97 .55C.97-.2 0-.2 0 .5C0 1.1 .9 1.1 .97 .55C.97 1 .7 1.52 .15 1.55',
};

/** `text` (figures only) `height` cm high, centred on (cx, cy), in strokes of `weight` × height. */
export function figures(text: string, cx: number, cy: number, height: number, colour: string, weight = 0.17): string {
  const unit = height / 1.6;
  const advance = unit * (1 + weight * 3.2);
  const width = advance * (text.length - 1) + unit;
  let out = '';
  for (const [i, figure] of [...text].entries()) {
    const d = FIGURES[figure];
    if (d === undefined) continue;
    const x = cx - width / 2 + i * advance;
    out += `<g transform="translate(${n(x)} ${n(cy - height / 2)}) scale(${unit.toFixed(4)})">${stroke(d, colour, weight * 1.6, 'stroke-linejoin="round"')}</g>`;
  }
  return out;
}
