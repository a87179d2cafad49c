/** Motifs cut into printing blocks: twenty families, each varied by the dice. All in one ink, inside a box. */
import {
  between,
  type Dice,
  disc,
  n,
  nth,
  oval,
  type Point,
  path,
  polygon,
  rect,
  smooth,
  stroke,
  turned,
} from './ink.ts';

interface Field {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

type Motif = (f: Field, c: string, dice: Dice) => string;

const CAPS = 'stroke-linecap="round" stroke-linejoin="round"';

function cells(
  f: Field,
  size: number,
  draw: (x: number, y: number, w: number, h: number, i: number, j: number) => string,
) {
  const columns = Math.max(2, Math.round(f.w / size));
  const rows = Math.max(2, Math.round(f.h / size));
  let out = '';
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++)
      out += draw(f.x + (f.w * i) / columns, f.y + (f.h * j) / rows, f.w / columns, f.h / rows, i, j);
  return out;
}

const leaf = (x: number, y: number, length: number, degrees: number, fat: number, c: string) =>
  turned(
    degrees,
    x,
    y,
    path(
      `M${n(x)} ${n(y)}C${n(x + length * 0.3)} ${n(y - length * fat)} ${n(x + length * 0.8)} ${n(y - length * fat * 0.7)} ${n(x + length)} ${n(y)}C${n(x + length * 0.75)} ${n(y + length * fat * 0.6)} ${n(x + length * 0.3)} ${n(y + length * fat * 0.6)} ${n(x)} ${n(y)}z`,
      c,
    ),
  );

const sprig: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const cx = f.x + f.w / 2;
  const pairs = 3 + Math.floor(dice() * 3);
  const lean = between(dice, -0.12, 0.12) * f.w;
  let out = stroke(
    `M${n(cx)} ${n(f.y + f.h)}Q${n(cx + lean)} ${n(f.y + f.h * 0.5)} ${n(cx)} ${n(f.y + f.h * 0.1)}`,
    c,
    m * 0.06,
    CAPS,
  );
  for (let i = 0; i < pairs; i++) {
    const y = f.y + f.h * (0.88 - (0.68 * i) / pairs);
    const length = f.w * 0.42 * (1 - 0.1 * i);
    out += leaf(cx + lean * 0.4, y, length, -38, 0.3, c) + leaf(cx + lean * 0.4, y - f.h * 0.05, length, 218, 0.3, c);
  }
  return out + disc(cx, f.y + f.h * 0.09, m * between(dice, 0.07, 0.11), c);
};

const lozenges: Motif = (f, c, dice) =>
  cells(f, between(dice, 3.4, 5.2), (x, y, w, h) =>
    path(
      polygon([
        [x + w / 2, y + h * 0.1],
        [x + w * 0.9, y + h / 2],
        [x + w / 2, y + h * 0.9],
        [x + w * 0.1, y + h / 2],
      ]),
      c,
    ),
  );

const spots: Motif = (f, c, dice) => {
  const size = between(dice, 2.6, 4.2);
  return cells(f, size, (x, y, w, h, i, j) =>
    (i + j) % 2
      ? disc(x + w / 2, y + h / 2, Math.min(w, h) * 0.32, c)
      : disc(x + w / 2, y + h / 2, Math.min(w, h) * 0.16, c),
  );
};

const ripples: Motif = (f, c, dice) => {
  const rows = Math.max(3, Math.round(f.h / between(dice, 2.6, 3.8)));
  const waves = Math.max(2, Math.round(f.w / between(dice, 4, 7)));
  let out = '';
  for (let j = 0; j < rows; j++) {
    let d = `M${n(f.x)} ${n(f.y + (f.h * (j + 0.5)) / rows)}`;
    for (let i = 0; i < waves; i++)
      d += `q${n(f.w / waves / 4)} ${n((-f.h / rows) * 0.65)} ${n(f.w / waves / 2)} 0t${n(f.w / waves / 2)} 0`;
    out += stroke(d, c, (f.h / rows) * 0.3, CAPS);
  }
  return out;
};

