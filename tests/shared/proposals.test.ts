import { ActHistory } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import type { ShowDocuments } from '@enfilade/shared/documents';
import { layerOfState } from '@enfilade/shared/hang-layer';
import { Judgements } from '@enfilade/shared/judgements';
import { hangStateFrom, hangStateOf, restoreState, restoreVignette } from '@enfilade/shared/kept-states';
import { effectsOf } from '@enfilade/shared/proposal-effects';
import { leaveMoves, movesOf, settleClash, takeMoves } from '@enfilade/shared/proposal-moves';
import { layerOfProposal, propose } from '@enfilade/shared/proposals';
import type { Place } from '@enfilade/shared/schema';
import type { Word } from '@enfilade/shared/talk';
import { describe, expect, test } from 'vitest';
import { everythingIn, FakeNetwork, seeded } from './replicas.ts';
import { sampleShow, work } from './sample-show.ts';

const ARTIST: Word = { by: 'if', name: 'Isolde Fennimarsh', role: 'guest artist', at: '2026-05-12T01:40:00.000Z' };
const CURATOR: Word = { by: 'dc', name: 'Dov Castellane', role: 'curator', at: '2026-05-12T08:51:00.000Z' };

/** The sample show with a hang of its own and a proposal begun. */
function night() {
  const { documents, history } = sampleShow();
  const places = new Map<string, Place>([
    ['hanging#1', ['dye:head', 3000, 1600, 0, 0]],
    ['oil#1', ['dye:head', 5200, 1500, 0, 0]],
    ['bench#1', ['dye:floor', 3000, 5700, 0, 0]],
  ]);
  history.perform(commands.place(documents, places));
  const made = commands.gather(documents, { name: 'Sixty impressions', intent: '', focal: 'hanging#1' }, ['hanging#1']);
  history.perform(made);
  history.perform(propose({ title: 'Broom in flower', reason: 'The green drinks the valley.' }, ARTIST, 'night'));
  const shown = documents.laidOver(layerOfProposal(documents, 'night'));
  const propound = (act: { name: string; changes: readonly never[] | readonly unknown[] }): void =>
    history.perform({ name: act.name, changes: layerOfProposal(documents, 'night').changesFor(act.changes as never) });
  return { documents, history, shown, propound, vignetteId: made.id };
}

