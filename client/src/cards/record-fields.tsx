/** The record's own facts, typed by who keeps the checklist: sizes, weight, count, texts, hardware. */

import { HARDWARE_KINDS } from '@enfilade/practice/hardware';
import * as commands from '@enfilade/shared/commands';
import type { HardwareFact, MeasuredSize, MuseumObject, PieceId } from '@enfilade/shared/schema';
import { objectOfPiece } from '@enfilade/shared/schema';
import { useId, useState } from 'react';
import { useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { LengthField } from './length-field.tsx';
import { TypedField } from './typed-field.tsx';

interface RecordProps {
  readonly pieceId: PieceId;
  readonly object: MuseumObject;
  readonly frozen: boolean;
}

export function RecordFields({ pieceId, object, frozen }: RecordProps) {
  return (
    <div className="record-fields">
      <SizeFields pieceId={pieceId} object={object} frozen={frozen} />
      <WeightAndCount pieceId={pieceId} object={object} frozen={frozen} />
      <TextFields pieceId={pieceId} object={object} frozen={frozen} />
      <HardwareFields pieceId={pieceId} object={object} frozen={frozen} />
    </div>
  );
}

function useCorrect(pieceId: PieceId) {
  const show = useShow();
  return (fields: Partial<MuseumObject>, what: string): string | null =>
    act(show, commands.correctObject(objectOfPiece(pieceId), fields), `${what} corrected`)
      ? null
      : 'cannot be set just now';
}

function SizeFields({ pieceId, object, frozen }: RecordProps) {
  const show = useShow();
  const size = show.judgements.sizeOf(pieceId);
  const [half, setHalf] = useState<{ heightMm?: number; widthMm?: number }>({});
  if (size === null) return null;
  const set = (change: { heightMm?: number; widthMm?: number; depthMm?: number }): string | null => {
    const heightMm = change.heightMm ?? half.heightMm ?? (size.known ? size.heightMm : undefined);
    const widthMm = change.widthMm ?? half.widthMm ?? (size.known ? size.widthMm : undefined);
    if (heightMm === undefined || widthMm === undefined) {
      setHalf({ ...half, ...change });
      return null;
    }
    setHalf({});
    const depthMm = change.depthMm ?? (size.depthMm > 0 ? size.depthMm : null);
    const measured: MeasuredSize = { heightMm, widthMm, depthMm, estimated: size.known && !size.certain };
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
        mm={shown(size.heightMm, half.heightMm)}
        frozen={frozen}
        leastMm={1}
        take={(mm) => set({ heightMm: mm })}
        {...(half.heightMm !== undefined ? { hint: 'now its width' } : {})}
      />
      <LengthField
        label="Width"
        mm={shown(size.widthMm, half.widthMm)}
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

function TextFields({ pieceId, object, frozen }: RecordProps) {
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
          frozen={frozen}
          take={(typed) => correct({ [field]: typed }, 'size text')}
        />
      ))}
    </div>
  );
}

function HardwareFields({ pieceId, object, frozen }: RecordProps) {
  const { judgements } = useShow();
  const correct = useCorrect(pieceId);
  const id = useId();
  const known = judgements.hardwareOf(object);
  const set = (change: Partial<HardwareFact>): string | null => {
    const kind = change.kind ?? known?.kind ?? 'D-rings';
    const hardware: HardwareFact = {
      kind,
      hooks: change.hooks ?? known?.hooks ?? (kind === 'none' ? 0 : kind === 'D-rings' || kind === 'plates' ? 2 : 1),
      dropMm: change.dropMm ?? known?.dropMm ?? 0,
      spacingMm: change.spacingMm ?? known?.spacingMm ?? 0,
    };
    return correct({ hardware }, 'hardware');
  };
  return (
    <>
      <div className="typed-field">
        <label className="typed-label" htmlFor={id}>
          Hangs by
        </label>
        {frozen ? (
          <span id={id} className={`typed-value typed-frozen${known === null ? ' unk' : ''}`}>
            {known?.kind ?? 'not known'}
          </span>
        ) : (
          <select
            id={id}
            className={`record-kind${known === null ? ' unk' : ''}`}
            value={known?.kind ?? ''}
            onChange={(event) =>
              set({ kind: event.target.value, ...(event.target.value === 'none' ? { hooks: 0 } : {}) })
            }
          >
            {known === null ? <option value="">not known</option> : null}
            {HARDWARE_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {kind}
              </option>
            ))}
          </select>
        )}
      </div>
      {known === null || known.kind === 'none' ? null : (
        <>
          <TypedField
            label="Hooks"
            text={String(known.hooks)}
            frozen={frozen}
            take={(typed) => {
              const hooks = Number(typed);
              return Number.isInteger(hooks) && hooks >= 0 && hooks <= 12 ? set({ hooks }) : 'a number from 0 to 12';
            }}
          />
          <LengthField
            label="Drop from its top"
            mm={known.dropMm ?? null}
            frozen={frozen}
            leastMm={0}
            take={(mm) => set({ dropMm: mm })}
          />
          {known.hooks > 1 ? (
            <LengthField
              label="Between its hooks"
              mm={known.spacingMm ?? null}
              frozen={frozen}
              leastMm={0}
              take={(mm) => set({ spacingMm: mm })}
            />
          ) : null}
        </>
      )}
    </>
  );
}