const rosette: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const cx = f.x + f.w / 2;
  const cy = f.y + f.h / 2;
  const petals = 5 + Math.floor(dice() * 8);
  let out = '';
  for (let i = 0; i < petals; i++)
    out += turned((360 * i) / petals, cx, cy, oval(cx, cy - m * 0.28, (m * 0.72) / petals, m * 0.19, c));
  for (const [a, b] of [
    [0.08, 0.08],
    [0.92, 0.08],
    [0.08, 0.92],
    [0.92, 0.92],
  ] as const)
    out += disc(f.x + f.w * a, f.y + f.h * b, m * 0.06, c);
  return out + disc(cx, cy, m * 0.09, c);
};

const bars: Motif = (f, c, dice) => {
  const count = Math.max(4, Math.round(f.w / between(dice, 2.2, 3.4)));
  let out = '';
  for (let i = 0; i < count; i++)
    out += rect(f.x + (f.w * (i + 0.2)) / count, f.y, (f.w / count) * nth([0.55, 0.2, 0.35], i), f.h, c);
  return out;
};

const drop: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const cx = f.x + f.w / 2;
  const cy = f.y + f.h / 2;
  const curl = between(dice, 0.28, 0.46);
  const d = `M${n(cx - m * 0.05)} ${n(cy + m * 0.46)}C${n(cx - m * 0.5)} ${n(cy + m * 0.4)} ${n(cx - m * 0.36)} ${n(cy - m * 0.2)} ${n(cx + m * 0.06)} ${n(cy - m * 0.4)}C${n(cx + m * 0.3)} ${n(cy - m * 0.52)} ${n(cx + m * curl)} ${n(cy - m * 0.2)} ${n(cx + m * 0.18)} ${n(cy - m * 0.18)}C${n(cx + m * 0.5)} ${n(cy)} ${n(cx + m * 0.34)} ${n(cy + m * 0.48)} ${n(cx - m * 0.05)} ${n(cy + m * 0.46)}z`;
  let out =
    stroke(d, c, m * 0.06, CAPS) +
    disc(cx - m * 0.02, cy + m * 0.14, m * 0.13, c) +
    disc(cx, cy - m * 0.12, m * 0.06, c);
  for (let i = 0; i < 5; i++)
    out += disc(cx - m * 0.3 + i * m * 0.13, cy + m * 0.3 - Math.abs(i - 2) * m * 0.03, m * 0.022, c);
  return out;
};

const scales: Motif = (f, c, dice) => {
  const size = between(dice, 3.6, 5.6);
  const columns = Math.max(2, Math.round(f.w / size));
  const w = f.w / columns;
  const rows = Math.max(3, Math.round(f.h / (w * 0.6)));
  let out = '';
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns + (j % 2 ? -1 : 0); i++) {
      const x = f.x + (i + (j % 2 ? 0.5 : 0)) * w;
      const y = f.y + (f.h * (j + 1)) / rows;
      for (const q of [0.46, 0.24])
        out += stroke(
          `M${n(x + w * (0.5 - q))} ${n(y)}a${n(w * q)} ${n(w * q * 1.1)} 0 0 1 ${n(w * q * 2)} 0`,
          c,
          w * 0.1,
          CAPS,
        );
    }
  return out;
};

const scroll: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const cx = f.x + f.w / 2;
  const cy = f.y + f.h / 2;
  const turns = between(dice, 1.6, 2.6);
  const points: Point[] = [];
  for (let i = 0; i <= 40; i++) {
    const t = i / 40;
    const a = t * turns * 6.283;
    points.push([cx + Math.cos(a) * f.w * 0.46 * (1 - t * 0.86), cy + Math.sin(a) * f.h * 0.44 * (1 - t * 0.86)]);
  }
  let out = stroke(smooth(points), c, m * 0.065, CAPS);
  for (let i = 0; i < 5; i++) {
    const p = nth(points, 3 + i * 5);
    out += leaf(p[0], p[1], m * 0.17, i * 70 + 20, 0.35, c);
  }
  return out;
};

const rings: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const count = 3 + Math.floor(dice() * 2);
  let out = disc(f.x + f.w / 2, f.y + f.h / 2, m * 0.05, c);
  for (let i = 1; i <= count; i++)
    out += `<circle cx="${n(f.x + f.w / 2)}" cy="${n(f.y + f.h / 2)}" r="${n((m * 0.47 * i) / count)}" fill="none" stroke="${c}" stroke-width="${n((m * 0.2) / count)}"/>`;
  return out;
};

