import { ActHistory, outcomeText } from '@enfilade/shared/acts';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import type { Place } from '@enfilade/shared/schema';
import { DOCUMENT_NAMES } from '@enfilade/shared/seats';
import { canonicalVignetteOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { inWholeLetters } from '@enfilade/shared/whole-letters';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type * as Y from 'yjs';
import { everythingIn, FakeNetwork, seeded } from './replicas.ts';
import { sampleShow, work } from './sample-show.ts';

describe('documents', () => {
  test('law: three replicas that write at random, over a network that delays, reorders and repeats, end alike', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const random = seeded(seed);
      const network = new FakeNetwork(3, seed * 77);
      const first = network.replicas[0] as ShowDocuments;
      first.write(
        commands.addObjects(
          first,
          [1, 2, 3, 4, 5].map((n) => ({ id: `o${n}`, object: work(`${n}`) })),
        ).changes,
        'seed',
      );
      network.deliverAll();
      for (let step = 0; step < 120; step++) {
        const documents = network.replicas[Math.floor(random() * 3)] as ShowDocuments;
        const piece = `o${1 + Math.floor(random() * 5)}#1`;
        const act = [
          () =>
            commands.place(
              documents,
              new Map([[piece, ['dye:head', random() * 6000, random() * 3000, 0, 0] as Place]]),
            ),
          () => commands.unplace(documents, [piece]),
          () => commands.repaint('dye:head', random() < 0.5 ? 'a' : 'b'),
          () =>
            commands.correctObject(piece.slice(0, 2), random() < 0.5 ? { title: `t${step}` } : { notes: `n${step}` }),
          () => commands.join(`v${Math.floor(random() * 2)}`, [piece]),
          () => commands.leave(documents, [piece]),
          () => commands.remove('objects', `o${1 + Math.floor(random() * 5)}`, 'it'),
        ][Math.floor(random() * 7)];
        if (act !== undefined) documents.write(act().changes, 'someone');
        if (random() < 0.6) network.deliverOne();
      }
      network.deliverAll();
      const [a, b, c] = network.replicas.map(everythingIn);
      expect(b).toEqual(a);
      expect(c).toEqual(a);
    }
  });

  test('law: a field set to null is null, whatever the base says, at once and read anew', () => {
    const { documents, history } = sampleShow();
    const made = commands.gather(documents, { name: 'Two', intent: '', focal: 'oil#1' }, ['oil#1', 'trap#1']);
    history.perform(made);
    history.perform(commands.leave(documents, ['oil#1']));
    expect(documents.get('vignettes', made.id)?.focal).toBeNull();
  });

  test('story: what was made, corrected by another and taken back is gone, and comes back with their word', () => {
    const network = new FakeNetwork(2, 11);
    const [ama, dov] = network.replicas as [ShowDocuments, ShowDocuments];
    const history = new ActHistory(ama, 'ama');
    history.perform(commands.addObjects(ama, [{ id: 'jug', object: work('1') }]));
    history.perform(commands.gather(ama, { name: 'Two', intent: '', focal: null }, [], 'v'));
    network.deliverAll();
    dov.write(commands.describe('v', { name: 'Three' }).changes, 'dov');
    dov.write(commands.correctObject('jug', { title: 'A jug' }).changes, 'dov');
    network.deliverAll();
    history.undo();
    history.undo();
    network.deliverAll();
    for (const documents of [ama, dov]) {
      expect(documents.all('vignettes').size + documents.all('objects').size).toBe(0);
      const anew = new ShowDocuments(new Map(DOCUMENT_NAMES.map((name) => [name, documents.doc(name) as Y.Doc])));
      expect(anew.all('vignettes').size + anew.all('objects').size).toBe(0);
    }
    history.redo();
    history.redo();
    network.deliverAll();
    expect(dov.get('vignettes', 'v')).toMatchObject({ name: 'Three', intent: '' });
    expect(dov.get('objects', 'jug')).toMatchObject({ number: '1', title: 'A jug' });
  });

  test('law: the last word on what stands on edits alone, taken back, leaves nothing, kept up and built anew alike', () => {
    const { documents, history } = sampleShow();
    history.perform(commands.correctPrivate('trap', { storage: 'rack 4' }));
    history.perform(commands.correctPiece('blocks#2', { picture: 'p' }));
    expect(documents.get('values', 'trap')).toEqual({ storage: 'rack 4' });
    history.undo();
    history.undo();
    expect([documents.get('values', 'trap'), documents.get('pieces', 'blocks#2')]).toEqual([undefined, undefined]);
  });

  test('law: the snapshot kept change by change is the snapshot built anew', () => {
    const network = new FakeNetwork(2, 5);
    const [a, b] = network.replicas as [ShowDocuments, ShowDocuments];
    const random = seeded(9);
    a.write(
      commands.addObjects(
        a,
        Array.from({ length: 90 }, (_, n) => ({ id: `o${n}`, object: work(`${n}`) })),
      ).changes,
      1,
    );
    for (let step = 0; step < 200; step++) {
      const id = `o${Math.floor(random() * 95)}`;
      const on = random() < 0.5 ? a : b;
      if (random() < 0.3) on.write(commands.remove('objects', id, 'it').changes, 1);
      else if (random() < 0.5) on.write(commands.correctObject(id, { title: `title ${step}` }).changes, 1);
      else on.write(commands.addObjects(on, [{ id, object: work(`again ${step}`) }]).changes, 1);
      if (random() < 0.5) network.deliverOne();
    }
    network.deliverAll();
    const fresh = new FakeNetwork(2, 1).replicas[0] as ShowDocuments;
    const whole = (a.doc('checklist') as { getMap(name: string): { entries(): Iterable<[string, never]> } }).getMap(
      'objects',
    );
    fresh.write(
      [...whole.entries()].map(([key, value]) => ({ root: 'objects' as const, key, value })),
      1,
    );
    expect([...a.all('objects')].sort()).toEqual([...fresh.all('objects')].sort());
    expect([...b.all('objects')].sort()).toEqual([...fresh.all('objects')].sort());
  });

  test('story: two people correct two fields of one record at the same moment, and both words stay', () => {
    const network = new FakeNetwork(2, 3);
    const [ama, dov] = network.replicas as [ShowDocuments, ShowDocuments];
    ama.write(commands.addObjects(ama, [{ id: 'oil', object: work('1') }]).changes, 'ama');
    network.deliverAll();
    ama.write(commands.correctObject('oil', { weightKg: 7.1 }).changes, 'ama');
    dov.write(commands.correctObject('oil', { title: 'The valley from Tallow Hill' }).changes, 'dov');
    network.deliverAll();
    expect(dov.get('objects', 'oil')).toMatchObject({ weightKg: 7.1, title: 'The valley from Tallow Hill' });
    expect(ama.get('objects', 'oil')).toEqual(dov.get('objects', 'oil'));
  });

  test('story: two people hang one piece on two walls, and it hangs once, on the same wall for both', () => {
    const network = new FakeNetwork(2, 4);
    const [a, b] = network.replicas as [ShowDocuments, ShowDocuments];
    a.write(commands.place(a, new Map([['oil#1', ['dye:head', 1000, 1500, 0, 0]]])).changes, 'a');
    b.write(commands.place(b, new Map([['oil#1', ['dye:left', 2000, 1500, 0, 0]]])).changes, 'b');
    network.deliverAll();
    expect(a.get('places', 'oil#1')).toEqual(b.get('places', 'oil#1'));
    expect(a.all('places').size).toBe(1);
  });

  test('story: a work made focal here while it is taken out there is no focal work; ungrouped meanwhile, its vignette is none', () => {
    const network = new FakeNetwork(2, 6);
    const [a, b] = network.replicas as [ShowDocuments, ShowDocuments];
    a.write(
      commands.addObjects(
        a,
        [1, 2, 3].map((n) => ({ id: `o${n}`, object: work(`${n}`) })),
      ).changes,
      'a',
    );
    a.write(commands.gather(a, { name: 'v', intent: '', focal: null }, ['o1#1', 'o2#1'], 'v').changes, 'a');
    network.deliverAll();
    a.write(commands.describe('v', { focal: 'o1#1' }).changes, 'a');
    b.write(commands.leave(b, ['o1#1']).changes, 'b');
    network.deliverAll();
    for (const documents of [a, b]) {
      expect(documents.get('vignettes', 'v')?.focal).toBe('o1#1');
      expect(commands.focalOf(documents, 'v')).toBeNull();
      expect(canonicalVignetteOf(documents, 'v')?.focal).toBeNull();
    }
    a.write(commands.join('v', ['o3#1']).changes, 'a');
    b.write(commands.ungroup(b, 'v').changes, 'b');
    network.deliverAll();
    for (const documents of [a, b]) {
      expect(documents.get('memberOf', 'o3#1')).toBe('v');
      expect(commands.vignetteOf(documents, 'o3#1')).toBeNull();
    }
  });

  test('law: a text cut in the middle of a letter is the same text here as where it is sent, and can be signed and undone', () => {
    const network = new FakeNetwork(2, 13);
    const [a, b] = network.replicas as [ShowDocuments, ShowDocuments];
    const history = new ActHistory(a, 'a');
    const cut = '🥚 and nest 🥚'.slice(0, -1);
    history.perform(commands.gather(a, { name: cut, intent: '\udd5a', focal: null }, [], 'v'));
    network.deliverAll();
    expect(a.get('vignettes', 'v')).toEqual(b.get('vignettes', 'v'));
    expect(a.get('vignettes', 'v')).toMatchObject({ name: '🥚 and nest \ufffd', intent: '\ufffd' });
    expect(toCanonicalText(canonicalVignetteOf(a, 'v') as object)).toContain('🥚 and nest');
    history.perform(commands.describe('v', { name: cut }));
    history.perform(commands.describe('v', { name: `${cut}?` }));
    expect(history.undo()).toMatchObject({ done: 1, of: 1 });
    // As a text comes out of UTF-8, half letters and all.
    const sent = (text: string): string =>
      new TextDecoder('utf-8', { ignoreBOM: true }).decode(new TextEncoder().encode(text));
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0xd7f0, max: 0xe010 }), { maxLength: 8 }), (units) => {
        const text = String.fromCharCode(...units);
        expect(inWholeLetters(text)).toBe(sent(text));
        const value = [text, { [`a${text}`]: text, b: [null, 1] }];
        expect(inWholeLetters(value)).toEqual([sent(text), { [`a${sent(text)}`]: sent(text), b: [null, 1] }]);
        if (sent(text) === text) expect(inWholeLetters(value)).toBe(value);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  test('story: a listener of one piece hears its move and not another', () => {
    const { documents } = sampleShow();
    const heard: string[] = [];
    documents.subscribe('places', () => heard.push('oil'), 'oil#1');
    documents.subscribe('places', (ids) => heard.push([...ids].join('+')));
    documents.write(commands.place(documents, new Map([['trap#1', ['layout', 0, 0, 0, 0]]])).changes, 'x');
    documents.write(commands.place(documents, new Map([['oil#1', ['layout', 0, 0, 0, 0]]])).changes, 'x');
    expect(heard).toEqual(['trap#1', 'oil', 'oil#1']);
  });
});

