/** Sizes as registrars write them, each with the true millimetres it stands for. */

export interface WrittenSize {
  readonly text: string;
  readonly heightMm: number;
  readonly widthMm: number;
  /** 0 where no depth is written. */
  readonly depthMm: number;
}

const IN = 25.4;
const EIGHTHS = ['', ' 1/8', ' 1/4', ' 3/8', ' 1/2', ' 5/8', ' 3/4', ' 7/8'];

function eighths(cm: number): number {
  return Math.max(1, Math.round((cm * 10 * 8) / IN));
}

function inches(count: number): string {
  const whole = Math.floor(count / 8);
  return `${whole === 0 ? '' : whole}${EIGHTHS[count % 8]}`.trim();
}

function listed(values: readonly number[], mark: string, digits = 1): string {
  return values.map((v) => v.toFixed(digits)).join(` ${mark} `);
}

function given(h: number, w: number, d: number | undefined): number[] {
  return d === undefined ? [h, w] : [h, w, d];
}

function sizeOf(text: string, h: number, w: number, d: number | undefined): WrittenSize {
  const mm = (cm: number) => Math.round(cm * 1000) / 100;
  return { text, heightMm: mm(h), widthMm: mm(w), depthMm: d === undefined ? 0 : mm(d) };
}

/** `66.0 × 86.0 × 6.0 cm`; all lengths in cm, as below. */
export function inCm(h: number, w: number, d?: number): WrittenSize {
  return sizeOf(`${listed(given(h, w, d), '×')} cm`, h, w, d);
}

/** `12,5 x 8,0 cm` */
export function inCommaCm(h: number, w: number, d?: number): WrittenSize {
  return sizeOf(`${listed(given(h, w, d), 'x').replaceAll('.', ',')} cm`, h, w, d);
}

/** `1.46 m × 3.10 m` */
export function inMetres(h: number, w: number): WrittenSize {
  return sizeOf(`${(h / 100).toFixed(2)} m × ${(w / 100).toFixed(2)} m`, h, w, undefined);
}

/** `H 1200 x W 450 x D 300 mm` */
export function inMm(h: number, w: number, d: number): WrittenSize {
  return sizeOf(`H ${h * 10} x W ${w * 10} x D ${d * 10} mm`, h, w, d);
}

/** `H. 46.0 cm; W. 140.0 cm; D. 38.0 cm` */
export function labelled(h: number, w: number, d: number): WrittenSize {
  return sizeOf(`H. ${h.toFixed(1)} cm; W. ${w.toFixed(1)} cm; D. ${d.toFixed(1)} cm`, h, w, d);
}

/** `24 1/2 × 36 in. (62.2 × 91.4 cm)`: the inches stand, to an eighth. */
export function inInches(h: number, w: number, d?: number, withCm = true): WrittenSize {
  const counts = given(h, w, d).map(eighths);
  const cm = counts.map((c) => (c * IN) / 80);
  const text = `${counts.map(inches).join(' × ')} in.${withCm ? ` (${listed(cm, '×')} cm)` : ''}`;
  return sizeOf(text, cm[0] as number, cm[1] as number, d === undefined ? undefined : cm[2]);
}

/** `Diam. 44.0 cm` */
export function across(diameter: number): WrittenSize {
  return sizeOf(`Diam. ${diameter.toFixed(1)} cm`, diameter, diameter, undefined);
}

/** What a registrar wrote that says no size; the true one is kept for the drawing alone. */
export function damaged(text: string, h: number, w: number, d?: number): WrittenSize {
  return sizeOf(text, h, w, d);
}
