import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { layerOfProposal, propose } from '@enfilade/shared/proposals';
import { answer, remark } from '@enfilade/shared/remarks';
import { askForSample, sayOfSample, sendSample } from '@enfilade/shared/samples';
import type { Place } from '@enfilade/shared/schema';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import type { Word } from '@enfilade/shared/talk';
import { waitingOf, waitsFor } from '@enfilade/shared/waiting';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

const ARTIST: Word = { by: 'if', name: 'Isolde Fennimarsh', role: 'guest artist', at: '2026-05-12T01:40:00.000Z' };
const CURATOR: Word = { by: 'dc', name: 'Dov Castellane', role: 'curator', at: '2026-05-12T08:51:00.000Z' };

function held() {
  const { documents, history } = sampleShow();
  history.perform(commands.addObjects(documents, [{ id: 'torn', object: work('9.9', { dimensionsText: 'torn' }) }]));
  history.perform(commands.setSetting('agreeBy', '2026-05-20'));
  history.perform(commands.setSetting('signers', ['curator', 'guest artist']));
  history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 3000, 1500, 0, 0] as Place]])));
  const vignette = commands.gather(documents, { name: 'High water', intent: '', focal: null }, ['oil#1']);
  history.perform(vignette);
  const judgements = new Judgements(documents, { get: () => undefined });
  const line = (id: string) => waitingOf(judgements).find((candidate) => candidate.id === id);
  return { documents, history, judgements, line, vignetteId: vignette.id };
}

function sign(documents: ReturnType<typeof held>['documents'], vignetteId: string, word: Word): void {
  const canonical = toCanonicalText(canonicalVignetteOf(documents, vignetteId) as never);
  const value = { vignetteId, personId: word.by, ...word, digest: digestOf(canonical), canonical };
  documents.write([{ root: 'signatures', key: `${vignetteId}/${word.by}`, value: value as never }], 'server');
}

