import { standingCautionsOf } from '@enfilade/shared/accepted';
import * as commands from '@enfilade/shared/commands';
import { Judgements } from '@enfilade/shared/judgements';
import { lightOf, lightOn, openDaysOf, planLight, readLight } from '@enfilade/shared/light-plan';
import { loanListOf, toLoanCsv } from '@enfilade/shared/loan-list';
import { loanListSheetsOf } from '@enfilade/shared/loan-list-sheet';
import { lossOf, standInsOf } from '@enfilade/shared/loan-loss';
import { agreeToPlaces, correctLoan, dueOf, loanOf, loansByLender, moneyFrom, totalsOf } from '@enfilade/shared/loans';
import { practiceProfileOf, setLimit } from '@enfilade/shared/practice-limits';
import type { Place } from '@enfilade/shared/schema';
import { canonicalVignetteOf, digestOf, toCanonicalText } from '@enfilade/shared/sign-off';
import { waitingOf } from '@enfilade/shared/waiting';
import { wallLightOf } from '@enfilade/shared/wall-light';
import { describe, expect, test } from 'vitest';
import { sampleShow, work } from './sample-show.ts';

const WEIR = 'Lower Weir Conservancy';

/** A lent map on the east wall of the Dye House, its agreement signed, and another of the museum's own, unplaced. */
function lent() {
  const { documents, history } = sampleShow();
  const map = {
    dimensionsText: '58 × 74 cm',
    medium: 'Ink on paper',
    type: 'map',
    hardwareText: '2 D-rings, drop 6 cm',
  };
  history.perform(
    commands.addObjects(documents, [
      {
        id: 'map',
        object: work('L.2026.7', {
          ...map,
          title: 'Flood map, 1823',
          lender: WEIR,
          source: 'loan',
          creditLine: `Lent by the ${WEIR}`,
        }),
        private: { value: 'EUR 5,200', contact: 'keeper of gear, weir house' },
      },
      { id: 'own map', object: work('OM 12', { ...map, title: 'River map, 1790' }) },
    ]),
  );
  history.perform(commands.place(documents, new Map([['map#1', ['dye:head', 2000, 1500, 0, 0] as Place]])));
  history.perform(correctLoan('map', { status: 'agreement signed' }));
  const judgements = new Judgements(documents, { get: () => undefined });
  const said = (kind: string): string[] =>
    judgements.cautionsOf('map#1').flatMap((caution) => (caution.kind === kind ? [caution.what] : []));
  const act = (made: Parameters<typeof history.perform>[0]) => history.perform(made);
  return { documents, history, judgements, said, act };
}

