/** Object numbers that a spreadsheet has turned into dates or figures, and what they were, told from their neighbours. */
import type { GridValue } from './sheet-grid.ts';

export interface ChangedNumber {
  /** As it was, where its neighbours leave one reading; null where a person has to say. */
  readonly restored: string | null;
  readonly choices: readonly string[];
  /** A sentence for a person. */
  readonly what: string;
}

interface Shape {
  readonly groups: readonly string[];
  readonly separator: string;
}

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** How the numbers of a column are written that no spreadsheet has touched. */
export class NumberShapes {
  private readonly shapes: Shape[];

  constructor(untouched: readonly string[]) {
    this.shapes = untouched.flatMap((text) => {
      const found = /^(\d+)([.\-/ ])(\d+)(?:\2(\d+))?$/.exec(text.trim());
      if (found === null) return [];
      const groups = [found[1], found[3], found[4]].filter((group) => group !== undefined);
      return [{ groups, separator: found[2] as string }];
    });
  }

  /** Null where the cell seems to stand as it was typed. */
  changed(cell: GridValue): ChangedNumber | null {
    if (cell.date !== undefined) return this.fromDate(cell.shown ?? cell.text, cell.date);
    return cell.figure === undefined ? null : this.fromFigure(cell.text);
  }

  private fromDate(shown: string, date: NonNullable<GridValue['date']>): ChangedNumber {
    const words = `${date.day} ${MONTHS[date.month - 1]} ${date.year}`;
    const mine = this.commonest();
    const separator = mine?.separator ?? '.';
    const padded = (mine?.like ?? []).some(({ groups }) => groups.slice(1).some((group) => /^0\d/.test(group)));
    const figure = (n: number): string => (padded && n < 10 ? `0${n}` : String(n));
    const [d, m] = [figure(date.day), figure(date.month)];
    const join = (...groups: string[]): string => groups.join(separator);
    const year = String(date.year);
    const short = year.slice(2);
    const firsts = (mine?.like ?? []).map(({ groups }) => groups[0] as string);
    const yearFirst = firsts.length > 0 && firsts.every((group) => group.length === 4);
    const shortFirst = firsts.length > 1 && firsts.every((group) => group.length === 2 && Number(group) > 31);
    const choices =
      mine?.size === 2
        ? [join(m, d), join(d, m), join(m, short)]
        : shortFirst
          ? [join(short, m, d)]
          : yearFirst || mine === null
            ? [join(year, m, d)]
            : [join(d, m, year), join(m, d, year), join(d, m, short), join(m, d, short), join(year, m, d)];
    const sure = (yearFirst || shortFirst) && mine?.size === 3;
    return {
      restored: sure ? (choices[0] as string) : null,
      choices: [...new Set(choices)],
      what: sure
        ? `A spreadsheet has made the date ${words} of it. Put back as its neighbours are written: ${choices[0]}.`
        : `A spreadsheet has made the date ${words} of it, shown as “${shown}”. Say what the number was.`,
    };
  }

  /** `1950.01` among numbers that all have three figures behind the point was `1950.010`. */
  private fromFigure(shown: string): ChangedNumber | null {
    const found = /^(\d+)\.(\d+)$/.exec(shown);
    const pointed = this.shapes.filter(({ groups, separator }) => separator === '.' && groups.length === 2);
    const places = pointed[0]?.groups[1]?.length ?? 0;
    if (found === null || pointed.length < 2 || pointed.some(({ groups }) => groups[1]?.length !== places)) return null;
    const [, whole, part] = found as unknown as [string, string, string];
    if (part.length >= places) return null;
    const restored = `${whole}.${part.padEnd(places, '0')}`;
    const what = `A spreadsheet has made a figure of it, and its last noughts are gone. Put back as its neighbours are written: ${restored}.`;
    return { restored, choices: [shown], what };
  }

  private commonest(): { readonly size: number; readonly separator: string; readonly like: readonly Shape[] } | null {
    const kinds = new Map<string, Shape[]>();
    for (const shape of this.shapes) {
      const kind = `${shape.groups.length}${shape.separator}`;
      const alike = kinds.get(kind);
      if (alike === undefined) kinds.set(kind, [shape]);
      else alike.push(shape);
    }
    const [most] = [...kinds.values()].toSorted((a, b) => b.length - a.length);
    const [one] = most ?? [];
    return one === undefined ? null : { size: one.groups.length, separator: one.separator, like: most ?? [] };
  }
}