const star: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const cx = f.x + f.w / 2;
  const cy = f.y + f.h / 2;
  const rays = 6 + Math.floor(dice() * 5);
  const waist = between(dice, 0.16, 0.26);
  const points: Point[] = [];
  for (let i = 0; i < rays * 2; i++) {
    const r = m * (i % 2 ? waist : 0.48);
    points.push([cx + Math.sin((i * Math.PI) / rays) * r, cy - Math.cos((i * Math.PI) / rays) * r]);
  }
  return path(polygon(points), c);
};

const chevrons: Motif = (f, c, dice) => {
  const rows = Math.max(4, Math.round(f.h / between(dice, 2.4, 3.6)));
  const teeth = 2 + Math.floor(dice() * 3);
  let out = '';
  for (let j = 0; j < rows; j++) {
    let d = `M${n(f.x)} ${n(f.y + (f.h * (j + 0.75)) / rows)}`;
    for (let i = 0; i < teeth; i++)
      d += `l${n(f.w / teeth / 2)} ${n(-f.h / rows)}l${n(f.w / teeth / 2)} ${n(f.h / rows)}`;
    out += stroke(d, c, (f.h / rows) * 0.32, 'stroke-linejoin="miter"');
  }
  return out;
};

const trail: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const bends = 2 + Math.floor(dice() * 2);
  const points: Point[] = [];
  for (let i = 0; i <= bends * 4; i++)
    points.push([f.x + f.w * (0.5 + 0.26 * Math.sin((i * Math.PI) / 2)), f.y + (f.h * i) / (bends * 4)]);
  let out = stroke(smooth(points), c, m * 0.055, CAPS);
  for (let i = 1; i < points.length - 1; i++) {
    const p = points[i] as Point;
    // The smoothed stem swings half as far as its points.
    const x = f.x + f.w / 2 + (p[0] - f.x - f.w / 2) * 0.5;
    out += leaf(x, p[1], m * 0.26, i % 2 ? -25 : 205, 0.36, c);
    out += disc(x + (i % 2 ? -1 : 1) * m * 0.15, p[1] + m * 0.05, m * 0.04, c);
  }
  return out;
};

const chequer: Motif = (f, c, dice) =>
  cells(f, between(dice, 2.6, 4), (x, y, w, h, i, j) =>
    (i + j) % 2
      ? rect(x + w * 0.06, y + h * 0.06, w * 0.88, h * 0.88, c)
      : disc(x + w / 2, y + h / 2, Math.min(w, h) * 0.13, c),
  );

const fern: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const lean = between(dice, -0.3, 0.3);
  const count = 7 + Math.floor(dice() * 4);
  let out = '';
  const spine: Point[] = [];
  for (let i = 0; i <= count; i++) {
    const t = i / count;
    spine.push([f.x + f.w * (0.5 + lean * (t * t - 0.35)), f.y + f.h * (1 - t * 0.95)]);
  }
  out += stroke(smooth(spine), c, m * 0.045, CAPS);
  for (let i = 1; i < count; i++) {
    const p = spine[i] as Point;
    const length = f.w * 0.46 * Math.sin(Math.PI * (0.25 + (0.72 * i) / count));
    out += leaf(p[0], p[1], length, -30, 0.15, c) + leaf(p[0], p[1], length, 210, 0.15, c);
  }
  return out;
};

const fish: Motif = (f, c, dice) => {
  const rows = Math.max(2, Math.round(f.h / between(dice, 5, 7)));
  let out = '';
  for (let j = 0; j < rows; j++) {
    const y = f.y + (f.h * (j + 0.5)) / rows;
    const s = f.h / rows;
    const dir = j % 2 ? -1 : 1;
    const x = f.x + f.w / 2;
    const l = Math.min(f.w * 0.46, s * 1.5);
    out += path(
      `M${n(x + dir * l)} ${n(y)}Q${n(x)} ${n(y - s * 0.62)} ${n(x - dir * l * 0.55)} ${n(y)}L${n(x - dir * l)} ${n(y - s * 0.28)}V${n(y + s * 0.28)}L${n(x - dir * l * 0.55)} ${n(y)}Q${n(x)} ${n(y + s * 0.62)} ${n(x + dir * l)} ${n(y)}z`,
      c,
    );
  }
  return out;
};

