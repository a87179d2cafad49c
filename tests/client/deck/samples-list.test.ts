import { samplesText } from '@enfilade/client/deck/deck-words';
import { sampleRows, toSamplesCsv } from '@enfilade/client/deck/samples-list';
import { deedSentence } from '@enfilade/client/talk/deed-sentences';
import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { askForSample, samplesByPaint, sayOfSample, sendSample } from '@enfilade/shared/samples';
import type { Word } from '@enfilade/shared/talk';
import { describe, expect, test } from 'vitest';
import { sampleShow } from '../../shared/sample-show.ts';

const ARTIST: Word = { by: 'if', name: 'Isolde Fennimarsh', role: 'guest artist', at: '2026-05-12T01:40:00.000Z' };

describe('samples on paper', () => {
  test('story: what is to be ordered and posted, with whom it is for and which walls, as CSV', () => {
    const { documents, history } = sampleShow();
    history.perform(commands.correctPaint('verdigris', { code: 'TP 4', sheen: 'flat matt', lrv: 8 }));
    history.perform(
      askForSample('weld', { kind: 'sample board', to: { personId: 'if', name: 'Fennimarsh, Isolde' } }, 's'),
    );
    expect(toSamplesCsv(sampleRows(documents)).split('\r\n')).toEqual([
      'paint,code,LRV,sheen,sample,to,for',
      '"Verdigris, deep",TP 4,8,flat matt,"drawdown, on card",,"Dye House, east wall"',
      'Weld,,57,,"sample board, 60 × 60 cm, two coats","Fennimarsh, Isolde",',
      '',
    ]);
    history.perform(sendSample('s', '2026-05-10'));
    expect(sampleRows(documents)).toHaveLength(1);
  });

  test('story: the state of a paint’s samples is said in a few words, and each deed in the history', () => {
    const { documents, history } = sampleShow();
    const judgements = new Judgements(documents, { get: () => undefined });
    const words = { judgements, length: String };
    const told = (act: { changes: readonly { root: never; key: string; value: never }[] }) =>
      deedSentence({ changes: act.changes.map(({ root, key, value }) => ({ root, key, to: value })), more: 0 }, words);
    const said = () => samplesText(samplesByPaint(documents).get('weld') ?? [], true);
    expect(said()).toBe('no sample yet');
    const acts = [
      askForSample('weld', { kind: 'drawdown', to: { personId: 'if', name: 'Isolde' } }, 's'),
      sendSample('s', '2026-05-10'),
      sayOfSample('s', { said: 'seen', under: 'daylight' }, ARTIST),
      sayOfSample('s', { said: 'approved' }, ARTIST),
    ];
    const lines = acts.map((act) => {
      history.perform(act);
      return [said(), told(act as never)];
    });
    expect(lines).toEqual([
      ['drawdown to post to Isolde', 'asked for a drawdown of Weld'],
      ['drawdown sent to Isolde', 'sent a drawdown of Weld'],
      ['drawdown seen by Isolde Fennimarsh, not approved', 'saw a drawdown of Weld under daylight'],
      ['drawdown approved by Isolde Fennimarsh', 'approved a drawdown of Weld'],
    ]);
  });
});
