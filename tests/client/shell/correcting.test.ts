import { ActHistory } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import type { MuseumObject } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { numberTrouble } from '../../../client/src/cards/correcting.ts';

function record(number: string, title: string, lender = ''): MuseumObject {
  return { number, title, count: 1, lender, source: lender === '' ? 'collection' : 'loan' };
}

describe('a corrected number', () => {
  test('story: it is refused where it is empty or another record of the same lender has it, however it is written', () => {
    const documents = new ShowDocuments();
    new ActHistory(documents, 'me').perform(
      commands.addObjects(documents, [
        { id: 'valley', object: record('OM 1931.14.3', 'The valley') },
        { id: 'jug', object: record('OM 1902.7', 'A jug') },
        { id: 'bell', object: record('OM 1902.8', 'A bell', 'Parish of Saint Osk') },
      ]),
    );
    expect(numberTrouble(documents, 'valley', '')).toBe('a record has a number');
    expect(numberTrouble(documents, 'valley', 'om-1902/7')).toBe('A jug has this number');
    expect(numberTrouble(documents, 'valley', 'OM 1902.8')).toBeNull();
    expect(numberTrouble(documents, 'valley', 'OM 1931.14.3')).toBeNull();
  });
});
