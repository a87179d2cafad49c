/** How far the loans of Slow Water have come, what their lenders ask, and the light planned: one has withdrawn late. */
import type { Act } from '@enfilade/shared/acts';
import { correctObject, setSetting } from '@enfilade/shared/commands';
import { correctLoan } from '@enfilade/shared/loans';
import { finishSurface } from '@enfilade/shared/paint-schedule';
import type { Change } from '@enfilade/shared/root-snapshot';
import type { Loan, LoanStatus } from '@enfilade/shared/schema';
import { CHECKLIST, type DemoRecord, PARISH, PRINTWORKS, WEIR } from './checklist.ts';

const STATUS: Readonly<Record<string, LoanStatus>> = {
  'sluice-1': 'requested',
  'map-9': 'requested',
  'oil-8': 'approved',
  'trap-5': 'approved',
  'trap-6': 'approved',
  'book-6': 'approved',
  'book-7': 'approved',
  'book-8': 'approved',
  'mould-31': 'cancelled',
  'mould-32': 'cancelled',
  'vat-3': 'cancelled',
};
const REFERENCES: Readonly<Record<string, string>> = { [WEIR]: 'LW 26/4', [PARISH]: 'SO 7', [PRINTWORKS]: 'TPT 112' };

const MORE: Readonly<Record<string, Partial<Loan>>> = {
  'sluice-1': { terms: 'The lender’s keeper is there when it is set down.' },
  'map-7': { asksGlazing: true, terms: 'Acrylic that filters ultraviolet.' },
  'oil-2': { lowestFootMm: 700 },
  'oil-10': { humidity: '45–55 %', temperature: '18–22 °C' },
  'book-6': { asksCase: true, terms: 'A page is turned each month.' },
  'book-7': { asksCase: true },
  'book-8': { asksCase: true },
};

/** What a record's own note says of light, as the registrar typed it over. */
function luxOf({ notes }: DemoRecord): number | null {
  const [, lux] = /Light: (\d+) lux/.exec(notes) ?? [];
  return lux === undefined ? null : Number(lux);
}

export function fillLoans(perform: (act: Act) => void): void {
  for (const record of CHECKLIST) {
    if (record.lender === '') continue;
    const reference = REFERENCES[record.lender];
    const mostLux = luxOf(record);
    perform(
      correctLoan(record.id, {
        status: STATUS[record.id] ?? 'agreement signed',
        ...(reference === undefined ? {} : { reference }),
        ...(mostLux === null ? {} : { mostLux }),
        ...MORE[record.id],
      }),
    );
  }
  perform(correctObject('map-9', { glazing: 'glass' }));
  perform(setSetting('plannedLux', 50));
  perform({ name: 'plan the light', changes: [{ root: 'lights', key: 'counting:left', value: { lux: 150 } }] });
  const covering = { name: 'Block-printed paper', widthMm: 530, repeatMm: 530, rollMm: 10_050 };
  perform(finishSurface('counting:right', { covering }));
}

/** Two days on the road either way; the show's own days are `day`s from today. */
export function loanDays(day: (after: number) => string, hangBegins: number, closes: number): Change[] {
  return CHECKLIST.filter(({ lender, source }) => lender !== '' && source === 'loan').flatMap(({ id }): Change[] => [
    { root: 'loans', key: `${id}/from`, value: day(hangBegins - 5) },
    { root: 'loans', key: `${id}/arrives`, value: day(hangBegins - 3) },
    { root: 'loans', key: `${id}/leaves`, value: day(closes + 4) },
    { root: 'loans', key: `${id}/to`, value: day(closes + 6) },
  ]);
}
