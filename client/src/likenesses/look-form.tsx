/** By what to look and among which things; pressing puts it into the address, and the address asks. */
import { useId, useState } from 'react';
import { useRoots, useShow } from '../sync/hooks.ts';
import { go } from '../view-address.ts';
import { objectsAmong, useOrigins } from './use-likenesses.ts';
import { type Among, type LikenessWish, LOOKS, wishText } from './wish.ts';

const ABOUT: Readonly<Record<(typeof LOOKS)[number], string>> = {
  colour: 'the palette of the picture',
  shape: 'the outline of what is cut out',
  size: 'height, width, depth',
  use: 'type, stuff, words, maker, origin',
  age: 'when it was made',
};

interface FormProps {
  readonly wish: LikenessWish;
  /** Looks for the same once more. */
  readonly again: () => void;
}

export function LookForm({ wish, again }: FormProps) {
  const show = useShow();
  const id = useId();
  useRoots('objects', 'places');
  const origins = useOrigins();
  const [looks, setLooks] = useState(wish.looks);
  const [among, setAmong] = useState<Among>(wish.among);
  const count = (pool: Among): number => objectsAmong(show, pool).length;
  const from = typeof among === 'string' ? '' : among.from;
  const next = { looks: LOOKS.filter((look) => looks.includes(look)), among };
  return (
    <form
      className="look-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (wishText(next) === wishText(wish)) again();
        else go({ sheet: 'likenesses', wish: next });
      }}
    >
      <fieldset>
        <legend>Look by</legend>
        {LOOKS.map((look) => (
          <label key={look} className="look-line">
            <input
              type="checkbox"
              checked={looks.includes(look)}
              onChange={({ target }) =>
                setLooks(target.checked ? [...looks, look] : looks.filter((other) => other !== look))
              }
            />
            <span>
              {look} <span className="t1 look-about">{ABOUT[look]}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>Among</legend>
        <label className="look-line">
          <input
            type="radio"
            name={`${id}-among`}
            checked={among === 'unplaced'}
            onChange={() => setAmong('unplaced')}
          />
          <span>what has no place on a wall or floor yet, {count('unplaced')}</span>
        </label>
        <label className="look-line">
          <input
            type="radio"
            name={`${id}-among`}
            checked={among === 'checklist'}
            onChange={() => setAmong('checklist')}
          />
          <span>the whole checklist, {count('checklist')}</span>
        </label>
        {origins.length === 0 ? null : (
          <label className="look-from">
            <span>or what comes from</span>
            <select
              value={from}
              onChange={({ target }) => setAmong(target.value === '' ? 'unplaced' : { from: target.value })}
            >
              <option value="">anywhere</option>
              {origins.map((origin) => (
                <option key={origin.from} value={origin.from}>
                  {origin.from}, {origin.count}
                </option>
              ))}
            </select>
          </label>
        )}
      </fieldset>
      <p>
        <button type="submit" className="act main" disabled={next.looks.length === 0}>
          {wishText(next) === wishText(wish) ? 'Look again' : 'Look'}
        </button>
      </p>
    </form>
  );
}
