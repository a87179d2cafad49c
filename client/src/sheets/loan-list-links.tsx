/** A lender's loan list to print, and as files for a spreadsheet. */
import { loanListOf, loanListTable, toLoanCsv } from '@enfilade/shared/loan-list';
import { useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useShow } from '../sync/hooks.ts';
import { download, fileNameOf } from './download.ts';
import { takeWorkbook } from './take-workbook.ts';

export function LoanListLinks({ lender, name }: { readonly lender: string; readonly name: string }) {
  const { judgements, documents, base } = useShow();
  const [trouble, setTrouble] = useState('');
  const withValues = documents.doc('private') !== undefined;
  const file = `loan-list-${fileNameOf(name)}`;
  const rows = () => loanListOf(judgements, lender, withValues);

  const takeXlsx = async (): Promise<void> => {
    setTrouble('');
    const table = loanListTable(rows(), withValues);
    const { came, trouble: why } = await takeWorkbook(table, 'Loan list', `${file}.xlsx`, new AbortController().signal);
    setTrouble(why);
    if (came) say(`The loan list of ${name} is out as XLSX.`);
  };

  return (
    <>
      <p className="lender-commands">
        <a href={`${base}/paper/loan-list.pdf?lender=${encodeURIComponent(lender)}`} target="_blank" rel="noreferrer">
          loan list, PDF<span className="spoken"> of {name}, in a new tab</span>
        </a>
        <button type="button" onClick={() => void takeXlsx()}>
          as XLSX<span className="spoken"> of {name}</span>
        </button>
        <button
          type="button"
          onClick={() => download(`${file}.csv`, toLoanCsv(rows(), withValues), 'text/csv;charset=utf-8')}
        >
          as CSV<span className="spoken"> of {name}</span>
        </button>
      </p>
      {trouble === '' ? null : <p role="alert">{trouble}</p>}
    </>
  );
}
