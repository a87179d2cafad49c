import type { LabD65 } from './lab.ts';

// Reference white D65 from its chromaticity x 0.3127, y 0.3290 and the sRGB primaries over it,
// as CSS Color Module Level 4 (W3C) gives them: linear sRGB to XYZ with Y of white = 1, and back.
const WHITE_X = 0.3127 / 0.329;
const WHITE_Z = (1 - 0.3127 - 0.329) / 0.329;
// CIE 15:2018: the straight piece near black, δ = 6/29 and κ = 24389/27.
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

/** White ink below this L*, black from it on: there both stand at 4.58 : 1 against the paint (WCAG 2.2 ratio). */
export const INK_TURNS_AT_LIGHTNESS = 49.4;

/** Linear light 0..1 of an sRGB channel 0..255 (IEC 61966-2-1). */
export function linearFromSrgb(channel: number): number {
  const c = channel / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

function srgbFromLinear(light: number): number {
  return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
}

/** Cube root of a share of white 0..1, straight near black (CIE 15:2018): L* is 116 times it less 16. */
export function cubeRootOf(t: number): number {
  return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
}

function cubeOf(root: number): number {
  const cube = root ** 3;
  return cube > EPSILON ? cube : (116 * root - 16) / KAPPA;
}

/** X, Y and Z of linear sRGB light, each over that of the D65 white. */
export function overWhiteFromLinear(r: number, g: number, b: number): [x: number, y: number, z: number] {
  return [
    (0.41239079926595934 * r + 0.357584339383878 * g + 0.1804807884018343 * b) / WHITE_X,
    0.21263900587151027 * r + 0.715168678767756 * g + 0.07219231536073371 * b,
    (0.01933081871559182 * r + 0.11919477979462598 * g + 0.9505321522496607 * b) / WHITE_Z,
  ];
}

/** CIELAB D65/2° of linear sRGB light, each channel 0..1 (CIE 15:2018). */
export function labD65FromLinear(r: number, g: number, b: number): LabD65 {
  const over = overWhiteFromLinear(r, g, b);
  const x = cubeRootOf(over[0]);
  const y = cubeRootOf(over[1]);
  const z = cubeRootOf(over[2]);
  return { L: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/** CIELAB D65/2° of an sRGB colour, channels 0..255 and not necessarily whole. */
export function labD65FromSrgb(r: number, g: number, b: number): LabD65 {
  return labD65FromLinear(linearFromSrgb(r), linearFromSrgb(g), linearFromSrgb(b));
}

function linearFromLabD65(lab: LabD65, chromaScale: number): [number, number, number] {
  const root = (lab.L + 16) / 116;
  const x = cubeOf(root + (lab.a * chromaScale) / 500) * WHITE_X;
  const y = cubeOf(root);
  const z = cubeOf(root - (lab.b * chromaScale) / 200) * WHITE_Z;
  return [
    3.2409699419045226 * x - 1.537383177570094 * y - 0.4986107602930034 * z,
    -0.9692436362808796 * x + 1.8759675015077202 * y + 0.04155505740717559 * z,
    0.05563007969699366 * x - 0.20397695888897652 * y + 1.0569715142428786 * z,
  ];
}

/** Linear sRGB light of a CIELAB D65 colour, each channel 0..1 where a screen can show it, and beyond where it cannot. */
export function linearLightOf(lab: LabD65): [r: number, g: number, b: number] {
  return linearFromLabD65(lab, 1);
}

function isShowable(light: readonly number[]): boolean {
  return light.every((channel) => channel >= -1e-6 && channel <= 1 + 1e-6);
}

/**
 * The sRGB colour, channels 0..255 unrounded, that shows a CIELAB D65 colour, and whether the screen can show it.
 * Where it cannot, chroma gives way while L* and hue stay, for a work parts from its wall by lightness first.
 */
export function srgbFromLabD65(lab: LabD65): { r: number; g: number; b: number; inGamut: boolean } {
  let light = linearFromLabD65(lab, 1);
  const inGamut = isShowable(light);
  if (!inGamut) {
    let shown = 0;
    let beyond = 1;
    for (let step = 0; step < 24; step++) {
      const middle = (shown + beyond) / 2;
      if (isShowable(linearFromLabD65(lab, middle))) shown = middle;
      else beyond = middle;
    }
    light = linearFromLabD65(lab, shown);
  }
  const [r, g, b] = light.map((channel) => srgbFromLinear(Math.min(1, Math.max(0, channel)))) as [
    number,
    number,
    number,
  ];
  return { r, g, b, inGamut };
}

/** CIELAB D65/2° of `#rgb` or `#rrggbb` sRGB; any other text is a RangeError. */
export function labD65FromHex(hex: string): LabD65 {
  const digits = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(hex)?.[1];
  if (digits === undefined) throw new RangeError(`labD65FromHex: "${hex}" is not # with 3 or 6 hexadecimal digits`);
  const size = digits.length / 3;
  const channel = (at: number): number => {
    const part = digits.slice(at * size, (at + 1) * size);
    return Number.parseInt(size === 1 ? part + part : part, 16);
  };
  return labD65FromSrgb(channel(0), channel(1), channel(2));
}

/** `#rrggbb` in lower case of the sRGB colour that shows a CIELAB D65 colour (see `srgbFromLabD65`). */
export function hexFromLabD65(lab: LabD65): string {
  const { r, g, b } = srgbFromLabD65(lab);
  return `#${[r, g, b].map((channel) => Math.round(channel).toString(16).padStart(2, '0')).join('')}`;
}

/** CIE Y, 0..100, of a surface of lightness L*: its light reflectance value (2° here; BS 8493 measures at 10°, ±2). */
export function lrvOf(lab: LabD65): number {
  return 100 * cubeOf((lab.L + 16) / 116);
}

/** L*, 0..100, of a surface of light reflectance value 0..100. */
export function lightnessFromLrv(lrv: number): number {
  return 116 * cubeRootOf(lrv / 100) - 16;
}

/** CIELAB chroma C*ab. */
export function chromaOf(lab: LabD65): number {
  return Math.hypot(lab.a, lab.b);
}

/** CIELAB hue angle in degrees, 0 to under 360; 0 for a colour without chroma. */
export function hueDegreesOf(lab: LabD65): number {
  const degrees = (Math.atan2(lab.b, lab.a) * 180) / Math.PI;
  // A hair under 0 rounds up to the full turn, which is 0 again.
  return degrees < 0 ? (degrees + 360) % 360 : degrees;
}

/** The ink that is legible on a paint: white on the dark, black on the light. */
export function inkOn(lab: LabD65): 'white' | 'black' {
  return lab.L < INK_TURNS_AT_LIGHTNESS ? 'white' : 'black';
}

/** Contrast ratio of two colours, 1 to 21, either way round (WCAG 2.2, relative luminance from CIE Y). */
export function contrastOf(one: LabD65, other: LabD65): number {
  const a = lrvOf(one) / 100 + 0.05;
  const b = lrvOf(other) / 100 + 0.05;
  return a > b ? a / b : b / a;
}
