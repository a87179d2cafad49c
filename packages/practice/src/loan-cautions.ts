/** Where a place or a plan goes against what a lender asks. */
import type { Caution, CautionWords } from './caution.ts';

export interface LoanFacts {
  readonly status: string;
  /** ISO dates; null: open. Empty strings never: they are no dates. */
  readonly from: string | null;
  readonly to: string | null;
  readonly showFrom: string | null;
  readonly showTo: string | null;
  readonly placed: boolean;
  readonly mostLux: number | null;
  readonly plannedLux: number | null;
  /** The light is what a meter read there. */
  readonly luxRead?: boolean;
  readonly asksGlazing: boolean;
  readonly glazed: boolean;
  readonly asksCase: boolean;
  readonly cased: boolean;
  readonly lowestFootMm: number | null;
  readonly footMm: number | null;
  readonly highestTopMm: number | null;
  readonly topMm: number | null;
  /** Each move is asked of the lender first. */
  readonly asksConsent: boolean;
  /** How far it stands from where the lender agreed to: mm, `elsewhere` on another surface, null where they have not been asked. */
  readonly sinceConsent: number | 'elsewhere' | null;
}

/** A hook's own play is no move. Own rule, no source. */
const CONSENT_MM = 10;

/** From agreement signed on, a loan may be counted on. Common practice, no source. */
const AGREED = new Set(['agreement signed', 'in transit', 'received', 'installed']);
const SOURCE = 'the lender’s terms';

/** Breaches of a loan's terms as they stand; empty where none is known. Source: the lender's own terms. */
export function loanCautionsOf(loan: LoanFacts, words: Pick<CautionWords, 'length'>): readonly Caution[] {
  const cautions: Caution[] = [];
  const say = (kind: Caution['kind'], what: string) =>
    cautions.push({ kind, what, ask: 'the registrar', source: SOURCE });
  if (loan.placed && !AGREED.has(loan.status))
    say('loan not agreed', `It is placed, and its loan is “${loan.status}”.`);
  // ISO dates sort as they are written.
  if (loan.from !== null && loan.showFrom !== null && loan.from > loan.showFrom) {
    say('loan dates', `It may come from ${loan.from} on; the show opens ${loan.showFrom}.`);
  }
  if (loan.to !== null && loan.showTo !== null && loan.to < loan.showTo) {
    say('loan dates', `It is to go back by ${loan.to}; the show ends ${loan.showTo}.`);
  }
  if (!loan.placed) return cautions;
  if (loan.mostLux !== null && loan.plannedLux !== null && loan.plannedLux > loan.mostLux) {
    say(
      'loan terms',
      `The lender allows ${loan.mostLux} lux; ${loan.plannedLux} ${loan.luxRead === true ? 'was read there' : 'is planned'}.`,
    );
  }
  if (loan.asksGlazing && !loan.glazed) say('loan terms', 'The lender asks for glazing.');
  if (loan.asksCase && !loan.cased) say('loan terms', 'The lender asks for a case.');
  if (loan.lowestFootMm !== null && loan.footMm !== null && loan.footMm < loan.lowestFootMm) {
    say(
      'loan terms',
      `Its foot is ${words.length(loan.footMm)} above the floor; the lender asks for ${words.length(loan.lowestFootMm)}.`,
    );
  }
  if (loan.highestTopMm !== null && loan.topMm !== null && loan.topMm > loan.highestTopMm) {
    say(
      'loan terms',
      `Its top is ${words.length(loan.topMm)} above the floor; the lender allows ${words.length(loan.highestTopMm)}.`,
    );
  }
  if (loan.asksConsent && (loan.sinceConsent === null || loan.sinceConsent === 'elsewhere')) {
    const where = loan.sinceConsent === null ? 'they have agreed to no place yet' : 'it has been moved elsewhere since';
    say('loan terms', `The lender is asked before each move, and ${where}.`);
  } else if (loan.asksConsent && typeof loan.sinceConsent === 'number' && loan.sinceConsent > CONSENT_MM) {
    const far = words.length(loan.sinceConsent);
    say('loan terms', `The lender is asked before each move; it has been moved by ${far} since they agreed.`);
  }
  return cautions;
}