describe('facts of the wrong shape', () => {
  test('law: whatever a hostile client writes in places, memberships or records, the rest is read and nothing throws', () => {
    const { documents, history } = sampleShow();
    history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 1000, 1500, 0, 0]]])));
    const judgements = new Judgements(documents, { get: () => undefined });
    const odd = [
      [1, 2],
      7,
      'x',
      null,
      true,
      {},
      ['dye:head', 1, 2, 3],
      ['dye:head', 'a', 0, 0, 0],
      [null, 0, 0, 0, 0],
    ] as const;
    for (const [n, value] of odd.entries()) {
      documents.write([{ root: 'places', key: `odd${n}#1`, value: value as never }], 'hostile');
      documents.write([{ root: 'memberOf', key: `odd${n}#1`, value: value as never }], 'hostile');
      documents.write([{ root: 'objects', key: `odd${n}`, value: value as never }], 'hostile');
    }
    expect([...documents.all('places').keys()]).toEqual(['oil#1']);
    expect(() => new Judgements(documents, { get: () => undefined }).elevationOf('dye:head')).not.toThrow();
    expect(judgements.elevationOf('dye:head').map(({ pieceId }) => pieceId)).toEqual(['oil#1']);
  });
});

describe('commands', () => {
  test('story: a carrier cannot be set on what it carries', () => {
    const { documents, history } = sampleShow();
    history.perform(commands.place(documents, new Map([['bench#1', ['dye:floor', 3000, 3000, 0, 0]]])));
    history.perform(commands.place(documents, new Map([['trap#1', ['carrier:bench#1/0', 300, 200, 0, 0]]])));
    expect(() => commands.place(documents, new Map([['bench#1', ['carrier:trap#1/0', 0, 0, 0, 0]]]))).toThrow(
      RangeError,
    );
  });

  test('law: pieces that two people set on each other at once can be moved and put back; nothing throws', () => {
    const { documents, history } = sampleShow();
    const ring = new Map<string, Place>([
      ['bench#1', ['carrier:trap#1/0', 0, 0, 0, 0]],
      ['trap#1', ['carrier:bench#1/0', 0, 0, 0, 0]],
    ]);
    documents.write(
      [...ring].map(([key, value]) => ({ root: 'places', key, value })),
      'both at once',
    );
    history.perform(commands.move(documents, ['trap#1'], { dxMm: 10, dyMm: 0 }));
    expect(documents.get('places', 'trap#1')?.[1]).toBe(10);
    expect(() => commands.place(documents, new Map([['oil#1', ['carrier:oil#1/0', 0, 0, 0, 0]]]))).toThrow(RangeError);
    history.perform(commands.unplace(documents, ['trap#1']));
    expect(documents.all('places').size).toBe(0);
  });

  test('story: putting a bench back takes what stands on it back too, in one step', () => {
    const { documents, history } = sampleShow();
    history.perform(commands.place(documents, new Map([['bench#1', ['dye:floor', 3000, 3000, 0, 0]]])));
    history.perform(commands.place(documents, new Map([['trap#1', ['carrier:bench#1/0', 300, 200, 0, 0]]])));
    history.perform(commands.unplace(documents, ['bench#1']));
    expect(documents.all('places').size).toBe(0);
    history.undo();
    expect([...documents.all('places').keys()].sort()).toEqual(['bench#1', 'trap#1']);
  });

  test('story: a second import corrects a record and keeps what a person had corrected', () => {
    const { documents, history } = sampleShow();
    history.perform(commands.correctObject('oil', { title: 'The valley from Tallow Hill' }));
    history.perform(
      commands.addObjects(documents, [
        { id: 'oil', object: work('1931.14.3', { title: 'Valley', medium: 'Oil on canvas' }) },
      ]),
    );
    expect(documents.get('objects', 'oil')).toMatchObject({
      title: 'The valley from Tallow Hill',
      medium: 'Oil on canvas',
    });
  });

  test('story: values of an import go to the private document and nowhere else', () => {
    const { documents, history } = sampleShow();
    history.perform(commands.addObjects(documents, [{ object: work('9'), private: { value: 'CANARY 40,000' } }]));
    for (const name of ['rooms', 'checklist', 'hang', 'talk', 'record'] as const) {
      const doc = documents.doc(name);
      const text = JSON.stringify([...(doc?.share.keys() ?? [])].map((root) => doc?.getMap(root).toJSON()));
      expect(text).not.toContain('CANARY');
    }
    expect(JSON.stringify(documents.doc('private')?.getMap('values').toJSON())).toContain('CANARY');
  });

  test('law: a place is whole millimetres and a turn within one round, whatever was typed', () => {
    const { documents } = sampleShow();
    const act = commands.place(documents, new Map([['oil#1', ['dye:head', 10.4, 20.6, 0.2, -9000]]]));
    expect(act.changes[0]?.value).toEqual(['dye:head', 10, 21, 0, 27000]);
    expect(() => commands.place(documents, new Map([['oil#1', ['dye:head', Number.NaN, 0, 0, 0]]]))).toThrow(
      RangeError,
    );
  });

  test('story: a vignette moves as one and what stands on a moved bench is not moved twice', () => {
    const { documents, history } = sampleShow();
    history.perform(
      commands.place(
        documents,
        new Map([
          ['bench#1', ['dye:floor', 3000, 3000, 0, 0]],
          ['trap#1', ['carrier:bench#1/0', 300, 200, 0, 0]],
        ]),
      ),
    );
    history.perform(commands.move(documents, ['bench#1', 'trap#1'], { dxMm: 100, dyMm: -50 }));
    expect(documents.get('places', 'bench#1')).toEqual(['dye:floor', 3100, 2950, 0, 0]);
    expect(documents.get('places', 'trap#1')).toEqual(['carrier:bench#1/0', 300, 200, 0, 0]);
  });
});

