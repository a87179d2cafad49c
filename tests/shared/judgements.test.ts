import * as commands from '@enfilade/shared/commands';
import { scaleOf } from '@enfilade/shared/elevation-layout';
import { elevationSheetsOf } from '@enfilade/shared/elevation-sheet';
import { wallScheduleOf } from '@enfilade/shared/hanging-schedule';
import { Judgements } from '@enfilade/shared/judgements';
import type { ImageFacts } from '@enfilade/shared/protocol';
import type { Place } from '@enfilade/shared/schema';
import { A3 } from '@enfilade/shared/sheet';
import {
  type CanonicalVignette,
  canonicalVignetteOf,
  changesBetween,
  digestOf,
  toCanonicalText,
} from '@enfilade/shared/sign-off';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

/** A picture that is one colour all over, rim and body. */
function plainPicture(L: number, a: number, b: number): ImageFacts {
  const swatches = [{ lab: { L, a, b }, share: 1 }];
  return {
    sha256: 'p',
    widthPx: 10,
    heightPx: 10,
    body: swatches,
    edge: swatches,
    opaqueShare: 1,
    engine: 'test',
    cell: { page: 0, index: 0 },
  };
}

function show(picture?: ImageFacts) {
  const sample = sampleShow();
  const judgements = new Judgements(sample.documents, { get: () => picture });
  return { ...sample, judgements };
}

describe('whereabouts', () => {
  test('story: what stands on a bench before a wall is seen on it there, and travels with it', () => {
    const { documents, history, judgements } = show();
    // The bench's back is 200 mm off the east wall (head): its centre stands 400 mm off.
    history.perform(commands.place(documents, new Map([['bench#1', ['dye:floor', 3000, 5600, 0, 0]]])));
    history.perform(commands.place(documents, new Map([['trap#1', ['carrier:bench#1/0', 300, 200, 0, 0]]])));
    const seen = new Map(judgements.elevationOf('dye:head').map((piece) => [piece.pieceId, piece]));
    // Bench: 1400 wide, 450 high, floor at -15 in the middle of the wall (it falls 30 across 6 m).
    expect(seen.get('bench#1')).toMatchObject({ xMm: 3000, widthMm: 1400, yMm: -15 + 225, direct: false });
    // Trap: 300 from the bench's left edge, on its top.
    expect(seen.get('trap#1')).toMatchObject({ xMm: 3000 - 700 + 300, yMm: -15 + 450 + 390 });
    history.perform(commands.move(documents, ['bench#1'], { dxMm: 500, dyMm: 0 }));
    const after = judgements.elevationOf('dye:head').find(({ pieceId }) => pieceId === 'trap#1');
    expect(after?.xMm).toBe(3000 - 700 + 300 + 500);
  });

  test('story: a bench turned to the south wall carries its load round with it', () => {
    const { documents, history, judgements } = show();
    history.perform(commands.place(documents, new Map([['bench#1', ['dye:floor', 5600, 3000, 0, 9000]]])));
    history.perform(commands.place(documents, new Map([['trap#1', ['carrier:bench#1/0', 300, 200, 0, 0]]])));
    const seen = judgements.elevationOf('dye:right').find(({ pieceId }) => pieceId === 'trap#1');
    // Faced from inside, the bench's left end is still its left: wall x = 3000 - 700 + 300.
    expect(seen?.xMm).toBeCloseTo(2600, 6);
  });

  test('law: carriers in a ring: every replica lets the same one fall out, whatever the order of writes', () => {
    const { documents, judgements } = show();
    documents.write(
      [
        { root: 'places', key: 'bench#1', value: ['carrier:trap#1/0', 0, 0, 0, 0] },
        { root: 'places', key: 'trap#1', value: ['carrier:bench#1/0', 0, 0, 0, 0] },
      ],
      'both at once',
    );
    const { where } = judgements;
    expect(where.placeOf('trap#1')).toBeNull();
    // What stands on the one that fell out is with the unplaced too: otherwise it would be on no wall and in no list.
    expect(where.placeOf('bench#1')).toBeNull();
    expect([where.fellFromRing('trap#1'), where.fellFromRing('bench#1')]).toEqual([true, false]);
    expect(judgements.elevationOf('dye:head')).toEqual([]);
    documents.write(
      commands.place(documents, new Map([['trap#1', ['dye:floor', 2000, 2000, 0, 0]]])).changes,
      'settling it',
    );
    expect(where.surfaceOf('bench#1')).toBe('dye:floor');
  });

  test('story: a work hung in a room that another takes away is with the unplaced, and hangs again when the room returns', () => {
    const { documents, history, judgements } = show();
    const { where } = judgements;
    const door = { kind: 'doorway', name: '', widthMm: 900, heightMm: 2100, sillMm: 0 } as const;
    history.perform(commands.addOpening({ ...door, sides: [{ surface: 'dye:left', xMm: 800 }] }, 'door'));
    const places = new Map<string, Place>([
      ['oil#1', ['dye:head', 3000, 1500, 0, 0]],
      ['trap#1', ['opening:door', 300, 400, 0, 0]],
      ['bench#1', ['layout', 0, 0, 0, 0]],
    ]);
    history.perform(commands.place(documents, places));
    documents.write(commands.remove('rooms', 'dye', 'the room').changes, 'another');
    expect([...places.keys()].map((pieceId) => where.placeOf(pieceId) !== null)).toEqual([false, false, true]);
    documents.write([{ root: 'rooms', key: 'dye/removed', value: undefined }], 'another');
    expect([...places.keys()].map((pieceId) => where.surfaceOf(pieceId))).toEqual(['dye:head', 'dye:left', 'layout']);
  });

  test('law: the index of what is on a surface is what the places say, after many moves', () => {
    const { documents, history, judgements } = show();
    for (let n = 1; n <= 60; n++) {
      history.perform(
        commands.place(documents, new Map([[`blocks#${n}`, [n % 3 ? 'dye:head' : 'layout', n * 10, 1500, 0, 0]]])),
      );
    }
    for (let n = 1; n <= 60; n += 4) history.perform(commands.unplace(documents, [`blocks#${n}`]));
    for (const surface of ['dye:head', 'layout']) {
      const said = [...documents.all('places')].filter(([, at]) => at[0] === surface).map(([id]) => id);
      expect([...judgements.where.directlyOn(surface)].sort()).toEqual(said.sort());
    }
  });
});

