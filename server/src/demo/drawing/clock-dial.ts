/** Clock dials out of their towers and offices: enamel, painted iron, slate. */
import { figures } from './digits.ts';
import { type Drawing, diceFrom, disc, hex, ink, n, nth, path, rect, round, shade, stroke, turned } from './ink.ts';
import { noise, textured } from './texture.ts';

interface Face {
  readonly ground: ReturnType<typeof ink>;
  readonly mark: string;
  readonly rim: ReturnType<typeof ink>;
  readonly numerals: 'strokes' | 'figures' | 'roman';
}

const FACES: readonly Face[] = [
  { ground: ink(92, -1, 5), mark: hex(14, 0, 0), rim: ink(40, 8, 20), numerals: 'strokes' },
  { ground: ink(17, 1, 1), mark: hex(70, 8, 50), rim: ink(28, 2, 3), numerals: 'roman' },
  { ground: ink(84, 2, 16), mark: hex(26, 8, 10), rim: ink(34, 14, 20), numerals: 'figures' },
  { ground: ink(30, 8, -32), mark: hex(78, 4, 52), rim: ink(64, 6, 44), numerals: 'roman' },
  { ground: ink(90, -2, 3), mark: hex(30, 8, -36), rim: ink(20, 1, 2), numerals: 'figures' },
  { ground: ink(34, 0, -4), mark: hex(86, 0, 6), rim: ink(46, 1, 0), numerals: 'strokes' },
  { ground: ink(66, 8, 46), mark: hex(20, 8, 10), rim: ink(44, 10, 36), numerals: 'roman' },
];

const ROMAN = ['XII', 'I', 'II', 'III', 'IIII', 'V', 'VI', 'VII', 'VIII', 'IX', 'X', 'XI'];

function roman(text: string, cx: number, y: number, h: number, colour: string): string {
  const widths: Record<string, number> = { I: 0.32, V: 0.7, X: 0.72 };
  let total = 0;
  for (const letter of text) total += widths[letter] ?? 0;
  let x = cx - (total * h) / 2;
  let d = '';
  let thin = '';
  for (const letter of text) {
    const w = (widths[letter] ?? 0) * h;
    if (letter === 'I') d += `M${n(x + w / 2)} ${n(y)}v${n(h)}`;
    if (letter === 'V') {
      d += `M${n(x + w * 0.1)} ${n(y)}L${n(x + w * 0.5)} ${n(y + h)}`;
      thin += `M${n(x + w * 0.5)} ${n(y + h)}L${n(x + w * 0.9)} ${n(y)}`;
    }
    if (letter === 'X') {
      d += `M${n(x + w * 0.12)} ${n(y)}L${n(x + w * 0.88)} ${n(y + h)}`;
      thin += `M${n(x + w * 0.12)} ${n(y + h)}L${n(x + w * 0.88)} ${n(y)}`;
    }
    x += w;
  }
  return stroke(d, colour, h * 0.17) + stroke(thin, colour, h * 0.07);
}

export function clockDial(w: number, variant: number): Drawing {
  const dice = diceFrom(variant * 53 + 7);
  const face = nth(FACES, variant);
  const c = w / 2;
  const rim = c * 0.06;
  let body = disc(c, c, c, 'url(#rim)') + disc(c, c, c - rim, 'url(#face)');
  for (let i = 0; i < 60; i++)
    body += turned(i * 6, c, c, rect(c - c * 0.006, c * 0.1, c * 0.012, c * (i % 5 ? 0.04 : 0.06), face.mark));
  body +=
    disc(c, c, c * 0.9, 'none', `stroke="${face.mark}" stroke-width="${n(c * 0.012)}"`) +
    disc(c, c, c * 0.84, 'none', `stroke="${face.mark}" stroke-width="${n(c * 0.008)}"`);
  for (let i = 0; i < 12; i++) {
    if (face.numerals === 'strokes')
      body += turned(i * 30, c, c, rect(c - c * 0.028, c * 0.18, c * 0.056, c * 0.2, face.mark));
    else if (face.numerals === 'roman')
      body += turned(i * 30, c, c, roman(ROMAN[i] as string, c, c * 0.2, c * 0.2, face.mark));
    else {
      const a = (i * Math.PI) / 6;
      body += figures(
        i === 0 ? '12' : String(i),
        c + Math.sin(a) * c * 0.68,
        c - Math.cos(a) * c * 0.68,
        c * 0.18,
        face.mark,
        0.14,
      );
    }
  }
  if (variant % 3 === 1)
    body +=
      disc(c, c, c * 0.5, 'none', `stroke="${face.mark}" stroke-width="${n(c * 0.01)}"`) +
      turned(45, c, c, rect(c - c * 0.03, c * 0.53, c * 0.06, c * 0.04, face.mark));
  body += textured(`M0 ${n(c)}a${n(c)} ${n(c)} 0 1 0 ${n(w)} 0a${n(c)} ${n(c)} 0 1 0 ${n(-w)} 0z`, 'worn', 0.45);
  const hour = 30 + dice() * 300;
  const minute = dice() * 360;
  const hand = (degrees: number, length: number, width: number) => {
    const d = `M${n(c - width * c)} ${n(c + c * 0.12)}L${n(c - width * c * 0.5)} ${n(c - length * c * 0.7)}L${n(c)} ${n(c - length * c)}L${n(c + width * c * 0.5)} ${n(c - length * c * 0.7)}L${n(c + width * c)} ${n(c + c * 0.12)}z`;
    return `<g transform="translate(${n(c * 0.014)} ${n(c * 0.02)})" opacity=".3">${turned(degrees, c, c, path(d, '#000'))}</g>${turned(degrees, c, c, path(d, face.mark) + disc(c, c - length * c * 0.56, c * 0.05 * (length < 0.6 ? 1.2 : 0), face.mark))}`;
  };
  if (variant !== 5) body += hand(hour, 0.5, 0.035) + hand(minute, 0.8, 0.026);
  body += disc(c, c, c * 0.05, face.mark) + disc(c - c * 0.012, c - c * 0.012, c * 0.02, '#fff', 'opacity=".5"');
  return {
    defs:
      round(
        'face',
        [
          [0, shade(face.ground, 7)],
          [0.6, shade(face.ground, 0)],
          [1, shade(face.ground, -12)],
        ],
        0.35,
        0.3,
        0.9,
      ) +
      round(
        'rim',
        [
          [0, shade(face.rim, 34)],
          [0.5, shade(face.rim, 6)],
          [1, shade(face.rim, -16)],
        ],
        0.3,
        0.25,
        0.95,
      ) +
      noise('worn', [w, w], [3 / w, 3 / w], 3, variant + 9, 1.8),
    body,
  };
}
