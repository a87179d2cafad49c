/** One stated figure as a measure: its unit, its millimetres, and whether the second stated system says the same. */
import type { Measure } from './dimension-reading.ts';
import type { ChainFigure } from './measure-chains.ts';
import type { Figure } from './measure-tokens.ts';
import { isLength, type LengthUnit, MM_PER, tidy } from './measure-units.ts';

export interface MeasureRead {
  readonly measure: Measure;
  /** The figure may be thousands or a decimal, and nothing says which: neither is taken. */
  readonly twoReadings: boolean;
}

/** `toleranceMm`: two systems agree within it, or within half of the last place that either states. */
export function measureFrom(item: ChainFigure, second: ChainFigure | null, toleranceMm: number): MeasureRead {
  const unit = isLength(item.unit) ? item.unit : null;
  const stated = second === null || !isLength(second.unit) ? null : { ...second, unit: second.unit };
  const secondMm = stated === null ? null : tidy(stated.figure.value * MM_PER[stated.unit]);
  const allowed =
    stated === null
      ? toleranceMm
      : Math.max(
          allowanceMm(stated.figure.written, stated.unit, toleranceMm),
          unit === null ? 0 : allowanceMm(item.figure.written, unit, toleranceMm),
        );
  const value = readingOf(item.figure, unit, secondMm, allowed);
  const maxValue = item.upTo === null ? null : readingOf(item.upTo, unit, null, 0);
  const clear = value !== null && (item.upTo === null || maxValue !== null);
  const mm = clear && unit !== null ? tidy(value * MM_PER[unit]) : null;
  const maxMm = clear && maxValue !== null && unit !== null ? tidy(maxValue * MM_PER[unit]) : null;
  const upper = stated?.upTo ? tidy(stated.upTo.value * MM_PER[stated.unit]) : null;
  const differs = (first: number | null, other: number | null) =>
    first !== null && other !== null && Math.abs(first - other) > allowed;
  const conflict = differs(mm, secondMm) ? secondMm : differs(maxMm, upper) ? upper : null;
  return {
    measure: {
      value: value ?? item.figure.value,
      ...(item.upTo === null ? {} : { maxValue: maxValue ?? item.upTo.value }),
      unit,
      mm,
      ...(maxMm === null ? {} : { maxMm }),
      ...(conflict === null ? {} : { conflictMm: conflict }),
    },
    twoReadings: !clear,
  };
}

/** Whether two measures of one thing agree, each within its rounding. */
export function agree(a: Measure, b: Measure, written: string, toleranceMm: number): boolean {
  if (a.mm === null || b.mm === null || b.unit === null) return a.unit === b.unit && a.value === b.value;
  const own = a.unit === null ? 0 : allowanceMm(String(a.value), a.unit, toleranceMm);
  return Math.abs(a.mm - b.mm) <= Math.max(own, allowanceMm(written, b.unit, toleranceMm));
}

/** A figure rounded to whole centimetres (61 for 609.6 mm) does not disagree: half of its last place is allowed. Own rule. */
function allowanceMm(written: string, unit: LengthUnit, toleranceMm: number): number {
  if (unit === 'in' || unit === 'ft') return toleranceMm;
  const places = /[.,](\d+)$/.exec(written)?.[1]?.length ?? 0;
  return Math.max(toleranceMm, (0.5 * MM_PER[unit]) / 10 ** places + 1e-6);
}

/**
 * The value where the figure can be read one way; null where it can be read two ways. Nobody states a size to the
 * thousandth of a millimetre after a comma, so `1,250 mm` is thousands; `1.250 mm` and any other `1,250` stay open unless the
 * second system says which.
 */
function readingOf(figure: Figure, unit: LengthUnit | null, secondMm: number | null, allowed: number): number | null {
  const { thousands, value, written } = figure;
  if (thousands === undefined) return value;
  const comma = written.includes(',');
  if (comma && unit === 'mm') return thousands;
  if (!comma && unit !== 'mm' && unit !== 'cm') return value;
  if (unit === null || secondMm === null) return null;
  const fits = [value, thousands].filter((reading) => Math.abs(reading * MM_PER[unit] - secondMm) <= allowed);
  return fits.length === 1 ? (fits[0] ?? null) : null;
}
