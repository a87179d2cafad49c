import type { CalendarDate, DateSpan } from '@enfilade/records/date-reading';
import { HOUSE_DATES } from '@enfilade/records/date-rules';
import { dateFrom } from '@enfilade/records/dates';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

/** '1894-03', '-12', or '' where open: years as CCO counts, 12 BCE is -12. */
function said(date: CalendarDate | null): string {
  if (date === null) return '';
  const parts = [date.month, date.day].filter((part) => part !== undefined);
  return [String(date.year), ...parts.map((part) => String(part).padStart(2, '0'))].join('-');
}

function spanOf({ earliest, latest }: DateSpan): string {
  return `${said(earliest)}/${said(latest)}`;
}

// Worked table of the ways registrars write dates; house rules as in date-rules.ts. Spans and flags are the table's, EDTF is
// by ISO 8601-2:2019 (`~` approximate, `?` uncertain, `188X`, `../1849`, `[1911,1912]`; astronomical years), from memory.
const TABLE: readonly (readonly [row: number, text: string, span: string, flags: string, edtf: string | null])[] = [
  [1, '1887', '1887/1887', '', '1887'],
  [2, 'c. 1880', '1875/1885', 'approximate', '1880~'],
  [3, 'ca. 1880–90', '1880/1890', 'approximate', '1880~/1890~'],
  [4, '1880–1890', '1880/1890', '', '1880/1890'],
  [5, '1887/88', '1887/1888', '', '1887/1888'],
  [6, '1880s', '1880/1889', '', '188X'],
  [7, 'late 1880s', '1887/1889', 'approximate', '1887~/1889~'],
  [8, '19th century', '1800/1899', '', '18XX'],
  [9, 'late 19th century', '1867/1899', 'approximate', '1867~/1899~'],
  [10, 'early 20th c.', '1900/1933', 'approximate', '1900~/1933~'],
  [11, 'mid-18th century', '1734/1766', 'approximate', '1734~/1766~'],
  [12, 'second half of the 18th century', '1750/1799', '', '1750/1799'],
  [13, 'first quarter 19th century', '1800/1824', '', '1800/1824'],
  [14, 'late 18th–early 19th century', '1767/1833', 'approximate', '1767~/1833~'],
  [15, 'before 1850', '/1849', 'open start', '../1849'],
  [16, 'by 1905', '/1905', 'open start', '../1905'],
  [17, 'after 1920', '1921/', 'open end', '1921/..'],
  [18, 'probably 1790s', '1790/1799', 'uncertain', '179X?'],
  [19, '1875?', '1875/1875', 'uncertain', '1875?'],
  [20, '1911 or 1912', '1911/1912', 'one of', '[1911,1912]'],
  [21, '1962, printed 1974', '1962/1962', '', '1962'],
  [22, 'designed 1902, made 1905–10', '1905/1910', '', '1905/1910'],
  [23, 'c. 1910 (frame c. 1840)', '1905/1915', 'approximate', '1910~'],
  [24, 'n.d.', '/', 'undated', null],
  [25, '12–9 BCE', '-12/-9', 'BCE', '-0011/-0008'],
  [26, 'March 1894', '1894-03/1894-03', '', '1894-03'],
  [27, '12 May 1876', '1876-05-12/1876-05-12', '', '1876-05-12'],
  [28, '2019–ongoing', '2019/', 'open end', '2019/..'],
  [29, 'Victorian (1837–1901)', '1837/1901', 'period', '1837/1901'],
  [30, 'c. 1750–c. 1780', '1750/1780', 'approximate', '1750~/1780~'],
];

describe('reference: date strings as registrars write them (worked table of trade conventions)', () => {
  const table = TABLE.map(([row, text, span, flags, edtf]) => ({ row, text, span, flags, edtf }));

  test.each(table)('reference: row $row: $text', ({ text, span, flags, edtf }) => {
    const reading = dateFrom(text);
    expect(spanOf(reading)).toBe(span);
    expect(reading.flags.join(', ')).toBe(flags);
    expect(reading.edtf).toBe(edtf);
    expect(reading.written).toBe(text);
    expect(reading.issues.map(({ kind }) => kind)).toEqual(flags === 'undated' ? ['undated'] : []);
  });

  test('reference: the events and parts of rows 21 to 23', () => {
    const events = (text: string) =>
      dateFrom(text).events.map((event) => [event.kind, event.part ?? 'whole', spanOf(event)]);
    expect(events('1962, printed 1974')).toEqual([
      ['made', 'whole', '1962/1962'],
      ['printed', 'whole', '1974/1974'],
    ]);
    expect(events('designed 1902, made 1905–10')).toEqual([
      ['designed', 'whole', '1902/1902'],
      ['made', 'whole', '1905/1910'],
    ]);
    expect(events('c. 1910 (frame c. 1840)')).toEqual([
      ['made', 'whole', '1905/1915'],
      ['made', 'frame', '1835/1845'],
    ]);
  });

  test('reference: CCO 2006, 4.2.3: ca. 1610 is 1605–1615, designed 1911 or 1912 is 1911–1912', () => {
    expect(spanOf(dateFrom('ca. 1610'))).toBe('1605/1615');
    expect(spanOf(dateFrom('designed 1911 or 1912'))).toBe('1911/1912');
  });
});

