/** What a thing is, typed by who keeps the checklist: title, number, maker, date, medium. Others read it. */
import { dateLine, dateWordsOf, makerLine, makerWordsOf } from '@enfilade/shared/making-words';
import { type MuseumObject, objectOfPiece } from '@enfilade/shared/schema';
import { Fragment } from 'react';
import { useShow } from '../sync/hooks.ts';
import { numberTrouble, type RecordProps, useCorrect } from './correcting.ts';
import { TypedField } from './typed-field.tsx';

const FIELDS = [
  ['Title', 'title'],
  ['Number', 'number'],
  ['Maker', 'maker'],
  ['Date, as written', 'dateText'],
  ['Medium', 'medium'],
] as const satisfies readonly (readonly [label: string, field: keyof MuseumObject])[];

export function IdentityFields({ pieceId, object, frozen }: RecordProps) {
  const { documents } = useShow();
  const correct = useCorrect(pieceId);
  return (
    <div className="record-fields typed-wide">
      {FIELDS.map(([label, field]) => (
        <Fragment key={field}>
          <TypedField
            label={label}
            text={object[field] || null}
            words
            frozen={frozen}
            take={(typed) => {
              const trouble = field === 'number' ? numberTrouble(documents, objectOfPiece(pieceId), typed) : null;
              return trouble ?? correct({ [field]: typed }, label.replace(/,.*/, '').toLowerCase());
            }}
          />
          <ReadAs field={field} text={object[field] ?? ''} />
        </Fragment>
      ))}
    </div>
  );
}

/** What is understood of a maker and a date, below the text that stands in the record. */
function ReadAs({ field, text }: { readonly field: keyof MuseumObject; readonly text: string }) {
  const date = field === 'dateText' ? dateWordsOf(text) : null;
  const makers = field === 'maker' ? makerLine(makerWordsOf(text)) : '';
  const line = date === null ? makers : dateLine(date);
  if (line === '' || line === text) return null;
  return (
    <p className="t1 q">
      read as {line}
      {date?.doubts.map((doubt) => ` ${doubt}`)}
    </p>
  );
}
