import { csvFrom } from '@enfilade/records/checklist-csv';
import {
  CHECKLIST_FIELDS,
  type ChecklistField,
  isPrivate,
  mappingFrom,
  PRIVATE_FIELDS,
} from '@enfilade/records/checklist-headings';
import { type ChecklistRead, checklistRowsFrom } from '@enfilade/records/checklist-rows';
import { csvTextFrom, delimiterOf } from '@enfilade/records/csv-text';
import { CHECKLIST } from '@enfilade/server/demo/checklist';
import { toChecklistCsv } from '@enfilade/server/demo/files';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';

function tableOf(text: string): string[][] {
  return Papa.parse<string[]>(csvTextFrom(text), { delimiter: delimiterOf(text) }).data;
}

function readOf(text: string): ChecklistRead {
  const table = tableOf(text);
  return checklistRowsFrom(table, mappingFrom(table[0] ?? []));
}

/** Kinds of issue, by row. */
function told({ issues }: ChecklistRead): [number, string][] {
  return issues.map(({ line, kind }) => [line, kind]);
}

describe('headings', () => {
  // The list of headings met in museums' files, and what each means here; common practice, no source.
  const MET: readonly (readonly [heading: string, field: ChecklistField | null])[] = [
    ['Accession No', 'number'],
    ['Object Number', 'number'],
    ['inventory_number', 'number'],
    ['Object Name', 'type'],
    ['Classification', 'type'],
    ['Title', 'title'],
    ['Artist/Maker', 'maker'],
    ['Nationality', null],
    ['Life Dates', null],
    ['Date', 'date'],
    ['Begin Date', null],
    ['Medium', 'medium'],
    ['Materials', 'medium'],
    ['Dimensions', 'dimensions'],
    ['DIMENSIONS (H × W × D, cm)', 'dimensions'],
    ['Framed Dimensions', 'framedDimensions'],
    ['Weight (kg)', 'weight'],
    ['Qty.', 'count'],
    ['Credit Line', 'creditLine'],
    ['Lender', 'lender'],
    ['Department', null],
    ['Location', 'storage'],
    ['Image File', 'pictureFile'],
    ['Inscriptions', null],
    ['Condition', null],
    ['Notes', 'notes'],
    ['Insurance value', 'value'],
    ['Value (USD)', null],
    ['Lender contact', 'contact'],
    ['Purchase price', 'price'],
    ['Old shelf', null],
  ];

  test.each(MET)('reference: %s is %s', (heading, field) => {
    expect(mappingFrom([heading])).toEqual([field]);
  });

  test('story: two headings for one field, and the surer one is taken', () => {
    expect(mappingFrom(['No', 'Accession number', 'Category', 'Object name'])).toEqual([null, 'number', null, 'type']);
  });

  test('law: no field twice, and nothing that smells of value, place or person gets into a public field', () => {
    const word = fc.constantFrom(
      ...CHECKLIST_FIELDS.flatMap(({ headings }) => headings),
      ...[
        'value',
        'Insured',
        'price',
        'storage',
        'Location',
        'contact',
        'lender',
        'notes',
        '(USD)',
        '/',
        '_',
        'VALUATION',
      ],
    );
    const heading = fc.array(word, { minLength: 1, maxLength: 3 }).map((words) => words.join(' '));
    fc.assert(
      fc.property(fc.array(heading, { maxLength: 20 }), (headings) => {
        const mapping = mappingFrom(headings);
        expect(mapping.length).toBe(headings.length);
        const taken = mapping.filter((field) => field !== null);
        expect(new Set(taken).size).toBe(taken.length);
        for (const [i, field] of mapping.entries()) {
          if (/value|valuation|insur|price|storage|location|contact/i.test(headings[i] ?? '')) {
            expect(field === null || isPrivate(field)).toBe(true);
          }
        }
      }),
      { seed: 21, numRuns: 1000 },
    );
  });
});

