/** What a thing is, typed by who keeps the checklist: title, number, maker, date, medium. Others read it. */
import { type MuseumObject, objectOfPiece } from '@enfilade/shared/schema';
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
        <TypedField
          key={field}
          label={label}
          text={object[field] || null}
          words
          frozen={frozen}
          take={(typed) => {
            const trouble = field === 'number' ? numberTrouble(documents, objectOfPiece(pieceId), typed) : null;
            return trouble ?? correct({ [field]: typed }, label.replace(/,.*/, '').toLowerCase());
          }}
        />
      ))}
    </div>
  );
}
