import * as commands from '@enfilade/shared/commands';
import { footingOf } from '@enfilade/shared/footing';
import { Judgements } from '@enfilade/shared/judgements';
import { finishSurface, paintScheduleOf } from '@enfilade/shared/paint-schedule';
import type { Place } from '@enfilade/shared/schema';
import { describe, expect, test } from 'vitest';
import { sampleShow } from './sample-show.ts';

function made() {
  const { documents, history } = sampleShow();
  const judgements = new Judgements(documents, { get: () => undefined });
  return { documents, judgements, act: (one: Parameters<typeof history.perform>[0]) => history.perform(one) };
}

describe('the paint schedule', () => {
  // 6.0 × 3.6 m less a doorway 1.2 × 2.2 m is 18.96 m²; two coats at 8.6 m² a litre and a tenth more: geometry, coverage as read.
  test('reference: a wall of 6 × 3.6 m with a doorway takes 4.9 litres in two coats', () => {
    const { judgements, act } = made();
    const door = { kind: 'doorway', name: 'door', widthMm: 1200, heightMm: 2200, sillMm: 0 } as const;
    act(commands.addOpening({ ...door, sides: [{ surface: 'dye:head', xMm: 400 }] }, 'door'));
    const [row] = paintScheduleOf(judgements).rows;
    // The floor falls 3 cm under the door, and it reaches down to it.
    expect(row?.areaM2).toBeCloseTo(18.96, 1);
    expect(row?.plan).toMatchObject({ coats: 2, primerCoats: 0 });
    expect(row?.paintLitres).toBeCloseTo((18.96 * 2 * 1.1) / 8.6, 1);
  });

  test('story: a wall painted late is told that the hang begins before it is dry; the last coat has its day beforehand', () => {
    const { judgements, act } = made();
    expect(paintScheduleOf(judgements).lastCoatBy).toBeNull();
    act(commands.setSetting('hangBegins', '2026-06-08'));
    expect(paintScheduleOf(judgements).lastCoatBy).toEqual({ preferred: '2026-06-01', latest: '2026-06-04' });
    const wall = () => paintScheduleOf(judgements).rows[0]?.surfaces[0];
    act(finishSurface('dye:head', { lastCoat: '2026-06-04' }));
    expect(wall()).toMatchObject({ hangFrom: { earliest: '2026-06-08', preferred: '2026-06-11' }, tooSoon: false });
    act(finishSurface('dye:head', { lastCoat: '2026-06-05' }));
    expect(wall()?.tooSoon).toBe(true);
    act(finishSurface('dye:head', { lastCoat: '2026-06-31' }));
    expect(wall()).toMatchObject({ lastCoat: null, hangFrom: null });
  });

  // Practice 10.28's method (wallpaper guides, as read): strips of 3600 + 100 mm up to the repeat, 12 of 530 mm for 6 m.
  test('reference: a papered wall takes rolls and no paint, cloth comes off a bolt, a roll too short is told', () => {
    const { judgements, act } = made();
    const paper = { name: 'Block-printed paper', widthMm: 530, repeatMm: 530, rollMm: 10_050 };
    const wall = () => paintScheduleOf(judgements).rows[0];
    act(finishSurface('dye:head', { covering: paper }));
    expect(wall()?.areaM2).toBe(0);
    expect(wall()?.surfaces[0]?.covering).toMatchObject({ strips: 12, stripMm: 3710, rolls: 6, clothMm: 0 });
    act(finishSurface('dye:head', { covering: { ...paper, rollMm: 0, widthMm: 1370, repeatMm: 0 } }));
    expect(wall()?.surfaces[0]?.covering).toMatchObject({ strips: 5, rolls: 0, clothMm: 18_500 });
    act(finishSurface('dye:head', { covering: { ...paper, rollMm: 3000 } }));
    expect(wall()?.surfaces[0]?.covering?.trouble).toBe('its roll is shorter than one strip');
    act(finishSurface('dye:head', { covering: { ...paper, widthMm: Number.NaN } }));
    expect(wall()?.surfaces[0]?.covering?.trouble).toContain('lengths of 0 or more');
  });
});