describe('proposals', () => {
  test('story: everything can be done in a proposal while the hang stays as it is', () => {
    const { documents, shown, propound, vignetteId } = night();
    const before = hangStateOf(documents);
    propound(commands.repaint('dye:head', 'weld'));
    propound(commands.move(shown, ['oil#1'], { dxMm: 80, dyMm: 240 }));
    propound(commands.place(shown, new Map([['trap#1', ['carrier:bench#1/0', 300, 200, 0, 0] as Place]])));
    propound(commands.unplace(shown, ['hanging#1']));
    propound(commands.describe(vignetteId, { name: 'Forty impressions' }));
    propound(commands.join(vignetteId, ['blocks#3']));
    propound(commands.pin(['bench#1'], true));
    expect(hangStateOf(documents)).toEqual(before);
    expect(shown.get('places', 'oil#1')).toEqual(['dye:head', 5280, 1740, 0, 0]);
    expect(shown.get('places', 'hanging#1')).toBeUndefined();
    expect(shown.get('paints', 'dye:head')).toBe('weld');
    expect(shown.get('pinned', 'bench#1')).toBe(true);
    expect(shown.get('vignettes', vignetteId)?.name).toBe('Forty impressions');
    expect(commands.membersOf(shown, vignetteId)).toEqual(['blocks#3', 'hanging#1']);
    expect(movesOf(documents, 'night').map(({ id, standing }) => [id, standing])).toEqual([
      ['wall:dye:head', 'open'],
      [`vignette:${vignetteId}`, 'open'],
      ['piece:bench#1', 'open'],
      ['piece:blocks#3', 'open'],
      ['piece:hanging#1', 'open'],
      ['piece:oil#1', 'open'],
      ['piece:trap#1', 'open'],
    ]);
  });

  test('law: what is put back where it was is no move, and one undo takes back one act in the proposal', () => {
    const { documents, history, shown, propound } = night();
    propound(commands.move(shown, ['oil#1'], { dxMm: 80, dyMm: 0 }));
    propound(commands.move(shown, ['oil#1'], { dxMm: -80, dyMm: 0 }));
    expect(movesOf(documents, 'night')).toEqual([]);
    propound(commands.move(shown, ['oil#1'], { dxMm: 80, dyMm: 0 }));
    propound(commands.move(shown, ['oil#1'], { dxMm: 10, dyMm: 0 }));
    history.undo();
    expect(shown.get('places', 'oil#1')?.[1]).toBe(5280);
    history.undo();
    expect(movesOf(documents, 'night')).toEqual([]);
  });

  test('story: half is taken as one act, undone as one act, taken again, and the proposal ends when nothing is open', () => {
    const { documents, history, shown, propound } = night();
    propound(commands.repaint('dye:head', 'weld'));
    propound(commands.move(shown, ['oil#1'], { dxMm: 80, dyMm: 240 }));
    history.perform(takeMoves(documents, 'night', new Set(['piece:oil#1']), CURATOR));
    expect(documents.get('places', 'oil#1')).toEqual(['dye:head', 5280, 1740, 0, 0]);
    expect(documents.get('paints', 'dye:head')).toBe('verdigris');
    expect(documents.get('proposals', 'night')?.outcome).toBeUndefined();
    history.undo();
    expect(documents.get('places', 'oil#1')).toEqual(['dye:head', 5200, 1500, 0, 0]);
    history.redo();
    history.perform(leaveMoves(documents, 'night', new Set(['wall:dye:head'])));
    expect(shown.get('paints', 'dye:head')).toBe('verdigris');
    history.undo();
    history.perform(takeMoves(documents, 'night', new Set(['wall:dye:head']), CURATOR));
    expect(documents.get('paints', 'dye:head')).toBe('weld');
    expect(documents.get('proposals', 'night')?.outcome).toMatchObject({ outcome: 'taken', name: 'Dov Castellane' });
  });

  test('story: a piece that has moved since is a clash, not taken, and settled either way', () => {
    for (const keep of ['hang', 'proposal'] as const) {
      const { documents, history, shown, propound } = night();
      propound(commands.move(shown, ['oil#1'], { dxMm: 140, dyMm: 0 }));
      new ActHistory(documents, 'dov').perform(commands.move(documents, ['oil#1'], { dxMm: -50, dyMm: 0 }));
      expect(movesOf(documents, 'night')[0]?.standing).toBe('clash');
      history.perform(takeMoves(documents, 'night', new Set(['piece:oil#1']), CURATOR));
      expect(documents.get('places', 'oil#1')?.[1]).toBe(5150);
      history.perform(settleClash(documents, 'night', 'piece:oil#1', keep));
      expect(movesOf(documents, 'night')[0]?.standing).toBe(keep === 'hang' ? 'left' : 'open');
      history.perform(takeMoves(documents, 'night', new Set(['piece:oil#1']), CURATOR));
      expect(documents.get('places', 'oil#1')?.[1]).toBe(keep === 'hang' ? 5150 : 5340);
    }
  });

  test('law: a piece taken alone brings the vignette it joins and the carrier it stands on', () => {
    const { documents, history, shown, propound } = night();
    history.perform(commands.unplace(documents, ['bench#1']));
    propound(commands.place(shown, new Map([['bench#1', ['dye:floor', 1000, 5700, 0, 0] as Place]])));
    propound(commands.place(shown, new Map([['trap#1', ['carrier:bench#1/0', 300, 200, 0, 0] as Place]])));
    const made = commands.gather(shown, { name: 'Low water', intent: '', focal: null }, ['trap#1']);
    propound(made);
    history.perform(takeMoves(documents, 'night', new Set(['piece:trap#1']), CURATOR));
    expect(documents.get('places', 'bench#1')?.[0]).toBe('dye:floor');
    expect(documents.get('vignettes', made.id)?.name).toBe('Low water');
    expect(commands.membersOf(documents, made.id)).toEqual(['trap#1']);
  });

  test('law: two people at work in one proposal on a faulty network end alike, and the hang never changes', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const random = seeded(seed * 13);
      const network = new FakeNetwork(3, seed);
      const first = network.replicas[0] as ShowDocuments;
      const records = [1, 2, 3].map((n) => ({ id: `o${n}`, object: work(`${n}`) }));
      first.write(commands.addObjects(first, records).changes, 'seed');
      first.write(propose({ title: 't', reason: 'r' }, ARTIST, 'p').changes, 'seed');
      network.deliverAll();
      const layers = network.replicas.map((live) => layerOfProposal(live, 'p'));
      const shown = network.replicas.map((live, n) => live.laidOver(layers[n] as never));
      for (let step = 0; step < 80; step++) {
        const n = Math.floor(random() * 3);
        const piece = `o${1 + Math.floor(random() * 3)}#1`;
        const own = shown[n] as ShowDocuments;
        const act = [
          () => commands.place(own, new Map([[piece, ['dye:head', random() * 6000, 900, 0, 0] as Place]])),
          () => commands.unplace(own, [piece]),
          () => commands.repaint('dye:head', random() < 0.5 ? 'a' : null),
          () => commands.pin([piece], random() < 0.5),
          () => commands.gather(own, { name: `v${step}`, intent: '', focal: null }, [piece], `v${step % 4}`),
        ][Math.floor(random() * 5)];
        if (act !== undefined) own.write(act().changes, 'someone');
        if (random() < 0.5) network.deliverOne();
      }
      network.deliverAll();
      const states = network.replicas.map(everythingIn);
      expect(states[1]).toEqual(states[0]);
      expect(states[2]).toEqual(states[0]);
      expect([...first.all('places')]).toEqual([]);
      const laid = shown.map(hangStateOf);
      expect(laid[1]).toEqual(laid[0]);
      // The snapshot kept change by change is the one built anew.
      const anew = first.laidOver(layerOfProposal(first, 'p'));
      expect(new Map(anew.all('vignettes'))).toEqual(new Map((shown[0] as ShowDocuments).all('vignettes')));
      expect(new Map(anew.all('places'))).toEqual(new Map((shown[0] as ShowDocuments).all('places')));
    }
  });

  test('story: what it does to signatures, gaps and cautions is told before it is taken', () => {
    const { documents, history, shown, propound, vignetteId } = night();
    history.perform(commands.join(vignetteId, ['oil#1']));
    const pictures = { get: () => undefined };
    const live = new Judgements(documents, pictures);
    const after = new Judgements(shown, pictures);
    propound(commands.move(shown, ['oil#1'], { dxMm: -450, dyMm: 1200 }));
    const effects = effectsOf(live, after, movesOf(documents, 'night'));
    expect(effects.signOffs).toEqual([]);
    expect(effects.gaps).toEqual([expect.objectContaining({ pieceId: 'oil#1', fromMm: 170 })]);
    expect(effects.cautions[0]?.comes.length).toBeGreaterThan(0);
  });
});

