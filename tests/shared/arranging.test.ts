import { takeArrangement } from '@enfilade/shared/arrange-acts';
import { kindsFor } from '@enfilade/shared/arrange-kinds';
import type { Arrangement, ArrangeTask, ArrangeWish } from '@enfilade/shared/arrange-task';
import { arrangeTask } from '@enfilade/shared/arrange-tasks';
import { arrangementsOf } from '@enfilade/shared/arrange-ways';
import { termText, wayText } from '@enfilade/shared/arrangement-words';
import * as commands from '@enfilade/shared/commands';
import { declineArrangement, declinedOn, offerAgain } from '@enfilade/shared/declined-arrangements';
import { Judgements } from '@enfilade/shared/judgements';
import { layerOfProposal, propose } from '@enfilade/shared/proposals';
import type { PieceId, Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

const BLOCKS = Array.from({ length: 12 }, (_, n) => `blocks#${n + 1}`);
const WORD = { by: 'me', name: 'Dov Castellane', role: 'curator', at: '2026-05-12T09:00:00.000Z' } as const;

function show() {
  const { documents, history } = sampleShow();
  return { documents, history, judgements: new Judgements(documents, { get: () => undefined }) };
}

function taskFor(judgements: Judgements, wish: ArrangeWish): ArrangeTask {
  const task = arrangeTask(judgements, wish);
  if ('why' in task) throw new Error(task.why);
  return task;
}

function waysOf(task: ArrangeTask, away: readonly string[] = [], round = 1): readonly Arrangement[] {
  return arrangementsOf(task, { round, away: new Set(away), found: () => {}, progress: () => {} });
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

function boxAt(judgements: Judgements, pieceId: PieceId, [, x, y]: Place): Box {
  const { widthMm, heightMm } = judgements.sizeOf(pieceId)!;
  return { left: x - widthMm / 2, right: x + widthMm / 2, bottom: y - heightMm / 2, top: y + heightMm / 2 };
}

const apart = (a: Box, b: Box) => Math.max(a.left - b.right, b.left - a.right, a.bottom - b.top, b.bottom - a.top);

describe('what may be asked for', () => {
  test('story: without a wall nothing can be hung, and each kind says why', () => {
    const { judgements } = show();
    const { possible, not } = kindsFor(judgements, { pieceIds: BLOCKS, wall: null, roomId: null });
    expect(possible).toEqual([]);
    expect(not.find(({ kind }) => kind === 'salon')?.why).toBe('Face a wall to hang them on.');
    expect(not.find(({ kind }) => kind === 'plinths')?.why).toMatch(/room/);
    for (const { why } of not) expect(why).toMatch(/^[A-Z].*\.$/);
  });

  test('story: on a wall with a bench before it twelve blocks may hang, and be massed on the bench', () => {
    const { judgements, history, documents } = show();
    history.perform(commands.place(documents, new Map([['bench#1', ['dye:floor', 3000, 5780, 0, 0]]])));
    const asked = { pieceIds: BLOCKS, wall: 'dye:head', roomId: 'dye' };
    const { possible, not } = kindsFor(judgements, asked);
    expect(possible.map(({ kind }) => kind).sort()).toEqual(['carrier', 'double', 'halo', 'line', 'massed', 'salon']);
    expect(possible.find(({ kind }) => kind === 'massed')?.carriers).toEqual(['bench#1']);
    expect(not.map(({ kind }) => kind).sort()).toEqual(['pendants', 'plinths']);
    // A work and a block make no pair; a work between two blocks has one.
    const pendants = (pieceIds: string[]) =>
      kindsFor(judgements, { ...asked, pieceIds }).not.find(({ kind }) => kind === 'pendants')?.why;
    expect(pendants(['oil#1', 'blocks#1'])).toMatch(/like size/);
    expect(pendants(['oil#1', 'blocks#1', 'blocks#2'])).toBeUndefined();
  });
});

describe('from the documents to the engines and back', () => {
  const hung: readonly ArrangeWish[] = [
    { kind: 'halo', pieceIds: ['hanging#1', ...BLOCKS], focal: 'hanging#1', surface: 'dye:head', gapMm: 60 },
    { kind: 'salon', pieceIds: ['oil#1', ...BLOCKS], surface: 'dye:head', gapMm: 60 },
    { kind: 'line', pieceIds: BLOCKS.slice(0, 6), surface: 'dye:head', gapMm: 150 },
    { kind: 'double', pieceIds: BLOCKS, surface: 'dye:head', gapMm: 100 },
    { kind: 'pendants', pieceIds: ['oil#1', 'blocks#1', 'blocks#2'], focal: 'oil#1', surface: 'dye:head', gapMm: 180 },
  ];

  test.each(hung)(
    'law: $kind stays off openings, fixtures, what hangs there and what is pinned, the gap between all',
    (wish) => {
      const { judgements, history, documents } = show();
      // In the very middle, but for a pair that has to hang about it.
      const xMm = wish.kind === 'pendants' ? 4600 : 3100;
      const fixture = { kind: 'thermostat', surface: 'dye:head', xMm, yMm: 1500, widthMm: 90, heightMm: 90 };
      history.perform(commands.addFixture({ ...fixture, clearMm: 150 }));
      const door = { kind: 'doorway', name: 'door', widthMm: 1000, heightMm: 2200, sillMm: 0 } as const;
      history.perform(commands.addOpening({ ...door, sides: [{ surface: 'dye:head', xMm: 4900 }] }));
      const there: [PieceId, Place][] = [
        ['trap#1', ['dye:head', 500, 1500, 0, 0]],
        ['blocks#3', ['dye:head', 1200, 1700, 0, 0]],
      ];
      history.perform(commands.place(documents, new Map(there)));
      history.perform(commands.pin(['blocks#3'], true));
      const task = taskFor(judgements, wish);
      const ways = waysOf(task);
      expect(ways.length).toBeGreaterThan(0);
      for (const way of ways) {
        const places = new Map(way.places);
        if (wish.pieceIds.includes('blocks#3')) expect(places.get('blocks#3') ?? there[1]![1]).toEqual(there[1]![1]);
        const placed = [...new Map([...there, ...places])].map(([id, at]) => boxAt(judgements, id, at));
        const clear: Box[] = [
          { left: 4900, right: 5900, bottom: 0, top: 2200 },
          { left: xMm - 195, right: xMm + 195, bottom: 1500 - 195, top: 1500 + 195 },
        ];
        placed.forEach((box, i) => {
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.right).toBeLessThanOrEqual(6000);
          expect(box.top).toBeLessThanOrEqual(3600);
          // The trap was there before, nearer to nothing than it was put.
          for (const other of placed.slice(i + 1)) expect(apart(box, other)).toBeGreaterThanOrEqual(wish.gapMm - 1e-6);
          if (i > 1) for (const other of clear) expect(apart(box, other)).toBeGreaterThanOrEqual(0);
        });
        expect(way.places.length + way.unplaced.length).toBeGreaterThanOrEqual(wish.pieceIds.length - 1);
        expect(wayText(way.name)).not.toBe('');
      }
    },
  );

  test('law: a heavy work never hangs above reach', () => {
    const { judgements, history, documents } = show();
    history.perform(commands.correctObject('blocks', { weightKg: 60 * 20 }));
    const task = taskFor(judgements, { kind: 'salon', pieceIds: BLOCKS, surface: 'dye:head', gapMm: 60 });
    // 84 in: common practice, no source.
    for (const way of waysOf(task))
      for (const [pieceId, at] of way.places) expect(boxAt(judgements, pieceId, at).top).toBeLessThanOrEqual(2134);
    expect(documents.get('objects', 'blocks')?.weightKg).toBe(1200);
  });

  test('story: blocks massed on the bench stand on its top, no two in one spot, inside its edges', () => {
    const { judgements, history, documents } = show();
    history.perform(commands.place(documents, new Map([['bench#1', ['dye:floor', 3000, 5780, 0, 0]]])));
    const pieceIds = BLOCKS.slice(0, 6);
    const task = taskFor(judgements, { kind: 'massed', pieceIds, carrier: 'bench#1', surface: 'dye:head', gapMm: 20 });
    const ways = waysOf(task);
    expect(ways.length).toBeGreaterThanOrEqual(2);
    for (const way of ways) {
      expect(way.places.length).toBe(6);
      for (const [, [on, x, y]] of way.places) {
        expect(on).toBe('carrier:bench#1/0');
        expect(x).toBeGreaterThanOrEqual(100);
        expect(x).toBeLessThanOrEqual(1300);
        // Blocks are 50 mm deep on a bench of 400.
        expect(y).toBeGreaterThanOrEqual(25);
        expect(y).toBeLessThanOrEqual(375);
      }
      const spots = new Set(way.places.map(([, [, x, y]]) => `${x} ${y}`));
      expect(spots.size).toBe(6);
      history.perform(takeArrangement(judgements, task, way));
      expect(judgements.where.loadOf('bench#1').sort()).toEqual([...pieceIds].sort());
      history.undo();
      expect(judgements.where.loadOf('bench#1')).toEqual([]);
    }
  });

  test('story: round the bench, the trap beside it, the oil above, blocks hung or stood, and the bench back to the wall', () => {
    const { judgements } = show();
    const pieceIds = ['oil#1', 'trap#1', 'blocks#1', 'blocks#2'];
    const task = taskFor(judgements, { kind: 'carrier', pieceIds, carrier: 'bench#1', surface: 'dye:left', gapMm: 60 });
    for (const way of waysOf(task)) {
      const places = new Map(way.places);
      expect(places.get('bench#1')?.[0]).toBe('dye:floor');
      // Back to the left wall: 270 degrees, as far from it as half its depth.
      expect(places.get('bench#1')?.[4]).toBe(27000);
      expect(places.get('bench#1')?.[1]).toBe(200);
      expect(places.get('oil#1')?.[0]).toBe('dye:left');
      expect(places.get('oil#1')![2] - 380).toBeGreaterThanOrEqual(450 + 100);
      expect(places.get('trap#1')?.[0]).toBe('carrier:bench#1/0');
    }
  });
});

describe('on a floor', () => {
  test('law: plinths stand on the floor, apart, out of the way through the door, each with its own load', () => {
    const { judgements, history, documents } = show();
    const plinth = work('P.1', { count: 3, dimensionsText: 'H 105 x W 50 x D 50 cm', levelsMm: [1050] });
    history.perform(commands.addObjects(documents, [{ id: 'plinth', object: plinth }]));
    const door = { kind: 'doorway', name: 'door', widthMm: 1200, heightMm: 2200, sillMm: 0 } as const;
    history.perform(commands.addOpening({ ...door, sides: [{ surface: 'dye:foot', xMm: 2400 }] }));
    const pieceIds = ['plinth#1', 'plinth#2', 'plinth#3', 'trap#1'];
    const ways = waysOf(taskFor(judgements, { kind: 'plinths', pieceIds, surface: 'dye:floor', gapMm: 950 }));
    expect(ways.length).toBe(3);
    for (const way of ways) {
      const places = new Map(way.places);
      // The trap, 34 cm wide and deep, goes in the middle of a plinth of 50.
      expect(places.get('trap#1')?.slice(1, 3)).toEqual([250, 250]);
      const plinths = ['plinth#1', 'plinth#2', 'plinth#3'].map((id) => places.get(id)!);
      expect(plinths.map(([on]) => on)).toEqual(['dye:floor', 'dye:floor', 'dye:floor']);
      plinths.forEach(([, x, y], i) => {
        for (const [, ox, oy] of plinths.slice(i + 1))
          expect(Math.max(Math.abs(x - ox), Math.abs(y - oy)) - 500).toBeGreaterThanOrEqual(950);
        // The door is in the middle of the entrance wall; 48 in before it stay free.
        if (Math.abs(x - 3000) < 600 + 250) expect(y - 250).toBeGreaterThanOrEqual(1219);
      });
    }
  });
});

describe('taking and declining', () => {
  const wish: ArrangeWish = { kind: 'salon', pieceIds: BLOCKS, surface: 'dye:head', gapMm: 60 };

  test('story: taken as one act, taken back as one, on the hang and in a proposal', () => {
    const { judgements, history, documents } = show();
    const task = taskFor(judgements, wish);
    const [way] = waysOf(task);
    history.perform(takeArrangement(judgements, task, way!));
    expect(judgements.elevationOf('dye:head').length).toBe(12);
    history.undo();
    expect(judgements.elevationOf('dye:head').length).toBe(0);
    history.perform(propose({ title: 'A salon', reason: '' }, WORD, 'p1'));
    const layer = layerOfProposal(documents, 'p1');
    const laid = new Judgements(documents.laidOver(layer), { get: () => undefined });
    const act = takeArrangement(laid, taskFor(laid, wish), way!);
    history.perform({ name: act.name, changes: layer.changesFor(act.changes) });
    expect(laid.elevationOf('dye:head').length).toBe(12);
    expect(judgements.elevationOf('dye:head').length).toBe(0);
  });

  test('story: what finds no room and hangs there is taken down with it', () => {
    const { judgements, history, documents } = show();
    const pieceIds = Array.from({ length: 40 }, (_, n) => `blocks#${n + 1}`);
    const before = new Map(pieceIds.map((id, n): [PieceId, Place] => [id, ['dye:head', 300 + n, 1500, 0, 0]]));
    history.perform(commands.place(documents, before));
    const task = taskFor(judgements, { ...wish, kind: 'line', pieceIds, gapMm: 60 });
    const [way] = waysOf(task);
    expect(way!.unplaced.length).toBeGreaterThan(10);
    history.perform(takeArrangement(judgements, task, way!));
    expect(judgements.where.directlyOn('dye:head').size).toBe(way!.places.length);
  });

  test('law: a declined way stays away until the pool or the wall changes, whatever the order of the selection', () => {
    const { judgements, history, documents } = show();
    const task = taskFor(judgements, wish);
    const ways = waysOf(task);
    history.perform(declineArrangement(task.ground, ways[0]!, WORD));
    const again = taskFor(judgements, { ...wish, pieceIds: [...BLOCKS].reverse() });
    expect(again.ground).toBe(task.ground);
    const offered = waysOf(task, [...declinedOn(documents, task.ground)]);
    expect(offered.length).toBeGreaterThan(0);
    expect(offered.map(({ digest }) => digest)).not.toContain(ways[0]!.digest);
    const fewer = taskFor(judgements, { ...wish, pieceIds: BLOCKS.slice(1) });
    expect([...declinedOn(documents, fewer.ground)]).toEqual([]);
    history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 600, 1500, 0, 0]]])));
    const changed = taskFor(judgements, wish);
    expect([...declinedOn(documents, changed.ground)]).toEqual([]);
    history.undo();
    history.perform(offerAgain(documents, task.ground));
    expect([...declinedOn(documents, task.ground)]).toEqual([]);
  });

  test('law: asked again, none of the ways is one that was shown', () => {
    const { judgements } = show();
    const task = taskFor(judgements, wish);
    const first = waysOf(task).map(({ digest }) => digest);
    const second = waysOf(task, first, 2).map(({ digest }) => digest);
    expect(second.length).toBeGreaterThan(0);
    for (const digest of second) expect(first).not.toContain(digest);
  });

  test('story: terms are sentences in the reader’s unit', () => {
    const { judgements } = show();
    const [way] = waysOf(taskFor(judgements, wish));
    const text = way!.terms.map((term) => termText(term, (mm) => `${(mm / 10).toFixed(1)}`));
    for (const sentence of text) expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
    expect(text.join(' ')).toMatch(/Gaps|Every gap/);
    expect(text.join(' ')).toMatch(/centre line/);
  });
});