describe('hooks and labels', () => {
  test('story: each hook says what it bears and is rated for; a wire’s drop comes of its lengths, and flat it is told', () => {
    const { documents, judgements, act } = made();
    act(commands.place(documents, new Map([['oil#1', ['dye:head', 3000, 1500, 0, 0] as Place]])));
    act(
      commands.correctObject('oil', {
        weightKg: 12,
        hardware: { kind: 'D-rings', hooks: 2, dropMm: 95, spacingMm: 700 },
      }),
    );
    // 1500 + 760 / 2 − 95 = 1785, by practice 10.1.
    expect(judgements.hooksOf('oil#1')).toMatchObject({ known: true, heightMm: 1785, loadKg: 6, ratingKg: 24 });
    const wire = { ringsApartMm: 660.4, wireMm: 736.6, ringsBelowTopMm: 203.2 };
    act(commands.correctObject('oil', { hardware: { kind: 'wire', hooks: 1, wire } }));
    // Practice 10.4: 26 and 29 in, rings 8 in below the top: the drop is 1.58 in, the wire stands at 26.3°.
    const plan = judgements.hooksOf('oil#1');
    expect(plan?.known === true ? (1500 + 380 - plan.heightMm) / 25.4 : null).toBeCloseTo(1.58, 2);
    expect(judgements.cautionsOf('oil#1').map(({ kind }) => kind)).toContain('wire too flat');
    act(commands.correctObject('oil', { hardware: { kind: 'wire', hooks: 1, wire: { ...wire, wireMm: 0 } } }));
    expect(judgements.hooksOf('oil#1')).toMatchObject({ known: false, missing: 'drop not known' });
  });

  test('reference: a thing and its load stand as practice 10.29 and 10.30 reckon (statics; 100 psf from memory)', () => {
    const { documents, judgements, act } = made();
    const LB = 0.45359237;
    const bench = { dimensionsText: 'H 60 x W 36 x D 18 in', weightKg: 80 * LB };
    act(commands.correctObject('bench', bench));
    act(commands.place(documents, new Map([['bench#1', ['dye:floor', 3000, 3000, 0, 0] as Place]])));
    const footing = footingOf(judgements, 'bench#1');
    expect(footing?.tipDegrees).toBeCloseTo(16.7, 1);
    expect((footing?.pushKg ?? 0) / LB).toBeCloseTo(12, 5);
    // 600 lb on 24 × 36 in: 500 of its own, 100 on it.
    act(commands.correctObject('bench', { dimensionsText: 'H 30 x W 36 x D 24 in', weightKg: 500 * LB }));
    act(commands.place(documents, new Map([['trap#1', ['carrier:bench#1/0', 300, 300, 0, 0] as Place]])));
    expect(footingOf(judgements, 'bench#1')?.kPa).toBeNull();
    act(commands.correctObject('trap', { weightKg: 100 * LB }));
    expect(footingOf(judgements, 'bench#1')?.kPa).toBeCloseTo(4.79, 2);
    const told = judgements.cautionsOf('bench#1').find(({ kind }) => kind === 'floor load')?.what;
    expect(told).toContain('with what stands on it');
    act(commands.unplace(documents, ['trap#1']));
    expect(judgements.cautionsOf('bench#1').map(({ kind }) => kind)).not.toContain('floor load');
  });

  test('law: labels overlap nothing on their wall; they are kept clear where the show has them there, but for what moves', () => {
    const { documents, judgements, act } = made();
    const places = new Map<string, Place>([
      ['oil#1', ['dye:head', 1500, 1500, 0, 0]],
      ['hanging#1', ['dye:head', 4000, 1500, 0, 0]],
    ]);
    act(commands.place(documents, places));
    const labels = judgements.labelBoxesOn('dye:head');
    expect(labels.map(({ pieces }) => pieces)).toEqual([['oil#1'], ['hanging#1']]);
    const boxes = [...labels, ...judgements.elevationOf('dye:head')];
    for (const [n, one] of boxes.entries()) {
      for (const other of boxes.slice(n + 1)) {
        const across = Math.abs(one.xMm - other.xMm) - (one.widthMm + other.widthMm) / 2;
        const up = Math.abs(one.yMm - other.yMm) - (one.heightMm + other.heightMm) / 2;
        expect(Math.max(across, up)).toBeGreaterThanOrEqual(-1e-6);
      }
    }
    expect(judgements.keepClearOn('dye:head')).toHaveLength(0);
    act(commands.setSetting('labelsOnWalls', true));
    expect(judgements.keepClearOn('dye:head')).toHaveLength(2);
    expect(judgements.keepClearOn('dye:head', new Set(['oil#1']))).toHaveLength(1);
    // A person's side stands, even where it lies over something: that is a caution, on the piece and nowhere else.
    act(commands.labelOn(['oil#1'], 'below'));
    const below = judgements.labelBoxesOn('dye:head').find(({ pieces }) => pieces.includes('oil#1'));
    expect(below).toMatchObject({ side: 'below', chosen: true, xMm: 1500 });
    const kinds = (id: string) => judgements.cautionsOf(id).map(({ kind }) => kind);
    // Its foot is lower than a city museum service's 110 cm (practice.md 3).
    expect(kinds('oil#1')).toContain('label without room');
    expect(kinds('hanging#1')).not.toContain('label without room');
    act(commands.labelOn(['oil#1'], 'left'));
    expect(kinds('oil#1')).not.toContain('label without room');
    act(commands.place(documents, new Map([['oil#1', ['dye:head', 300, 1500, 0, 0] as Place]])));
    expect(judgements.cautionsOf('oil#1').map(({ what }) => what)).toContainEqual(
      expect.stringContaining('lies over the end of the wall'),
    );
    act(commands.labelOn(['oil#1'], 'none'));
    expect(judgements.labelBoxesOn('dye:head').map(({ pieces }) => pieces)).toEqual([['hanging#1']]);
    // Many close together have one key.
    const blocks = Array.from({ length: 8 }, (_, n) => `blocks#${n + 1}`);
    act(
      commands.place(documents, new Map(blocks.map((id, n) => [id, ['dye:left', 600 + n * 300, 1500, 0, 0] as Place]))),
    );
    act(commands.gather(documents, { name: 'Sixty impressions', intent: '', focal: null }, blocks));
    expect(judgements.labelBoxesOn('dye:left')).toMatchObject([
      { pieces: blocks, text: expect.stringContaining('A key to 8') },
    ]);
  });
});