describe('CSV text', () => {
  test.each([
    [',', 'Number,Title\r\n1,"a; b; c; d"\r\n'],
    [';', '\uFEFFNumber;"Title, or name, or, what"\n1;x\n'],
    ['\t', 'Number\tTitle\tDate, made\n'],
    [';', '\r\n"Number\nof it";Title\r\n1,2,3,4;5\r\n'],
    [',', 'Number'],
    [',', ''],
  ] as const)('story: %j parts the cells of %j', (delimiter, text) => {
    expect(delimiterOf(text)).toBe(delimiter);
  });

  test.each([',', ';', '\t'])('story: parted by %j, with a byte order mark and cells over several lines', (mark) => {
    const lines = [
      ['Accession No', 'Title', 'Dimensions'],
      ['1902.7', '"The weir,\r\nafter rain"', '"Unframed: 60 x 80 cm\nframed: 70 x 90 cm"'],
      ['', '', ''],
      ['1902.8', 'Quay', '30 x 40 cm'],
    ];
    const { rows, issues } = readOf(`\uFEFF${lines.map((line) => line.join(mark)).join('\r\n')}\r\n`);
    expect(issues).toEqual([]);
    expect(rows.map(({ line, fields, size }) => [line, fields.title, size?.heightMm, size?.basis])).toEqual([
      [2, 'The weir, after rain', 700, 'framed'],
      [4, 'Quay', 300, 'overall'],
    ]);
  });

  test('law: what csvFrom writes reads back the same, but for the guard before formulas', () => {
    const cell = fc.oneof(
      fc.string({ unit: fc.constantFrom('a', '1', '"', ',', ';', '\n', '\r', '=', '+', '-', '@', '\t', ' ', '＝') }),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 }), (rows) => {
        const back = Papa.parse<string[]>(csvFrom(rows), { delimiter: ',', newline: '\r\n' }).data.slice(0, -1);
        expect(back.map((row) => row.length)).toEqual(rows.map((row) => row.length));
        for (const [index, text] of back.flat().entries()) {
          const written = rows.flat()[index];
          expect(text === written || text === `'${written}`).toBe(true);
          expect(/^(\s*[=+\-@＝＋－＠]|[\t\r])/.test(text) && !/^[+-]\d+([.,]\d+)?$/.test(text)).toBe(false);
        }
      }),
      { seed: 3, numRuns: 500 },
    );
    expect(csvFrom([['=1+1', '-3', '@x', ' =1']])).toBe("'=1+1,-3,'@x,' =1\r\n");
  });
});