describe('words and figures museums really write', () => {
  const spans = (texts: Readonly<Record<string, string>>) => {
    for (const [text, span] of Object.entries(texts)) expect([text, spanOf(dateFrom(text))]).toEqual([text, span]);
  };

  test('story: German', () => {
    spans({
      'um 1900': '1895/1905',
      'vor 1850': '/1849',
      'nach 1945': '1946/',
      'zwischen 1880 und 1890': '1880/1890',
      'Anfang 20. Jh.': '1900/1933',
      '2. Hälfte 18. Jahrhundert': '1750/1799',
      '17./18. Jahrhundert': '1600/1799',
      'Ende 19. Jahrhundert/Anfang 20. Jahrhundert': '1867/1933',
      'Mitte der 1950er Jahre': '1954/1956',
      '5. Mai 1912': '1912-05-05/1912-05-05',
      '12.12.1996 - 30.1.1997': '1996-12-12/1997-01-30',
      '500 v. Chr.': '-500/-500',
      '1. Jh. n. Chr.': '1/99',
      '1971–1981 (wahrscheinlich)': '1971/1981',
    });
  });

  test('story: French', () => {
    spans({
      'vers 1880': '1875/1885',
      'XIXe siècle': '1800/1899',
      'fin XVIIIe – début XIXe siècle': '1767/1833',
      '1er quart du 19e siècle': '1800/1824',
      'entre 1880 et 1890': '1880/1890',
      'après 1920': '1921/',
      'années 1920': '1920/1929',
      'le 5 mai 1912': '1912-05-05/1912-05-05',
      'IIe siècle av. J.-C.': '-200/-101',
    });
  });

  test('story: before the common era years run backwards, and there is no year 0', () => {
    spans({
      '5th century BCE': '-500/-401',
      'early 5th century B.C.': '-500/-467',
      '202 BCE–8 CE': '-202/8',
      'ca. 1st century B.C.–1st century A.D.': '-100/99',
      'c. 3 BCE': '-8/3',
      'AD 100–300': '100/300',
    });
    expect(dateFrom('1 BCE').edtf).toBe('0000');
  });

  test('story: what the one side of a range leaves out is taken from the other', () => {
    spans({
      '1974–7': '1974/1977',
      '1901–12': '1901/1912',
      '1880s–90s': '1880/1899',
      '12–15 May 1876': '1876-05-12/1876-05-15',
      'May 27 – June 3, 1934': '1934-05-27/1934-06-03',
      '13th–14th century': '1200/1399',
      'late 18th or early 19th century': '1767/1833',
      'early to mid-19th century': '1800/1866',
      'after 1945, before 1957': '1946/1956',
    });
    expect(dateFrom('1898-02').edtf).toBe('1898-02');
  });

  test('story: what can be read two ways keeps both and is told', () => {
    const figures = dateFrom('1/10/1875');
    expect(spanOf(figures)).toBe('1875-01-10/1875-10-01');
    expect(figures.issues.map(({ kind }) => kind)).toEqual(['two readings']);
    expect(dateFrom('11/13/1918')).toMatchObject({ edtf: '1918-11-13', issues: [] });
    expect(spanOf(dateFrom('1900s'))).toBe('1900/1999');
    expect(dateFrom('1900s').issues.map(({ kind }) => kind)).toEqual(['two readings']);
    expect(spanOf(dateFrom('1990–1980'))).toBe('1980/1990');
    expect(dateFrom('1990–1980').issues.map(({ kind }) => kind)).toEqual(['two readings']);
  });

  test('story: names of events stand before their dates or after them', () => {
    const kinds = (text: string) => dateFrom(text).events.map((event) => `${event.kind} ${spanOf(event)}`);
    expect(kinds('1953 (designed) c. 1977 (manufactured)')).toEqual(['designed 1953/1953', 'made 1972/1982']);
    expect(kinds('negative 2000, printed 2006')).toEqual(['photographed 2000/2000', 'printed 2006/2006']);
    expect(kinds('?exhibited 1795')).toEqual(['exhibited 1795/1795']);
    expect(dateFrom('?exhibited 1795').flags).toEqual(['uncertain']);
  });

  test('story: the years of a period give way to a date within it', () => {
    const reading = dateFrom('Edo period (1603–1867), 19th century');
    expect(spanOf(reading)).toBe('1800/1899');
    expect(reading.events[0]?.period).toBe('edo period');
  });

  test('story: unknown figures as libraries and EDTF mark them', () => {
    spans({ '188-': '1880/1889', '188?': '1880/1889', '18--': '1800/1899', '188X': '1880/1889', '../1849': '/1849' });
  });

  test('story: what cannot be read is told, and no year is made of small figures', () => {
    for (const text of ['hello', '26', '31', 'Dynasties 26–30', 'Meiji period', '18799']) {
      expect([text, spanOf(dateFrom(text))]).toEqual([text, '/']);
      expect(dateFrom(text).issues.length).toBeGreaterThan(0);
    }
    expect(dateFrom('1905, in the attic').issues).toMatchObject([{ value: 'attic' }]);
  });

  test('story: circa, early, mid and late and the order of figures are settings', () => {
    expect(spanOf(dateFrom('c. 1880', { circaYears: 10 }))).toBe('1870/1890');
    const quarters = { early: [0, 24], mid: [25, 74], late: [75, 99] } as const;
    expect(spanOf(dateFrom('early 19th century', { century: quarters }))).toBe('1800/1824');
    const decade = { early: [0, 2], mid: [3, 6], late: [7, 9] } as const;
    expect(spanOf(dateFrom('early 1880s', { decade }))).toBe('1880/1882');
    expect(spanOf(dateFrom('1/10/1875', { figures: 'day first' }))).toBe('1875-10-01/1875-10-01');
    expect(spanOf(dateFrom('1/10/1875', { figures: 'month first' }))).toBe('1875-01-10/1875-01-10');
    expect(HOUSE_DATES.circaYears).toBe(5);
  });
});

