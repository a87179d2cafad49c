import { ActHistory } from '@enfilade/shared/acts';
import { boxOn, lineUp, spaceOut } from '@enfilade/shared/aligning';
import * as commands from '@enfilade/shared/commands';
import { ShowDocuments } from '@enfilade/shared/documents';
import { Judgements } from '@enfilade/shared/judgements';
import { LAYOUT_FLOOR, type MuseumObject, type PieceId, type Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';

/** Three works and a shelf with a jug on it, on the Dye House's east wall and elsewhere. Sizes in mm. */
function show() {
  const documents = new ShowDocuments();
  const history = new ActHistory(documents, 'me');
  const judgements = new Judgements(documents, { get: () => undefined });
  history.perform(
    commands.addRoom(
      {
        name: 'Dye House',
        order: 1,
        widthMm: 6000,
        depthMm: 5000,
        heightMm: 3600,
        headFaces: 'east',
        cornersMm: [0, -30, -30, 0],
        laserMm: 1000,
      },
      'dye',
    ),
  );
  const sizes = { view: [860, 660], map: [400, 500], print: [300, 200], shelf: [900, 40], jug: [200, 300] } as const;
  history.perform(
    commands.addObjects(
      documents,
      Object.entries(sizes).map(([id, [widthMm, heightMm]]) => ({
        id,
        object: {
          number: id,
          title: id,
          count: 1,
          lender: '',
          source: 'collection',
          measured: { widthMm, heightMm, depthMm: 100, estimated: false },
          levelsMm: id === 'shelf' ? [40] : null,
        } satisfies MuseumObject,
      })),
    ),
  );
  const put = (places: Readonly<Record<PieceId, Place>>): void =>
    history.perform(commands.place(documents, new Map(Object.entries(places))));
  const at = (pieceId: PieceId): Place | null => judgements.where.placeOf(pieceId);
  return { documents, history, judgements, put, at };
}

const THREE = ['view#1', 'map#1', 'print#1'];

describe('lining up what is selected', () => {
  test('story: feet of three works come to the lowest foot as one step of undo; what is elsewhere stays', () => {
    const { history, judgements, put, at } = show();
    put({
      'view#1': ['dye:head', 1000, 1500, 0, 0],
      'map#1': ['dye:head', 2500, 1700, 12, 0],
      'print#1': ['dye:foot', 3000, 1400, 0, 0],
    });
    const made = lineUp(judgements, 'dye:head', THREE, 'feet');
    expect(made.mm).toBe(1170);
    history.perform(made);
    expect(at('map#1')).toEqual(['dye:head', 2500, 1420, 12, 0]);
    expect(at('view#1')).toEqual(['dye:head', 1000, 1500, 0, 0]);
    expect(at('print#1')).toEqual(['dye:foot', 3000, 1400, 0, 0]);
    expect(history.undo()).toMatchObject({ name: 'line up feet', done: 1, of: 1 });
    expect(at('map#1')).toEqual(['dye:head', 2500, 1700, 12, 0]);
  });

  test('story: a turned work lines up by the box round it, and keeps its turn', () => {
    const { history, judgements, put, at } = show();
    put({ 'view#1': ['dye:head', 1000, 1500, 0, 9000], 'map#1': ['dye:head', 2500, 1500, 0, 0] });
    history.perform(lineUp(judgements, 'dye:head', THREE, 'tops'));
    // A quarter turn makes the view 860 high: its top is at 1930.
    expect(at('map#1')).toEqual(['dye:head', 2500, 1680, 0, 0]);
    expect(at('view#1')?.[4]).toBe(9000);
  });

  test('story: a shelf that is lined up takes its jug along, and the jug itself is not lined up', () => {
    const { history, judgements, put, at } = show();
    put({
      'shelf#1': ['dye:head', 1000, 1200, 0, 0],
      'jug#1': ['carrier:shelf#1/0', 450, 100, 0, 0],
      'map#1': ['dye:head', 2500, 1500, 0, 0],
    });
    history.perform(lineUp(judgements, 'dye:head', ['shelf#1', 'jug#1', 'map#1'], 'centres'));
    expect(at('jug#1')).toEqual(['carrier:shelf#1/0', 450, 100, 0, 0]);
    expect(at('shelf#1')?.[2]).toBe(at('map#1')?.[2]);
  });

  test('story: one upright for works above each other is told when it lays one over another', () => {
    const { judgements, put } = show();
    put({ 'view#1': ['dye:head', 1000, 1500, 0, 0], 'map#1': ['dye:head', 2500, 1600, 0, 0] });
    const made = lineUp(judgements, 'dye:head', THREE, 'middles');
    expect(made.issues.map(({ what }) => what)).toEqual(['stands over another']);
    expect(made.changes).toHaveLength(2);
  });
});

describe('equal gaps', () => {
  test('story: the outer two of three stay and the one between has the same gap to both, on the layout floor too', () => {
    for (const surface of ['dye:head', LAYOUT_FLOOR]) {
      const { history, judgements, put, at } = show();
      put({
        'view#1': [surface, 1000, 1500, 0, 0],
        'map#1': [surface, 1800, 1400, 0, 0],
        'print#1': [surface, 3000, 1600, 0, 0],
      });
      const made = spaceOut(judgements, surface, THREE, 'across');
      history.perform(made);
      const [a, b, c] = THREE.map((id) => boxOn(judgements, id, surface));
      const gap = (left: typeof a, right: typeof a): number =>
        (right?.xMm ?? 0) - (right?.widthMm ?? 0) / 2 - (left?.xMm ?? 0) - (left?.widthMm ?? 0) / 2;
      expect(gap(a, b)).toBe(gap(b, c));
      expect(gap(a, b)).toBe(made.mm);
      expect([at('view#1')?.[1], at('print#1')?.[1]]).toEqual([1000, 3000]);
      expect(at('map#1')?.[2]).toBe(1400);
    }
  });

  test('story: where they have no room between the ends nothing moves, and by how much is said', () => {
    const { judgements, put } = show();
    put({
      'view#1': ['dye:head', 1000, 1500, 0, 0],
      'map#1': ['dye:head', 1200, 1500, 0, 0],
      'print#1': ['dye:head', 1400, 1500, 0, 0],
    });
    const made = spaceOut(judgements, 'dye:head', THREE, 'across');
    expect(made.changes).toEqual([]);
    // 860 + 400 + 300 in 980.
    expect(made.issues).toEqual([expect.objectContaining({ value: 580 })]);
  });
});
