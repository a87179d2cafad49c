import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import type { Json } from '@enfilade/shared/schema';
import { sourceTexts, toVignetteCsv, vignetteListOf, whereText } from '@enfilade/shared/vignette-list';
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