describe('rows', () => {
  const HEAD = 'Number,Title,Dimensions,Weight,Count,Lender,Source,Value\n';
  const CASES: readonly (readonly [what: string, row: string, kinds: readonly string[]])[] = [
    ['all understood', '1,A,30 x 40 cm,3 kg,1,,,', []],
    ['no title', '1,,30 x 40 cm,,,,,', []],
    ['no number', ',A,30 x 40 cm,,,,,', ['number missing']],
    ['a number the spreadsheet changed', '1.98E+12,A,30 x 40 cm,,,,,', ['number changed']],
    ['count in words', '1,A,30 x 40 cm,,dozen,,,', ['count not understood']],
    ['count of none', '1,A,30 x 40 cm,,0,,,', ['count not understood']],
    ['count beyond a show', '1,A,30 x 40 cm,,999999,,,', ['count not understood']],
    ['count against the number', '1.1–6,A,30 x 40 cm,,5,,,', ['counts disagree']],
    ['weight without unit', '1,A,30 x 40 cm,12,,,,', ['weight without unit']],
    ['weight in words', '1,A,30 x 40 cm,two men,,,,', ['weight not understood']],
    ['a thousand or one and a quarter', '1,A,30 x 40 cm,"1,250 kg",,,,', ['weight not understood']],
    ['no unit', '1,A,30 x 40,,,,,', ['unit unknown']],
    ['two systems at odds', '1,A,24 x 3 in. (61 × 81.4 cm),,,,,', ['systems disagree']],
    ['sight size', '1,A,Sight: 12 × 9 1/2 in.,,,,,', ['sight size']],
    ['half readable', '1,A,"H. 22,5 cm; Ø ???",,,,,', ['not understood']],
    ['no size', '1,A,,,,,,', ['size missing']],
    ['no size in words', '1,A,Dimensions variable,,,,,', ['size missing']],
    ['only a height', '1,A,H. 36 in.,,,,,', ['size missing']],
    ['source in other words', '1,A,30 x 40 cm,,,,from the attic,', ['source not understood']],
    ['too few cells', '1,A,30 x 40 cm', ['too few cells', 'size missing']],
    ['too many cells', '1,A,30 x 40 cm,,,,,,9', ['too many cells']],
  ];

  test.each(CASES)('story: %s', (_what, row, kinds) => {
    const read = readOf(HEAD + row);
    expect([...new Set(told(read).map(([, kind]) => kind))]).toEqual(kinds);
    for (const issue of read.issues) expect(issue).toMatchObject({ line: 2, what: expect.stringMatching(/\.$|\S/) });
    expect(read.rows.length).toBe(kinds.includes('number missing') ? 0 : 1);
  });

  test('story: two systems at odds are asked about with both sizes, and either answer reads without a question', () => {
    const row = (dimensions: string) => readOf(`Number,Dimensions\n1,"${dimensions}"`);
    const [issue] = row('24 x 3 in. (61 × 81.4 cm)').issues;
    expect(issue?.choices?.length).toBe(2);
    const sizes = issue?.choices?.map((choice) => row(choice).rows[0]?.size);
    // 24 in = 609.6 mm and 3 in = 76.2 mm, by the inch of 25.4 mm.
    expect(sizes).toMatchObject([
      { heightMm: 609.6, widthMm: 76.2 },
      { heightMm: 610, widthMm: 814 },
    ]);
  });

  test('story: a number twice is kept twice and asked about; another lender may use it too', () => {
    const read = readOf(
      'Number,Dimensions,Lender\n1931.14.3,3x4 cm,\n1931-14-3,3x4 cm,\n1931.14.3,3x4 cm,Parish of Saint Osk\n',
    );
    expect(read.rows.map(({ fields }) => fields.number)).toEqual(['1931.14.3', '1931-14-3', '1931.14.3']);
    expect(read.issues).toMatchObject([{ line: 3, kind: 'number twice', choices: ['one', 'two'], heading: 'Number' }]);
    expect(read.issues[0]?.what).toContain('row 2');
  });

  test('story: counts from the column, the range of numbers, a set among the dimensions', () => {
    const read = readOf(
      'Number,Dimensions,Count\nOM 1902.7.1–60,3x4 cm,\n5,"Set of 12, each 10 x 8 in.",\n6,3x4 cm,7 pieces\n1931-14,3x4 cm,\n7a-c,3x4 cm,\n',
    );
    expect(read.issues).toEqual([]);
    expect(read.rows.map(({ fields }) => fields.count)).toEqual([60, 12, 7, 1, 3]);
    expect(read.rows[0]?.fields.number).toBe('OM 1902.7.1–60');
  });

  test('story: where from', () => {
    const read = readOf(
      'Number,Dimensions,Lender,Source\n1,3x4 cm,,\n2,3x4 cm,A Trust,\n3,3x4 cm,,Made for the show by the artist\n4,3x4 cm,,Purchased\n',
    );
    expect(read.rows.map(({ fields }) => fields.source)).toEqual(['collection', 'loan', 'artist', 'bought']);
  });

  test('story: a unit or an order stated by the heading is not a guess', () => {
    const read = readOf(
      'Number,"Dimensions (W × H, cm)",Weight (kg)\n1,30 x 40,12\n2,12 in. x 10 in.,5 lb\n3,H 3 x W 4,\n',
    );
    expect(read.issues).toEqual([]);
    expect(read.rows.map(({ size }) => [size?.heightMm, size?.widthMm])).toEqual([
      [400, 300],
      [254, 304.8],
      [30, 40],
    ]);
    expect(read.rows[0]?.fields.weightKg).toBe(12);
    // 1 lb = 0.45359237 kg (international pound, 1959).
    expect(read.rows[1]?.fields.weightKg).toBeCloseTo(2.26796185, 3);
  });

  test('story: of 50,000 rows the first 5,000 are kept, and that is said once', () => {
    const table = [['Number', 'Dimensions'], ...Array.from({ length: 50_000 }, (_, i) => [String(i + 1), '3 x 4 cm'])];
    const read = checklistRowsFrom(table, ['number', 'dimensions']);
    expect(read.rows.length).toBe(5000);
    expect(read.issues).toMatchObject([{ kind: 'too many rows', line: 5002 }]);
    expect(read.issues[0]?.what).toContain('50000');
  });

  test('story: without a column of numbers nothing goes in, and that is said once', () => {
    const read = readOf('Titel,Datum\nA,1\nB,2\n');
    expect(read.rows).toEqual([]);
    expect(read.issues.length).toBe(1);
  });
});

