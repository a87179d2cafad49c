import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import {
  differencesOf,
  type FrozenList,
  frozenDigestOf,
  frozenListFrom,
  frozenListOf,
  toFrozenText,
} from '@enfilade/shared/list-versions';
import type { Signature } from '@enfilade/shared/protocol';
import type { Json, Place } from '@enfilade/shared/schema';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

const cm = (mm: number) => `${mm / 10} cm`;
const told = (before: FrozenList, after: FrozenList) =>
  differencesOf(before, after, 25, cm).map(({ name, kind, sentences }) => [name, kind, ...sentences]);

function listed() {
  const { documents, history } = sampleShow();
  const judgements = new Judgements(documents, { get: () => undefined });
  history.perform(
    commands.place(
      documents,
      new Map<string, Place>([
        ['hanging#1', ['dye:head', 3000, 1500, 0, 0]],
        ['blocks#1', ['dye:head', 1000, 1500, 0, 0]],
        ['blocks#2', ['dye:head', 1300, 1500, 0, 0]],
        ['bench#1', ['dye:floor', 3000, 4000, 0, 0]],
        ['trap#1', ['carrier:bench#1/0', 200, 200, 0, 0]],
      ]),
    ),
  );
  const members = ['hanging#1', 'blocks#1', 'blocks#2', 'blocks#3', 'trap#1'];
  const facts = { name: 'Sixty impressions', intent: 'Small patterns.', focal: 'hanging#1' };
  history.perform(commands.gather(documents, facts, members, 'sixty'));
  return { documents, history, judgements };
}

describe('the vignette list as of a moment', () => {
  test('law: a frozen list is the same text whenever it is frozen of the same facts, and differs from itself in nothing', () => {
    const { judgements } = listed();
    const list = frozenListOf(judgements);
    expect(toFrozenText(frozenListOf(judgements))).toBe(toFrozenText(list));
    const read = frozenListFrom(toFrozenText(list));
    expect(read).toEqual(list);
    expect(frozenDigestOf(read as FrozenList)).toBe(frozenDigestOf(list));
    expect(told(list, list)).toEqual([['Sixty impressions', 'same']]);
    expect(['', '3', 'null', '{"rows":3}', '{"rows":[{}]}'].map(frozenListFrom)).toEqual([
      null,
      null,
      null,
      null,
      null,
    ]);
  });

  test('story: a move, a repainted wall and a block fewer are told; what is below the tolerance is not', () => {
    const { documents, history, judgements } = listed();
    const before = frozenListOf(judgements);
    history.perform(commands.move(documents, ['hanging#1'], { dxMm: -120, dyMm: 0 }));
    history.perform(commands.move(documents, ['blocks#1'], { dxMm: 20, dyMm: 0 }));
    history.perform(commands.repaint('dye:head', 'weld'));
    history.perform(commands.leave(documents, ['blocks#3']));
    const after = frozenListOf(judgements);
    expect(told(before, after)).toEqual([
      [
        'Sixty impressions',
        'changed',
        'Work 1902.7: one piece fewer',
        'Work F.1 moved 12 cm left',
        'Dye House, east wall repainted from Verdigris, deep to Weld',
      ],
    ]);
    expect(frozenDigestOf(after)).not.toBe(frozenDigestOf(before));
    expect(told(after, before)[0]).toContain('Work 1902.7: one piece more');
  });

  test('story: a vignette that came and one that went are told, by the name each had', () => {
    const { documents, history, judgements } = listed();
    const before = frozenListOf(judgements);
    history.perform(commands.gather(documents, { name: 'High water', intent: '', focal: null }, ['oil#1'], 'high'));
    history.perform(commands.ungroup(documents, 'sixty'));
    history.perform(commands.remove('objects', 'trap', 'the trap'));
    const after = frozenListOf(judgements);
    expect(told(before, after)).toEqual([
      ['High water', 'new', 'new'],
      ['Sixty impressions', 'gone', 'gone'],
    ]);
  });

  test('story: names of what is gone since are those of the list it was on', () => {
    const { documents, history, judgements } = listed();
    const before = frozenListOf(judgements);
    history.perform(commands.place(documents, new Map<string, Place>([['trap#1', ['dye:left', 900, 400, 0, 0]]])));
    history.perform(commands.addObjects(documents, [{ object: work('N.1'), id: 'new' }]));
    history.perform(commands.join('sixty', ['new#1']));
    const between = frozenListOf(judgements);
    history.perform(commands.remove('objects', 'new', 'a record'));
    expect(told(before, between)).toEqual([
      ['Sixty impressions', 'changed', 'Work T.1 moved from Work B.1, top to Dye House, north wall', 'Work N.1 in'],
    ]);
    expect(told(between, frozenListOf(judgements))).toEqual([['Sixty impressions', 'changed', 'Work N.1 out']]);
  });

  test('story: a record put right is told, and where a thing comes from by both words; signing is told by who signed', () => {
    const { documents, history, judgements } = listed();
    const before = frozenListOf(judgements);
    history.perform(commands.correctObject('trap', { title: 'Eel trap' }));
    const titled = frozenListOf(judgements);
    expect(told(before, titled)).toEqual([
      ['Sixty impressions', 'changed', 'its records or rooms are worded otherwise'],
    ]);
    history.perform(commands.correctObject('trap', { source: 'loan', lender: 'Parish of Saint Osk' }));
    const lent = frozenListOf(judgements);
    expect(told(titled, lent)).toEqual([
      ['Sixty impressions', 'changed', 'where from: collection, now collection; loan, Parish of Saint Osk'],
    ]);
    const canonical = toCanonicalText(canonicalVignetteOf(documents, 'sixty') as object);
    const signature: Signature = {
      ...{ vignetteId: 'sixty', personId: 'castellane', name: 'Dov Castellane', role: 'curator' },
      ...{ at: '2026-05-12T09:00:00.000Z', digest: digestOf(canonical), canonical },
    };
    documents.write([{ root: 'signatures', key: 'sixty/castellane', value: signature as never }], 'server');
    const signed = frozenListOf(judgements);
    expect(told(lent, signed)).toEqual([
      [...['Sixty impressions', 'changed', 'drafted, now signed off in part'], 'signed off by Dov Castellane, curator'],
    ]);
    // What has changed since is frozen with the row, so that the list reads as it was printed.
    history.perform(commands.move(documents, ['hanging#1'], { dxMm: -120, dyMm: 0 }));
    const [row] = frozenListOf(judgements).rows;
    expect(row).toMatchObject({
      state: 'changed since',
      signatures: [{ name: 'Dov Castellane', changed: true }],
      waitingFor: ['lead', 'curator', 'guest artist'],
      changes: [{ kind: 'moved', pieceId: 'hanging#1', dxMm: -120 }],
    });
  });

  test('law: nothing of the private document is in a frozen list', () => {
    const { documents, history, judgements } = listed();
    const facts = { value: 'CANARY-41000', storage: 'CANARY-41000', contact: 'CANARY-41000', price: 'CANARY-41000' };
    history.perform({ name: 'value', changes: [{ root: 'values', key: 'hanging', value: facts as Json }] });
    expect(documents.get('values', 'hanging')?.value).toBe('CANARY-41000');
    expect(toFrozenText(frozenListOf(judgements))).not.toContain('CANARY');
  });
});
