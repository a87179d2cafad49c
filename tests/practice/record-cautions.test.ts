import { ACCEPTORS, acceptorsOf, CAUTION_SUBJECTS, mayAccept } from '@enfilade/practice/accepting';
import { cautionText, DEFERRAL } from '@enfilade/practice/cautions';
import { type LoanFacts, loanCautionsOf } from '@enfilade/practice/loan-cautions';
import { type RecordFacts, recordCautionsOf } from '@enfilade/practice/record-cautions';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const words = { length: (mm: number) => `${mm / 10} cm` };
const mould: RecordFacts = {
  materials: 'copper',
  about: 'mould',
  earliestYear: 1880,
  latestYear: 1900,
  held: 'held',
  glazed: false,
  cased: false,
  widthMm: 300,
  heightMm: 300,
  sizeKnown: true,
  placed: true,
};
const kinds = (facts: RecordFacts) => recordCautionsOf(facts).map(({ kind }) => kind);
const loan = {
  status: 'received',
  from: '2027-01-01',
  to: '2027-12-01',
  showFrom: '2027-03-01',
  showTo: '2027-10-01',
  placed: true,
  mostLux: 50,
  plannedLux: 50,
  asksGlazing: false,
  glazed: false,
  asksCase: false,
  cased: false,
  lowestFootMm: null,
  footMm: 900,
  highestTopMm: null,
  topMm: 1500,
  asksConsent: false,
  sinceConsent: null,
};

