import type { MoveFact, MoveStanding, ProposedMove } from '@enfilade/shared/proposal-moves';
import type { Json, Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { effectLines } from '../../../client/src/talk/effect-sentences.ts';
import { entriesOf, groupTitle, numbersOf } from '../../../client/src/talk/move-entries.ts';
import { moveSentence, moveTitle, placeText, surfacesOfMove } from '../../../client/src/talk/move-sentences.ts';

const NAMES: Record<string, string> = {
  'oil#1': 'The valley from Tallow Hill',
  'bench#1': 'Long bench',
  'trap#1': 'Willow eel trap',
};
const words = {
  nameOf: (pieceId: string) => NAMES[pieceId] ?? `Block ${pieceId.slice(pieceId.indexOf('#') + 1)}`,
  onName: (on: string) =>
    on.startsWith('carrier:') ? 'Long bench, top' : on === 'dye:head' ? 'east wall' : 'south wall',
  onNameWhole: (on: string) =>
    on.startsWith('carrier:')
      ? 'Long bench, top'
      : on.startsWith('wheel')
        ? 'Wheel Room, east wall'
        : 'Dye House, east wall',
  vignetteName: (id: string) => ({ sixty: 'Sixty impressions', high: 'High water' })[id] ?? id,
  paintName: (id: string) => ({ weld: 'Weld', deep: 'Verdigris, deep' })[id] ?? id,
  lrvOf: (id: string) => (id === 'weld' ? '57' : '8'),
  length: (mm: number) => (mm / 10).toFixed(1),
};

function fact(root: MoveFact['root'], key: string, from: Json | undefined, to: Json | undefined): MoveFact {
  return { root, key, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

function pieceMove(
  pieceId: string,
  from: Place | undefined,
  to: Place | undefined,
  standing: MoveStanding = 'open',
): ProposedMove {
  return {
    id: `piece:${pieceId}`,
    about: { kind: 'piece', pieceId },
    facts: [fact('places', pieceId, from, to)],
    standing,
  };
}

describe('a move in words', () => {
  test.each<[Place | undefined, Place | undefined, string]>([
    [['dye:head', 5130, 1500, 0, 0], ['dye:head', 5210, 1740, 0, 0], 'Up 24.0, right 8.0.'],
    [['dye:head', 5130, 1500, 0, 0], ['dye:head', 5130, 1500, 40, 9000], 'Turned 90° clockwise, stands off 4.0 more.'],
    [undefined, ['carrier:bench#1/0', 400, 200, 0, 0], 'Comes from the unplaced, onto the long bench.'],
    [undefined, ['dye:head', 5130, 1500, 0, 0], 'Comes from the unplaced, onto the east wall.'],
    [['dye:head', 5130, 1500, 0, 0], undefined, 'Goes back to the unplaced.'],
    [['dye:head', 5130, 1500, 0, 0], ['dye:right', 900, 1500, 0, 0], 'From the east wall onto the south wall.'],
    [
      ['dye:head', 5130, 1500, 0, 0],
      ['wheel:head', 900, 1500, 0, 0],
      'From the Dye House, east wall, to the Wheel Room, east wall.',
    ],
    [['carrier:bench#1/0', 220, 190, 0, 0], ['carrier:bench#1/0', 360, 190, 0, 0], 'Right 14.0, on the long bench.'],
    [['dye:floor', 3000, 3000, 0, 0], ['dye:floor', 3000, 2700, 0, 0], 'Forward 30.0.'],
    [['dye:ceiling', 3000, 3000, 400, 0], ['dye:ceiling', 3000, 3300, 600, 0], 'Back 30.0, hangs 20.0 lower.'],
  ])('story: %j to %j', (from, to, sentence) => {
    expect(moveSentence(pieceMove('oil#1', from, to), words)).toBe(sentence);
  });

  test('story: a wall is painted, a block joins, a vignette is gathered', () => {
    const wall: ProposedMove = {
      id: 'wall:dye:head',
      about: { kind: 'wall', surface: 'dye:head' },
      facts: [fact('paints', 'dye:head', 'deep', 'weld')],
      standing: 'open',
    };
    expect(moveTitle(wall, words)).toBe('Paint the east wall Weld');
    expect(moveSentence(wall, words)).toBe('From Verdigris, deep to Weld. LRV 8 → 57.');
    const joins: ProposedMove = {
      ...pieceMove('block#4', undefined, undefined),
      facts: [fact('memberOf', 'block#4', 'high', 'sixty')],
    };
    expect(moveSentence(joins, words)).toBe('Joins Sixty impressions, out of High water.');
    const gathered: ProposedMove = {
      id: 'vignette:sixty',
      about: { kind: 'vignette', vignetteId: 'sixty' },
      facts: [
        fact('vignettes', 'sixty', undefined, { name: 'Sixty impressions', intent: 'Small ones answer.' } as never),
      ],
      standing: 'open',
    };
    expect(moveTitle(gathered, words)).toBe('Gather Sixty impressions');
    expect(moveSentence(gathered, words)).toBe('Small ones answer.');
  });

  test('story: both places of a clash are told whole', () => {
    expect(placeText(['carrier:bench#1/0', 220, 190, 0, 0], words)).toBe('on the long bench, 22.0 from its left end');
    expect(placeText(['dye:head', 5130, 1500, 0, 0], words)).toBe(
      'Dye House, east wall, centre 150.0 high, 513.0 from the left corner',
    );
    expect(placeText(null, words)).toBe('unplaced');
  });

  test('law: a move is about each surface it leaves or comes to, a load where its carrier stands', () => {
    const surfaceOf = (on: string) => (on.startsWith('carrier:') ? 'dye:floor' : on);
    const move = pieceMove('trap#1', ['carrier:bench#1/0', 1, 1, 0, 0], ['dye:head', 1, 1, 0, 0]);
    expect(surfacesOfMove(move, surfaceOf)).toEqual(['dye:floor', 'dye:head']);
  });
});

describe('moves listed and numbered', () => {
  const blocks = Array.from({ length: 41 }, (_, i) =>
    pieceMove(
      `block#${i + 1}`,
      ['dye:head', i, 1500, 0, 0],
      ['dye:head', i + 9, 1500, 0, 0],
      i === 7 ? 'clash' : 'open',
    ),
  );
  const few = [
    pieceMove('oil#1', undefined, ['dye:head', 1, 1, 0, 0]),
    pieceMove('trap#1', undefined, ['dye:head', 1, 1, 0, 0]),
  ];

  test('law: a dozen moves keep a card each; every move is in exactly one entry, a clash in one of its own', () => {
    expect(entriesOf(blocks.slice(0, 12))).toHaveLength(12);
    const entries = entriesOf([...blocks, ...few]);
    expect(entries.flatMap(({ moves }) => moves.map(({ id }) => id)).sort()).toEqual(
      [...blocks, ...few].map(({ id }) => id).sort(),
    );
    expect(entries.map(({ number }) => number)).toEqual([1, 2, 3, 4]);
    expect(entries.find(({ moves }) => moves.some(({ standing }) => standing === 'clash'))?.moves).toHaveLength(1);
    expect(groupTitle(entries[0] as never, () => 'Cloth-printing blocks')).toBe('40 of Cloth-printing blocks move');
    expect(numbersOf(entries).get('piece:block#30')).toBe(1);
    expect(numbersOf(entries).get('piece:trap#1')).toBe(4);
  });
});

describe('what a proposal does, in words', () => {
  const effectWords = { ...words, titleOf: () => 'Cloth-printing blocks', gapMm: 100 };

  test('story: readings of one record are told together, with the vignette that would be changed since', () => {
    const lines = effectLines(
      {
        readings: [
          { pieceId: 'oil#1', from: 'lost', to: 'carries' },
          { pieceId: 'block#1', from: 'carries', to: 'holds' },
          { pieceId: 'block#2', from: 'carries', to: 'holds' },
          { pieceId: 'trap#1', from: 'weak', to: null },
        ],
        signOffs: [{ vignetteId: 'sixty', from: 'agreed', to: 'changed since', changes: [] }],
        gaps: [],
        cautions: [],
      },
      effectWords,
    );
    expect(lines.map(({ about, rest }) => about + rest)).toEqual([
      'The valley from Tallow Hill: lost → carries',
      '2 of Cloth-printing blocks: carries → holds',
      'Sixty impressions would be changed since it was signed',
    ]);
  });

  test('law: only a gap that comes under the show’s, and only an overlap that comes, is told', () => {
    const told = (fromMm: number | null, toMm: number | null) =>
      effectLines(
        { readings: [], signOffs: [], cautions: [], gaps: [{ pieceId: 'oil#1', fromMm, toMm }] },
        effectWords,
      ).map(({ rest }) => rest);
    expect(told(300, 60)).toEqual([': 6.0 to its neighbour, under the 10.0 kept']);
    expect(told(null, -20)).toEqual([' overlaps its neighbour by 2.0']);
    expect(told(80, 60)).toEqual([]);
    expect(told(-5, -20)).toEqual([]);
    expect(told(60, 300)).toEqual([]);
    expect(told(60, null)).toEqual([]);
  });

  test('story: a caution that comes and one that goes', () => {
    const cautions = [{ pieceId: 'oil#1', comes: ['Its foot is low.'], goes: ['It is near the thermostat.'] }];
    expect(
      effectLines({ readings: [], signOffs: [], gaps: [], cautions }, effectWords).map(({ rest }) => rest),
    ).toEqual([': Its foot is low.', ', no longer: It is near the thermostat.']);
  });
});
