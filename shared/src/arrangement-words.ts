/** What is said of an arrangement: its kind, its name, and its measured terms in exact words. Pure. */
import type { ArrangeKind } from './arrange-task.ts';
import type { ArrangementTerm } from './arrangement-terms.ts';

export const KIND_WORDS: Readonly<Record<ArrangeKind, string>> = {
  halo: 'round a focal work',
  salon: 'salon hang',
  line: 'in a line',
  double: 'double hang',
  pendants: 'pendants',
  massed: 'massed on a table or shelf',
  carrier: 'round a piece of furniture',
  plinths: 'on plinths',
};

/** What each way does, in a sentence. A name with more said after a comma is told by what stands before it. */
const WAYS: Readonly<Record<string, string>> = {
  'even halo': 'They gather round it with gaps as even as their sizes let them be.',
  'loose halo': 'They drift round it, with wider gaps and none the same.',
  'leaning halo': 'They gather round it and trail off to one side.',
  'wide halo': 'They spread to both sides of it.',
  'tall halo': 'They rise and fall above and below it.',
  'massed salon': 'Packed about the focal work, or the largest of them, the larger nearer to it.',
  'salon on an axis': 'Built up from one line at eye height, above it and below it.',
  'salon in columns': 'Upright columns, each about one middle.',
  'line with one gap': 'One gap, every centre on the centre line, the group in the middle.',
  'line that fills the wall': 'The same gap everywhere, to the ends of the wall too.',
  'line in pairs': 'Two and two close together, with wider gaps between the pairs.',
  'double hang on an axis': 'An upper and a lower row part at one line.',
  'double hang on two lines': 'Two rows, each with its own centre line.',
  'double hang in a rectangle': 'Two rows that end in one straight edge all round.',
  'pendants close': 'To the left and right of the middle, near it.',
  'pendants wide': 'To the left and right of the middle, far apart.',
  'pendants stacked': 'One stack on either side, the larger below.',
  'rows, tall at the back': 'In rows, the tall ones behind, high and low by turns.',
  peak: 'It rises to a peak in the middle.',
  'slope with one apart': 'It falls from one side to the other, and one stands apart.',
  symmetrical: 'Load and wall are balanced about its middle.',
  'to one side': 'The load falls off to one side, and the wall answers on the other.',
  'in a line': 'One line hangs over it and its load.',
  triangle: 'A triangle, the tallest behind.',
  arc: 'An arc, open to whoever comes.',
  steps: 'Steps from tall to low along a slant.',
};

export function wayText(name: string): string {
  return WAYS[name] ?? WAYS[name.slice(0, name.lastIndexOf(','))] ?? '';
}

/** A measured term as a sentence, lengths as the reader reads them; empty where there is nothing to be said. */
export function termText(term: ArrangementTerm, length: (mm: number) => string): string {
  switch (term.kind) {
    case 'balance':
      return balanceText(term.x);
    case 'gaps':
      return Math.round(term.leastMm) === Math.round(term.mostMm)
        ? `Every gap is ${length(term.leastMm)}.`
        : `Gaps from ${length(term.leastMm)} to ${length(term.mostMm)}, ${evenness(term.cv)}.`;
    case 'void':
      return `The largest empty round inside is ${length(term.mm)} across.`;
    case 'aligned':
      return alignedText(term.share);
    case 'rhythm':
      return `Neighbours differ in colour by ΔE ${Math.round(term.mean)}, ${term.cv < 0.35 ? 'about the same everywhere' : term.cv < 0.7 ? 'here more, there less' : 'some hardly, some strongly'}.`;
    case 'eye height':
      return eyeHeightText(term.aboveMm, term.centreLineMm, length);
    case 'outline':
      return `${length(term.heightMm)} × ${length(term.widthMm)} in all${term.fill === undefined ? '' : `, ${Math.round(term.fill * 100)} % filled`}.`;
    case 'in plan':
      return `It takes ${length(term.widthMm)} × ${length(term.depthMm)} of the floor.`;
    case 'above reach':
      return `${count(term.count, 'reaches', 'reach')} above ${length(term.reachMm)}.`;
    case 'stands out':
      return `${count(term.count, 'stands', 'stand')} out more than ${length(term.mostMm)} where people pass: a caution.`;
    case 'seen':
      return term.leastShare > 0.995
        ? 'Nothing hides anything.'
        : `Of each at least ${Math.floor(term.leastShare * 100)} % is seen from the front.`;
    case 'rows':
      return `${count(term.count, 'row', 'rows')} on ${count(term.levels, 'level', 'levels')}.`;
    case 'risers':
      return `What stands behind is raised by up to ${length(term.highestMm)}.`;
    case 'density':
      return `${Math.round(term.perSquareMetre)} to the square metre.`;
    case 'narrow ways':
      return `${count(term.count, 'way', 'ways')} between them ${term.count === 1 ? 'is' : 'are'} too narrow for a wheelchair.`;
    case 'over the load':
      return `What hangs stays ${length(term.mm)} clear of what stands under it.`;
    case 'no room':
      return `${count(term.count, 'finds', 'find')} no room, and ${term.count === 1 ? 'is' : 'are'} taken down if ${term.count === 1 ? 'it is' : 'they are'} here now.`;
  }
}

function balanceText(x: number): string {
  const side = x < 0 ? 'left' : 'right';
  if (Math.abs(x) < 0.05) return 'Balanced from left to right.';
  return Math.abs(x) < 0.15 ? `Slightly heavier on the ${side}.` : `Heavier on the ${side}.`;
}

function evenness(cv: number): string {
  return cv < 0.15 ? 'even' : cv < 0.4 ? 'nearly even' : cv < 0.7 ? 'uneven' : 'very uneven';
}

function alignedText(share: number): string {
  if (share > 0.995) return 'Each shares an edge or a middle with another.';
  if (share < 0.1) return 'No edges or middles line up.';
  if (share > 0.95) return 'Nearly all share an edge or a middle with another.';
  return `${Math.round(share * 10)} in 10 share an edge or a middle with another.`;
}

function eyeHeightText(aboveMm: number, centreLineMm: number, length: (mm: number) => string): string {
  if (Math.abs(aboveMm) < 20) return `Its middle lies on the centre line, at ${length(centreLineMm)}.`;
  const where = `${length(Math.abs(aboveMm))} ${aboveMm > 0 ? 'above' : 'below'}`;
  return `Its middle lies ${where} the centre line of ${length(centreLineMm)}.`;
}

function count(n: number, one: string, more: string): string {
  return `${n} ${n === 1 ? one : more}`;
}
