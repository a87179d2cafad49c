import type { Act } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { frozenListOf, toFrozenText } from '@enfilade/shared/list-versions';
import { leaveMoves, movesOf, takeMoves } from '@enfilade/shared/proposal-moves';
import { endProposal, layerOfProposal, propose, wordOf } from '@enfilade/shared/proposals';
import type { Signature } from '@enfilade/shared/protocol';
import type { Place } from '@enfilade/shared/schema';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

const WORD = wordOf({ id: 'fennimarsh', name: 'Isolde Fennimarsh', role: 'guest artist' }, new Date('2026-05-12'));
const at = (x: number): Place => ['dye:head', x, 1500, 0, 0];

/** Two vignettes, each with two blocks; a proposal without a move. */
function twoVignettes() {
  const { documents, history } = sampleShow();
  const judgements = new Judgements(documents, { get: () => undefined });
  const members = { sixty: ['blocks#1', 'blocks#2'], high: ['blocks#3', 'blocks#4'] };
  for (const [id, pieces] of Object.entries(members)) {
    history.perform(commands.place(documents, new Map(pieces.map((piece, n) => [piece, at(1000 + 300 * n)]))));
    history.perform(commands.gather(documents, { name: id, intent: '', focal: null }, pieces, id));
  }
  history.perform(propose({ title: 'Broom in flower', reason: '' }, WORD, 'broom'));
  const layer = layerOfProposal(documents, 'broom');
  const within = ({ name, changes }: Act): void => history.perform({ name, changes: layer.changesFor(changes) });
  const states = () => ['sixty', 'high'].map((id) => judgements.standingOf(id)?.state);
  return { documents, history, judgements, layer, within, states };
}

describe('proposed: an open proposal has moves about a vignette that nobody has signed', () => {
  test.each<[string, (at: ReturnType<typeof twoVignettes>) => Act]>([
    ['moves a member', ({ documents }) => commands.place(documents, new Map([['blocks#1', at(4000)]]))],
    ['rewords it', () => commands.describe('sixty', { intent: 'Smaller.' })],
    ['takes a member in', () => commands.join('sixty', ['hanging#1'])],
    ['lets a member go', ({ documents }) => commands.leave(documents, ['blocks#2'])],
  ])('story: a proposal %s', (_what, act) => {
    const show = twoVignettes();
    expect(show.states()).toEqual(['drafted', 'drafted']);
    show.within(act(show));
    expect(show.states()).toEqual(['proposed', 'drafted']);
    show.history.perform(endProposal('broom', { ...WORD, outcome: 'declined', why: '' }));
    expect(show.states()).toEqual(['drafted', 'drafted']);
  });

  test('story: a piece that goes from one vignette to another is about both; a wall painted anew about none', () => {
    const { within, states } = twoVignettes();
    within(commands.repaint('dye:head', 'weld'));
    expect(states()).toEqual(['drafted', 'drafted']);
    within(commands.join('high', ['blocks#2']));
    expect(states()).toEqual(['proposed', 'proposed']);
  });

  test('story: what the proposal itself makes is proposed where it is seen, and no vignette of the hang', () => {
    const { documents, judgements, layer, within } = twoVignettes();
    within(commands.gather(documents, { name: 'New', intent: '', focal: null }, ['oil#1'], 'new'));
    const laid = documents.laidOver(layer);
    expect(new Judgements(laid, { get: () => undefined }).standingOf('new')?.state).toBe('proposed');
    expect(judgements.standingOf('new')).toBe(null);
    laid.close();
  });

  test('story: left out, taken, or signed, it is proposed no longer', () => {
    const { documents, history, within, states } = twoVignettes();
    within(commands.place(documents, new Map([['blocks#1', at(4000)]])));
    within(commands.place(documents, new Map([['blocks#3', at(5000)]])));
    expect(states()).toEqual(['proposed', 'proposed']);
    history.perform(takeMoves(documents, 'broom', new Set(['piece:blocks#1']), WORD));
    expect(states()).toEqual(['drafted', 'proposed']);
    const form = canonicalVignetteOf(documents, 'high') as object;
    const canonical = toCanonicalText(form);
    const signature: Signature = {
      ...{ vignetteId: 'high', personId: 'castellane', name: 'Dov Castellane', role: 'curator' },
      ...{ at: '2026-05-12T09:00:00.000Z', digest: digestOf(canonical), canonical },
    };
    documents.write([{ root: 'signatures', key: 'high/castellane', value: signature as never }], 'server');
    expect(states()[1]).toBe('signed off in part');
    documents.write([{ root: 'signatures', key: 'high/castellane', value: undefined }], 'server');
    expect(states()[1]).toBe('proposed');
    const left = movesOf(documents, 'broom').filter(({ standing }) => standing === 'open');
    history.perform(leaveMoves(documents, 'broom', new Set(left.map(({ id }) => id))));
    expect(states()).toEqual(['drafted', 'drafted']);
  });

  test('law: what is looked up among proposals is looked up anew only when proposals or memberships change', () => {
    const { documents, history, judgements, within } = twoVignettes();
    within(commands.place(documents, new Map([['blocks#1', at(4000)]])));
    const index = judgements.proposedVignettes();
    history.perform(commands.place(documents, new Map([['blocks#2', at(2000)]])));
    history.perform(commands.repaint('dye:head', 'weld'));
    history.perform(commands.describe('sixty', { intent: 'Smaller.' }));
    judgements.standingOf('sixty');
    expect(judgements.proposedVignettes()).toBe(index);
    history.perform(commands.join('sixty', ['hanging#1']));
    expect(judgements.proposedVignettes()).not.toBe(index);
    expect([...judgements.proposedVignettes().keys()]).toEqual(['sixty']);
  });

  test('law: a proposal leaves the hang as it is, and so the list of it that is frozen', () => {
    const { documents, judgements, within, states } = twoVignettes();
    const before = toFrozenText(frozenListOf(judgements));
    within(commands.place(documents, new Map([['blocks#1', at(4000)]])));
    expect(states()).toEqual(['proposed', 'drafted']);
    expect(toFrozenText(frozenListOf(judgements))).toBe(before);
  });
});
