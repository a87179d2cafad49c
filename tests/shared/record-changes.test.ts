import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { recordChangesOf } from '@enfilade/shared/record-changes';
import { DOCUMENT_NAMES } from '@enfilade/shared/seats';
import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { sampleShow, work } from './sample-show.ts';

test('story: a corrected title and a corrected price are told apart, what came in beside what it became', () => {
  const { documents, history } = sampleShow();
  history.perform(commands.correctPrivate('oil', { value: 'EUR 4,000' }));
  history.perform(commands.correctObject('oil', { title: 'The valley from Tallow Hill' }));
  expect(recordChangesOf(documents, 'oil')).toEqual({
    open: [{ field: 'title', imported: 'Work 1931.14.3', now: 'The valley from Tallow Hill' }],
    private: [{ field: 'value', now: 'EUR 4,000' }],
  });
  expect(recordChangesOf(documents, 'bench')).toEqual({ open: [], private: [] });
});

test('law: an import that says what a person said is no change any more; another import leaves their word', () => {
  const { documents, history } = sampleShow();
  history.perform(commands.correctObject('oil', { maker: 'Unknown', weightKg: null, notes: '' }));
  expect(recordChangesOf(documents, 'oil').open).toEqual([{ field: 'maker', now: 'Unknown' }]);
  const again = (maker: string) =>
    history.perform(commands.addObjects(documents, [{ id: 'oil', object: work('1931.14.3', { maker }) }]));
  again('A pupil');
  expect(recordChangesOf(documents, 'oil').open).toEqual([{ field: 'maker', imported: 'A pupil', now: 'Unknown' }]);
  again('Unknown');
  expect(recordChangesOf(documents, 'oil').open).toEqual([]);
});

test('law: a seat without the private document is told nothing of it', () => {
  const documents = new ShowDocuments(
    new Map(DOCUMENT_NAMES.filter((name) => name !== 'private').map((name) => [name, new Y.Doc()])),
  );
  documents.write(commands.addObjects(documents, [{ id: 'oil', object: work('1') }]).changes, 'test');
  documents.write(commands.correctObject('oil', { title: 'Else' }).changes, 'test');
  expect(recordChangesOf(documents, 'oil')).toMatchObject({ open: [{ field: 'title' }], private: [] });
});
