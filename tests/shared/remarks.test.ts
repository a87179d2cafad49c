import {
  answer,
  ask,
  isUnread,
  markRead,
  remark,
  sameAbout,
  settleRemark,
  takeBack,
  threadsOf,
} from '@enfilade/shared/remarks';
import type { Word } from '@enfilade/shared/talk';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const at = (minute: number, by = 'if'): Word => ({
  by,
  name: by === 'if' ? 'Isolde Fennimarsh' : 'Dov Castellane',
  role: by === 'if' ? 'guest artist' : 'curator',
  at: `2026-05-12T08:${String(minute).padStart(2, '0')}:00.000Z`,
});

describe('remarks', () => {
  test('story: asked by name, unread until read, answered, settled, reopened', () => {
    const { documents, history } = sampleShow();
    const about = { kind: 'piece', pieceId: 'oil#1' } as const;
    const asked = { personId: 'dc', name: 'Dov Castellane', byDay: '2026-05-14' };
    history.perform(remark({ about, text: 'Does the red stay as loud?', asked }, at(1), 'r'));
    const thread = () => threadsOf(documents).find(({ id }) => id === 'r') as ReturnType<typeof threadsOf>[number];
    expect(thread().waitsForAnswer).toBe(true);
    expect(isUnread(documents, thread(), 'dc')).toBe(true);
    expect(isUnread(documents, thread(), 'if')).toBe(false);
    history.perform(markRead('dc', 'r', thread().lastAt));
    expect(isUnread(documents, thread(), 'dc')).toBe(false);
    history.perform(answer(documents, 'r', 'Louder.', at(3, 'dc'), 'a'));
    expect(thread()).toMatchObject({ waitsForAnswer: false, lastAt: at(3).at });
    expect(isUnread(documents, thread(), 'if')).toBe(true);
    expect(isUnread(documents, thread(), 'dc')).toBe(false);
    history.perform(settleRemark('r', at(4)));
    expect(thread().remark.settled).toMatchObject({ name: 'Isolde Fennimarsh' });
    history.perform(settleRemark('r', null));
    expect(thread().remark.settled).toBeNull();
    history.perform(ask('r', { personId: 'at', name: 'Ama Trevithian' }));
    expect(thread().waitsForAnswer).toBe(true);
  });

  test('law: threads stand by their newest word, answers by their time, and a remark taken back goes alone', () => {
    const { documents, history } = sampleShow();
    const about = { kind: 'spot', surface: 'dye:head', xMm: 900, yMm: 1500 } as const;
    history.perform(remark({ about, text: 'one' }, at(1), 'one'));
    history.perform(remark({ about, text: 'two' }, at(2), 'two'));
    history.perform(answer(documents, 'one', 'late', at(9, 'dc'), 'late'));
    history.perform(answer(documents, 'one', 'early', at(5, 'dc'), 'early'));
    expect(threadsOf(documents).map(({ id }) => id)).toEqual(['one', 'two']);
    expect(threadsOf(documents)[0]?.answers.map(({ id }) => id)).toEqual(['early', 'late']);
    history.perform(takeBack('early'));
    expect(threadsOf(documents)[0]?.answers.map(({ id }) => id)).toEqual(['late']);
    expect(() => answer(documents, 'gone', 'x', at(1))).toThrow(RangeError);
    expect(sameAbout(about, { ...about })).toBe(true);
    expect(sameAbout(about, { ...about, xMm: 901 })).toBe(false);
  });

  test('law: a remark of the wrong shape, from a hostile client, is as if it were not there', () => {
    const { documents } = sampleShow();
    documents.write(
      [
        { root: 'remarks', key: 'x', value: { text: 3 } },
        { root: 'remarks', key: 'y', value: 'a text' },
        { root: 'proposals', key: 'z', value: [1] },
      ],
      'hostile',
    );
    expect(threadsOf(documents)).toEqual([]);
    expect(documents.all('proposals').size).toBe(0);
  });
});
