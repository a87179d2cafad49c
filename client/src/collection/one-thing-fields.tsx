/** The fields of one thing, one under the other, as large as a thumb. */
import { type ReactNode, useId } from 'react';
import { usePreferences } from '../preferences.ts';
import type { Troubles, Typed } from './one-thing-form.ts';

interface OneThingFieldsProps {
  readonly typed: Typed;
  readonly set: (change: Partial<Typed>) => void;
  readonly troubles: Troubles;
  /** The number it gets unless one is typed. */
  readonly offered: string;
  readonly mayLay: boolean;
}

const FROM = [
  ['collection', 'Held by the museum'],
  ['bought', 'Bought for the show'],
] as const;

export function OneThingFields({ typed, set, troubles, offered, mayLay }: OneThingFieldsProps) {
  const { unit } = usePreferences();
  const text = (field: keyof Typed & string, label: string, more: Partial<FieldProps> = {}) => (
    <Field
      id={`one-thing-${field}`}
      label={label}
      value={String(typed[field])}
      trouble={troubles[field]}
      take={(value) => set({ [field]: value })}
      {...more}
    />
  );
  return (
    <>
      {text('title', 'What it is')}
      <fieldset className="one-sizes">
        <legend>Rough size, {unit === 'cm' ? 'centimetres' : 'inches'}</legend>
        {text('height', 'Height', { decimal: true })}
        {text('width', 'Width', { decimal: true })}
        {text('depth', 'Depth', { decimal: true })}
        <Tick on={typed.estimated} set={(estimated) => set({ estimated })}>
          Estimated: it is drawn hatched until it is measured
        </Tick>
      </fieldset>
      {text('number', 'Number', { placeholder: `${offered}, provisional` })}
      <fieldset className="one-from">
        <legend>Held or bought</legend>
        {FROM.map(([source, name]) => (
          <label key={source}>
            <input
              type="radio"
              name="one-thing-source"
              checked={typed.source === source}
              onChange={() => set({ source })}
            />
            {name}
          </label>
        ))}
      </fieldset>
      {text('price', 'Price, with its currency', { hint: 'Lead, curator and registrar alone read it.' })}
      <fieldset className="one-done-to">
        <legend>What will be done to it</legend>
        {text('before', 'Before: as it is', { long: true })}
        {text('after', 'After: as it is to be', { long: true })}
      </fieldset>
      {mayLay ? (
        <Tick on={typed.onLayout} set={(onLayout) => set({ onLayout })}>
          Straight onto the layout floor
        </Tick>
      ) : (
        <p className="t1">It comes in unplaced: a registrar’s seat does not place things.</p>
      )}
    </>
  );
}

interface FieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly take: (value: string) => void;
  readonly trouble?: string | undefined;
  readonly hint?: string;
  readonly placeholder?: string;
  readonly decimal?: boolean;
  readonly long?: boolean;
}

function Field({ id, label, value, take, trouble, hint, placeholder, decimal = false, long = false }: FieldProps) {
  const shared = {
    id,
    value,
    maxLength: long ? 1000 : 200,
    placeholder: placeholder ?? '',
    autoComplete: 'off',
    'aria-invalid': trouble !== undefined,
    ...(trouble === undefined && hint === undefined ? {} : { 'aria-describedby': `${id}-said` }),
    className: 'one-field',
  };
  return (
    <p className="one-line">
      <label htmlFor={id}>{label}</label>
      {long ? (
        <textarea {...shared} rows={2} onChange={(event) => take(event.target.value)} />
      ) : (
        <input {...shared} inputMode={decimal ? 'decimal' : 'text'} onChange={(event) => take(event.target.value)} />
      )}
      {trouble === undefined && hint === undefined ? null : (
        <span className={trouble === undefined ? 't1' : 'one-trouble'} id={`${id}-said`}>
          {trouble ?? hint}
        </span>
      )}
    </p>
  );
}

function Tick(props: { readonly on: boolean; readonly set: (on: boolean) => void; readonly children: ReactNode }) {
  const id = useId();
  return (
    <label className="one-tick" htmlFor={id}>
      <input id={id} type="checkbox" checked={props.on} onChange={(event) => props.set(event.target.checked)} />
      {props.children}
    </label>
  );
}
