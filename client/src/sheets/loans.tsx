/** Loans, by lender: how far each has come, what is due, what goes against the lender's terms, what breaks when one falls away. */
import { hasFallen, isCountedOn, type LenderLoans, loansByLender } from '@enfilade/shared/loans';
import { breachesOf } from '@enfilade/shared/waiting-loans';
import { useMemo, useState } from 'react';
import { useShow } from '../sync/hooks.ts';
import { useRestingRoots } from '../sync/resting-roots.ts';
import { LenderSection } from './lender-section.tsx';
import './talk-pages.css';
import './loans.css';

/** The whole checklist is read for this page: it keeps up within this, ms. */
const REST_MS = 150;

export function Loans() {
  const { judgements } = useShow();
  // biome-ignore format: one list
  const version = useRestingRoots(REST_MS, 'objects', 'pieces', 'loans', 'places', 'rooms', 'lights', 'limits', 'settings', 'memberOf', 'vignettes', 'signatures', 'proposals', 'proposed', 'remarks', 'values');
  const [wanting, setWanting] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  const lenders = useMemo(() => loansByLender(judgements), [judgements, version]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version stands for what the documents hold
  const wants = useMemo(
    () =>
      new Set(
        lenders.flatMap(({ records }) =>
          records
            .filter(
              (record) =>
                (hasFallen(record.loan.status) && record.placed.length > 0) ||
                (!hasFallen(record.loan.status) &&
                  record.loan.status !== 'returned' &&
                  (!isCountedOn(record.loan.status) || breachesOf(judgements, record).length > 0)),
            )
            .map(({ objectId }) => objectId),
        ),
      ),
    [judgements, lenders, version],
  );
  const wanted = ({ records }: LenderLoans): number => records.filter(({ objectId }) => wants.has(objectId)).length;
  // Lenders with something to see to come first; among equals by name.
  const shown = lenders
    .map(({ lender, records }) => ({
      lender,
      records: wanting ? records.filter(({ objectId }) => wants.has(objectId)) : records,
    }))
    .filter(({ records }) => records.length > 0)
    .sort((a, b) => wanted(b) - wanted(a));
  return (
    <div className="talk-page loans">
      <header className="talk-head">
        <h1>Loans</h1>
        <p className="cap">{headText(lenders, wants.size)}</p>
        {lenders.length === 0 ? null : (
          <nav aria-label="Which loans">
            <button
              type="button"
              className={wanting ? 'cmd on' : 'cmd'}
              aria-pressed={wanting}
              onClick={() => setWanting(!wanting)}
            >
              only what wants something {wants.size}
            </button>
          </nav>
        )}
      </header>
      {shown.map(({ lender, records }) => (
        <LenderSection key={lender} lender={lender} records={records} wants={wants} />
      ))}
    </div>
  );
}

function headText(lenders: readonly LenderLoans[], wants: number): string {
  const records = lenders.reduce((sum, { records }) => sum + records.length, 0);
  if (records === 0) return 'Nothing is lent. A record with a lender’s name is listed here.';
  const from = `${records} ${records === 1 ? 'record' : 'records'} of ${lenders.length} ${lenders.length === 1 ? 'lender' : 'lenders'}.`;
  return wants === 0
    ? `${from} All are agreed, and nothing is known to go against their terms.`
    : `${from} ${wants === 1 ? 'One is' : `${wants} are`} not agreed, gone, or against a lender’s terms.`;
}

export default Loans;
