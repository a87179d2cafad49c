/** What a pane weighs. */
import { above } from './bounds.ts';

const DENSITY_KG_M3 = { glass: 2500, acrylic: 1190 } as const;

/**
 * Mass of a pane (kg), area × thickness × density. RangeError on a side of no size. Source: glass 2,500 and acrylic
 * 1,190 kg/m³, from memory.
 */
export function glazingKgOf(pane: {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thicknessMm: number;
  readonly material: keyof typeof DENSITY_KG_M3;
}): number {
  const areaM2 = (above('widthMm', pane.widthMm, 0, 1e5) * above('heightMm', pane.heightMm, 0, 1e5)) / 1e6;
  return (areaM2 * above('thicknessMm', pane.thicknessMm, 0, 1000) * DENSITY_KG_M3[pane.material]) / 1000;
}
