/** A lender's loan list to print, and as a file for a spreadsheet. */
import { loanListOf, toLoanCsv } from '@enfilade/shared/loan-list';
import { useShow } from '../sync/hooks.ts';
import { download, fileNameOf } from './download.ts';

export function LoanListLinks({ lender, name }: { readonly lender: string; readonly name: string }) {
  const { judgements, documents, base } = useShow();
  const withValues = documents.doc('private') !== undefined;
  return (
    <p className="lender-commands">
      <a href={`${base}/paper/loan-list.pdf?lender=${encodeURIComponent(lender)}`} target="_blank" rel="noreferrer">
        loan list, PDF<span className="spoken"> of {name}, in a new tab</span>
      </a>
      <button
        type="button"
        onClick={() =>
          download(
            `loan-list-${fileNameOf(name)}.csv`,
            toLoanCsv(loanListOf(judgements, lender, withValues), withValues),
            'text/csv;charset=utf-8',
          )
        }
      >
        as CSV<span className="spoken"> of {name}</span>
      </button>
    </p>
  );
}
