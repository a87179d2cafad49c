/** What a thing hangs by, typed by who keeps the checklist: its kind, hooks, drop and spacing. */
import { HARDWARE_KINDS } from '@enfilade/practice/hardware';
import { practiceProfileOf } from '@enfilade/shared/practice-limits';
import type { HardwareFact } from '@enfilade/shared/schema';
import { useId } from 'react';
import { useShow } from '../sync/hooks.ts';
import { type RecordProps, useCorrect } from './correcting.ts';
import { LengthField } from './length-field.tsx';
import { TypedField } from './typed-field.tsx';

export function HardwareFields({ pieceId, object, frozen }: RecordProps) {
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
      ...(kind === 'wire' ? { wire: change.wire ?? object.hardware?.wire ?? null } : {}),
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
          {known.kind === 'wire' ? <WireFields object={object} frozen={frozen} set={set} /> : null}
          <HookLoad pieceId={pieceId} />
        </>
      )}
    </>
  );
}

const WIRE = [
  ['Between its rings', 'ringsApartMm'],
  ['Wire between them', 'wireMm'],
  ['Rings below its top', 'ringsBelowTopMm'],
] as const;

interface WireFieldsProps extends Pick<RecordProps, 'object' | 'frozen'> {
  readonly set: (change: Partial<HardwareFact>) => string | null;
}

/** With its three lengths the drop of a wire is worked out, and how flat it stands is told. */
function WireFields({ object, frozen, set }: WireFieldsProps) {
  const wire = object.hardware?.wire ?? null;
  return WIRE.map(([label, field]) => (
    <LengthField
      key={field}
      label={label}
      mm={wire?.[field] || null}
      frozen={frozen}
      leastMm={0}
      take={(mm) => set({ wire: { ringsApartMm: 0, wireMm: 0, ringsBelowTopMm: 0, ...wire, [field]: mm } })}
    />
  ));
}

function kilograms(kg: number): string {
  return `${Number(kg.toFixed(1))} kg`;
}

/** What its hooks bear, and are to be rated for, where it hangs; how its wire pulls. */
function HookLoad({ pieceId }: Pick<RecordProps, 'pieceId'>) {
  const { judgements, documents } = useShow();
  const plan = judgements.hooksOf(pieceId);
  if (plan === null || !plan.known) return null;
  const { limits } = practiceProfileOf(documents);
  const { loadKg, ratingKg, wire, points } = plan;
  const loads = [...new Set(points.flatMap((point) => (point.loadKg === null ? [] : [kilograms(point.loadKg)])))];
  return (
    <>
      {wire === null ? null : (
        <p className="t1 q">
          Its wire stands at {Math.round(wire.angleDegrees)}°
          {wire.pullKg === null ? '' : ` and pulls ${kilograms(wire.pullKg)}: W / (2 sin θ)`}. At least{' '}
          {limits.wireDegrees.value}°: {limits.wireDegrees.source}.
        </p>
      )}
      {loadKg === null || ratingKg === null ? null : (
        <p className="t1 q">
          {loads.length > 1 ? `The hooks bear ${loads.join(' and ')}` : `A hook bears ${kilograms(loadKg)}`}: hardware
          rated for {kilograms(ratingKg)} each, {limits.ratingFactor.value} times its load ({limits.ratingFactor.source}
          ). What the wall holds is not judged here: ask a licensed professional.
        </p>
      )}
    </>
  );
}
