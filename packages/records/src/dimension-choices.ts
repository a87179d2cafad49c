/** Where two stated systems disagree: the text as either would have it, for a person to pick from. */
import type { Axis, DimensionPart, DimensionReading, Measure } from './dimension-reading.ts';

const LETTERS: readonly (readonly [Axis, string])[] = [
  ['height', 'H'],
  ['width', 'W'],
  ['depth', 'D'],
  ['diameter', 'Diam.'],
  ['length', 'L'],
  ['circumference', 'Circ.'],
  ['drop', 'drop'],
  ['repeat', 'repeat'],
];

/** Two texts that read back without a conflict, first the system stated first; empty when nothing disagrees. */
export function dimensionChoices(reading: DimensionReading): string[] {
  const conflict = reading.parts.some((part) => LETTERS.some(([axis]) => part[axis]?.conflictMm !== undefined));
  return conflict ? [textOf(reading, asFirst), textOf(reading, asSecond)] : [];
}

function textOf(reading: DimensionReading, figureOf: (measure: Measure, second: boolean) => string): string {
  const said = [
    ...(reading.quantity === undefined ? [] : [`Set of ${reading.quantity}`]),
    ...reading.parts.map((part) => partText(part, figureOf)),
    ...(reading.weight === undefined ? [] : [`${reading.weight.value} ${reading.weight.unit}`]),
  ];
  return `${reading.approximate ? 'approx. ' : ''}${said.join('; ')}`;
}

function partText(part: DimensionPart, figureOf: (measure: Measure, second: boolean) => string): string {
  const second = LETTERS.some(([axis]) => part[axis]?.conflictMm !== undefined);
  const figures = LETTERS.flatMap(([axis, letter]) => {
    const measure = part[axis];
    return measure === undefined ? [] : [`${letter} ${figureOf(measure, second)}`];
  });
  return `${part.extent === 'overall' ? '' : `${part.extent}: `}${figures.join(' × ')}`;
}

function asFirst({ value, maxValue, unit }: Measure): string {
  return `${value}${maxValue === undefined ? '' : `-${maxValue}`}${unit === null ? '' : ` ${unit}`}`;
}

/** The second system's figure where it differs, elsewhere the first brought to the same unit, to a millimetre. */
function asSecond(measure: Measure, second: boolean): string {
  const mm = measure.conflictMm ?? measure.mm;
  if (!second || mm === null) return asFirst(measure);
  const metric = measure.unit === 'in' || measure.unit === 'ft';
  return metric ? `${Math.round(mm) / 10} cm` : `${Math.round((mm / 25.4) * 16) / 16} in`;
}