describe('kept states', () => {
  test('law: a state laid over shows the hang as it was, and restoring it is one act that can be undone', () => {
    const { documents, history, vignetteId } = night();
    const kept = hangStateFrom(JSON.parse(JSON.stringify(hangStateOf(documents))));
    if (kept === null) throw new Error('a state survives JSON');
    history.perform(commands.move(documents, ['hanging#1'], { dxMm: 500, dyMm: 0 }));
    history.perform(commands.join(vignetteId, ['blocks#1']));
    history.perform(commands.repaint('dye:head', 'weld'));
    const later = hangStateOf(documents);
    const shown = documents.laidOver(layerOfState(kept));
    expect(shown.get('places', 'hanging#1')?.[1]).toBe(3000);
    expect(() => shown.write(commands.repaint('dye:head', null).changes, 'me')).toThrow(RangeError);
    history.perform(restoreState(documents, kept, 'Tuesday'));
    expect(hangStateOf(documents)).toEqual(kept);
    history.undo();
    expect(hangStateOf(documents)).toEqual(later);
  });

  test('law: a state says what was pinned; one of an earlier version says nothing of pins and changes none', () => {
    const { documents, history } = night();
    history.perform(commands.pin(['oil#1'], true));
    const kept = hangStateOf(documents);
    const { pinned: _, ...earlier } = kept;
    history.perform(commands.pin(['oil#1'], false));
    history.perform(commands.pin(['bench#1'], true));
    const before = hangStateFrom(JSON.parse(JSON.stringify(earlier)));
    if (before === null) throw new Error('a state of an earlier version is one');
    expect(documents.laidOver(layerOfState(before)).get('pinned', 'bench#1')).toBe(true);
    history.perform(restoreState(documents, before, 'earlier'));
    expect([...documents.all('pinned').keys()]).toEqual(['bench#1']);
    history.perform(restoreState(documents, kept, 'then'));
    expect([...documents.all('pinned').keys()]).toEqual(['oil#1']);
  });

  test('law: one vignette is restored alone', () => {
    const { documents, history, vignetteId } = night();
    const kept = hangStateOf(documents);
    history.perform(commands.move(documents, ['hanging#1', 'oil#1'], { dxMm: 100, dyMm: 0 }));
    history.perform(commands.join(vignetteId, ['blocks#1']));
    history.perform(commands.describe(vignetteId, { name: 'Other' }));
    history.perform(restoreVignette(documents, kept, vignetteId));
    expect(documents.get('places', 'hanging#1')?.[1]).toBe(3000);
    expect(documents.get('places', 'oil#1')?.[1]).toBe(5300);
    expect(documents.get('vignettes', vignetteId)?.name).toBe('Sixty impressions');
    expect(commands.membersOf(documents, vignetteId)).toEqual(['hanging#1']);
  });
});
