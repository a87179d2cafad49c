import * as commands from '@enfilade/shared/commands';
import {
  askForSample,
  dropSample,
  samplesByPaint,
  samplesToPost,
  sayOfSample,
  sendSample,
  takeApprovalBack,
} from '@enfilade/shared/samples';
import type { Word } from '@enfilade/shared/talk';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const ARTIST: Word = { by: 'if', name: 'Isolde Fennimarsh', role: 'guest artist', at: '2026-05-12T01:40:00.000Z' };
const CURATOR: Word = { by: 'dc', name: 'Dov Castellane', role: 'curator', at: '2026-05-13T08:51:00.000Z' };
const TO_ARTIST = { personId: 'if', name: 'Isolde Fennimarsh' };

describe('samples', () => {
  test('story: a drawdown is asked for, sent, seen under two lights, approved; each is one step back', () => {
    const { documents, history } = sampleShow();
    const standing = () => samplesByPaint(documents).get('verdigris')?.[0];
    history.perform(askForSample('verdigris', { kind: 'drawdown', to: TO_ARTIST }, 's'));
    expect(standing()?.state).toBe('to post');
    history.perform(sendSample('s', '2026-05-10'));
    expect(standing()?.state).toBe('sent');
    history.perform(sayOfSample('s', { said: 'seen', under: 'daylight' }, ARTIST));
    history.perform(
      sayOfSample('s', { said: 'seen', under: 'gallery lamps' }, { ...ARTIST, at: '2026-05-12T20:00:00.000Z' }),
    );
    expect(standing()?.seen.map(({ under }) => under)).toEqual(['daylight', 'gallery lamps']);
    history.perform(sayOfSample('s', { said: 'approved' }, CURATOR));
    expect(standing()?.approved.map(({ name }) => name)).toEqual(['Dov Castellane']);
    history.perform(takeApprovalBack('s', 'dc'));
    expect(standing()?.state).toBe('seen');
    for (const state of ['approved', 'seen', 'seen', 'sent', 'to post']) {
      history.undo();
      expect(standing()?.state).toBe(state);
    }
    history.undo();
    expect(standing()).toBeUndefined();
  });

  test('story: two people see one sample at once and both words stay', () => {
    const { documents, history } = sampleShow();
    history.perform(askForSample('weld', { kind: 'sample board', to: TO_ARTIST, sentOn: '2026-05-10' }, 's'));
    for (const word of [ARTIST, CURATOR]) history.perform(sayOfSample('s', { said: 'seen', under: 'daylight' }, word));
    expect(
      samplesByPaint(documents)
        .get('weld')?.[0]
        ?.seen.map(({ by }) => by),
    ).toEqual(['if', 'dc']);
  });

  test('law: to be posted are the samples asked for and not sent, and one for each paint on a wall without any', () => {
    const { documents, history } = sampleShow();
    expect(samplesToPost(documents)).toEqual([
      { paintId: 'verdigris', sampleId: null, kind: 'drawdown', to: '', surfaces: ['dye:head'] },
    ]);
    history.perform(askForSample('weld', { kind: 'sample board', to: TO_ARTIST }, 's'));
    expect(samplesToPost(documents).map(({ paintId, to }) => [paintId, to])).toEqual([
      ['verdigris', ''],
      ['weld', 'Isolde Fennimarsh'],
    ]);
    history.perform(askForSample('verdigris', { kind: 'drawdown', to: TO_ARTIST, sentOn: '2026-05-10' }, 't'));
    expect(samplesToPost(documents).map(({ sampleId }) => sampleId)).toEqual(['s']);
    history.perform(dropSample('s'));
    expect(samplesToPost(documents)).toEqual([]);
    history.perform(commands.repaint('dye:foot', 'weld'));
    expect(samplesToPost(documents).map(({ surfaces }) => surfaces)).toEqual([['dye:foot']]);
  });
});
