/** What can be taken out of the show: the checklist as a table, as a IIIF manifest, or the whole show to carry elsewhere. */
import { csvFrom } from '@enfilade/records/checklist-csv';
import { checklistTable } from '@enfilade/shared/checklist-table';
import { DEFAULT_SETTINGS } from '@enfilade/shared/schema';
import { mayBringIn, mayRead } from '@enfilade/shared/seats';
import { useState } from 'react';
import { say } from '../shell/live-region.tsx';
import { useRoots, useShow } from '../sync/hooks.ts';
import { download, fileNameOf } from './download.ts';
import { takeWorkbook } from './take-workbook.ts';
import './take-out.css';

export function TakeOut() {
  const { documents, me, pictures } = useShow();
  useRoots('objects', 'values', 'settings');
  const [withPrivate, setWithPrivate] = useState(false);
  const [working, setWorking] = useState<AbortController | null>(null);
  const [trouble, setTrouble] = useState('');
  const { role } = me.person;
  const count = documents.all('objects').size;
  const name = fileNameOf(String(documents.get('settings', 'title') ?? DEFAULT_SETTINGS.title));
  const mayPrivate = mayRead(role, 'private');
  const table = (): string[][] => checklistTable(documents, { withPrivate: mayPrivate && withPrivate });

  const takeCsv = (): void => {
    // The mark tells spreadsheets that the text is UTF-8.
    download(`${name}-checklist.csv`, `\ufeff${csvFrom(table())}`, 'text/csv;charset=utf-8');
    say('The checklist is out as CSV.');
  };
  const takeXlsx = async (): Promise<void> => {
    const control = new AbortController();
    setWorking(control);
    setTrouble('');
    const { came, trouble: why } = await takeWorkbook(table(), 'Checklist', `${name}-checklist.xlsx`, control.signal);
    setWorking(null);
    setTrouble(why);
    if (came) say('The checklist is out as XLSX.');
  };

  return (
    <div className="take-out">
      <h1>Take out</h1>
      <section aria-label="The checklist as a table">
        <h2>The checklist as a table</h2>
        <p className="cap">
          {count === 1 ? 'One record' : `${count} records`}, as they stand now, under headings that Bring in reads
          again. In the workbook every number is text, so that no spreadsheet turns one into a date.
        </p>
        {mayPrivate ? (
          <p className="to-check">
            <input
              id="to-private"
              type="checkbox"
              checked={withPrivate}
              onChange={(event) => setWithPrivate(event.target.checked)}
            />
            <label htmlFor="to-private">
              with values, prices, storage places and contacts: for those alone who may read them here
            </label>
          </p>
        ) : null}
        <p className="to-commands">
          <button type="button" className="act" disabled={count === 0} onClick={takeCsv}>
            Checklist, CSV
          </button>
          <button
            type="button"
            className="act"
            disabled={count === 0 || working !== null}
            onClick={() => void takeXlsx()}
          >
            Checklist, XLSX
          </button>
          {working === null ? null : (
            <span role="status">
              writing the workbook{' '}
              <button type="button" onClick={() => working.abort()}>
                stop
              </button>
            </span>
          )}
        </p>
        {trouble === '' ? null : <p role="alert">{trouble}</p>}
      </section>
      <section aria-label="The checklist as a IIIF manifest">
        <h2>The checklist as a IIIF manifest</h2>
        <p className="cap">
          Presentation 3, a canvas for each record that has a picture, with its true size where it is sure. Its pictures
          are this server’s and open where this seat is open.
        </p>
        <p className="to-commands">
          <a className="act" href={`${pictures.base}/manifest.json`} download={`${name}-manifest.json`}>
            IIIF manifest
          </a>
        </p>
      </section>
      {mayBringIn(role) ? (
        <section aria-label="The whole show">
          <h2>The whole show</h2>
          <p className="cap">
            One open file: every fact of the show, what is private too, kept states and frozen lists, and the pictures
            as they were brought in. A lead takes it into an empty show under Bring in, and nothing is lost. Keep it as
            you would the values in it.
          </p>
          <p className="to-commands">
            <a className="act" href={`${pictures.base}/bundle`} download={`${name}.show.zip`}>
              Whole show, zip
            </a>
          </p>
        </section>
      ) : null}
    </div>
  );
}
