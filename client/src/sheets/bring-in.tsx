/** Bring in a checklist and pictures: read, reviewed beside the source, and written as one act. */
import type { ChecklistRow } from '@enfilade/shared/checklist-reading';
import { mayBringIn } from '@enfilade/shared/seats';
import { useShow } from '../sync/hooks.ts';
import { useChecklistReader } from '../workers/checklist-reader.ts';
import { AllRows } from './all-rows.tsx';
import { BringInFoot } from './bring-in-foot.tsx';
import { FileChoice } from './file-choice.tsx';
import { HeadingsPart } from './headings-part.tsx';
import { PicturesPart } from './pictures-part.tsx';
import { RowsToLookAt } from './rows-to-look-at.tsx';
import { useBringing } from './use-bringing.ts';
import './bring-in.css';

export function BringIn() {
  const { me } = useShow();
  if (!mayBringIn(me.person.role)) {
    return (
      <div className="bring-in">
        <h1>Bring in</h1>
        <p className="cap">
          The lead, the curator and the registrar bring in checklists and pictures. What they brought in stands unplaced
          along the foot of every wall.
        </p>
      </div>
    );
  }
  return <Bringing />;
}

function Bringing() {
  const reader = useChecklistReader();
  const bringing = useBringing(reader);
  const { state } = reader;
  const { rows, files, choices, done } = bringing;
  if (done !== null) {
    return (
      <div className="bring-in">
        <Done bringing={bringing} />
      </div>
    );
  }
  const reading = state.kind === 'read' ? state.reading : null;
  if (state.kind === 'none' && files.length === 0) {
    return (
      <div className="bring-in">
        <h1>Bring in</h1>
        <FileChoice take={bringing.take} first />
      </div>
    );
  }
  const waiting = reading?.rows.filter(({ waits }) => waits.length > 0) ?? [];
  const found = choices.filter(({ target }) => target !== null).length;
  return (
    <div className="bring-in">
      <header className="bi-head">
        <h1>
          {state.kind === 'reading'
            ? 'Reading the checklist'
            : reading === null
              ? `${found} of ${files.length} pictures found their object`
              : `${reading.rows.length - waiting.length} of ${reading.rows.length} understood`}
        </h1>
        <p className="t1">
          {state.kind === 'read' ? (
            <>
              {state.fileName}, {state.parted}, {state.encoding}, {state.reading.headings.length} headings.
              <br />
              {tailText(waiting)}
            </>
          ) : state.kind === 'reading' ? (
            state.fileName
          ) : null}
        </p>
        <FileChoice take={bringing.take} first={false} />
      </header>
      {state.kind === 'failed' ? (
        <p className="bi-failed" role="alert">
          <b className="b">{state.fileName}</b> was not read. {state.what}
        </p>
      ) : null}
      {bringing.notes.length === 0 ? null : (
        <ul className="bi-notes">
          {bringing.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <div className={reading === null ? 'bi-parts bi-parts-pictures' : 'bi-parts'}>
        {reading === null ? null : (
          <>
            <HeadingsPart reading={reading} mend={reader.mend} />
            <div className="bi-rows">
              <RowsToLookAt rows={waiting} answers={bringing.answers} answer={bringing.answer} />
              <AllRows rows={rows} />
            </div>
          </>
        )}
        <PicturesPart bringing={bringing} />
      </div>
      <BringInFoot bringing={bringing} />
    </div>
  );
}

function tailText(waiting: readonly ChecklistRow[]): string {
  if (waiting.length === 0) return 'Nothing waits for your word.';
  const many = waiting.length === 1 ? 'The one below goes' : `The ${waiting.length} below go`;
  return `${many} in too, with what is sure of ${waiting.length === 1 ? 'it' : 'them'}; nothing is refused for its neighbour’s sake.`;
}

function Done({ bringing }: { readonly bringing: ReturnType<typeof useBringing> }) {
  const { done, putBack, begin } = bringing;
  if (done === null) return null;
  return (
    <>
      <h1 className="bi-big">{done.records === 1 ? '1 record is in' : `${done.records} records are in`}</h1>
      <p className="cap">
        {done.added} new, {done.updated} brought up to date, {done.pictures}{' '}
        {done.pictures === 1 ? 'picture' : 'pictures'}.
        {done.added > 0 ? ' What is new stands unplaced along the foot of every wall.' : ''} One undo takes all of it
        back.
      </p>
      {done.beyond > 0 ? (
        <p className="cap">
          {done.beyond} {done.beyond === 1 ? 'row stays' : 'rows stay'} out: a show holds 5,000 records.
        </p>
      ) : null}
      {done.left > 0 ? (
        <p className="cap">
          {done.left} {done.left === 1 ? 'picture' : 'pictures'} found no object and stayed out.
        </p>
      ) : null}
      <Refused refused={done.refused} />
      <p className="bi-commands">
        <button type="button" className="act main" onClick={begin}>
          Bring in more
        </button>
        <button type="button" className="act" onClick={putBack} disabled={!bringing.mayPutBack}>
          Put all back
        </button>
      </p>
    </>
  );
}

function Refused({ refused }: { readonly refused: readonly { fileName: string; what: string }[] }) {
  if (refused.length === 0) return null;
  return (
    <section className="bi-refused">
      <h2>{refused.length === 1 ? 'One picture' : `${refused.length} pictures`} stayed out; the rest went in</h2>
      <ul>
        {refused.map(({ fileName, what }) => (
          <li key={fileName}>
            {what.includes(fileName) ? null : <b className="b">{fileName}: </b>}
            {what}
          </li>
        ))}
      </ul>
    </section>
  );
}

export default BringIn;
