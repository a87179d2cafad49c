/** Dimension lines of a drawing, ticked at 45°: centimetres, and inches beneath. */
import { centimetresText, toInches } from '@enfilade/space/lengths';
import { type SheetMark, textMark } from './sheet.ts';

/** Least distance of two figures on the line along the wall. */
const APART = 11;

function tick(x: number, y: number): SheetMark {
  return { kind: 'line', x1: x - 1.2, y1: y + 1.2, x2: x + 1.2, y2: y - 1.2, weightMm: 0.4 };
}

/** The whole length, above the wall. */
export function dimensionLine(left: number, right: number, y: number, lengthMm: number): SheetMark[] {
  const words = `${centimetresText(lengthMm)} cm, ${toInches(lengthMm)} in`;
  return [
    { kind: 'line', x1: left, y1: y, x2: right, y2: y, weightMm: 0.18 },
    tick(left, y),
    tick(right, y),
    textMark((left + right) / 2, y - 1.4, words, 3, 'sans', 'middle'),
  ];
}

/**
 * Where the largest works begin and end along the wall, from its left corner. The ends of the wall come first, then the
 * edges of the largest; an edge whose figure would run into another's is left to the schedule.
 */
export function alongLine(
  lengthMm: number,
  works: readonly { readonly xMm: number; readonly widthMm: number }[],
  X: (mm: number) => number,
  y: number,
): SheetMark[] {
  const stops = [0, lengthMm];
  const largest = [...works].sort((a, b) => b.widthMm - a.widthMm);
  for (const { xMm, widthMm } of largest) {
    const edges = [Math.round(xMm - widthMm / 2), Math.round(xMm + widthMm / 2)] as const;
    const inside = edges.every((edge) => edge > 0 && edge < lengthMm);
    const apart = X(edges[1]) - X(edges[0]) >= APART;
    // Both edges or neither: one alone says nothing of the work.
    if (inside && apart && edges.every((edge) => stops.every((stop) => Math.abs(X(edge) - X(stop)) >= APART))) {
      stops.push(...edges);
    }
  }
  const marks: SheetMark[] = [{ kind: 'line', x1: X(0), y1: y, x2: X(lengthMm), y2: y, weightMm: 0.18 }];
  for (const stop of stops) {
    marks.push(tick(X(stop), y));
    marks.push(textMark(X(stop), y + 4.6, stop === 0 ? '0' : centimetresText(stop), 2.6, 'sans', 'middle'));
    if (stop > 0) marks.push(textMark(X(stop), y + 7.6, toInches(stop), 2, 'sans', 'middle'));
  }
  return marks;
}