describe('loans', () => {
  test('story: a breach is told as it arises, in light, height, days, glazing and moves, and goes with its cause', () => {
    const { documents, judgements, said, act } = lent();
    act(correctLoan('map', { mostLux: 50 }));
    expect(said('loan terms')).toEqual([]);
    act(planLight(documents, 'dye:head', 150));
    expect(said('loan terms')).toEqual(['The lender allows 50 lux; 150 is planned.']);
    act(planLight(documents, 'map#1', 50));
    expect(said('loan terms')).toEqual([]);
    act(correctLoan('map', { lowestFootMm: 1230 }));
    // Its foot is 1500 − 290 above the level plane, and the floor falls 30 mm over 6 m: 10 mm under its centre.
    expect(said('loan terms')).toEqual(['Its foot is 122.0 cm above the floor; the lender asks for 123.0 cm.']);
    act(correctLoan('map', { lowestFootMm: null, asksGlazing: true }));
    expect(said('loan terms')).toEqual(['The lender asks for glazing.']);
    act(commands.correctObject('map', { glazing: 'acrylic' }));
    expect(said('loan terms')).toEqual([]);
    act(commands.setSetting('closes', '2026-10-01'));
    act(correctLoan('map', { leaves: '2026-09-20' }));
    expect(said('loan dates')).toEqual(['It is to go back by 2026-09-20; the show ends 2026-10-01.']);
    act(correctLoan('map', { leaves: '', asksConsent: true }));
    expect(said('loan terms')[0]).toContain('agreed to no place yet');
    act(agreeToPlaces(judgements, 'map'));
    expect(said('loan terms')).toEqual([]);
    act(commands.move(documents, ['map#1'], { dxMm: 120, dyMm: 0 }));
    expect(said('loan terms')).toEqual([
      'The lender is asked before each move; it has been moved by 12.0 cm since they agreed.',
    ]);
  });

  test('story: what is not agreed waits for the registrar, with the lender’s terms; a loan declined waits for the curator', () => {
    const { judgements, act } = lent();
    const ids = () =>
      waitingOf(judgements).flatMap(({ id, kind, roles }) => (kind === 'loan' ? [`${id}: ${roles.join()}`] : []));
    expect(ids()).toEqual([]);
    act(correctLoan('map', { status: 'requested' }));
    expect(ids()).toEqual([`loans ${WEIR}: registrar`]);
    act(correctLoan('map', { status: 'approved', asksCase: true }));
    expect(ids().sort()).toEqual([`loans ${WEIR}: registrar`, `terms ${WEIR}: registrar`]);
    act(correctLoan('map', { status: 'declined', asksCase: false }));
    expect(ids()).toEqual(['fallen map: curator']);
    expect(waitingOf(judgements).find(({ id }) => id === 'fallen map')?.detail).toBe(
      `Declined by ${WEIR}; it is still placed`,
    );
  });

  test('story: a loan that falls away says what breaks, whom to tell, and what could stand in', () => {
    const { documents, judgements, act } = lent();
    act(commands.gather(documents, { name: 'High water', intent: '', focal: 'map#1' }, ['map#1', 'trap#1'], 'high'));
    act(commands.setSetting('hangBegins', '2026-06-08'));
    act(commands.setSetting('opens', '2026-06-27'));
    const canonical = toCanonicalText(canonicalVignetteOf(documents, 'high') as never);
    const value = {
      vignetteId: 'high',
      personId: 'dc',
      name: 'Dov Castellane',
      role: 'curator',
      at: '2026-05-12',
      digest: digestOf(canonical),
      canonical,
    };
    documents.write([{ root: 'signatures', key: 'high/dc', value }], 'server');
    expect(lossOf(judgements, 'map', '2026-06-10')).toEqual({
      places: [{ on: 'Dye House, east wall', pieces: 1 }],
      carried: [],
      vignettes: [
        { vignetteId: 'high', name: 'High water', focal: true, pieces: 1, of: 2, signers: ['Dov Castellane'] },
      ],
      proposals: [],
      days: [{ what: 'the show opens', day: '2026-06-27' }],
      tell: ['Dov Castellane'],
    });
    expect(standInsOf(judgements, 'map')[0]).toEqual({
      id: 'own map',
      fit: 1,
      reasons: ['the same size within a hand', 'also a map', 'in the house'],
    });
    act(correctLoan('map', { status: 'declined' }));
    expect(waitingOf(judgements).find(({ id }) => id === 'fallen map')).toMatchObject({
      lost: 'map',
      detail: `Declined by ${WEIR}; it is still placed. High water loses its focal work; the word of Dov Castellane on it falls away. To be told: Dov Castellane`,
    });
    // What fell away itself, or stands already, stands in for nothing.
    act(commands.place(documents, new Map([['own map#1', ['dye:head', 4000, 1500, 0, 0] as Place]])));
    expect(standInsOf(judgements, 'map').map(({ id }) => id)).not.toContain('own map');
  });

  test('law: values and contacts stand in the loan list of those who may read them, and in no other', () => {
    const { judgements, documents } = lent();
    const stamp = { version: 1, at: '', by: '' };
    const secret = /5,200|weir house|EUR/;
    const open = [
      toLoanCsv(loanListOf(judgements, WEIR, false), false),
      JSON.stringify(loanListSheetsOf(judgements, WEIR, false, stamp)),
      ...(['checklist', 'rooms', 'hang', 'talk', 'record'] as const).map((name) =>
        JSON.stringify(documents.doc(name)?.toJSON()),
      ),
    ];
    for (const text of open) expect(text).not.toMatch(secret);
    expect(open[0]).toContain('Flood map, 1823');
    expect(toLoanCsv(loanListOf(judgements, WEIR, true), true)).toMatch(/EUR 5,200.*weir house/);
    expect(JSON.stringify(loanListSheetsOf(judgements, WEIR, true, stamp))).toContain('EUR 5,200');
  });

  test('story: one lender of forty records fills sheets that all bear their title and stamp', () => {
    const { documents, history, judgements } = lent();
    const many = Array.from({ length: 40 }, (_, n) => ({
      id: `many ${n}`,
      object: work(`L.2026.${100 + n}`, {
        lender: WEIR,
        source: 'loan' as const,
        medium: 'Willow, iron, a label in ink',
      }),
    }));
    history.perform(commands.addObjects(documents, many));
    const sheets = loanListSheetsOf(judgements, WEIR, false, { version: 3, at: 'today', by: 'Ama Trevithian' });
    expect(sheets.length).toBeGreaterThan(1);
    const texts = sheets.map(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
    for (const page of texts) expect(page).toEqual(expect.arrayContaining([WEIR, 'Version 3']));
    for (const { object } of many) expect(texts.flat()).toContain(object.number);
    expect(loanListSheetsOf(judgements, 'nobody', false, { version: 0, at: '', by: '' })).toEqual([]);
  });

  test('story: loans are listed by lender and number, and each says what is due next', () => {
    const { judgements, act } = lent();
    act(commands.setSetting('hangBegins', '2026-06-08'));
    expect(loansByLender(judgements)).toMatchObject([
      { lender: WEIR, records: [{ objectId: 'map', placed: ['map#1'] }] },
    ]);
    const due = () => dueOf(judgements, loanOf(judgements.documents, 'map'));
    expect(due()).toEqual({ what: 'to be fetched', day: '2026-06-08' });
    act(correctLoan('map', { from: '2026-06-01' }));
    expect(due()?.day).toBe('2026-06-01');
    act(correctLoan('map', { status: 'returned' }));
    expect(due()).toBeNull();
    // A status that is none, from a broken client, is a wish.
    act(correctLoan('map', { status: 'nonsense' as never }));
    expect(loanOf(judgements.documents, 'map').status).toBe('wish');
  });

  test('story: sums are added up by currency; what has none is counted, never guessed', () => {
    const { documents, act } = lent();
    expect(moneyFrom('EUR 5,200')).toEqual({ currency: 'EUR', sum: 5200 });
    expect(moneyFrom('5 200,50 GBP')).toEqual({ currency: 'GBP', sum: 5200.5 });
    expect(moneyFrom('USD 1.250.000')).toEqual({ currency: 'USD', sum: 1_250_000 });
    for (const text of ['5200', '', 'EUR', 'EUR 5 GBP', 'about EUR 9', 'eur 5']) expect(moneyFrom(text)).toBeNull();
    act(commands.correctPrivate('own map', { value: '900' }));
    expect(totalsOf(documents, ['map', 'own map'])).toEqual({ sums: [{ currency: 'EUR', sum: 5200 }], without: 1 });
  });
});

describe('light over the show', () => {
  // 50 lx × 8 h × 6 d × 13 wk = 31,200 lx·h: practice 10.9, CIE 157, limits from memory.
  test('reference: thirteen weeks at 50 lux are 31,200 lx·h, twice an R3 year and a fifth of an R2 year', () => {
    const { judgements, act } = lent();
    act(commands.setSetting('opens', '2026-01-05'));
    act(commands.setSetting('closes', '2026-04-05'));
    expect(openDaysOf(judgements)).toBe(78);
    expect(lightOf(judgements, 'map#1')?.budget).toBeNull();
    act(commands.setSetting('plannedLux', 50));
    expect(lightOn(judgements, 'map#1')).toEqual({ lux: 50, from: 'planned' });
    expect(lightOf(judgements, 'map#1')?.budget).toMatchObject({ luxHours: 31_200, over: false, years: 0.208 });
    act(commands.correctObject('map', { medium: 'silk' }));
    expect(lightOf(judgements, 'map#1')?.budget).toMatchObject({
      luxHours: 31_200,
      over: true,
      years: 2.08,
      lastsDays: 37,
    });
    act(commands.correctObject('map', { medium: 'cast iron' }));
    expect(lightOf(judgements, 'map#1')).toBeNull();
  });

  // R3 over 78 days of 8 h: 15,000 / 624 = 24.0 lx, as practice 10.11 reckons 23.8 for 90 days of 7 h; CIE 157, from memory.
  test('reference: on a wall the most sensitive governs, and what a meter read goes before what is planned', () => {
    const { documents, judgements, act } = lent();
    act(commands.setSetting('opens', '2026-01-05'));
    act(commands.setSetting('closes', '2026-04-05'));
    act(commands.setSetting('plannedLux', 50));
    act(commands.correctObject('oil', { medium: 'oil on canvas' }));
    act(commands.place(documents, new Map([['oil#1', ['dye:head', 4500, 1500, 0, 0] as Place]])));
    expect(wallLightOf(judgements, 'dye:head')).toMatchObject({
      there: { lux: 50, from: 'planned' },
      governing: 'R2',
      allows: { lux: 50 },
    });
    act(commands.correctObject('map', { medium: 'silk' }));
    const wall = wallLightOf(judgements, 'dye:head');
    expect(wall).toMatchObject({ governing: 'R3', days: 78 });
    expect(wall.allows?.lux).toBeCloseTo(24, 1);
    expect(wall.rows.map(({ pieces }) => pieces)).toEqual([['map#1'], ['oil#1']]);
    act(readLight(documents, 'dye:head', { lux: 80, by: 'Piet Oyelaran', on: '2026-01-06' }));
    act(planLight(documents, 'dye:head', 20));
    expect(lightOn(judgements, 'map#1')).toEqual({ lux: 80, from: 'read' });
    act(correctLoan('map', { mostLux: 50 }));
    expect(judgements.cautionsOf('map#1').map(({ what }) => what)).toContain(
      'The lender allows 50 lux; 80 was read there.',
    );
    act(planLight(documents, 'map#1', 15));
    expect(lightOn(judgements, 'map#1')).toEqual({ lux: 15, from: 'planned' });
    act(readLight(documents, 'dye:head', null));
    expect(lightOn(judgements, 'oil#1')).toEqual({ lux: 20, from: 'planned' });
  });

  test('story: a museum’s own limit holds at once and is undone; another jurisdiction is another begin', () => {
    const { documents, history, judgements, act } = lent();
    act(commands.setSetting('opens', '2026-01-05'));
    act(commands.setSetting('closes', '2026-04-05'));
    act(commands.setSetting('plannedLux', 50));
    const bright = () => lightOf(judgements, 'map#1')?.budget?.tooBright;
    expect(bright()).toBe(false);
    act(setLimit('luxR2', { value: 40, source: 'our conservator' }));
    expect(bright()).toBe(true);
    expect(judgements.cautionsOf('map#1').find(({ kind }) => kind === 'too much light')?.source).toBe(
      'our conservator',
    );
    history.undo();
    expect(bright()).toBe(false);
    act(commands.setSetting('jurisdiction', 'United Kingdom'));
    expect(practiceProfileOf(documents).limits.pathMm.value).toBe(1200);
    // Nonsense from a broken client leaves the limit as it was.
    act(setLimit('luxR2', { value: -1, source: '' }));
    expect(practiceProfileOf(documents).limits.luxR2.value).toBe(50);
  });
});

describe('accepted cautions', () => {
  test('law: a word falls away when what was accepted has changed, and stands again when it is as it was', () => {
    const { documents, history, judgements } = lent();
    const standing = () =>
      standingCautionsOf(judgements, 'map#1').find(({ caution }) => caution.kind === 'weight not known');
    const { digest, caution } = standing() ?? { digest: '', caution: { kind: 'weight not known', what: '' } };
    const value = {
      pieceId: 'map#1',
      kind: caution.kind,
      digest,
      what: caution.what,
      reason: 'Lifted by one.',
      wordOf: '',
      personId: 'po',
      name: 'Piet Oyelaran',
      role: 'preparator',
      at: '2026-05-12T09:00:00.000Z',
    };
    documents.write([{ root: 'acceptances', key: `map#1|${digest}`, value }], 'server');
    expect(standing()?.accepted?.name).toBe('Piet Oyelaran');
    // In inches it is the same caution.
    const inches = { length: (mm: number) => `${(mm / 25.4).toFixed(1)} in`, weight: (kg: number) => `${kg} kg` };
    expect(
      standingCautionsOf(judgements, 'map#1', inches).find((one) => one.digest === digest)?.accepted,
    ).not.toBeNull();
    history.perform(commands.place(documents, new Map([['map#1', ['dye:left', 2000, 1500, 0, 0] as Place]])));
    expect(standing()).toMatchObject({ accepted: null, lapsed: { name: 'Piet Oyelaran' } });
    history.undo();
    expect(standing()).toMatchObject({ accepted: { name: 'Piet Oyelaran' }, lapsed: null });
    // Taken back it is open again, and neither forgotten nor told as fallen away.
    const by = { reason: 'Weighed again.', personId: 'po', name: 'Piet Oyelaran', role: 'preparator', at: value.at };
    documents.write(
      [
        { root: 'acceptances', key: `map#1|${digest}`, value: undefined },
        { root: 'acceptances', key: `map#1|${digest}|${value.at}`, value: { ...value, withdrawn: by } },
      ],
      'server',
    );
    expect(standing()).toMatchObject({ accepted: null, lapsed: null, withdrawn: { withdrawn: by } });
    history.perform(commands.correctObject('map', { weightKg: 4 }));
    expect(standing()).toBeUndefined();
  });
});
