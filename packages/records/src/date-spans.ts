/** What a core covers, by the house's rules: first and last date, and how EDTF writes it. */
import type { Core, Share } from './date-cores.ts';
import type { CalendarDate } from './date-reading.ts';
import type { DateRules, Stretch } from './date-rules.ts';

export interface Covered {
  readonly first: CalendarDate;
  readonly last: CalendarDate;
  /** EDTF without qualifiers: '1887', '188X', '1867/1899'. */
  readonly edtf: string;
  /** Early, mid and late are never exact. */
  readonly approximate: boolean;
}

/** Covered dates, or null where the core is not whole (no year, no century). */
export function coveredBy(core: Core, rules: DateRules): Covered | null {
  if (core.value === 0 || core.unit === 'share' || core.unit === 'ordinal') return null;
  const bce = core.bce === true;
  const approximate = core.turn === true || core.shares.some((share) => typeof share === 'string');
  if (core.either !== undefined) {
    const [monthFirst, dayFirst] = core.either;
    const chosen = rules.figures === null ? core.either : [rules.figures === 'month first' ? monthFirst : dayFirst];
    const dates = chosen.filter((date) => date !== undefined).toSorted(compareDates);
    const [first, last] = [dates[0], dates.at(-1)] as [CalendarDate, CalendarDate];
    return { first, last, edtf: dates.length === 1 ? edtfOf(first) : `[${dates.map(edtfOf).join(',')}]`, approximate };
  }
  if (core.unit === 'day' || core.unit === 'month' || core.unit === 'season' || core.unit === 'year') {
    const { month, day, season } = core;
    const date = {
      year: bce ? -core.value : core.value,
      ...(month === undefined ? {} : { month }),
      ...(day === undefined ? {} : { day }),
    };
    const edtf = season === undefined ? edtfOf(date) : `${edtfOf(date)}-${season}`;
    return { first: date, last: date, edtf, approximate };
  }
  // `1900s` may be a hundred years, so it covers them.
  const decade = core.unit === 'decade' && (core.value % 100 !== 0 || core.digits < 3);
  const length = decade ? 10 : core.unit === 'millennium' ? 1000 : 100;
  const start = core.unit === 'decade' ? core.value : (core.value - 1) * length;
  if (core.turn === true) {
    const year = bce ? -core.value * length : Math.max(1, start);
    return wide({ year: year - rules.circaYears }, { year: year + rules.circaYears }, true);
  }
  const [from, to] = stretchOf(core.shares, length, decade ? rules.decade : rules.century);
  // Before the era years run backwards: the fifth century BCE begins in 500.
  const top = core.unit === 'decade' ? core.value + length - 1 : core.value * length;
  const first = bce ? from - top : Math.max(1, start + from);
  const last = bce ? Math.min(-1, to - top) : start + to;
  if (core.shares.length > 0 || bce || length === 1000) return wide({ year: first }, { year: last }, approximate);
  const masked = String(start / length).padStart(length === 10 ? 3 : 2, '0');
  return {
    first: { year: first },
    last: { year: last },
    edtf: `${masked}${length === 10 ? 'X' : 'XX'}`,
    approximate,
  };
}

/** Astronomical years, as ISO 8601 has them: 12 BCE is -0011. */
export function edtfOf({ year, month, day }: CalendarDate): string {
  const astronomical = year < 0 ? year + 1 : year;
  const four = String(Math.abs(astronomical)).padStart(4, '0');
  const sign = astronomical < 0 ? '-' : '';
  const long = four.length > 4 ? 'Y' : '';
  const rest = [month, day].filter((part) => part !== undefined).map((part) => `-${String(part).padStart(2, '0')}`);
  return `${long}${sign}${four}${rest.join('')}`;
}

/** EDTF with ~ approximate, ? uncertain or % both on each of its dates. */
export function markedWith(edtf: string, mark: string): string {
  return edtf.replace(/[^/,[\]{}.~?%]+(~)?/g, (date, about?: string) =>
    about !== undefined && mark === '?' ? `${date.slice(0, -1)}%` : date + mark,
  );
}

/** EDTF as a member of a set: ranges have dots there, and sets no brackets of their own. */
export function memberOf(edtf: string | null): string {
  return (edtf ?? '').replace(/^[[{]|[\]}]$/g, '').replace(/^\.\.\/|\/\.\.$|\//, '..');
}

export function compareDates(a: CalendarDate, b: CalendarDate): number {
  return a.year - b.year || (a.month ?? 0) - (b.month ?? 0) || (a.day ?? 0) - (b.day ?? 0);
}

function wide(first: CalendarDate, last: CalendarDate, approximate: boolean): Covered {
  return { first, last, edtf: `${edtfOf(first)}/${edtfOf(last)}`, approximate };
}

function stretchOf(
  shares: readonly Share[],
  length: number,
  rules: { readonly early: Stretch; readonly mid: Stretch; readonly late: Stretch },
): Stretch {
  const scale = length === 1000 ? 10 : 1;
  const stretches = shares.map((share): Stretch => {
    if (typeof share === 'string' || share.of === 3) {
      const name = typeof share === 'string' ? share : ((['early', 'mid', 'late'] as const)[share.index - 1] ?? 'late');
      const [from, to] = rules[name];
      return [from * scale, (to + 1) * scale - 1];
    }
    return [Math.floor((length * (share.index - 1)) / share.of), Math.floor((length * share.index) / share.of) - 1];
  });
  if (stretches.length === 0) return [0, length - 1];
  return [Math.min(...stretches.map(([from]) => from)), Math.max(...stretches.map(([, to]) => to))];
}
