/** What the collection is searched by. */
import type { CollectionAbout } from '@enfilade/shared/collection';
import { useId } from 'react';

export interface Filters {
  readonly words: string;
  readonly type: string;
  readonly from: string;
  readonly to: string;
  readonly picture: '' | 'with' | 'without';
  /** Empty, `never`, or a year since the end of which a thing was not shown. */
  readonly shown: string;
}

interface FilterFieldsProps {
  readonly filters: Filters;
  readonly about: CollectionAbout | null;
  readonly set: (change: Partial<Filters>) => void;
}

const PICTURES = [
  ['with', 'with a picture'],
  ['without', 'without'],
  ['', 'both'],
] as const;

/** Not shown for so many years. */
const RESTED = [20, 40] as const;

export function FilterFields({ filters, about, set }: FilterFieldsProps) {
  const id = useId();
  const year = new Date().getFullYear();
  return (
    <search className="co-filters" aria-label="Search the collection">
      <label htmlFor={`${id}-words`}>Words, or a number</label>
      <input
        id={`${id}-words`}
        type="search"
        className="co-field"
        maxLength={200}
        value={filters.words}
        placeholder="rose mould, ink, 1919.22"
        onChange={(event) => set({ words: event.target.value })}
      />
      <label htmlFor={`${id}-type`}>Kind</label>
      <select
        id={`${id}-type`}
        className="co-field"
        value={filters.type}
        onChange={(event) => set({ type: event.target.value })}
      >
        <option value="">every kind</option>
        {about?.types.map(({ type, count }) => (
          <option key={type} value={type}>
            {type}, {count.toLocaleString('en-GB')}
          </option>
        ))}
      </select>
      <div className="co-years">
        <label>
          Made from
          <input
            className="co-field"
            inputMode="numeric"
            value={filters.from}
            placeholder="year"
            onChange={(event) => set({ from: event.target.value })}
          />
        </label>
        <label>
          to
          <input
            className="co-field"
            inputMode="numeric"
            value={filters.to}
            placeholder="year"
            onChange={(event) => set({ to: event.target.value })}
          />
        </label>
      </div>
      <fieldset>
        <legend>Pictures</legend>
        {PICTURES.map(([value, name]) => (
          <Choice key={value} name={name} on={filters.picture === value} press={() => set({ picture: value })} />
        ))}
      </fieldset>
      <fieldset>
        <legend>Not shown before</legend>
        <Choice name="either way" on={filters.shown === ''} press={() => set({ shown: '' })} />
        <Choice name="never shown" on={filters.shown === 'never'} press={() => set({ shown: 'never' })} />
        {RESTED.map((years) => {
          const since = String(year - years);
          return (
            <Choice
              key={years}
              name={`not for ${years} years`}
              on={filters.shown === since}
              press={() => set({ shown: since })}
            />
          );
        })}
      </fieldset>
      {about === null ? null : (
        <p className="t1">
          {about.count.toLocaleString('en-GB')} things, {about.pictured.toLocaleString('en-GB')} with a picture;{' '}
          {about.neverShown.toLocaleString('en-GB')} were never shown.
        </p>
      )}
    </search>
  );
}

function Choice({ name, on, press }: { readonly name: string; readonly on: boolean; readonly press: () => void }) {
  return (
    <button type="button" className={on ? 'cmd on' : 'cmd'} aria-pressed={on} onClick={press}>
      {name}
    </button>
  );
}