describe('readings', () => {
  test('story: a green work is lost on the verdigris and carries when the wall is repainted weld', () => {
    const { documents, history, judgements } = show(plainPicture(35, -20, 2));
    history.perform(commands.correctObject('oil', { picture: 'p' }));
    history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 3000, 1500, 0, 0]]])));
    expect(judgements.readingOf('oil#1')?.word).toBe('lost');
    history.perform(commands.repaint('dye:head', 'weld'));
    expect(judgements.readingOf('oil#1')?.word).toBe('carries');
    history.undo();
    expect(judgements.readingOf('oil#1')?.word).toBe('lost');
  });

  test('story: a paint corrected by a measurement changes the reading of every work on it', () => {
    const { documents, history, judgements } = show(plainPicture(35, -20, 2));
    history.perform(commands.correctObject('oil', { picture: 'p' }));
    history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 3000, 1500, 0, 0]]])));
    documents.write([{ root: 'deck', key: 'verdigris/lab', value: { L: 85, a: 0, b: 50 } }], 'reader');
    expect(judgements.readingOf('oil#1')?.word).toBe('carries');
  });

  test('story: no picture, no paint, no wall: no word', () => {
    const { documents, history, judgements } = show();
    history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 3000, 1500, 0, 0]]])));
    expect(judgements.readingOf('oil#1')).toBeNull();
  });
});

describe('weight', () => {
  test('story: 84 kg for sixty blocks is no caution of 84 kg on one block', () => {
    const { documents, history, judgements } = show();
    history.perform(commands.correctObject('blocks', { weightKg: 84, hardwareText: '1 plate, drop 2 cm' }));
    history.perform(commands.place(documents, new Map([['blocks#1', ['dye:head', 3000, 1500, 0, 0]]])));
    expect(judgements.weightOf('blocks#1')).toBeCloseTo(1.4, 9);
    expect(judgements.cautionsOf('blocks#1').map(({ kind }) => kind)).not.toContain('one hook');
  });
});

