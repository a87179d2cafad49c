import { mappingFrom } from '@enfilade/records/checklist-headings';
import { checklistRowsFrom } from '@enfilade/records/checklist-rows';
import { frameFromCell } from '@enfilade/records/frame-words';
import fc from 'fast-check';
import { expect, test } from 'vitest';

// What registrars write of frames; common practice, no source.
const SAID: readonly (readonly [cell: string, heading: string, kind: string | null, widthMm: number])[] = [
  ['gilt, 6 cm', 'Frame', 'gilt', 60],
  ['Gilt composition frame, 2.5 in', 'Frame', 'gilt', 63.5],
  ['black 40', 'Frame (mm)', 'black', 40],
  ['Oak, 3,5 cm', 'Frame', 'wood', 35],
  ['dark stained oak', 'Frame', 'dark wood', 0],
  ['limed oak 20mm', 'Frame', 'pale wood', 20],
  ['unframed', 'Frame', 'none', 0],
  ['none', 'Frame', 'none', 0],
  ['silver leaf, 55 mm', 'Frame', 'silver', 55],
  ['black 40', 'Frame', 'black', 0],
  ['gilt 6 cm, slip 1 cm', 'Frame', 'gilt', 0],
  ['from the picture, 42 mm', 'Frame', 'from the picture', 42],
  ['see conservation file', 'Frame', null, 0],
];

test('reference: a frame’s kind and width are read as written; what is not said is not guessed', () => {
  for (const [cell, heading, kind, widthMm] of SAID) {
    const { frame, doubt } = frameFromCell(cell, heading);
    expect(frame, cell).toEqual(kind === null ? null : { kind, widthMm });
    expect(doubt === '', cell).toBe(
      !['black 40', 'gilt 6 cm, slip 1 cm', 'see conservation file'].includes(cell) || heading !== 'Frame',
    );
  }
});

test('story: frames and days last shown come out of a table; what is doubtful is told, and of a frame kept as a note', () => {
  const table = [
    ['Accession No', 'Title', 'Frame', 'Last Exhibited'],
    ['OM 1', 'Weir panel', 'gilt, 6 cm', '1987'],
    ['OM 2', 'Mill pond', 'see file', 'May 1990'],
    ['OM 3', 'Lock gate', '', 'some time ago'],
    ['OM 4', 'Sluice', 'black 40', 'never'],
    ['OM 5', 'Weir at night', '', '3 February 1996'],
  ];
  const { rows, issues } = checklistRowsFrom(table, mappingFrom(table[0] ?? []));
  expect(rows.map(({ fields, shown }) => [fields.frame?.kind, fields.frame?.widthMm, fields.notes, shown])).toEqual([
    ['gilt', 60, undefined, '1987-12-31'],
    [undefined, undefined, 'Frame: see file', '1990-05-31'],
    [undefined, undefined, undefined, ''],
    ['black', 0, 'Frame: black 40', null],
    [undefined, undefined, undefined, '1996-02-03'],
  ]);
  const told = issues.filter(({ kind }) => kind === 'frame not understood' || kind === 'day not understood');
  expect(told.map(({ line, kind, value }) => [line, kind, value])).toEqual([
    [3, 'frame not understood', 'see file'],
    [4, 'day not understood', 'some time ago'],
    [5, 'frame not understood', 'black 40'],
  ]);
});

test('law: whatever a cell holds, nothing throws, and a width is a number of millimetres or not known', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 60 }), fc.string({ maxLength: 20 }), (cell, heading) => {
      const { frame } = frameFromCell(`gilt ${cell}`, heading);
      expect(frame?.widthMm).toBeGreaterThanOrEqual(0);
      expect(frame?.widthMm).toBeLessThanOrEqual(600);
    }),
    { numRuns: 200 },
  );
});