const bud: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const cx = f.x + f.w / 2;
  const seeds = 2 + Math.floor(dice() * 3);
  let out = stroke(`M${n(cx)} ${n(f.y + f.h)}V${n(f.y + f.h * 0.62)}`, c, m * 0.07, CAPS);
  out += stroke(
    `M${n(cx)} ${n(f.y + f.h * 0.66)}C${n(cx - f.w * 0.5)} ${n(f.y + f.h * 0.6)} ${n(cx - f.w * 0.34)} ${n(f.y + f.h * 0.2)} ${n(cx)} ${n(f.y + f.h * 0.04)}C${n(cx + f.w * 0.34)} ${n(f.y + f.h * 0.2)} ${n(cx + f.w * 0.5)} ${n(f.y + f.h * 0.6)} ${n(cx)} ${n(f.y + f.h * 0.66)}z`,
    c,
    m * 0.06,
    CAPS,
  );
  for (let i = 0; i < seeds; i++)
    for (let k = 0; k <= i; k++)
      out += oval(cx + (k - i / 2) * m * 0.15, f.y + f.h * (0.26 + 0.1 * i), m * 0.045, m * 0.06, c);
  return (
    out + leaf(cx, f.y + f.h * 0.95, f.w * 0.44, -32, 0.28, c) + leaf(cx, f.y + f.h * 0.95, f.w * 0.44, 212, 0.28, c)
  );
};

const net: Motif = (f, c, dice) => {
  const size = between(dice, 3.6, 5.4);
  return cells(f, size, (x, y, w, h) =>
    stroke(
      `M${n(x)} ${n(y + h / 2)}Q${n(x + w / 2)} ${n(y + h / 2)} ${n(x + w / 2)} ${n(y)}M${n(x + w)} ${n(y + h / 2)}Q${n(x + w / 2)} ${n(y + h / 2)} ${n(x + w / 2)} ${n(y + h)}M${n(x + w / 2)} ${n(y)}Q${n(x + w / 2)} ${n(y + h / 2)} ${n(x + w)} ${n(y + h / 2)}M${n(x)} ${n(y + h / 2)}Q${n(x + w / 2)} ${n(y + h / 2)} ${n(x + w / 2)} ${n(y + h)}`,
      c,
      size * 0.12,
    ),
  );
};

const ears: Motif = (f, c, dice) => {
  const m = Math.min(f.w, f.h);
  const stalks = 3;
  let out = '';
  for (let s = 0; s < stalks; s++) {
    const top = f.x + f.w * (0.18 + 0.32 * s);
    const foot = f.x + f.w * (0.42 + 0.08 * s);
    const y0 = f.y + f.h * (s === 1 ? 0.06 : 0.16);
    out += stroke(`M${n(foot)} ${n(f.y + f.h)}Q${n(foot)} ${n(f.y + f.h * 0.6)} ${n(top)} ${n(y0)}`, c, m * 0.04, CAPS);
    const grains = 4 + Math.floor(dice() * 3);
    for (let i = 0; i < grains; i++) {
      const y = y0 + i * f.h * 0.075;
      const x = top + (foot - top) * (i / grains) * 0.25;
      out += leaf(x, y + f.h * 0.05, m * 0.14, -60, 0.4, c) + leaf(x, y + f.h * 0.05, m * 0.14, 240, 0.4, c);
    }
  }
  return out;
};

const key: Motif = (f, c, dice) => {
  const size = between(dice, 5, 8);
  return cells(f, size, (x, y, w, h) => {
    const u = w / 6;
    const v = h / 6;
    return stroke(
      `M${n(x + u * 0.6)} ${n(y + v * 5.2)}V${n(y + v * 0.8)}H${n(x + u * 5)}V${n(y + v * 4)}H${n(x + u * 2.4)}V${n(y + v * 2.4)}H${n(x + u * 3.6)}`,
      c,
      Math.min(u, v) * 0.95,
    );
  });
};

export const MOTIFS: readonly Motif[] = [
  sprig,
  lozenges,
  ripples,
  rosette,
  fern,
  spots,
  drop,
  bars,
  scroll,
  scales,
  star,
  trail,
  rings,
  chequer,
  fish,
  chevrons,
  bud,
  net,
  ears,
  key,
];