describe('hooks', () => {
  test('reference: centre 1475, height 815, drop 95 gives a hook at 1787.5 (museum hanging guide, as read)', () => {
    const { documents, history, judgements } = show();
    history.perform(
      commands.correctObject('oil', {
        measured: { heightMm: 815, widthMm: 600, depthMm: null, estimated: false },
        hardwareText: '2 D-rings, drop 95 mm, 50 cm apart',
      }),
    );
    history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 3000, 1475, 0, 0]]])));
    const hooks = judgements.hooksOf('oil#1');
    if (!hooks?.known) throw new Error('the hooks should be known');
    expect(hooks.heightMm).toBe(1787.5);
    expect(hooks.fromLaserMm).toBe(787.5);
    // The floor falls 30 over 6 m to the south, which is to the right on the east wall.
    expect(hooks.points.map(({ xMm }) => xMm)).toEqual([2750, 3250]);
    expect(hooks.points[0]?.fromFloorMm).toBeCloseTo(1787.5 + 13.75, 6);
    expect(hooks.points[1]?.fromFloorMm).toBeCloseTo(1787.5 + 16.25, 6);
  });

  test('story: nothing is invented: no hardware, no drop, no spacing, a turned piece', () => {
    const { documents, history, judgements } = show();
    history.perform(commands.place(documents, new Map([['oil#1', ['dye:head', 3000, 1500, 0, 0]]])));
    expect(judgements.hooksOf('oil#1')).toMatchObject({ known: false, missing: 'hardware not known' });
    history.perform(commands.correctObject('oil', { hardwareText: '2 D-rings' }));
    expect(judgements.hooksOf('oil#1')).toMatchObject({ known: false, missing: 'drop not known' });
    history.perform(commands.correctObject('oil', { hardwareText: '2 D-rings, drop 9.5 cm' }));
    expect(judgements.hooksOf('oil#1')).toMatchObject({ known: true, points: [] });
    history.perform(commands.move(documents, ['oil#1'], { dxMm: 0, dyMm: 0, turnCentidegrees: 500 }));
    expect(judgements.hooksOf('oil#1')).toMatchObject({ known: false });
  });
});

