import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { foundThing, originsOf, unplacedObjects } from '@enfilade/shared/likeness-pools';
import { declinedSuggestions, declineSuggestion, offerSuggestions, suggestionKey } from '@enfilade/shared/suggestions';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

const word = { by: 'p', name: 'Dov Castellane', role: 'curator', at: '2026-05-12T09:00:00.000Z' } as const;

describe('suggestions that are declined', () => {
  test('story: a set declined stays away in whatever order it comes, until a record comes in; then it is offered again', () => {
    const { documents, history } = sampleShow();
    history.perform(declineSuggestion(documents, suggestionKey('set', ['oil', 'trap']), word));
    const key = suggestionKey('set', ['trap', 'oil']);
    expect(declinedSuggestions(documents).get(key)).toMatchObject({ name: 'Dov Castellane' });
    expect(declinedSuggestions(documents).has(suggestionKey('set', ['trap']))).toBe(false);
    // Correcting a record makes no other pool.
    history.perform(commands.correctObject('oil', { title: 'The mill' }));
    expect(declinedSuggestions(documents).size).toBe(1);
    history.perform(commands.addObjects(documents, [{ id: 'new', object: work('N.1') }]));
    expect(declinedSuggestions(documents).size).toBe(0);
  });

  test('law: what echoes one thing is not what it echoes; undo and offering again bring it back', () => {
    const { documents, history } = sampleShow();
    const key = suggestionKey('echo', ['oil', 'trap']);
    expect(key).not.toBe(suggestionKey('echo', ['trap', 'oil']));
    expect(key).not.toBe(suggestionKey('focal', ['oil', 'trap']));
    history.perform(declineSuggestion(documents, key, word));
    history.undo();
    expect(declinedSuggestions(documents).size).toBe(0);
    history.perform(declineSuggestion(documents, key, word));
    history.perform(offerSuggestions([key]));
    expect(declinedSuggestions(documents).size).toBe(0);
  });
});

describe('among which things likeness is sought', () => {
  test('story: what hangs is not among the unplaced; what is free of a record is told from what is not, with why', () => {
    const { documents, history } = sampleShow();
    const judgements = new Judgements(documents, { get: () => undefined });
    history.perform(
      commands.place(
        documents,
        new Map([
          ['oil#1', ['dye:head', 1000, 1500, 0, 0]],
          ['blocks#1', ['dye:head', 3000, 1500, 0, 0]],
          ['trap#1', ['layout', 0, 0, 0, 0]],
        ]),
      ),
    );
    history.perform(commands.gather(documents, { name: 'Sixty', intent: '', focal: null }, ['blocks#2']));
    expect(unplacedObjects(judgements).sort()).toEqual(['bench', 'blocks', 'hanging', 'trap']);
    const blocks = foundThing(judgements, 'blocks');
    expect([blocks.free.length, blocks.all.length, blocks.why]).toEqual([
      58,
      60,
      'placed: Dye House, east wall; in Sixty',
    ]);
    expect(foundThing(judgements, 'trap')).toMatchObject({ free: ['trap#1'], why: '' });
    history.perform(commands.correctObject('trap', { dimensionsText: '' }));
    expect(foundThing(judgements, 'trap')).toMatchObject({ free: [], why: 'size not known' });
    expect(originsOf(judgements)).toEqual([
      { from: 'the museum’s own', count: 4 },
      { from: 'what was bought', count: 1 },
    ]);
  });
});