describe('waiting', () => {
  test('story: a sign-off waits for the roles that have not spoken, and again for all once it has changed', () => {
    const { documents, history, line, vignetteId } = held();
    const id = `sign-off ${vignetteId}`;
    expect(line(id)).toMatchObject({
      roles: ['curator', 'guest artist'],
      byDay: '2026-05-20',
      detail: 'nobody has yet',
    });
    expect(line(id)?.goes).toMatchObject({ kind: 'vignette', surface: 'dye:head' });
    sign(documents, vignetteId, CURATOR);
    expect(line(id)).toMatchObject({ roles: ['guest artist'], detail: 'Dov Castellane has' });
    sign(documents, vignetteId, ARTIST);
    expect(line(id)).toBeUndefined();
    history.perform(commands.move(documents, ['oil#1'], { dxMm: 120, dyMm: 0 }));
    expect(line(id)).toMatchObject({ roles: ['curator', 'guest artist'], detail: 'changed since in 1 thing' });
  });

  test('story: a question waits for the one asked, by its own day, until that person answers', () => {
    const { documents, history, line } = held();
    const about = { kind: 'wall', surface: 'dye:head' } as const;
    const asked = { personId: 'if', name: 'Isolde Fennimarsh', byDay: '2026-05-14' };
    history.perform(remark({ about, text: 'Does the red stay as loud?', asked }, CURATOR, 'q'));
    const found = line('question q');
    expect(found).toMatchObject({ byDay: '2026-05-14', title: 'Answer Dov Castellane on Dye House, east wall' });
    expect(waitsFor(found as never, { id: 'if', role: 'guest artist' })).toBe(true);
    expect(waitsFor(found as never, { id: 'other', role: 'guest artist' })).toBe(false);
    history.perform(answer(documents, 'q', 'no', CURATOR));
    expect(line('question q')).toBeDefined();
    history.perform(answer(documents, 'q', 'louder', ARTIST));
    expect(line('question q')).toBeUndefined();
  });

  test('story: a proposal waits for those who hang, its clash before it', () => {
    const { documents, history, judgements, line } = held();
    history.perform(propose({ title: 'Broom in flower', reason: '' }, ARTIST, 'p'));
    expect(line('proposal p')).toBeUndefined();
    const shown = documents.laidOver(layerOfProposal(documents, 'p'));
    shown.write(commands.move(shown, ['oil#1'], { dxMm: 140, dyMm: 0 }).changes, 'if');
    expect(line('proposal p')).toMatchObject({ roles: ['lead', 'curator', 'preparator'] });
    history.perform(commands.move(documents, ['oil#1'], { dxMm: -50, dyMm: 0 }));
    const kinds = waitingOf(judgements).map(({ kind }) => kind);
    expect(kinds.indexOf('clash')).toBeLessThan(kinds.indexOf('proposal'));
    expect(line('clash p')?.title).toBe('Settle a clash in Broom in flower');
  });

  test('story: what fell out of a ring of carriers waits for a place', () => {
    const { documents, history, line } = held();
    const shelf = work('B.2', { dimensionsText: 'H 45 x W 140 x D 40 cm', levelsMm: [450] });
    history.perform(commands.addObjects(documents, [{ id: 'shelf', object: shelf }]));
    const ring = [
      { root: 'places', key: 'bench#1', value: ['carrier:shelf#1/0', 500, 200, 0, 0] },
      { root: 'places', key: 'shelf#1', value: ['carrier:bench#1/0', 500, 200, 0, 0] },
    ] as const;
    documents.write(ring, 'two people');
    expect(line('ring shelf#1')?.goes).toEqual({ kind: 'pieces', pieceIds: ['shelf#1'] });
    expect(line('ring bench#1')).toBeUndefined();
    history.perform(commands.place(documents, new Map([['shelf#1', ['dye:floor', 900, 900, 0, 0] as Place]])));
    expect(line('ring shelf#1')).toBeUndefined();
  });

  test('law: sizes and pictures that are missing are told in one line each, and go when they are there', () => {
    const { history, line } = held();
    expect(line('sizes')).toMatchObject({ title: 'Sizes of 1 record', detail: 'Work 9.9', roles: ['registrar'] });
    const measured = { heightMm: 300, widthMm: 200, depthMm: null, estimated: true };
    history.perform(commands.correctObject('torn', { measured }));
    expect(line('sizes')).toBeUndefined();
    expect(line('estimates')?.detail).toBe('Work 9.9');
    history.perform(commands.correctObject('torn', { measured: { ...measured, estimated: false } }));
    expect(line('estimates')).toBeUndefined();
    expect(line('pictures')?.title).toBe('Pictures of 6 records');
  });

  test('story: a wall’s paint waits for an approved sample: on those who choose, on whom it was sent to, on nobody', () => {
    const { history, line } = held();
    expect(line('sample verdigris')).toMatchObject({
      title: 'Approve a sample of Verdigris, deep',
      detail: 'Dye House, east wall; no drawdown or sample board has been asked for',
      roles: ['lead', 'curator'],
      persons: [],
      byDay: '2026-05-20',
      goes: { kind: 'paint', paintId: 'verdigris' },
    });
    expect(line('sample weld')).toBeUndefined();
    const to = { personId: 'if', name: 'Isolde Fennimarsh' };
    history.perform(askForSample('verdigris', { kind: 'drawdown', to }, 's'));
    expect(line('sample verdigris')).toMatchObject({ persons: [] });
    history.perform(sendSample('s', '2026-05-10'));
    expect(waitsFor(line('sample verdigris') as never, { id: 'if', role: 'guest artist' })).toBe(true);
    history.perform(sayOfSample('s', { said: 'seen', under: 'daylight' }, ARTIST));
    expect(line('sample verdigris')?.detail).toBe(
      'Dye House, east wall; a drawdown, seen by Isolde Fennimarsh under daylight; not approved yet',
    );
    history.perform(sayOfSample('s', { said: 'approved' }, ARTIST));
    expect(line('sample verdigris')).toBeUndefined();
    history.perform(commands.repaint('dye:head', null));
    history.undo();
    history.undo();
    expect(line('sample verdigris')).toBeDefined();
  });
});
