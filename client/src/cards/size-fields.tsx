/** Size, weight and count of the record, as measured and as written, typed by who keeps the checklist. */
import * as commands from '@enfilade/shared/commands';
import { type MeasuredSize, objectOfPiece } from '@enfilade/shared/schema';
import { useState } from 'react';
import { todayIso } from '../sheets/waiting-days.ts';
import { useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { type RecordProps, useCorrect } from './correcting.ts';
import { LengthField } from './length-field.tsx';
import { TypedField } from './typed-field.tsx';

export function SizeFields(props: RecordProps) {
  return (
    <>
      <MeasuredFields {...props} />
      <WeightAndCount {...props} />
      <WrittenSizes {...props} />
    </>
  );
}

function MeasuredFields({ pieceId, object, frozen }: RecordProps) {
  const show = useShow();
  const size = show.judgements.sizeOf(pieceId);
  const [half, setHalf] = useState<{ heightMm?: number; widthMm?: number }>({});
  if (size === null) return null;
  const measuredNow = (object.count > 1 ? show.documents.get('pieces', pieceId) : object)?.measured ?? null;
  // What was measured without its frame is typed without it.
  const asMeasured = measuredNow ?? size;
  const set = (change: { heightMm?: number; widthMm?: number; depthMm?: number }): string | null => {
    const heightMm = change.heightMm ?? half.heightMm ?? (size.known ? asMeasured.heightMm : undefined);
    const widthMm = change.widthMm ?? half.widthMm ?? (size.known ? asMeasured.widthMm : undefined);
    if (heightMm === undefined || widthMm === undefined) {
      setHalf({ ...half, ...change });
      return null;
    }
    setHalf({});
    const depthMm = change.depthMm ?? (size.depthMm > 0 ? size.depthMm : null);
    const as = measuredNow?.as;
    const measured: MeasuredSize = {
      heightMm,
      widthMm,
      depthMm,
      estimated: size.known && !size.certain,
      by: show.me.person.name,
      on: todayIso(),
      ...(as === undefined ? {} : { as }),
    };
    // One of several is measured for itself; a single thing's size belongs to its record.
    const made =
      object.count > 1
        ? commands.correctPiece(pieceId, { measured })
        : commands.correctObject(objectOfPiece(pieceId), { measured });
    return act(show, made, 'size set') ? null : 'cannot be set just now';
  };
  const shown = (known: number, typed: number | undefined) => typed ?? (size.known ? known : null);
  return (
    <>
      <LengthField
        label="Height"
        mm={shown(asMeasured.heightMm, half.heightMm)}
        frozen={frozen}
        leastMm={1}
        take={(mm) => set({ heightMm: mm })}
        {...(half.heightMm !== undefined ? { hint: 'now its width' } : {})}
      />
      <LengthField
        label="Width"
        mm={shown(asMeasured.widthMm, half.widthMm)}
        frozen={frozen}
        leastMm={1}
        take={(mm) => set({ widthMm: mm })}
        {...(half.widthMm !== undefined ? { hint: 'now its height' } : {})}
      />
      <LengthField
        label="Depth"
        mm={size.depthMm > 0 ? size.depthMm : null}
        frozen={frozen || !size.known}
        leastMm={0}
        take={(mm) => set({ depthMm: mm })}
      />
    </>
  );
}

function WeightAndCount({ pieceId, object, frozen }: RecordProps) {
  const correct = useCorrect(pieceId);
  return (
    <>
      <TypedField
        label="Weight, kg"
        text={object.weightKg === null || object.weightKg === undefined ? null : String(object.weightKg)}
        frozen={frozen}
        take={(typed) => {
          const kg = Number(typed.replace(',', '.').replace(/\s*kg$/i, ''));
          if (!(kg > 0 && kg < 100000)) return `'${typed}' is no weight in kilograms`;
          return correct({ weightKg: kg }, 'weight');
        }}
      />
      <TypedField
        label="Counts"
        text={String(object.count)}
        frozen={frozen}
        take={(typed) => {
          const count = Number(typed);
          if (!Number.isInteger(count) || count < 1 || count > 5000) return 'a whole number from 1 to 5000';
          return correct({ count }, 'count');
        }}
      />
    </>
  );
}

function WrittenSizes({ pieceId, object, frozen }: RecordProps) {
  const correct = useCorrect(pieceId);
  const texts = [
    ['Unframed, as written', 'dimensionsText'],
    ['Framed, as written', 'framedText'],
  ] as const;
  return (
    <div className="typed-wide">
      {texts.map(([label, field]) => (
        <TypedField
          key={field}
          label={label}
          text={object[field] || null}
          words
          frozen={frozen}
          take={(typed) => correct({ [field]: typed }, 'size text')}
        />
      ))}
    </div>
  );
}
