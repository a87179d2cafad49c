/** The record behind a thing: who measured it and how surely, its photograph's day, and what people changed since. */
import * as commands from '@enfilade/shared/commands';
import { type RecordChange, recordChangesOf } from '@enfilade/shared/record-changes';
import { type MeasuredSize, objectOfPiece } from '@enfilade/shared/schema';
import { sizeText } from '@enfilade/space/lengths';
import { usePreferences } from '../preferences.ts';
import { useEntity, useShow } from '../sync/hooks.ts';
import { toAddress } from '../view-address.ts';
import { act } from './acting.ts';
import { CardGroup } from './card-group.tsx';
import { ClothFields } from './cloth-fields.tsx';
import { type RecordProps, useCorrect } from './correcting.ts';
import { dayText } from './day-text.ts';
import { changeWords, fieldName } from './record-words.ts';
import { TypedField } from './typed-field.tsx';
import './record-fold.css';

export function RecordFold(props: RecordProps) {
  const { pieceId, object } = props;
  const { documents } = useShow();
  const objectId = objectOfPiece(pieceId);
  useEntity('values', objectId);
  const changes = recordChangesOf(documents, objectId);
  const count = changes.open.length + changes.private.length;
  const measured = documents.get('pieces', pieceId)?.measured ?? object.measured ?? null;
  return (
    <CardGroup name="The record" brief={briefOf(measured, count)}>
      <MeasuredLine {...props} measured={measured} />
      <Photographed {...props} />
      {object.picture ? <InTheCollection objectId={objectId} /> : null}
      <Treatment {...props} />
      <Changes name="Changed since it came in" list={changes.open} />
      <Changes name="Changed, not for every seat" list={changes.private} />
      {count === 0 ? <p className="t1 q">Nobody has changed it since it came in.</p> : null}
    </CardGroup>
  );
}

function briefOf(measured: MeasuredSize | null, count: number): string {
  const how = measured === null ? 'not measured' : measured.estimated ? 'estimated' : 'measured';
  return count === 0 ? how : `${how}, ${count} changed`;
}

function MeasuredLine({ pieceId, object, frozen, measured }: RecordProps & { measured: MeasuredSize | null }) {
  const show = useShow();
  const { unit } = usePreferences();
  if (measured === null) {
    return <p className="t1 q">Nobody has measured it; its size is read from what is written.</p>;
  }
  const set = (change: Partial<MeasuredSize>, done: string): void => {
    const made =
      object.count > 1
        ? commands.correctPiece(pieceId, { measured: { ...measured, ...change } })
        : commands.correctObject(objectOfPiece(pieceId), { measured: { ...measured, ...change } });
    act(show, { ...made, name: 'correct the measure' }, done);
  };
  const { heightMm, widthMm, depthMm, estimated, by, on } = measured;
  const word = estimated ? 'Estimated' : 'Measured';
  const from = [by === undefined ? 'by whom is not known' : `by ${by}`, on === undefined ? '' : dayText(on)];
  return (
    <div className="record-measured">
      <p className={estimated ? 'unk' : undefined}>
        {word} {sizeText(heightMm, widthMm, depthMm, unit)}
        {measured.as === undefined ? '' : `, ${measured.as}`}
      </p>
      <p className="t1 q">{from.filter(Boolean).join(', ')}</p>
      {frozen ? null : (
        <p className="record-choices">
          <Choice on={!estimated} name="sure" press={() => set({ estimated: false }, 'the size is sure')} />
          <Choice on={estimated} name="estimated" press={() => set({ estimated: true }, 'the size is estimated')} />
          {(['framed', 'unframed'] as const).map((as) => (
            <Choice key={as} on={measured.as === as} name={as} press={() => set({ as }, `measured ${as}`)} />
          ))}
        </p>
      )}
    </div>
  );
}

/** From a thing of the show to what looks like it, or answers it, among all the museum holds. */
function InTheCollection({ objectId: id }: { readonly objectId: string }) {
  return (
    <p className="record-choices">
      <a href={toAddress({ sheet: 'collection', part: 'like', of: 'object', id })}>like it in the collection</a>
      <a href={toAddress({ sheet: 'collection', part: 'echo', of: 'object', id })}>echoes of it there</a>
    </p>
  );
}

function Choice({ on, name, press }: { readonly on: boolean; readonly name: string; readonly press: () => void }) {
  return (
    <button type="button" className={on ? 'cmd on' : 'cmd'} aria-pressed={on} onClick={press}>
      {name}
    </button>
  );
}

function Photographed({ pieceId, object, frozen }: RecordProps) {
  const correct = useCorrect(pieceId);
  if (frozen) {
    return (
      <div className="typed-field">
        <span className="typed-label">Photographed</span>
        <span className={`typed-value typed-frozen${object.photographedOn ? '' : ' unk'}`}>
          {object.photographedOn ? dayText(object.photographedOn) : 'not known'}
        </span>
      </div>
    );
  }
  return (
    <label className="typed-field">
      <span className="typed-label">Photographed</span>
      <input
        type="date"
        className="record-day"
        value={object.photographedOn ?? ''}
        onChange={(event) => correct({ photographedOn: event.target.value }, 'photograph’s day')}
      />
    </label>
  );
}

function Treatment({ pieceId, object, frozen }: RecordProps) {
  const correct = useCorrect(pieceId);
  const { before = '', after = '' } = object.treatment ?? {};
  if (frozen && before === '' && after === '' && object.treatment?.cloth === undefined) return null;
  return (
    <div className="typed-wide">
      {(
        [
          ['To be done: before', 'before', before],
          ['To be done: after', 'after', after],
        ] as const
      ).map(([label, field, text]) => (
        <TypedField
          key={field}
          label={label}
          text={text || null}
          words
          frozen={frozen}
          take={(typed) =>
            correct({ treatment: { ...object.treatment, before, after, [field]: typed } }, 'work to be done')
          }
        />
      ))}
      <ClothFields pieceId={pieceId} object={object} frozen={frozen} />
    </div>
  );
}

function Changes({ name, list }: { readonly name: string; readonly list: readonly RecordChange<string>[] }) {
  const { unit } = usePreferences();
  if (list.length === 0) return null;
  return (
    <section className="record-changes" aria-label={name}>
      <h4>{name}</h4>
      <ul>
        {list.map((change) => (
          <li key={change.field}>
            <b>{fieldName(change.field)}</b>: {changeWords(change, unit)}
          </li>
        ))}
      </ul>
    </section>
  );
}