// Level 2 as far as it is written here: years, months, days, seasons, X, qualifiers, open ends, sets.
const END = String.raw`-?\d{4}(?:-\d{2}){0,2}[~?%]?|\d{3}X[~?%]?|\d{2}XX[~?%]?`;
const RANGE = String.raw`(?:\.\.|${END})\/(?:\.\.|${END})`;
const SET = String.raw`[[{](?:\.{0,2}(?:${END})(?:\.\.(?:${END})?)?,?)+[\]}][~?%]?`;
const EDTF = new RegExp(`^(?:${END}|${RANGE}|${SET})$`);

describe('anything typed', () => {
  const piece = fc.constantFrom(
    ...'1880|c.|ca.|19th|century|early|late|mid|-|–|/|or|and|before|after|by|1880s|90s|BCE|AD|May|12|(|)|?|,|;|printed|made|frame|n.d.|Edo|period|1/10/1875|Jh.|siècle|XIXe|half|first|second|to|..|18--|9|0|x'.split(
      '|',
    ),
  );
  const texts = fc.oneof(
    fc.array(piece, { maxLength: 12 }).map((parts) => parts.join(' ')),
    fc.string(),
    fc
      .constantFrom(...TABLE.map(([, text]) => text))
      .chain((text) =>
        fc
          .tuple(fc.nat(text.length), fc.string({ maxLength: 3 }))
          .map(([at, put]) => text.slice(0, at) + put + text.slice(at + 1)),
      ),
  );

  test('law: no text throws, the earliest is not after the latest, and what is dated has a well-formed EDTF', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const reading = dateFrom(text);
        expect(reading.written).toBe(text);
        for (const { earliest, latest, edtf } of [reading, ...reading.events]) {
          for (const date of [earliest, latest]) if (date !== null) expect(date.year).not.toBe(0);
          if (earliest !== null && latest !== null) expect(earliest.year).toBeLessThanOrEqual(latest.year);
          if (edtf !== null) expect(edtf).toMatch(EDTF);
          if (earliest !== null || latest !== null) expect(edtf).not.toBeNull();
        }
      }),
      { seed: 7, numRuns: 4000 },
    );
  });

  test('law: a text of any length is read in its first thousand characters', () => {
    for (const part of ['c. ', '1880 or ', 'early ', '(', '19th-', 'the ', '1', 'printed ', '?']) {
      const long = part.repeat(5000);
      const reading = dateFrom(long);
      expect(reading.events).toEqual(dateFrom(long.slice(0, 1000)).events);
      expect(reading.issues.at(-1)?.what).toMatch(/Too long/);
    }
  });

  test('law: a year between qualifiers is never lost', () => {
    const before = fc.constantFrom('', 'c. ', 'ca. ', 'probably ', 'dated ', 'made ', '(');
    const after = fc.constantFrom('', '?', ' (?)', ', printed 1999', ')');
    fc.assert(
      fc.property(before, fc.integer({ min: 1000, max: 2100 }), after, (start, year, end) => {
        const { earliest, latest } = dateFrom(`${start}${year}${end}`);
        expect(earliest?.year).toBeLessThanOrEqual(year);
        expect(latest?.year).toBeGreaterThanOrEqual(year);
      }),
      { seed: 3 },
    );
  });
});
