import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { leaveMoves, movesOf, takeMoves } from '@enfilade/shared/proposal-moves';
import { layerOfProposal, propose } from '@enfilade/shared/proposals';
import type { Place } from '@enfilade/shared/schema';
import type { Word } from '@enfilade/shared/talk';
import { describe, expect, test } from 'vitest';
import type { SceneLookup } from '../../../client/src/stage/scene-items.ts';
import { wallFrameOf } from '../../../client/src/stage/scene-wall.ts';
import { entriesOf } from '../../../client/src/talk/move-entries.ts';
import { surfacesTouched } from '../../../client/src/talk/open-proposals.ts';
import { endRest } from '../../../client/src/talk/proposal-acts.ts';
import { tracingOf } from '../../../client/src/talk/tracing-marks.ts';
import { sampleShow } from '../../shared/sample-show.ts';

const ARTIST: Word = { by: 'if', name: 'Isolde Fennimarsh', role: 'guest artist', at: '2026-05-12T01:40:00.000Z' };
const CURATOR: Word = { by: 'dc', name: 'Dov Castellane', role: 'curator', at: '2026-05-12T08:51:00.000Z' };

function lookupOf(judgements: Judgements): SceneLookup {
  const { where } = judgements;
  return {
    placeOf: (id) => where.placeOf(id),
    sizeOf: (id) => where.sizeOf(id),
    levelsOf: (id) => where.levelsOf(id),
    roomOf: (surface) => where.roomOf(surface),
    openingOf: (id) => judgements.documents.get('openings', id) ?? null,
    pictureOf: () => null,
    nameOf: (id) => id,
    frameOf: () => null,
  };
}

/** The sample show hung, and a proposal that paints the east wall, moves the view 240 up and takes the hanging down. */
function night() {
  const { documents, history } = sampleShow();
  const places = new Map<string, Place>([
    ['hanging#1', ['dye:head', 3000, 1600, 0, 0]],
    ['oil#1', ['dye:head', 5200, 1500, 0, 0]],
  ]);
  history.perform(commands.place(documents, places));
  history.perform(propose({ title: 'Broom in flower', reason: '' }, ARTIST, 'night'));
  const layer = layerOfProposal(documents, 'night');
  const laid = documents.laidOver(layer);
  for (const act of [
    commands.repaint('dye:head', 'weld'),
    commands.move(laid, ['oil#1'], { dxMm: 0, dyMm: 240 }),
    commands.unplace(laid, ['hanging#1']),
  ]) {
    history.perform({ name: act.name, changes: layer.changesFor(act.changes) });
  }
  const [hang, shown] = [new Judgements(documents, new Map()), new Judgements(laid, new Map())];
  const marks = (ended = false) => {
    const frame = wallFrameOf(shown, 'dye:head', null);
    if (frame === null) throw new Error('the sample show has an east wall');
    const lookups = { hang: lookupOf(hang), laid: lookupOf(shown), ended };
    return tracingOf(frame, entriesOf(movesOf(documents, 'night')), lookups);
  };
  return { documents, history, hang, marks };
}

describe('the tracing over the wall', () => {
  test('story: what goes is outlined where the hang has it, what comes bears the number of the foot', () => {
    const { documents, marks } = night();
    expect(movesOf(documents, 'night').map(({ id }) => id)).toEqual([
      'wall:dye:head',
      'piece:hanging#1',
      'piece:oil#1',
    ]);
    const { ghosts, tags, comes } = marks();
    expect(ghosts.map(({ item }) => [item.pieceId, item.yMm])).toEqual([
      ['hanging#1', 1600],
      ['oil#1', 1500],
    ]);
    expect(comes.map(({ pieceId, yMm }) => [pieceId, yMm])).toEqual([['oil#1', 1740]]);
    expect(tags.map(({ number, onWall }) => [number, onWall])).toEqual([
      [1, true],
      [2, false],
      [3, false],
    ]);
    // A short move is not crossed out: the cross would lie on the work that comes.
    expect(ghosts.map(({ crossed }) => crossed)).toEqual([true, false]);
  });

  test('story: what is left, and what the hang has taken, is drawn no more', () => {
    const { documents, history, marks } = night();
    history.perform(leaveMoves(documents, 'night', new Set(['piece:oil#1'])));
    expect(marks().tags.map(({ number }) => number)).toEqual([1, 2]);
    history.perform(takeMoves(documents, 'night', new Set(['piece:hanging#1']), CURATOR));
    expect(marks().ghosts).toEqual([]);
    expect(marks().tags.map(({ number }) => number)).toEqual([1]);
  });

  test('story: declined and the hang gone on since, it reads as it was made', () => {
    const { documents, history, marks } = night();
    history.perform(endRest(documents, 'night', 'declined', 'The green stays.', CURATOR));
    history.perform(commands.move(documents, ['oil#1'], { dxMm: -900, dyMm: 0 }));
    expect(marks(true).ghosts.map(({ item }) => [item.pieceId, item.xMm])).toEqual([
      ['hanging#1', 3000],
      ['oil#1', 5200],
    ]);
  });
});

describe('the end of a proposal', () => {
  test('story: declined when nothing was taken, with its reason', () => {
    const { documents, history } = night();
    history.perform(endRest(documents, 'night', 'declined', 'The green stays.', CURATOR));
    expect(documents.get('proposals', 'night')?.outcome).toMatchObject({
      outcome: 'declined',
      why: 'The green stays.',
    });
    history.undo();
    expect(documents.get('proposals', 'night')?.outcome ?? null).toBeNull();
  });

  test('story: the rest declined after part was taken: taken in part, and the record tells which', () => {
    const { documents, history } = night();
    history.perform(takeMoves(documents, 'night', new Set(['wall:dye:head']), CURATOR));
    history.perform(endRest(documents, 'night', 'declined', 'Only the wall.', CURATOR));
    expect(documents.get('proposals', 'night')?.outcome?.outcome).toBe('taken in part');
    expect(movesOf(documents, 'night').map(({ standing }) => standing)).toEqual(['stands', 'left', 'left']);
  });
});

test('law: a proposal touches every surface it paints, leaves or comes to', () => {
  const { documents, hang } = night();
  expect(surfacesTouched(hang, movesOf(documents, 'night'))).toEqual(['dye:head']);
});