describe('sign-off', () => {
  function signed() {
    const made = show();
    const { documents, history } = made;
    history.perform(
      commands.place(
        documents,
        new Map([
          ['hanging#1', ['dye:head', 3000, 1800, 0, 0]],
          ['blocks#1', ['dye:head', 1000, 1500, 0, 0]],
        ]),
      ),
    );
    const act = commands.gather(
      documents,
      { name: 'Sixty impressions', intent: 'small answers large', focal: 'hanging#1' },
      ['hanging#1', 'blocks#1'],
    );
    history.perform(act);
    const text = toCanonicalText(canonicalVignetteOf(documents, act.id) as CanonicalVignette);
    const sign = (personId: string, role: 'lead' | 'curator' | 'guest artist', at: string) =>
      documents.write(
        [
          {
            root: 'signatures',
            key: `${act.id}/${personId}`,
            value: { vignetteId: act.id, personId, name: personId, role, at, digest: digestOf(text), canonical: text },
          },
        ],
        'server',
      );
    return { ...made, id: act.id, sign };
  }

  test('reference: SHA-256 of "abc" (FIPS 180-4, example)', () => {
    expect(digestOf('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  test('story: drafted, signed in part, agreed, changed since, and as it was again', () => {
    const { documents, history, judgements, id, sign } = signed();
    expect(judgements.standingOf(id)).toMatchObject({
      state: 'drafted',
      waitingFor: ['lead', 'curator', 'guest artist'],
    });
    sign('dov', 'curator', '2026-05-11T10:00:00Z');
    expect(judgements.standingOf(id)).toMatchObject({
      state: 'signed off in part',
      waitingFor: ['lead', 'guest artist'],
    });
    sign('wren', 'lead', '2026-05-12T10:00:00Z');
    sign('isolde', 'guest artist', '2026-05-13T02:00:00Z');
    expect(judgements.standingOf(id)?.state).toBe('agreed');
    history.perform(commands.move(documents, ['blocks#1'], { dxMm: -50, dyMm: 0 }));
    const standing = judgements.standingOf(id);
    expect(standing?.state).toBe('changed since');
    expect(standing?.changes).toEqual([{ kind: 'moved', pieceId: 'blocks#1', dxMm: -50, dyMm: 0 }]);
    history.undo();
    expect(judgements.standingOf(id)?.state).toBe('agreed');
  });

  test('story: 25 mm is within the tolerance, 26 mm is told; a repainted wall and a piece fewer are told', () => {
    const { documents, history, judgements, id, sign } = signed();
    sign('dov', 'curator', '2026-05-11T10:00:00Z');
    history.perform(commands.move(documents, ['blocks#1'], { dxMm: 25, dyMm: 0 }));
    expect(judgements.standingOf(id)?.changes).toEqual([]);
    history.perform(commands.move(documents, ['blocks#1'], { dxMm: 1, dyMm: 0 }));
    expect(judgements.standingOf(id)?.changes).toHaveLength(1);
    history.perform(commands.repaint('dye:head', 'weld'));
    history.perform(commands.leave(documents, ['blocks#1']));
    expect(judgements.standingOf(id)?.changes).toEqual([
      { kind: 'left', pieceId: 'blocks#1' },
      { kind: 'repainted', surface: 'dye:head', from: 'Verdigris, deep', to: 'Weld' },
    ]);
  });

  test('law: a canonical form differs from itself in nothing, and a turn across north is a small turn', () => {
    const { documents, id } = signed();
    const form = canonicalVignetteOf(documents, id) as CanonicalVignette;
    expect(changesBetween(form, form, 0)).toEqual([]);
    const turned = (turn: number): CanonicalVignette => ({
      ...form,
      places: { 'blocks#1': ['dye:head', 0, 0, 0, turn] },
    });
    expect(changesBetween(turned(35900), turned(100), 25)).toEqual([
      { kind: 'turned', pieceId: 'blocks#1', byCentidegrees: 200 },
    ]);
  });
});

describe('paper', () => {
  test('law: the scale is the largest on offer that fits A3, and everything drawn stays on the paper', () => {
    expect(scaleOf(2000, 2000)).toBe(10);
    expect(scaleOf(6000, 3600)).toBe(20);
    expect(scaleOf(8400, 3600)).toBe(25);
    expect(scaleOf(15000, 4000)).toBe(50);
    const { documents, history, judgements } = show();
    history.perform(
      commands.place(
        documents,
        new Map(
          Array.from({ length: 60 }, (_, n) => [
            `blocks#${n + 1}`,
            ['dye:head', 150 + (n % 20) * 290, 800 + Math.floor(n / 20) * 600, 0, 0],
          ]),
        ),
      ),
    );
    const sheets = elevationSheetsOf(judgements, 'dye:head', { version: 3, at: '12 May 2026', by: 'Dov Castellane' });
    expect(sheets.length).toBeGreaterThan(1);
    for (const { marks } of sheets) {
      for (const mark of marks) {
        const [x, y] =
          mark.kind === 'line' ? [Math.max(mark.x1, mark.x2), Math.max(mark.y1, mark.y2)] : [mark.xMm, mark.yMm];
        expect(x).toBeLessThanOrEqual(A3.widthMm);
        expect(y).toBeLessThanOrEqual(A3.heightMm);
      }
    }
    // Every piece is on the schedule once, whichever sheet it fell on.
    const numbers = sheets
      .flatMap(({ marks }) => marks)
      .filter(
        (mark) => mark.kind === 'text' && mark.sizeMm === 4 && mark.face === 'sans bold' && mark.anchor === 'start',
      );
    expect(numbers.map((mark) => (mark.kind === 'text' ? Number(mark.text) : 0)).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 60 }, (_, n) => n + 1),
    );
  });

  test('story: the schedule begins with the largest and goes on from left to right', () => {
    const { documents, history, judgements } = show();
    history.perform(
      commands.place(
        documents,
        new Map([
          ['blocks#2', ['dye:head', 5000, 1500, 0, 0]],
          ['hanging#1', ['dye:head', 3000, 1800, 0, 0]],
          ['blocks#1', ['dye:head', 600, 1500, 0, 0]],
        ]),
      ),
    );
    expect(wallScheduleOf(judgements, 'dye:head')?.rows.map(({ pieceId }) => pieceId)).toEqual([
      'hanging#1',
      'blocks#1',
      'blocks#2',
    ]);
  });
});