describe('what only the museum may see', () => {
  const CANARY = 'CANARY-48,000';

  test('story: the value stands under private, and in no issue, whatever is wrong with the row', () => {
    const rows = ['1;A;;two men;CANARY-48,000;x', '1;A;30 x 40;;CANARY-48,000;x', ';A;;;CANARY-48,000;x'];
    const { rows: read, issues } = readOf(`Number;Title;Dimensions;Weight;Value;Insured since\n${rows.join('\n')}`);
    expect(read.map((row) => row.private.value)).toEqual([CANARY, CANARY]);
    expect(issues.length).toBeGreaterThan(3);
    expect(JSON.stringify([issues, read.map((row) => ({ ...row, private: null }))])).not.toContain('CANARY');
  });

  test('law: a lost or added delimiter pushes no private cell into a public field or an issue', () => {
    const headings = ['Number', 'Title', 'Medium', 'Location', 'Value', 'Notes', 'Insured by', 'Lender', 'Credit line'];
    const mapping = mappingFrom(headings);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 8 }), fc.integer({ min: -2, max: 2 }), (at, shift) => {
        const cells = headings.map((heading, i) =>
          /Location|Value|Insured/.test(heading) ? `CANARY ${i}` : `${heading.toLowerCase()} ${i}`,
        );
        if (shift < 0) cells.splice(Math.min(at, cells.length + shift), -shift);
        else cells.splice(at, 0, ...Array.from({ length: shift }, () => 'spill'));
        const { rows, issues } = checklistRowsFrom([headings, cells], mapping);
        expect(JSON.stringify([rows.map(({ fields }) => fields), issues])).not.toContain('CANARY');
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  test('story: mended by hand, a column of values still does not become notes; a column not taken goes nowhere', () => {
    const table = [
      ['Number', 'Insurance value', 'Old shelf', 'Whim'],
      ['1', CANARY, 'CANARY shelf', 'CANARY whim'],
    ];
    const { rows, issues } = checklistRowsFrom(table, ['number', 'notes', null, null]);
    expect(issues[0]).toMatchObject({ kind: 'private heading', line: 1, heading: 'Insurance value' });
    expect(JSON.stringify(rows)).not.toContain('CANARY');
  });

  test('reference: the private fields are those of issue and design', () => {
    expect(PRIVATE_FIELDS).toEqual(['value', 'storage', 'contact', 'price']);
  });
});

describe('any table', () => {
  const cell = fc.oneof(
    {
      weight: 3,
      arbitrary: fc.constantFrom('', ' ', '1', '1902.7', '30 x 40 cm', '24 × 36 in. (61 × 81.4 cm)', '12', 'kg'),
    },
    { weight: 1, arbitrary: fc.string({ unit: 'binary' }) },
  );
  const fields = [...CHECKLIST_FIELDS.map(({ field }) => field), null];

  test('law: nothing throws, and every row that is not empty is in the rows or named in an issue', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 12 }),
        fc.array(fc.constantFrom(...fields), { maxLength: 6 }),
        fc.integer({ min: 1, max: 12 }),
        (body, rest, maxRows) => {
          const table = [['Number', ...rest.map((field, i) => `${field} ${i}`)], ...body];
          const { rows, issues } = checklistRowsFrom(table, ['number', ...rest], { maxRows });
          const read = new Set(rows.map(({ line }) => line));
          const named = new Set(issues.map(({ line }) => line));
          const over = issues.find(({ kind }) => kind === 'too many rows')?.line ?? Number.POSITIVE_INFINITY;
          for (const [i, cells] of body.entries()) {
            const line = i + 2;
            if (cells.every((text) => text.trim() === '')) expect(read.has(line)).toBe(false);
            else expect(read.has(line) || named.has(line) || line > over).toBe(true);
          }
          expect(rows.length).toBeLessThanOrEqual(maxRows);
        },
      ),
      { seed: 13, numRuns: 1500 },
    );
  });
});

describe('the checklist of Slow Water as its museum would send it', () => {
  const read = readOf(toChecklistCsv());

  test('story: every record goes in, with its count, lender and what is private apart', () => {
    expect(read.rows.length).toBe(CHECKLIST.length);
    for (const [i, record] of CHECKLIST.entries()) {
      const row = read.rows[i];
      expect(row?.fields).toMatchObject({
        number: record.number,
        title: record.title,
        count: record.count,
        lender: record.lender,
      });
      if (record.weightKg === null) expect(row?.fields.weightKg).toBeNull();
      else expect(row?.fields.weightKg).toBeCloseTo(record.weightKg, 2);
      expect(row?.private).toMatchObject({ value: record.private.value, storage: record.private.storage });
    }
    // Scenario: one record of blocks counts 60.
    expect(read.rows.find(({ fields }) => fields.number === 'OM 1902.7.1–60')?.fields.count).toBe(60);
  });

  test('story: sizes agree with the things as they were made, and a row without a sure size says why', () => {
    let unsized = 0;
    for (const [i, record] of CHECKLIST.entries()) {
      const row = read.rows[i];
      if (!row?.size) {
        unsized += 1;
        expect(read.issues.some(({ line }) => line === row?.line)).toBe(true);
      } else if (row.size.certain && record.count === 1) {
        // Written to a millimetre or an eighth of an inch.
        expect(Math.abs(row.size.heightMm - record.heightMm), record.number).toBeLessThan(3.3);
        expect(Math.abs(row.size.widthMm - record.widthMm), record.number).toBeLessThan(3.3);
      }
    }
    // Scenario: several have a damaged dimension string; the others are understood.
    expect(unsized).toBeGreaterThan(2);
    expect(unsized).toBeLessThan(CHECKLIST.length / 10);
    expect(new Set(read.issues.map(({ line }) => line)).size).toBeLessThan(CHECKLIST.length / 10);
  });
});