describe('cautions from records', () => {
  test('story: a copper mould gives none; old green paper, a stuffed bird and a candle do, each to whom it concerns', () => {
    expect(recordCautionsOf(mould)).toEqual([]);
    expect(kinds({ ...mould, materials: 'printed paper', about: 'green wallpaper' })).toEqual(['arsenic']);
    expect(kinds({ ...mould, materials: 'feathers, glass', about: 'stuffed heron' })).toEqual(['pesticide']);
    expect(kinds({ ...mould, about: 'candle stand' })).toEqual(['open flame']);
    expect(kinds({ ...mould, materials: 'painted wood' })).toEqual(['lead paint', 'light class not known']);
    expect(kinds({ ...mould, materials: 'willow', held: 'bought' })).toEqual(['pests']);
    expect(kinds({ ...mould, materials: 'willow' })).toEqual([]);
  });

  test('story: new paint holds no lead; paint of no date is taken to be old', () => {
    const gate = { ...mould, materials: 'iron', about: 'painted gate' };
    expect(kinds({ ...gate, earliestYear: 1990, latestYear: 2000 })).toEqual([]);
    expect(kinds({ ...gate, earliestYear: null, latestYear: null })).toEqual(['lead paint']);
  });

  test('story: silk lit a season long says by how much, and as what it was taken', () => {
    const lit = { ...mould, materials: 'silk', exposures: [{ lux: 50, hoursPerDay: 8, days: 78 }] };
    expect(recordCautionsOf(lit)).toMatchObject([{ kind: 'too much light', ask: 'the conservator' }]);
    expect(recordCautionsOf(lit)[0]?.what).toBe('As R3 (silk), its light takes 2.1 years’ budget of one year.');
    expect(kinds({ ...lit, materials: 'copper' })).toEqual([]);
    expect(kinds({ ...mould, materials: '' })).toEqual(['light class not known']);
  });

  test('story: small things within reach and pastels under glazing are told', () => {
    expect(kinds({ ...mould, widthMm: 80, heightMm: 90 })).toEqual(['small and open']);
    expect(kinds({ ...mould, widthMm: 80, heightMm: 90, cased: true })).toEqual([]);
    expect(kinds({ ...mould, materials: 'pastel on paper', glazed: true })).toEqual(['glazing']);
  });

  test('story: a loan’s breaches are told as they arise', () => {
    const said = (facts: Partial<LoanFacts>) => loanCautionsOf({ ...loan, ...facts }, words).map(({ kind }) => kind);
    expect(said({})).toEqual([]);
    expect(said({ status: 'requested' })).toEqual(['loan not agreed']);
    expect(said({ status: 'requested', placed: false })).toEqual([]);
    expect(said({ to: '2027-09-01' })).toEqual(['loan dates']);
    expect(said({ from: '2027-04-01' })).toEqual(['loan dates']);
    expect(said({ plannedLux: 51, asksGlazing: true, asksCase: true })).toEqual([
      'loan terms',
      'loan terms',
      'loan terms',
    ]);
    expect(loanCautionsOf({ ...loan, lowestFootMm: 1000 }, words)[0]?.what).toBe(
      'Its foot is 90 cm above the floor; the lender asks for 100 cm.',
    );
    expect(loanCautionsOf({ ...loan, highestTopMm: 1490 }, words)[0]?.what).toBe(
      'Its top is 150 cm above the floor; the lender allows 149 cm.',
    );
    expect(said({ highestTopMm: 1500, lowestFootMm: 900 })).toEqual([]);
    const consent = (sinceConsent: LoanFacts['sinceConsent']) =>
      loanCautionsOf({ ...loan, asksConsent: true, sinceConsent }, words).map(({ what }) => what);
    expect(consent(0)).toEqual([]);
    expect(consent(10)).toEqual([]);
    expect(consent(60)[0]).toContain('moved by 6 cm since they agreed');
    expect(consent('elsewhere')[0]).toContain('moved elsewhere since');
    expect(consent(null)[0]).toContain('agreed to no place yet');
    expect(said({ sinceConsent: 900 })).toEqual([]);
  });

  test('law: whatever a record says, each caution names what, whom and on what ground, defers, and never promises', () => {
    const bits = fc.constantFrom(
      'silk ',
      'painted ',
      'taxidermy ',
      'pastel ',
      'mirror ',
      'stove ',
      'lamp ',
      'willow ',
      'zzz ',
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(bits).map((each) => each.join('')),
    );
    const year = fc.option(fc.integer({ min: -3000, max: 2030 }));
    fc.assert(
      fc.property(text, text, year, year, fc.boolean(), (materials, about, earliestYear, latestYear, placed) => {
        const exposures = [{ lux: 300, hoursPerDay: 10, days: 300 }];
        const facts = { ...mould, materials, about, earliestYear, latestYear, placed, glazed: true, exposures };
        for (const caution of recordCautionsOf(facts)) {
          expect(Object.hasOwn(CAUTION_SUBJECTS, caution.kind)).toBe(true);
          expect([caution.ask, caution.source].includes('')).toBe(false);
          expect(cautionText(caution).endsWith(DEFERRAL)).toBe(true);
          expect(caution.what.replace(/“.*”/su, '')).not.toMatch(/\bsafe|NaN|undefined|Infinity/i);
        }
      }),
      { seed: 31, numRuns: 500 },
    );
  });
});

describe('accepting', () => {
  test('story: each kind is accepted by whoever is competent for it, and by nobody else', () => {
    expect(mayAccept('floor load', 'preparator')).toBe(true);
    expect(mayAccept('floor load', 'lead')).toBe(false);
    expect(mayAccept('too much light', 'conservator')).toBe(true);
    expect(mayAccept('too much light', 'registrar')).toBe(false);
    expect(mayAccept('too much light', 'registrar', 'conservator')).toBe(true);
    expect(mayAccept('too much light', 'registrar', 'curator')).toBe(false);
    expect(mayAccept('way out', 'lead')).toBe(true);
    expect(mayAccept('way out', 'preparator')).toBe(false);
    expect(mayAccept('loan terms', 'registrar')).toBe(true);
    expect(mayAccept('loan terms', 'curator', 'registrar')).toBe(false);
  });

  test('law: every kind has somebody, no guest artist, curator or viewer accepts any', () => {
    for (const kind of Object.keys(CAUTION_SUBJECTS) as (keyof typeof CAUTION_SUBJECTS)[]) {
      expect(acceptorsOf(kind).length).toBeGreaterThan(0);
      for (const role of ['guest artist', 'curator', 'viewer', ''])
        expect(mayAccept(kind, role, 'conservator')).toBe(false);
    }
    expect(Object.keys(ACCEPTORS)).toHaveLength(4);
  });
});
