/** Units of length and weight as they are written, and what each is worth. */

export type LengthUnit = 'in' | 'ft' | 'cm' | 'mm' | 'm';
export type WeightUnit = 'kg' | 'g' | 'lb' | 'oz';
export type Unit = LengthUnit | WeightUnit;

/** Exact since the international yard and pound agreement of 1959. */
export const MM_PER: Readonly<Record<LengthUnit, number>> = { in: 25.4, ft: 304.8, cm: 10, mm: 1, m: 1000 };
export const KG_PER: Readonly<Record<WeightUnit, number>> = { kg: 1, g: 0.001, lb: 0.45359237, oz: 0.028349523125 };

const WORDS: readonly (readonly [Unit, string])[] = [
  ['in', '" in ins inch inches zoll pouce pouces'],
  ['ft', "' ft foot feet fuß pied pieds"],
  ['mm', 'mm mms millimeter millimeters millimetre millimetres millimètre millimètres'],
  ['cm', 'cm cms centimeter centimeters centimetre centimetres zentimeter centimètre centimètres'],
  ['m', 'm meter meters metre metres mètre mètres'],
  ['kg', 'kg kgs kilo kilos kilogram kilograms kilogramm kilogramme kilogrammes'],
  ['g', 'g gr grs gram grams gramme grammes gramm'],
  ['lb', 'lb lbs pound pounds'],
  ['oz', 'oz ozs ounce ounces'],
];
const UNITS: ReadonlyMap<string, Unit> = new Map(
  WORDS.flatMap(([unit, words]) => words.split(' ').map((word): [string, Unit] => [word, unit])),
);

/** The unit that a word in lower case or a sign stands for, or null. */
export function unitNamed(word: string): Unit | null {
  return UNITS.get(word) ?? null;
}

export function isLength(unit: Unit | null): unit is LengthUnit {
  return unit !== null && Object.hasOwn(MM_PER, unit);
}

export function isMetric(unit: LengthUnit): boolean {
  return unit !== 'in' && unit !== 'ft';
}

/** A figure without the tail of binary arithmetic: 14.375 in. are 365.125 mm. */
export function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