describe('acts', () => {
  test('story: what another moved on and back again is theirs, and stays; what they never touched is undone', () => {
    const network = new FakeNetwork(2, 21);
    const [a, b] = network.replicas as [ShowDocuments, ShowDocuments];
    const history = new ActHistory(a, 'ama');
    const at = (x: number): Place => ['dye:head', x, 1500, 0, 0];
    const move = (x: number): Map<string, Place> => new Map([1, 2, 3].map((n) => [`o${n}#1`, at(x)]));
    history.perform(commands.place(a, move(1000)));
    network.deliverAll();
    history.perform(commands.place(a, move(2000)));
    network.deliverAll();
    b.write(commands.place(b, new Map([['o1#1', at(5000)]])).changes, 'b');
    network.deliverAll();
    b.write(commands.place(b, new Map([['o1#1', at(2000)]])).changes, 'b');
    network.deliverAll();
    expect(history.undo()).toMatchObject({ done: 2, of: 3 });
    expect([1, 2, 3].map((n) => a.get('places', `o${n}#1`)?.[1])).toEqual([2000, 1000, 1000]);
    expect(history.redo()).toMatchObject({ done: 2, of: 3 });
    expect(history.undo()).toMatchObject({ done: 2, of: 3 });
    expect(history.undo()).toMatchObject({ done: 2, of: 3 });
    expect([...a.all('places').keys()]).toEqual(['o1#1']);
  });

  test('law: a fact named twice in one act counts once, and is taken back whole', () => {
    const { documents, history } = sampleShow();
    const set = (value: string) => ({ root: 'paints', key: 'dye:left', value }) as const;
    history.perform({ name: 'paint twice', changes: [set('weld'), set('verdigris')] });
    expect(documents.get('paints', 'dye:left')).toBe('verdigris');
    expect(history.undo()).toEqual({ name: 'paint twice', done: 1, of: 1 });
    expect(documents.get('paints', 'dye:left')).toBeUndefined();
  });

  test('story: undo takes back my last act and not yours', () => {
    const network = new FakeNetwork(2, 8);
    const [a, b] = network.replicas as [ShowDocuments, ShowDocuments];
    const mine = new ActHistory(a, 'a');
    const yours = new ActHistory(b, 'b');
    mine.perform(commands.place(a, new Map([['oil#1', ['dye:head', 1000, 1500, 0, 0]]])));
    network.deliverAll();
    yours.perform(commands.place(b, new Map([['trap#1', ['layout', 0, 0, 0, 0]]])));
    network.deliverAll();
    mine.undo();
    network.deliverAll();
    expect([...b.all('places').keys()]).toEqual(['trap#1']);
    mine.redo();
    network.deliverAll();
    expect(b.get('places', 'oil#1')).toEqual(['dye:head', 1000, 1500, 0, 0]);
  });

  test('story: where another has moved two of my five since, undo takes back three and says so', () => {
    const network = new FakeNetwork(2, 8);
    const [a, b] = network.replicas as [ShowDocuments, ShowDocuments];
    const mine = new ActHistory(a, 'a');
    const five = new Map([1, 2, 3, 4, 5].map((n) => [`b#${n}`, ['dye:head', n * 100, 1500, 0, 0] as Place]));
    mine.perform(commands.place(a, five, 'hang in a line'));
    network.deliverAll();
    b.write(commands.move(b, ['b#2', 'b#4'], { dxMm: 10, dyMm: 0 }).changes, 'b');
    network.deliverAll();
    const outcome = mine.undo();
    expect(outcome).toEqual({ name: 'hang in a line', done: 3, of: 5 });
    expect(outcomeText(outcome as NonNullable<typeof outcome>, 'undone')).toMatch(/^3 of 5 undone/);
    expect([...a.all('places').keys()].sort()).toEqual(['b#2', 'b#4']);
  });

  test('story: a whole import is one step, across documents', () => {
    const { documents, history } = sampleShow();
    const before = documents.all('objects').size;
    history.perform(
      commands.addObjects(documents, [
        { object: work('7'), private: { value: '10' } },
        { object: work('8'), private: { value: '20' } },
      ]),
    );
    expect(documents.all('values').size).toBe(2);
    history.undo();
    expect(documents.all('objects').size).toBe(before);
    expect(documents.all('values').size).toBe(0);
    expect(history.undoable).toBeUndefined();
  });

  test('law: undo of everything leaves what was there; redo of everything brings it back', () => {
    const { documents, history } = sampleShow();
    const random = seeded(21);
    const plain = () => JSON.stringify([[...documents.all('places')].sort(), [...documents.all('memberOf')].sort()]);
    const start = plain();
    let acts = 0;
    for (let step = 0; step < 60; step++) {
      const piece = `blocks#${1 + Math.floor(random() * 6)}`;
      if (random() < 0.6)
        history.perform(
          commands.place(documents, new Map([[piece, ['layout', random() * 5000, random() * 5000, 0, 0]]])),
        );
      else if (random() < 0.5) history.perform(commands.unplace(documents, [piece]));
      else history.perform(commands.join('v', [piece]));
    }
    const end = plain();
    while (history.undo() !== undefined) acts += 1;
    expect(plain()).toBe(start);
    expect(acts).toBeGreaterThan(20);
    while (history.redo() !== undefined);
    expect(plain()).toBe(end);
  });
});
