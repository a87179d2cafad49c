import { ActHistory } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { type Deed, type DeedChange, netOf } from '@enfilade/shared/deeds';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import type { Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { deedSentence } from '../../../client/src/talk/deed-sentences.ts';
import { stepsOf } from '../../../client/src/talk/since-steps.ts';
import { sampleShow } from '../../shared/sample-show.ts';

/** Performs an act and hands back the deed the server would have written of it. */
function deedsOf() {
  const { documents } = sampleShow();
  const history = new ActHistory(documents, 'dc');
  const judgements = new Judgements(documents, { get: () => undefined });
  let n = 0;
  const did = (make: (documents: ShowDocuments) => { name: string; changes: readonly unknown[] }, who = 'dc'): Deed => {
    const made = make(documents) as ReturnType<typeof commands.move>;
    const changes = made.changes.map(({ root, key, value }): DeedChange => {
      const from = documents.stored(root, key);
      return { root, key, ...(from === undefined ? {} : { from }), ...(value === undefined ? {} : { to: value }) };
    });
    history.perform(made);
    n += 1;
    const at = `2026-05-12T08:${String(n).padStart(2, '0')}:00.000Z`;
    return { n, at, personId: who, name: who, role: 'curator', changes, more: 0 };
  };
  const say = (deed: Deed): string => deedSentence(deed, { judgements, length: (mm) => `${(mm / 10).toFixed(1)} cm` });
  return { did, say, judgements, documents };
}

const at = (x: number, y = 1500): Place => ['dye:head', x, y, 0, 0];

describe('who did what', () => {
  test('story: placing, moving, painting, gathering and putting back are said as a person says them', () => {
    const { did, say } = deedsOf();
    expect(say(did((d) => commands.place(d, new Map([['oil#1', at(3000)]]))))).toBe(
      'placed Work 1931.14.3, Dye House, east wall',
    );
    expect(say(did((d) => commands.move(d, ['oil#1'], { dxMm: -120, dyMm: 20 })))).toBe(
      'moved Work 1931.14.3 12.0 cm left and 2.0 cm up, Dye House, east wall',
    );
    expect(say(did(() => commands.repaint('dye:head', 'weld')))).toBe('painted Dye House, east wall Weld');
    const blocks = new Map([1, 2, 3].map((n) => [`blocks#${n}`, at(n * 300)] as const));
    expect(say(did((d) => commands.place(d, blocks)))).toBe('set 3 of Work 1902.7 on Dye House, east wall');
    const words = { name: 'Sixty impressions', intent: '', focal: null };
    expect(say(did((d) => commands.gather(d, words, ['blocks#1', 'blocks#2'], 'v')))).toBe(
      'gathered Sixty impressions of 2 pieces',
    );
    expect(say(did((d) => commands.leave(d, ['blocks#1'])))).toBe('took Work 1902.7, piece 1 out of Sixty impressions');
    expect(say(did((d) => commands.ungroup(d, 'v')))).toBe('ungrouped Sixty impressions');
    expect(say(did((d) => commands.unplace(d, ['oil#1'])))).toBe('put Work 1931.14.3 back');
    expect(say(did(() => commands.correctObject('oil', { weightKg: 4 })))).toBe('corrected Work 1931.14.3: its weight');
  });

  test('law: every act there is has a sentence of its own, never the name of a root', () => {
    const { did, say } = deedsOf();
    const texts = [
      say(did((d) => commands.addPaint(d, { name: 'Madder', lab: { L: 40, a: 50, b: 20 } }))),
      say(did(() => commands.correctRoom('dye', { heightMm: 3500 }))),
      say(did(() => commands.setSetting('gapMm', 400))),
      say(did(() => commands.remove('objects', 'trap', 'it'))),
    ];
    expect(texts).toEqual([
      'added 1 paint',
      'corrected Dye House',
      'changed a setting of the show',
      'took Work T.1 off the checklist',
    ]);
  });
});

describe('since I was last here', () => {
  test('story: one step for each wall, person and kind; what was put back where it was is none; mine are none', () => {
    const { did, judgements } = deedsOf();
    const deeds = [
      did((d) => commands.place(d, new Map([['oil#1', at(3000)]]))),
      did((d) => commands.move(d, ['oil#1'], { dxMm: 100, dyMm: 0 })),
      did((d) =>
        commands.place(
          d,
          new Map([
            ['blocks#1', at(400)],
            ['blocks#2', at(800)],
          ]),
        ),
      ),
      did(() => commands.repaint('dye:head', 'weld'), 'if'),
      did(() => commands.repaint('dye:head', 'verdigris'), 'at'),
      did((d) => commands.place(d, new Map([['trap#1', ['dye:floor', 900, 900, 0, 0] as Place]])), 'if'),
    ].reverse();
    const steps = stepsOf(netOf(deeds, 'at'), judgements, ['dye:head', 'dye:floor']);
    expect(steps.map(({ name, surface, pieces }) => [name, surface, pieces])).toEqual([
      ['dc', 'dye:head', ['blocks#1', 'blocks#2', 'oil#1'].sort()],
      ['if', 'dye:floor', ['trap#1']],
    ]);
    expect(stepsOf(netOf(deeds, 'dc'), judgements, []).map(({ name }) => name)).toEqual(['if']);
  });
});
