import type { LabD65 } from './lab.ts';
import { chromaOf, hueDegreesOf } from './spaces.ts';

// Plain words for sentences, not a system of names: common practice, no source. Bands were set by eye on CIELAB D65
// colours of paints, cloth, wood and metal. A name never claims more than a person would say across a room.

/** Chroma under which a colour is spoken of as grey, black or white; near white and near black hue shows later. */
const GREY_CHROMA = 6;
const NEAR_BLACK_LIGHTNESS = 16;

/** The noun of a colour: "green", "brown", "cream", "grey" … */
export function colourFamilyOf(lab: LabD65): string {
  const chroma = chromaOf(lab);
  const hue = hueDegreesOf(lab);
  const { L } = lab;
  if (L < NEAR_BLACK_LIGHTNESS && chroma < 12) return 'black';
  if (L >= 93 && chroma < 5) return 'white';
  if (L >= 85 && chroma < 9) return 'off-white';
  if (chroma < GREY_CHROMA) return 'grey';
  if (hue < 15 || hue >= 350) return L >= 55 ? 'pink' : 'crimson';
  if (hue < 42) return redOf(L, chroma);
  if (hue < 70) return orangeOf(L, chroma, hue);
  if (hue < 108) return yellowOf(L, chroma, hue);
  if (hue < 130 && chroma < 40 && L < 55) return 'olive green';
  if (hue < 192) return 'green';
  if (hue < 222) return 'blue-green';
  if (hue < 298) return 'blue';
  if (hue < 318) return 'violet';
  return L >= 60 ? 'mauve' : 'purple';
}

function redOf(L: number, chroma: number): string {
  if (L >= 55 && chroma < 45) return 'pink';
  return chroma < 22 ? 'red-brown' : 'red';
}

function orangeOf(L: number, chroma: number, hue: number): string {
  if (L >= 78 && chroma < 30) return 'buff';
  if (hue < 58 && L < 52 && chroma >= 34) return 'rust';
  if (L >= 50 && chroma >= 42) return 'orange';
  return L >= 68 ? 'tan' : 'brown';
}

function yellowOf(L: number, chroma: number, hue: number): string {
  if (L >= 86 && chroma < 18) return 'cream';
  if (chroma < 14) return L >= 55 ? 'stone' : 'grey-brown';
  if (L >= 68 && chroma < 42) return 'straw';
  if (L >= 52 && chroma >= 38) return 'yellow';
  if (hue < 88) return L >= 52 ? 'ochre' : 'brown';
  return 'olive';
}

const ALREADY_LIGHT = new Set(['white', 'off-white', 'cream', 'buff', 'mauve']);

/** The plain name of a CIELAB D65 colour: "deep green", "pale straw", "dark brown", "near black" … */
export function colourNameOf(lab: LabD65): string {
  const family = colourFamilyOf(lab);
  if (family === 'black') return 'near black';
  if (ALREADY_LIGHT.has(family)) return family;
  const chroma = chromaOf(lab);
  if (lab.L < 42) return family !== 'grey' && chroma >= 25 ? `deep ${family}` : `dark ${family}`;
  if (family !== 'grey' && chroma >= 60) return lab.L < 60 ? `strong ${family}` : `bright ${family}`;
  if (lab.L >= 74) return `pale ${family}`;
  if (family !== 'grey' && chroma < 18 && family !== 'stone' && family !== 'grey-brown') return `greyed ${family}`;
  return family;
}
