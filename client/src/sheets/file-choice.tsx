/** Where files come in: chosen, or dropped anywhere on the page's drop area. */
import { type DragEvent, useEffect, useId, useRef, useState } from 'react';
import { AddressChoice } from './address-choice.tsx';
import type { Into } from './review.ts';

interface FileChoiceProps {
  readonly take: (files: readonly File[]) => void;
  /** Null: no address is asked for. */
  readonly takeAddress: ((address: string) => void) | null;
  /** Nothing has been chosen yet: says what to do first. */
  readonly first: boolean;
  readonly into: Into;
}

export function FileChoice({ take, takeAddress, first, into }: FileChoiceProps) {
  const id = useId();
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    take([...event.dataTransfer.files]);
  };
  // A file let go beside the area would open in place of the page.
  useEffect(() => {
    const keep = (event: Event): void => event.preventDefault();
    addEventListener('dragover', keep);
    addEventListener('drop', keep);
    return () => {
      removeEventListener('dragover', keep);
      removeEventListener('drop', keep);
    };
  }, []);
  return (
    <section
      className={`bi-drop${first ? ' bi-drop-first' : ''}${over ? ' bi-drop-over' : ''}`}
      aria-label="Files"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      {first ? (
        <p className="cap">
          Choose {into === 'checklist' ? 'the checklist' : 'the file of records'} first: a spreadsheet (XLSX, ODS or
          CSV), one row a record; or LIDO records, or a IIIF manifest. Then{' '}
          {into === 'checklist' ? 'its pictures' : 'pictures'}, as files or in a zip, with the object number in each
          name
          {into === 'checklist' ? '' : '; or pictures alone, of records that are there'}. Nothing is written until you
          have looked through it.
        </p>
      ) : null}
      <div className="bi-inputs">
        <Chooser
          id={`${id}-csv`}
          label={`${first ? 'Choose a' : 'Another'} ${into === 'checklist' ? 'checklist' : 'file of records'}`}
          accept=".csv,.tsv,.txt,.xlsx,.xlsm,.ods,.xml,.lido,.json,.jsonld,text/csv"
          take={take}
        />
        <Chooser
          id={`${id}-pictures`}
          label={first ? 'Choose pictures, or a zip of them' : 'More pictures'}
          accept=".jpg,.jpeg,.png,.webp,.tif,.tiff,.zip,image/jpeg,image/png,image/webp,image/tiff"
          many
          take={take}
        />
        <span className="t1">{first ? 'or drop them here together' : 'or drop them here'}</span>
      </div>
      {takeAddress === null ? null : <AddressChoice take={takeAddress} />}
    </section>
  );
}

interface ChooserProps {
  readonly id: string;
  readonly label: string;
  readonly accept: string;
  readonly many?: boolean;
  readonly take: (files: readonly File[]) => void;
}

function Chooser({ id, label, accept, many = false, take }: ChooserProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <span className="bi-chooser">
      <input
        ref={input}
        id={id}
        type="file"
        accept={accept}
        multiple={many}
        onChange={(event) => {
          take([...(event.target.files ?? [])]);
          // The same file may be chosen again after it was mended.
          event.target.value = '';
        }}
      />
      <label htmlFor={id} className="act">
        {label}
      </label>
    </span>
  );
}
