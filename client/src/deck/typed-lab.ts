/** L*a*b* as a person types it, with the white point it was measured under. Pure. */
import type { MeasuredLab, WhitePoint } from '@enfilade/colour/white-points';
import { whitePointFrom, whitePointName } from '@enfilade/colour/white-points';

export const AXES = [
  { axis: 'L', name: 'L*', least: 0, most: 100 },
  { axis: 'a', name: 'a*', least: -170, most: 170 },
  { axis: 'b', name: 'b*', least: -170, most: 170 },
] as const;

export interface TypedLab {
  readonly L: string;
  readonly a: string;
  readonly b: string;
  /** 'D50/2°'. */
  readonly white: string;
}

export const UNTYPED: TypedLab = { L: '', a: '', b: '', white: 'D65/2°' };

/** White points to choose from: the deck's own first, then those that readers and makers state. */
export const WHITES: readonly string[] = [
  'D65/2°',
  'D50/2°',
  'D65/10°',
  'D50/10°',
  'C/2°',
  'C/10°',
  'A/2°',
  'A/10°',
  'F11/10°',
];

/** 'D50/2°' as a white point, or null. */
export function whiteFromName(name: string): WhitePoint | null {
  const [illuminant = '', observer = ''] = name.split('/');
  return whitePointFrom(illuminant, observer);
}

/** What was typed as measured L*a*b*, or null with what is wrong of each field that is no number of its range. */
export function labFromTyped(typed: TypedLab): {
  lab: MeasuredLab | null;
  wrong: Partial<Record<'L' | 'a' | 'b', string>>;
} {
  const wrong: Partial<Record<'L' | 'a' | 'b', string>> = {};
  const lab = { L: 0, a: 0, b: 0 };
  for (const { axis, name, least, most } of AXES) {
    const text = typed[axis].trim().replace(',', '.').replace('−', '-');
    const value = Number(text);
    if (text === '' || !Number.isFinite(value)) wrong[axis] = `${name} is to be a number`;
    else if (value < least || value > most) wrong[axis] = `${name} lies between ${least} and ${most}`;
    else lab[axis] = value;
  }
  const white = whiteFromName(typed.white);
  return { lab: Object.keys(wrong).length === 0 && white !== null ? { ...lab, ...white } : null, wrong };
}

/** Measured L*a*b* as its fields show it. */
export function typedFrom(lab: MeasuredLab): TypedLab {
  const text = (value: number): string => String(Math.round(value * 100) / 100);
  return { L: text(lab.L), a: text(lab.a), b: text(lab.b), white: whitePointName(lab) };
}
