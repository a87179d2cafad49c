/** The loan of a thing on its card: how far it has come, and behind its heading all that is agreed. */
import { isLent, loanOf } from '@enfilade/shared/loans';
import type { ObjectId } from '@enfilade/shared/schema';
import { useRoots, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { CardGroup } from './card-group.tsx';
import { LoanFields } from './loan-fields.tsx';

export function LoanBlock({ objectId }: { readonly objectId: ObjectId }) {
  const { documents } = useShow();
  useRoots('loans', 'objects');
  if (!isLent(documents, objectId)) return null;
  return (
    <CardGroup name="Loan" brief={loanOf(documents, objectId).status}>
      <LoanFields objectId={objectId} />
      <p className="t1">
        <a href={toAddress({ sheet: 'loans' })}>all loans</a>
      </p>
    </CardGroup>
  );
}
