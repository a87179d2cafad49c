import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { likeMembersOf, numbersText } from '@enfilade/shared/like-members';
import { runsText } from '@enfilade/shared/runs-text';
import type { Json } from '@enfilade/shared/schema';
import { toVignetteCsv } from '@enfilade/shared/vignette-csv';
import { sourceTexts, vignetteListOf, whereText } from '@enfilade/shared/vignette-list';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

function withVignette() {
  const { documents, history } = sampleShow();
  const places = new Map<string, readonly [string, number, number, number, number]>([
    ['hanging#1', ['dye:head', 3000, 1500, 0, 0]],
    ['blocks#1', ['dye:head', 1000, 1500, 0, 0]],
    ['blocks#2', ['dye:head', 1300, 1500, 0, 0]],
    ['bench#1', ['dye:floor', 3000, 4000, 0, 0]],
    ['trap#1', ['carrier:bench#1/0', 200, 200, 0, 0]],
  ]);
  history.perform(commands.place(documents, places));
  history.perform(
    commands.gather(
      documents,
      { name: 'Sixty impressions', intent: 'Small patterns answer one large one.', focal: 'hanging#1' },
      ['hanging#1', 'blocks#1', 'blocks#2', 'blocks#3', 'trap#1'],
      'sixty',
    ),
  );
  return { documents, history, judgements: new Judgements(documents, { get: () => undefined }) };
}

describe('the vignette list', () => {
  test('story: a vignette is listed with its wall, paint, focal work and members counted by record', () => {
    const { judgements } = withVignette();
    const [row] = vignetteListOf(judgements);
    expect(row?.number).toBe(1);
    expect(row?.focal?.name).toBe('Work F.1');
    expect(whereText(row?.where ?? [])).toBe('Dye House, east wall; Dye House, floor');
    expect(row?.where[0]?.paint?.name).toBe('Verdigris, deep');
    expect(row?.members.map(({ objectNumber, pieces, placed, of }) => [objectNumber, pieces, placed, of])).toEqual([
      ['1902.7', 3, 2, 60],
      ['F.1', 1, 1, 1],
      ['T.1', 1, 1, 1],
    ]);
    expect(row?.standing.state).toBe('drafted');
  });

  test('story: where things are from names each lender once, and what is unplaced says so', () => {
    const { documents, history, judgements } = withVignette();
    history.perform(
      commands.addObjects(documents, [
        { id: 'a', object: work('L.1', { source: 'loan', lender: 'Parish of Saint Osk' }) },
        { id: 'b', object: work('L.2', { source: 'loan', lender: 'Parish of Saint Osk' }) },
        { id: 'c', object: work('C.1') },
      ]),
    );
    history.perform(commands.gather(documents, { name: 'Osk', intent: '', focal: null }, ['a#1', 'b#1', 'c#1']));
    const row = vignetteListOf(judgements)[1];
    expect(sourceTexts(row?.members ?? [])).toEqual(['collection', 'loan, Parish of Saint Osk']);
    expect(whereText(row?.where ?? [])).toBe('not placed yet');
  });

  test('story: like things stand on one line with their count and numbers; the focal piece stands apart', () => {
    const { documents, history, judgements } = withVignette();
    const mould = (n: number, kind: string) => ({
      id: `mould${n}`,
      object: work(`OM 1919.22.${n}`, { title: `Copper mould, ${kind}` }),
    });
    const moulds = [1, 2, 3, 4, 9, 10].map((n) => mould(n, n % 2 ? 'fluted' : 'domed'));
    const lent = { id: 'lent', object: work('L.7', { title: 'Copper mould, lent', source: 'loan', lender: 'Osk' }) };
    history.perform(commands.addObjects(documents, [...moulds, lent]));
    history.perform(
      commands.gather(
        documents,
        { name: 'Copper noon', intent: '', focal: 'mould3#1' },
        [...moulds, lent].map(({ id }) => `${id}#1`),
        'noon',
      ),
    );
    history.perform(commands.leave(documents, ['blocks#2']));
    history.perform(commands.describe('sixty', { focal: 'blocks#3' }));
    const [sixty, noon] = vignetteListOf(judgements);
    const lines = (row: typeof sixty) =>
      likeMembersOf(row?.members ?? [], row?.focal?.pieceId ?? null).map(({ text, numbers, unplaced }) => [
        text,
        numbers,
        unplaced,
      ]);
    expect(lines(noon)).toEqual([
      ['Copper mould, 5 pieces', 'OM 1919.22.1, 2, 4, 9, 10', 5],
      ['Copper mould, lent', 'L.7', 1],
    ]);
    expect(lines(sixty)[0]).toEqual(['Work 1902.7, 1 of 60', '1902.7, piece 1', 0]);
    expect(toVignetteCsv([noon as NonNullable<typeof noon>])).toContain('OM 1919.22.1, 2, 4, 9, 10');
  });

  test('law: numbers drawn together name every number, and none twice', () => {
    expect(numbersText(['OM 1.3', 'OM 1.1', 'OM 1.2', 'OM 1.10', 'L.010', ''])).toBe('L.010; OM 1.1–3, 10');
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 60 })), (figures) => {
        const named = (runsText(figures) || '0').split(', ').flatMap((part) => {
          const [from = 0, to = from] = part.split('–').map(Number);
          return Array.from({ length: to - from + 1 }, (_, index) => from + index);
        });
        expect(named).toEqual(figures.length === 0 ? [0] : [...new Set(figures)].sort((a, b) => a - b));
      }),
      { seed: 11 },
    );
  });

  test('law: nothing of the private document is in the list or its CSV', () => {
    const { documents, history, judgements } = withVignette();
    const canary = 'CANARY-41000';
    const values = { value: canary, storage: canary, contact: canary, price: canary };
    history.perform({ name: 'value', changes: [{ root: 'values', key: 'hanging', value: values as Json }] });
    expect(documents.get('values', 'hanging')?.value).toBe(canary);
    const rows = vignetteListOf(judgements);
    expect(JSON.stringify(rows)).not.toContain(canary);
    expect(toVignetteCsv(rows)).not.toContain(canary);
  });

  test('story: the CSV has one line a vignette, a heading a column, and opens with accents', () => {
    const { documents, history, judgements } = withVignette();
    history.perform(commands.describe('sixty', { name: '=Élan, "one"\nline' }));
    const csv = toVignetteCsv(vignetteListOf(judgements));
    expect(csv.startsWith('\uFEFF')).toBe(true);
    const { data } = Papa.parse<string[]>(csv.slice(1).trimEnd());
    expect(data).toHaveLength(2);
    expect(data[0]?.length).toBe(data[1]?.length);
    expect(data[1]?.[1]).toBe('\'=Élan, "one"\nline');
    expect(documents.get('vignettes', 'sixty')?.name).toBe('=Élan, "one"\nline');
  });
});
