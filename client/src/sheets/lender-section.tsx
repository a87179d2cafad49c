/** One lender's loans: their list to print or to hand on, what they are insured for, and a row a record. */
import { type LentRecord, totalsOf } from '@enfilade/shared/loans';
import { useShow } from '../sync/hooks.ts';
import { LoanListLinks } from './loan-list-links.tsx';
import { LoanRow } from './loan-row.tsx';

interface LenderSectionProps {
  readonly lender: string;
  readonly records: readonly LentRecord[];
  readonly wants: ReadonlySet<string>;
}

export function LenderSection({ lender, records, wants }: LenderSectionProps) {
  const { documents } = useShow();
  const name = lender === '' ? 'A lender not named' : lender;
  const wanting = records.filter(({ objectId }) => wants.has(objectId)).length;
  return (
    <section className="lender" aria-label={name}>
      <div className="lender-about">
        <h2 className="it">{name}</h2>
        <p className="t1">
          {records.length} {records.length === 1 ? 'record' : 'records'}
          {wanting === 0 ? '' : `, ${wanting} to see to`}
        </p>
        {documents.doc('private') === undefined ? null : <Insured records={records} />}
        <LoanListLinks lender={lender} name={name} />
      </div>
      <ol>
        {records.map((record) => (
          <LoanRow key={record.objectId} record={record} />
        ))}
      </ol>
    </section>
  );
}

function Insured({ records }: { readonly records: readonly LentRecord[] }) {
  const { documents } = useShow();
  const { sums, without } = totalsOf(
    documents,
    records.map(({ objectId }) => objectId),
  );
  const texts = sums.map(({ currency, sum }) => `${currency} ${sum.toLocaleString('en-GB')}`);
  return (
    <p className="t1">
      {texts.length === 0 ? 'No value recorded' : `Insured for ${texts.join(' and ')}`}
      {texts.length > 0 && without > 0 ? `; ${without} without a value` : ''}
    </p>
  );
}
